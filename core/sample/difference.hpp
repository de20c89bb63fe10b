#pragma once

#include "core/base/result.hpp"

namespace oaklight {

/// A mean as measured at one visit: its multiplier to the common unit (plots an acre, say), its
/// value and the variance of that value.
struct VisitMean {
  double scale = 1.0;
  double mean = 0.0;
  double variance = 0.0;
};

struct Difference {
  double mean = 0.0;  ///< may be below 0
  double se = 0.0;
};

/// Change between two visits. With the same plots both times the covariance of the two means
/// counts; with plots chosen anew it is 0.
///
/// errors   contradiction when the covariance is larger than the two variances allow; not_a_number
/// source   variance of a difference, as in Freese 1962
Result<Difference> change_between(const VisitMean& before, const VisitMean& after,
                                  double covariance);

}  // namespace oaklight
