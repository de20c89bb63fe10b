#pragma once

#include "core/measure/log_rule.hpp"
#include "core/units/reading.hpp"

namespace oaklight {

/// Girard form class: diameter inside bark at the top of the first 16-ft log (17.3 ft above ground)
/// in percent of DBH. 78 is the usual default for hardwoods.
struct FormClass {
  int percent = 78;
  friend constexpr bool operator==(FormClass, FormClass) = default;
};

/// Board feet of a standing tree, gross (no cull taken off), for any rule and form class: the logs'
/// top diameters follow from the form class and the average taper of the upper logs, and each 16-ft
/// log is scaled by the rule.
///
/// half_logs  merchantable height in half logs of 8 ft, 2 .. 8
/// errors     outside_table: DBH outside 10.0 .. 40.0 in, fewer than 2 or more than 8 half logs, or
///            more than 3 logs on a tree under 12 in;
///            out_of_range: a form class outside 65 .. 90
/// assumes    between the table's even inches, and at half logs, volume runs straight
/// accuracy   International 1/4-inch at form class 80: within 1.2 board feet of 62 of 63 printed
/// cells
///            and 1.21 of the other; Scribner at 78: within 1 % or 2.5 board feet of 213 printed
///            cells; printed Doyle cells were not seen
/// source     method of Mesavage and Girard 1946; taper table from memory, three entries raised by
///            0.1 in to fit the printed tables (tests/published/tree_tables.tsv)
[[nodiscard]] Result<BoardFeet> tree_board_feet(LogRule rule, Dbh dbh, int half_logs,
                                                FormClass form = {});

}  // namespace oaklight
