#include "core/sample/stratified.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace oaklight {
namespace {

/// What all strata have in common, checked.
struct Frame {
  double size = 0.0;
  int plots = 0;
  int found = 0;
  bool lone_plot = false;  ///< some stratum has a single plot
  double mean = 0.0;
};

Result<Frame> frame_of(std::span<const Stratum> strata) {
  if (strata.empty()) {
    return Error{ErrorCode::no_data, "There is no stand to estimate.", "stands",
                 "Cruise at least one stand."};
  }
  Frame f;
  for (std::size_t h = 0; h < strata.size(); ++h) {
    const std::string where = "stand/" + std::to_string(h + 1);
    if (!(strata[h].size > 0.0) || !std::isfinite(strata[h].size)) {
      return Error{ErrorCode::out_of_range, "A stand has no acres.", where + "/acres",
                   "Give its area; it weighs the stand against the others."};
    }
    if (strata[h].moments.plots < 1) {
      return Error{ErrorCode::too_few_plots, "A stand that belongs to the cruise has no plot.",
                   where + "/plots", "Visit at least two plots there, or leave the stand out."};
    }
    f.size += strata[h].size;
    f.plots += strata[h].moments.plots;
    f.found += strata[h].moments.found;
    f.lone_plot = f.lone_plot || strata[h].moments.plots == 1;
  }
  for (const Stratum& s : strata) f.mean += s.size / f.size * s.moments.mean;
  return f;
}

Trust trust_of(const Frame& f) {
  if (f.found == 0) return Trust::not_found;
  if (f.lone_plot) return Trust::one_plot;
  return f.found < kFairPlots ? Trust::few_found : Trust::fair;
}

}  // namespace

Result<Estimate<double>> stratified_mean(std::span<const Stratum> strata, Confidence confidence,
                                         DegreesOfFreedom rule) {
  if (strata.size() == 1 && strata[0].moments.plots > 0) {  // its size does not matter
    return mean_estimate(strata[0].moments, confidence, strata[0].population);
  }
  const auto frame = frame_of(strata);
  if (!frame) return frame.error();
  Estimate<double> e{.mean = frame->mean,
                     .plots = frame->plots,
                     .found = frame->found,
                     .confidence = confidence,
                     .trust = trust_of(*frame)};
  if (e.trust == Trust::not_found || e.trust == Trust::one_plot) return e;

  double variance = 0.0;
  double spread = 0.0;  // sum of g^2 / (n_h - 1), the divisor of Satterthwaite's ratio
  for (const Stratum& s : strata) {
    const double weight = s.size / frame->size;
    const int n = s.moments.plots;
    const double g =
        weight * weight * *s.moments.variance() / n * finite_correction(n, s.population);
    variance += g;
    spread += g * g / (n - 1);
  }
  const double most = frame->plots - static_cast<double>(strata.size());
  const bool reckoned = rule == DegreesOfFreedom::satterthwaite && spread > 0.0;
  set_interval(e, std::sqrt(variance),
               reckoned ? std::min(most, variance * variance / spread) : most);
  return e;
}

Result<PostStratified> post_stratified_mean(std::span<const Stratum> strata) {
  const auto frame = frame_of(strata);
  if (!frame) return frame.error();
  if (frame->lone_plot) {
    return Error{ErrorCode::too_few_plots, "A stand has a single plot.", "stands",
                 "Join it with the stand most like it."};
  }
  const double n = frame->plots;
  PostStratified p{.mean = frame->mean};
  double within = 0.0;
  double between = 0.0;
  double residual = 0.0;
  for (const Stratum& s : strata) {
    const double weight = s.size / frame->size;
    const double variance = *s.moments.variance();
    const double share = weight / s.moments.plots;  // what one plot of the stand counts for
    within += weight * variance;
    between += (1.0 - weight) * variance;
    residual += share * share * s.moments.squares;
  }
  p.se = std::sqrt(within / n + between / (n * n));
  p.se_residual = std::sqrt(n / (n - 1.0) * residual);
  return p;
}

Result<Estimate<double>> post_stratified_estimate(std::span<const Stratum> strata,
                                                  Confidence confidence) {
  auto e = stratified_mean(strata, confidence, DegreesOfFreedom::plots_less_strata);
  if (!e || strata.size() < 2 || !e->se) return e;
  const auto post = post_stratified_mean(strata);
  if (!post) return post.error();
  set_interval(*e, post->se, e->plots - static_cast<double>(strata.size()));
  return e;
}

}  // namespace oaklight
