#pragma once

#include "core/base/result.hpp"

namespace oaklight {

/// How often an interval made this way holds the truth, over many samples: a share between 0 and 1.
/// Only from_share can make one that is not 95 %.
class Confidence {
 public:
  constexpr Confidence() = default;

  /// Errors: level_out_of_range for anything not above 0 and below 1, NaN included.
  static Result<Confidence> from_share(double share);

  [[nodiscard]] constexpr double share() const { return share_; }
  friend constexpr bool operator==(Confidence, Confidence) = default;

 private:
  constexpr explicit Confidence(double share) : share_(share) {}
  double share_ = 0.95;
};

/// The multiplier of a two-sided Student t interval: |t| stays below it with this confidence.
///
/// df       degrees of freedom, 1 or more, need not be whole
/// accuracy to every digit of a 12-digit table by another library (tests/published/sampling.tsv)
[[nodiscard]] double student_t(Confidence confidence, double df);

/// The same for the normal distribution, the limit of student_t for many degrees of freedom.
[[nodiscard]] double normal_multiplier(Confidence confidence);

}  // namespace oaklight
