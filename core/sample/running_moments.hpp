#pragma once

#include <array>
#include <cstdint>

#include "core/sample/estimate.hpp"

namespace oaklight {

/// The plot values of one stand while they come, change and go: the moments that moments_of tells
/// of the same values, at a cost that does not grow with their number.
///
/// Kept are the sums of the values and of their squares as whole numbers of 2^-48 and 2^-96, in 256
/// bits. Whole numbers add up exactly and in any order, so what was added and taken out again
/// leaves nothing behind, and the moments depend on the values there are and on no history.
///
/// accuracy a value is held to h = 2^-49 at worst, and exactly when it is 16 or more. The mean is
///          then within h of the exact one, and the error of the mean (mean_estimate) of n plots
///          within h / sqrt(n - 1), but for the rounding of two and of four operations in double.
///          (The root of the sum of squares is a norm: shifting each value by at most h moves it by
///          at most sqrt(n) h.) moments_of itself, which adds in double, is within n 2^-53 of the
///          mean.
class RunningMoments {
 public:
  /// Values from 0 to below this; 256 bits hold their sums over as many plots as an int counts.
  static constexpr double kBelow = 1'099'511'627'776.0;  // 2^40
  [[nodiscard]] static bool holds(double value);

  // Assume a value that is held, and for remove one that was added.
  void add(double value);
  void remove(double value);

  /// Values that are not 0.
  [[nodiscard]] int found() const { return found_; }
  /// Of n plots, of which those that were not added are 0. Assumes plots is 1 or more and not less
  /// than found(). Source: definition; n sum(x^2) - (sum x)^2 is n times the squares about the
  /// mean.
  [[nodiscard]] Moments of(int plots) const;

 private:
  using Words = std::array<std::uint64_t, 4>;  ///< one whole number, its lowest bits first

  Words sum_{};
  Words squares_{};
  int found_ = 0;
};

}  // namespace oaklight
