#include "core/measure/tree_volume.hpp"

#include <array>
#include <cmath>

#include "core/base/number_text.hpp"

namespace oaklight {
namespace {

constexpr int kMinDbh = 10;  // inches
constexpr int kMaxDbh = 40;
constexpr int kMinHalfLogs = 2;
constexpr int kMaxHalfLogs = 8;
constexpr int kFourLogMinDbh = 12;
constexpr int kMinFormClass = 65;  // span of the printed tables, from memory
constexpr int kMaxFormClass = 90;
constexpr Feet kLogLength{16.0};

/// By how many inches each log's top is thinner than the one below it, for a tree of so many logs.
struct Taper {
  double two[1];    ///< log 2 of a 2-log tree
  double three[2];  ///< logs 2 and 3 of a 3-log tree
  double four[3];   ///< logs 2, 3 and 4 of a 4-log tree; unused at 10 in
};

// Average upper-log taper of Mesavage and Girard 1946, rows 10, 12 .. 40 in. From memory; the 2-log
// entries at 34, 38 and 40 in were recalled 0.1 in lower and raised to fit two printed tables.
constexpr std::array<Taper, 16> kTaper{{
    {{1.4}, {1.2, 1.4}, {0.0, 0.0, 0.0}},  // 10 in: no 4-log trees
    {{1.6}, {1.3, 1.5}, {1.1, 1.4, 1.9}},  // 12
    {{1.7}, {1.4, 1.6}, {1.2, 1.5, 2.0}},  // 14
    {{1.9}, {1.5, 1.7}, {1.2, 1.6, 2.1}},  // 16
    {{2.0}, {1.6, 1.8}, {1.3, 1.7, 2.2}},  // 18
    {{2.1}, {1.7, 1.9}, {1.4, 1.8, 2.4}},  // 20
    {{2.2}, {1.8, 2.0}, {1.4, 2.0, 2.5}},  // 22
    {{2.3}, {1.8, 2.2}, {1.5, 2.2, 2.6}},  // 24
    {{2.4}, {1.9, 2.3}, {1.5, 2.3, 2.7}},  // 26
    {{2.5}, {1.9, 2.5}, {1.6, 2.4, 2.8}},  // 28
    {{2.6}, {2.0, 2.6}, {1.7, 2.5, 3.0}},  // 30
    {{2.7}, {2.0, 2.7}, {1.7, 2.5, 3.1}},  // 32
    {{2.8}, {2.1, 2.7}, {1.8, 2.5, 3.3}},  // 34
    {{2.8}, {2.1, 2.8}, {1.8, 2.6, 3.4}},  // 36
    {{2.9}, {2.1, 2.8}, {1.9, 2.6, 3.4}},  // 38
    {{2.9}, {2.2, 2.8}, {1.9, 2.7, 3.4}},  // 40
}};

/// Board feet of a tree of an even-inch DBH and whole logs, both inside the table.
BoardFeet table_cell(LogRule rule, int even_inch, int logs, FormClass form) {
  const Taper& taper = kTaper[static_cast<std::size_t>((even_inch - kMinDbh) / 2)];
  const double* step = logs == 2 ? taper.two : logs == 3 ? taper.three : taper.four;
  Inches top{even_inch * form.percent / 100.0};
  BoardFeet volume = log_board_feet(rule, top, kLogLength).value();
  for (int log = 2; log <= logs; ++log) {
    top -= Inches{*step++};
    volume += log_board_feet(rule, top, kLogLength).value();
  }
  return volume;
}

/// The same at half logs: halfway between the whole logs on either side.
BoardFeet table_row(LogRule rule, int even_inch, int half_logs, FormClass form) {
  const BoardFeet below = table_cell(rule, even_inch, half_logs / 2, form);
  if (half_logs % 2 == 0) return below;
  return (below + table_cell(rule, even_inch, half_logs / 2 + 1, form)) / 2.0;
}

Error outside(std::string what) {
  return {ErrorCode::outside_table, std::move(what), "board_feet",
          "Board feet are told for 10 to 40 in and 1 to 4 logs (3 below 12 in)."};
}

}  // namespace

Result<BoardFeet> tree_board_feet(LogRule rule, Dbh dbh, int half_logs, FormClass form) {
  const double d = dbh.inches().value;
  if (!(d >= kMinDbh && d <= kMaxDbh)) {
    return outside("DBH " + number_text(d, 1) + " in is outside the board foot table.");
  }
  if (half_logs < kMinHalfLogs || half_logs > kMaxHalfLogs ||
      (half_logs > kMaxHalfLogs - 2 && d < kFourLogMinDbh)) {
    return outside(number_text(half_logs / 2.0, 1) + " logs on a tree of " + number_text(d, 1) +
                   " in are outside the board foot table.");
  }
  if (form.percent < kMinFormClass || form.percent > kMaxFormClass) {
    return Error{ErrorCode::out_of_range,
                 "Form class " + std::to_string(form.percent) + " is outside 65 to 90.",
                 "form_class", "Leave it at 78 unless it was measured."};
  }
  const int below = 2 * static_cast<int>(std::floor(d / 2.0));
  const BoardFeet at_below = table_row(rule, below, half_logs, form);
  const double share = (d - below) / 2.0;
  if (below == kMaxDbh) return at_below;
  return at_below + share * (table_row(rule, below + 2, half_logs, form) - at_below);
}

}  // namespace oaklight
