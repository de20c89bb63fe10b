#include "core/measure/log_rule.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/number_text.hpp"

namespace oaklight {
namespace {

constexpr double kMaxSmallEnd = 100.0;  // inches; no log is wider
constexpr double kMaxLength = 60.0;     // feet; no log is longer

double doyle(double d, double length) {
  const double squared_side = std::max(0.0, d - 4.0);
  return squared_side * squared_side * length / 16.0;
}

double scribner(double d, double length) { return (0.79 * d * d - 2.0 * d - 4.0) * length / 16.0; }

double international(double d, double length) {
  constexpr double kSection = 4.0;           // feet
  constexpr double kWidening = 0.5;          // inches for each section toward the butt
  constexpr double kQuarterKerf = 0.904762;  // of the 1/8-inch kerf form inside the brackets
  double volume = 0.0;
  for (double left = length; left > 0.0; left -= kSection) {
    volume += std::min(left, kSection) / kSection * kQuarterKerf * (0.22 * d * d - 0.71 * d);
    d += kWidening;
  }
  return volume;
}

// Wengert 2001: rows 6 .. 20 in, columns 6, 8 .. 16 ft, board feet.
constexpr int kFirstInch = 6;
constexpr std::array<std::array<int, 6>, 15> kDecimalC{{
    {5, 5, 10, 10, 10, 20},          // 6 in
    {5, 10, 10, 20, 20, 30},         // 7
    {10, 10, 20, 20, 20, 30},        // 8
    {10, 20, 30, 30, 30, 40},        // 9
    {20, 30, 30, 30, 40, 60},        // 10
    {20, 30, 40, 40, 50, 70},        // 11
    {30, 40, 50, 60, 70, 80},        // 12
    {40, 50, 60, 70, 80, 100},       // 13
    {40, 60, 70, 90, 100, 110},      // 14
    {50, 70, 90, 110, 120, 140},     // 15
    {60, 80, 100, 120, 140, 160},    // 16
    {70, 90, 120, 140, 160, 180},    // 17
    {80, 110, 130, 160, 190, 210},   // 18
    {90, 120, 150, 180, 210, 240},   // 19
    {110, 140, 170, 210, 240, 280},  // 20
}};
// 16-ft logs of 21 .. 40 in: from memory, but for 30 in (Bailey 1911).
constexpr std::array<int, 20> kDecimalC16{300, 330, 380, 400, 460, 500, 550,  580,  610,  660,
                                          710, 740, 780, 800, 880, 920, 1030, 1070, 1120, 1200};

}  // namespace

std::string_view name_of(LogRule rule) {
  switch (rule) {
    case LogRule::doyle:
      return "Doyle";
    case LogRule::scribner:
      return "Scribner";
    case LogRule::international:
      return "International 1/4-inch";
  }
  return {};
}

Result<BoardFeet> log_board_feet(LogRule rule, Inches small_end, Feet length) {
  const double d = small_end.value;
  const double l = length.value;
  if (!(d >= 0.0 && d <= kMaxSmallEnd)) {
    return Error{ErrorCode::out_of_range,
                 "A small end of " + number_text(d, 1) + " in is outside 0 to " +
                     number_text(kMaxSmallEnd, 0) + " in.",
                 "small_end", "Check the decimal point."};
  }
  if (!(l > 0.0 && l <= kMaxLength)) {
    return Error{ErrorCode::out_of_range,
                 "A log of " + number_text(l, 1) + " ft is outside 0 to " +
                     number_text(kMaxLength, 0) + " ft.",
                 "length", "Give its length in feet without trim, e.g. 16."};
  }
  switch (rule) {
    case LogRule::doyle:
      return BoardFeet{doyle(d, l)};
    case LogRule::scribner:
      return BoardFeet{std::max(0.0, scribner(d, l))};
    case LogRule::international:
      return BoardFeet{std::max(0.0, international(d, l))};
  }
  return Error{ErrorCode::not_a_choice, "Unknown log rule.", "log_rule", ""};
}

BoardFeet nearest_5(BoardFeet volume) {
  return BoardFeet{5.0 * std::floor(volume.value / 5.0 + 0.5)};
}

Result<BoardFeet> scribner_decimal_c(int small_end_inches, int length_feet) {
  const int row = small_end_inches - kFirstInch;
  const int rows = static_cast<int>(kDecimalC.size());
  const int wide_row = row - rows;
  const bool length_in_table = length_feet >= 6 && length_feet <= 16 && length_feet % 2 == 0;
  if (length_in_table && row >= 0 && row < rows) {
    const auto column = static_cast<std::size_t>((length_feet - 6) / 2);
    return BoardFeet{static_cast<double>(kDecimalC[static_cast<std::size_t>(row)][column])};
  }
  if (length_feet == 16 && wide_row >= 0 && wide_row < static_cast<int>(kDecimalC16.size())) {
    return BoardFeet{static_cast<double>(kDecimalC16[static_cast<std::size_t>(wide_row)])};
  }
  return Error{ErrorCode::outside_table,
               "Scribner Decimal C here has no log of " + std::to_string(small_end_inches) +
                   " in by " + std::to_string(length_feet) + " ft.",
               "log", "It covers 6 to 20 in by 6, 8 .. 16 ft, and 16-ft logs up to 40 in."};
}

}  // namespace oaklight
