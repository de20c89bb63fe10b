#include "core/sample/estimate.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "core/sample/share.hpp"

namespace oaklight {
namespace {

Trust trust_of(const Moments& m) {
  if (m.found == 0) return Trust::not_found;
  if (m.plots == 1) return Trust::one_plot;
  if (m.plots == 2) return Trust::two_plots;
  return m.found < kFairPlots ? Trust::few_found : Trust::fair;
}

}  // namespace

std::optional<double> Moments::variance() const {
  if (plots < 2) return std::nullopt;
  return squares / (plots - 1);
}

Result<Moments> moments_of(std::span<const double> found, int plots) {
  if (plots < 1 || found.size() > static_cast<std::size_t>(plots)) {
    return Error{ErrorCode::too_few_plots,
                 std::to_string(found.size()) + " plot values do not come from " +
                     std::to_string(plots) + " plots.",
                 "plots", "Count every plot that was visited, empty ones too."};
  }
  Moments m{.plots = plots};
  double sum = 0.0;
  for (const double x : found) {
    if (!std::isfinite(x)) {
      return Error{ErrorCode::not_a_number, "A plot value is not a number.", "plots",
                   "Check the plot's trees and its size."};
    }
    sum += x;
    m.found += x != 0.0 ? 1 : 0;
  }
  m.mean = sum / plots;
  for (const double x : found) m.squares += (x - m.mean) * (x - m.mean);
  m.squares += static_cast<double>(plots - static_cast<int>(found.size())) * m.mean * m.mean;
  return m;
}

double finite_correction(double plots, std::optional<double> population) {
  return population ? std::max(0.0, 1.0 - plots / *population) : 1.0;
}

void set_interval(Estimate<double>& e, double se, double df) {
  e.se = se;
  e.df = df;
  e.half_width = student_t(e.confidence, df) * se;
  e.lo = std::max(0.0, e.mean - *e.half_width);
  e.hi = e.mean + *e.half_width;
  if (e.mean > 0.0) {
    e.se_pct = percent(se / e.mean);
    e.half_pct = percent(*e.half_width / e.mean);
  }
}

Estimate<double> mean_estimate(const Moments& moments, Confidence confidence,
                               std::optional<double> population) {
  Estimate<double> e{.mean = moments.mean,
                     .plots = moments.plots,
                     .found = moments.found,
                     .confidence = confidence,
                     .trust = trust_of(moments)};
  if (e.trust == Trust::not_found) {
    e.on_at_most = share_when_none_found(moments.plots, confidence);
    return e;
  }
  const std::optional<double> variance = moments.variance();
  if (!variance) return e;
  e.sd = std::sqrt(*variance);
  if (e.mean > 0.0) e.cv = percent(*e.sd / e.mean);
  const double correction = finite_correction(moments.plots, population);
  set_interval(e, std::sqrt(*variance / moments.plots * correction), moments.plots - 1);
  return e;
}

Result<Estimate<double>> mean_of(std::span<const double> plot_values, Confidence confidence,
                                 std::optional<double> population) {
  const auto moments = moments_of(plot_values, static_cast<int>(plot_values.size()));
  if (!moments) return moments.error();
  return mean_estimate(*moments, confidence, population);
}

}  // namespace oaklight
