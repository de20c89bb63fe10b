#pragma once

#include <vector>

#include "core/forms/csv_file.hpp"
#include "core/model/local.hpp"
#include "core/model/species.hpp"

namespace oaklight {

/// What a local volume table says. It means something only when faults is empty.
struct VolumesRead {
  LocalVolumes volumes;  ///< rows by species, those of any species first, then by DBH
  std::vector<Error> faults;
};

/// Reads local_volume.csv (forms/README.md lists its columns). A file with its header alone is no
/// table: the book's volumes stand.
///
/// faults   bad_csv; per cell missing_value, not_a_number, out_of_range, unknown_species,
///          not_a_choice; contradiction for both DBH columns, for board feet without a log rule,
///          for two log rules and for a volume that falls with DBH; duplicate for two lines of one
///          species and DBH. `where` is "local_volume.csv:14:dbh_in". At most kMaxFaults of them.
VolumesRead read_volumes(const NamedText& file, const SpeciesTable& species);

}  // namespace oaklight
