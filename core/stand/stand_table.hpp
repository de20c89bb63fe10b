#pragma once

#include <vector>

#include "core/sample/cruise_estimate.hpp"

namespace oaklight {

/// One diameter class of the table. Figures point into the AreaEstimate; nullptr: none tallied,
/// which is not the same as none there.
struct StandTableRow {
  DbhClass dbh_class;
  std::vector<const GroupFigures*> cells;  ///< by column
  const GroupFigures* all = nullptr;
};

/// Stand and stock table: live trees per acre (stand) and their basal area and volume (stock) by
/// diameter class and species.
struct StandTable {
  std::vector<SpeciesCode> columns;  ///< most basal area first; ties by code
  std::vector<StandTableRow> rows;   ///< every class from the smallest to the largest found
  std::vector<const GroupFigures*> column_sums;
  const GroupFigures* all = nullptr;
};

/// The table of an area, which must outlive it.
///
/// width    that of the area's classes
[[nodiscard]] StandTable stand_table(const AreaEstimate& area, ClassWidth width);

}  // namespace oaklight
