#include "core/sample/share.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace oaklight {

Result<ShareEstimate> share_estimate(int found, int plots, Confidence confidence) {
  if (plots < 1 || found < 0 || found > plots) {
    return Error{
        ErrorCode::too_few_plots,
        std::to_string(found) + " of " + std::to_string(plots) + " plots is no share of a sample.",
        "plots", "Count every plot that was visited, empty ones too."};
  }
  const double n = plots;
  const double p = found / n;
  const double z = normal_multiplier(confidence);
  const double shrink = 1.0 + z * z / n;
  const double centre = (p + z * z / (2.0 * n)) / shrink;
  const double half = z / shrink * std::sqrt(p * (1.0 - p) / n + z * z / (4.0 * n * n));
  ShareEstimate e{.share = percent(p), .plots = plots, .found = found, .confidence = confidence};
  e.lo = percent(std::max(0.0, centre - half));
  e.hi = percent(std::min(1.0, centre + half));
  if (found == 0) {
    e.lo = Percent{0.0};
    e.hi = share_when_none_found(plots, confidence);
  } else if (found == plots) {
    e.hi = Percent{100.0};  // what the formula gives, without its last bit
  } else {
    e.se = percent(std::sqrt(p * (1.0 - p) / (n - 1.0)));
  }
  return e;
}

Result<ShareEstimate> share_over(std::span<const OccupiedStratum> strata, Confidence confidence,
                                 DegreesOfFreedom rule) {
  if (strata.size() == 1) return share_estimate(strata[0].found, strata[0].plots, confidence);
  std::vector<Stratum> parts;
  for (const OccupiedStratum& s : strata) {
    const auto moments =
        moments_of(std::vector<double>(static_cast<std::size_t>(s.found), 1.0), s.plots);
    if (!moments) return moments.error();
    parts.push_back({s.size, *moments, std::nullopt});
  }
  const auto e = stratified_mean(parts, confidence, rule);
  if (!e) return e.error();
  ShareEstimate share{
      .share = percent(e->mean), .plots = e->plots, .found = e->found, .confidence = confidence};
  if (e->se && e->found < e->plots) {
    share.se = percent(*e->se);
    share.lo = percent(*e->lo);
    share.hi = percent(std::min(1.0, *e->hi));
  }
  return share;
}

Percent share_when_none_found(int plots, Confidence confidence) {
  return percent(1.0 - std::pow(1.0 - confidence.share(), 1.0 / plots));
}

}  // namespace oaklight
