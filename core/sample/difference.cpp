#include "core/sample/difference.hpp"

#include <cmath>

namespace oaklight {

Result<Difference> change_between(const VisitMean& before, const VisitMean& after,
                                  double covariance) {
  const double change = after.scale * after.mean - before.scale * before.mean;
  const double variance = after.scale * after.scale * after.variance +
                          before.scale * before.scale * before.variance -
                          2.0 * after.scale * before.scale * covariance;
  if (!std::isfinite(change) || !std::isfinite(variance)) {
    return Error{ErrorCode::not_a_number, "A figure of one visit is not a number.", "visits",
                 "Check both visits."};
  }
  if (covariance * covariance > before.variance * after.variance || variance < 0.0) {
    return Error{ErrorCode::contradiction,
                 "The two visits vary together more than they vary at all.", "visits/covariance",
                 "Check that the same plots are compared."};
  }
  return Difference{change, std::sqrt(variance)};
}

}  // namespace oaklight
