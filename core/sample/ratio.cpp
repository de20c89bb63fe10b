#include "core/sample/ratio.hpp"

#include <cmath>
#include <numeric>
#include <vector>

#include "core/measure/basal_area.hpp"
#include "core/sample/estimate.hpp"
#include "core/sample/stratified.hpp"

namespace oaklight {
namespace {

/// Mean over the strata of one value a plot, by the same formula as any other figure.
Result<Estimate<double>> mean_over(std::span<const PairedStratum> strata,
                                   std::span<const std::vector<double>> values) {
  std::vector<Stratum> parts;
  for (std::size_t h = 0; h < strata.size(); ++h) {
    const auto moments = moments_of(values[h], strata[h].plots);
    if (!moments) return moments.error();
    parts.push_back({strata[h].size, *moments, strata[h].population});
  }
  return stratified_mean(parts, Confidence{});
}

std::vector<double> copy_of(std::span<const double> values) {
  return {values.begin(), values.end()};
}

}  // namespace

Result<Ratio> ratio_of_sums(std::span<const PairedStratum> strata) {
  std::vector<std::vector<double>> xs, ys, residuals;
  for (const PairedStratum& s : strata) {
    if (s.x.size() != s.y.size()) {
      return Error{ErrorCode::missing_value, "A plot has one of the two values only.", "plots",
                   "Give both for each plot."};
    }
    xs.push_back(copy_of(s.x));
    ys.push_back(copy_of(s.y));
  }
  const auto x = mean_over(strata, xs);
  if (!x) return x.error();
  const auto y = mean_over(strata, ys);
  if (!y) return y.error();
  if (!(x->mean > 0.0)) {
    return Error{ErrorCode::no_data, "There is nothing to take a share of.", "plots",
                 "Tally at least one tree."};
  }
  Ratio r{.ratio = y->mean / x->mean, .x_mean = x->mean, .plots = x->plots};
  for (std::size_t h = 0; h < strata.size(); ++h) {
    std::vector<double>& e = residuals.emplace_back(xs[h].size());
    for (std::size_t i = 0; i < e.size(); ++i) e[i] = ys[h][i] - r.ratio * xs[h][i];
  }
  const auto residual = mean_over(strata, residuals);
  if (!residual) return residual.error();
  if (x->trust == Trust::one_plot) return r;
  // Residuals that are 0 on every plot are "not found" to the mean; of a ratio they say: no error.
  r.residual_se = residual->se.value_or(0.0);
  r.se = *r.residual_se / r.x_mean;
  return r;
}

Result<MeanDiameter> mean_diameter(std::span<const PairedStratum> trees_and_ba) {
  const auto ratio = ratio_of_sums(trees_and_ba);
  if (!ratio) return ratio.error();
  const Inches qmd = quadratic_mean_diameter(SquareFeetPerAcre{ratio->ratio}, TreesPerAcre{1.0});
  MeanDiameter d{.qmd = qmd};
  if (ratio->se) d.se = qmd * (*ratio->se / ratio->ratio / 2.0);
  return d;
}

}  // namespace oaklight
