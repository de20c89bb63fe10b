#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/base/id.hpp"
#include "core/forms/csv_file.hpp"
#include "core/forms/form.hpp"
#include "core/model/mark.hpp"

namespace oaklight {

/// The files that a crew brings home; any may be absent. Names are for messages.
struct CruiseFiles {
  std::optional<NamedText> tract;
  std::optional<NamedText> stands;
  std::optional<NamedText> plots;
  std::optional<NamedText> trees;
  std::optional<NamedText> regeneration;
  std::optional<NamedText> crop_trees;
  std::optional<NamedText> map;  ///< GeoJSON (RFC 7946)
  std::optional<NamedText> acorns = {};
  std::optional<NamedText> acorn_years = {};
  std::optional<NamedText> stumps = {};        ///< after the cut
  std::optional<NamedText> local_volume = {};  ///< no records: a table of the tract (read_volumes)
};

/// The name by which one of them is known, and its place.
struct KnownFile {
  const char* name;
  std::optional<NamedText> CruiseFiles::*slot;
};
inline constexpr std::array<KnownFile, 11> kKnownFiles = {
    {{"tract.csv", &CruiseFiles::tract},
     {"stands.csv", &CruiseFiles::stands},
     {"plots.csv", &CruiseFiles::plots},
     {"trees.csv", &CruiseFiles::trees},
     {"regeneration.csv", &CruiseFiles::regeneration},
     {"crop_trees.csv", &CruiseFiles::crop_trees},
     {"acorns.csv", &CruiseFiles::acorns},
     {"acorn_years.csv", &CruiseFiles::acorn_years},
     {"map.geojson", &CruiseFiles::map},
     {"stumps.csv", &CruiseFiles::stumps},
     {"local_volume.csv", &CruiseFiles::local_volume}}};

/// What the files say, or what is wrong with them.
struct CruiseImport {
  /// What is to be written, and nothing else: the tract, new records, and records of the tract file
  /// that the import completes (these keep their id). Means something only when faults is empty.
  TractData data;
  /// In the order of the files and their lines. At most kMaxFaults, and then one import_refused
  /// that says how many more there are.
  std::vector<Error> faults;
};

/// Reads a cruise, crop tree cards and a map, and checks them against the form, against each other
/// and against the tract file. Pure: nothing is written, nothing is read but the texts.
///
/// form      as from read_form; says which columns there are and what a cell may hold
/// species   the species that the tract knows
/// existing  the tract file: what may be referred to; trees without a tag may be left out
/// ids       makes the ids of new records
/// returns   the records, with each Contact and WalkTree linked; positions of neighbours that were
///           not given stay unknown here, whatever azimuth and distance say
/// errors    none of its own; every fault of the files is in `faults`, its `where` is
///           "trees.csv:14:dbh_in", or "map.geojson:/features/3/geometry" for the map. A stand or
///           plot that is referred to and unknown is told once a file, at its first row; a stand
///           that plots.csv names wrongly is not told again for the trees of its plots.
/// assumes   azimuths are from true north
CruiseImport read_cruise(const CruiseFiles& files, const Form& form, const SpeciesTable& species,
                         const TractData& existing, IdSource& ids);

}  // namespace oaklight
