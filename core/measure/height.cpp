#include "core/measure/height.hpp"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.hpp"

namespace oaklight {
namespace {

constexpr Feet kStump{1.0};
constexpr Feet kHalfLog{(16.0 + 0.3) / 2.0};  // with its share of the trim
constexpr Feet kTallest{300.0};

/// Rise between two sights, as a share of the level distance.
Result<Feet> height(Feet level_distance, double tip, double base) {
  if (!(level_distance.value > 0.0) || !std::isfinite(level_distance.value)) {
    return Error{ErrorCode::out_of_range, "A height needs the distance to the tree.", "distance",
                 "Give the level distance in feet or metres."};
  }
  if (!(tip > base)) {
    return Error{ErrorCode::contradiction, "The tip was sighted no higher than the base.", "tip",
                 "A base below eye level reads negative: check its sign."};
  }
  return level_distance * (tip - base);
}

}  // namespace

Result<Feet> height_by_percent(Feet level_distance, Percent tip, Percent base) {
  return height(level_distance, fraction(tip), fraction(base));
}

Result<Feet> height_by_chain(Feet level_distance, ChainFeet tip, ChainFeet base) {
  constexpr double kChain = 66.0;  // feet, by definition
  return height(level_distance, tip.value / kChain, base.value / kChain);
}

Result<int> half_logs_to(Feet top, HalfLogRounding rounding) {
  if (!(top >= Feet{} && top <= kTallest)) {
    return Error{
        ErrorCode::out_of_range,
        "A merchantable top at " + number_text(top.value, 1) + " ft is outside 0 to 300 ft.",
        "logs", "Check the decimal point."};
  }
  const double half_logs = (top - kStump) / kHalfLog;
  // A top that was set to a whole half log must not lose it to the last bit of a division.
  constexpr double kRoundOff = 1e-9;
  const double up = rounding == HalfLogRounding::nearest ? 0.5 : 0.0;
  return std::max(0, static_cast<int>(std::floor(half_logs + up + kRoundOff)));
}

}  // namespace oaklight
