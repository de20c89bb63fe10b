#pragma once

#include <optional>
#include <span>

#include "core/sample/stratified.hpp"

namespace oaklight {

/// A share of plots and where the true share likely lies, both ends within 0 .. 100 %.
struct ShareEstimate {
  Percent share;
  int plots = 0;
  int found = 0;
  std::optional<Percent> se{};  ///< nothing for one plot, and when none or all plots hold it
  std::optional<Percent> lo{};
  std::optional<Percent> hi{};
  Confidence confidence;
};

/// The share of one stand's plots that hold something. A share depends on the size of the plots:
/// never compare shares from plots of different sizes.
///
/// found, plots  0 <= found <= plots, plots >= 1
/// returns  se by sqrt(p q / (n - 1)); limits by Wilson's score interval, which stays within 0 and
///          100 %; when none hold it, the upper limit of share_when_none_found
/// errors   too_few_plots
/// source   Wilson 1927, Journal of the American Statistical Association 22:209-212, from memory
Result<ShareEstimate> share_estimate(int found, int plots, Confidence confidence);

/// Plots of one stand that hold something.
struct OccupiedStratum {
  double size = 0.0;  ///< as Stratum::size
  int found = 0;
  int plots = 0;
};

/// The share over one stand (share_estimate), or over several weighted by size: there the mean of 0
/// and 1 by plot with its t interval, held within 0 .. 100 %, and no limits where none or all plots
/// hold it.
///
/// errors   as share_estimate and stratified_mean
Result<ShareEstimate> share_over(std::span<const OccupiedStratum> strata, Confidence confidence,
                                 DegreesOfFreedom rule);

/// The greatest share of plots that may hold a thing of which n plots held none, one-sided:
/// 1 - (1 - confidence)^(1/n), about 3/n at 95 %. Source: binomial distribution, exact.
[[nodiscard]] Percent share_when_none_found(int plots, Confidence confidence);

}  // namespace oaklight
