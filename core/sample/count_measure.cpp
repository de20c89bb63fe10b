#include "core/sample/count_measure.hpp"

#include <array>
#include <cmath>

#include "core/sample/estimate.hpp"
#include "core/sample/ratio.hpp"

namespace oaklight {

Percent product_error(Percent a, Percent b) { return Percent{std::hypot(a.value, b.value)}; }

Percent product_error_unbiased(Percent a, Percent b) {
  const double fa = fraction(a);
  const double fb = fraction(b);
  return percent(std::sqrt(fa * fa + fb * fb - fa * fa * fb * fb));
}

Result<DoubleSample> ratio_double_sample(std::span<const double> counted,
                                         std::span<const double> measured_x,
                                         std::span<const double> measured_y) {
  if (measured_y.size() < 2 || measured_y.size() > counted.size()) {
    return Error{ErrorCode::too_few_plots, "Too few points were measured.", "plots",
                 "Measure at least two of the points counted."};
  }
  const int n = static_cast<int>(counted.size());
  const int m = static_cast<int>(measured_y.size());
  const auto count = moments_of(counted, n);
  if (!count) return count.error();
  const auto dear = moments_of(measured_y, m);
  if (!dear) return dear.error();
  const std::array pairs{PairedStratum{.plots = m, .x = measured_x, .y = measured_y}};
  const auto ratio = ratio_of_sums(pairs);
  if (!ratio) return ratio.error();
  // residual_se squared is s2_e / m.
  const double residual = *ratio->residual_se * *ratio->residual_se;
  const double variance = residual * (1.0 - static_cast<double>(m) / n) + *dear->variance() / n;
  return DoubleSample{count->mean * ratio->ratio, ratio->ratio, std::sqrt(variance)};
}

}  // namespace oaklight
