#include "core/sample/mean_difference.hpp"

#include <cmath>
#include <vector>

#include "core/sample/difference.hpp"
#include "core/sample/estimate.hpp"

namespace oaklight {
namespace {

Error too_few() {
  return {ErrorCode::too_few_plots, "A group has fewer than two trees.", "trees",
          "Measure at least two trees of each group; five or more are kinder."};
}

Error no_spread() {
  return {ErrorCode::contradiction, "All values are the same, so no error can be told.", "trees",
          "Read diameters to a tenth of an inch."};
}

MeanDifference with_interval(double difference, double se, double df, Confidence confidence) {
  const double half = student_t(confidence, df) * se;
  return {difference, se, df, difference - half, difference + half, confidence};
}

}  // namespace

Result<GroupMean> group_mean(std::span<const double> values, Confidence confidence) {
  if (values.empty()) {
    return Error{ErrorCode::no_data, "The group has no tree.", "trees", "Measure its trees."};
  }
  const int n = static_cast<int>(values.size());
  const auto moments = moments_of(values, n);
  if (!moments) return moments.error();
  GroupMean group{.n = n, .mean = moments->mean};
  if (const auto variance = moments->variance()) {
    group.se = std::sqrt(*variance / n);
    const double half = student_t(confidence, n - 1) * *group.se;
    group.lo = group.mean - half;
    group.hi = group.mean + half;
  }
  return group;
}

Result<MeanDifference> welch_difference(std::span<const double> a, std::span<const double> b,
                                        Confidence confidence) {
  if (a.size() < 2 || b.size() < 2) return too_few();
  const auto in_a = moments_of(a, static_cast<int>(a.size()));
  if (!in_a) return in_a.error();
  const auto in_b = moments_of(b, static_cast<int>(b.size()));
  if (!in_b) return in_b.error();
  const double of_a = *in_a->variance() / in_a->plots;
  const double of_b = *in_b->variance() / in_b->plots;
  const auto d = change_between({1.0, in_b->mean, of_b}, {1.0, in_a->mean, of_a}, 0.0);
  if (!d) return d.error();
  if (!(d->se > 0.0)) return no_spread();
  const double df = (of_a + of_b) * (of_a + of_b) /
                    (of_a * of_a / (in_a->plots - 1) + of_b * of_b / (in_b->plots - 1));
  return with_interval(d->mean, d->se, df, confidence);
}

}  // namespace oaklight
