#pragma once

#include <string>
#include <vector>

#include "core/forms/csv_file.hpp"
#include "core/model/species.hpp"

namespace oaklight {

/// What a species file says. The table means something only when faults is empty.
struct SpeciesRead {
  SpeciesTable table;
  std::vector<Error> faults;
};

/// Reads species.csv (forms/README.md lists its columns; those that the model does not use are
/// checked to be there and no further).
///
/// faults   bad_csv for the file as CSV; per cell missing_value, not_a_number, not_a_choice,
///          out_of_range; duplicate for a code, symbol, common or scientific name that is there
///          twice. `where` is "species.csv:14:fia_code". At most kMaxFaults of them.
SpeciesRead read_species(const NamedText& file);

/// Species that a tally screen shows, in button order.
struct TallySet {
  std::string key;
  std::string name;
  std::vector<SpeciesCode> species;
  std::string notes;
};

struct TallySetsRead {
  std::vector<TallySet> sets;
  std::vector<Error> faults;
};

/// Reads species_sets.csv. The catch-all species 9901, 9902, 998 and 299 that the table has are
/// added at the end of each set, so that every stem can be tallied.
///
/// faults   bad_csv; missing_value, not_a_number; unknown_species, duplicate for a key or a species
///          twice in a set; contradiction when species_count is another number
TallySetsRead read_tally_sets(const NamedText& file, const SpeciesTable& species);

}  // namespace oaklight
