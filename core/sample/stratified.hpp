#pragma once

#include <span>

#include "core/sample/estimate.hpp"

namespace oaklight {

/// One stand of several that are estimated together.
struct Stratum {
  double size = 0.0;  ///< acres, or another measure of how much there is; one unit for all strata
  Moments moments;
  std::optional<double> population{};  ///< as in mean_estimate
};

/// How degrees of freedom over several stands are counted.
enum class DegreesOfFreedom {
  satterthwaite,      ///< fewer where one stand carries most of the variance; never above the other
  plots_less_strata,  ///< n - L
};

/// Mean over several stands, each weighted by its size: never by pooling their plots, which would
/// weigh a stand by how hard it was sampled. Over one stand it is mean_estimate.
///
/// strata   at least one
/// returns  no error when a stand has a single plot (trust one_plot), or when nothing was found
/// errors   no_data without strata; too_few_plots for a stratum without plots;
///          out_of_range for a size that is not above 0
/// assumes  simple random plots within each stand, sizes known without error
/// source   Cochran 1977, Sampling techniques, sections 5.3 and 5.4; Satterthwaite 1946, Biometrics
///          Bulletin 2:110-114 (both from memory); checked against R package survey
Result<Estimate<double>> stratified_mean(std::span<const Stratum> strata, Confidence confidence,
                                         DegreesOfFreedom rule = DegreesOfFreedom::satterthwaite);

/// Mean over stands of plots placed over the whole tract and sorted into stands afterwards.
struct PostStratified {
  double mean = 0.0;
  double se = 0.0;           ///< Cochran 1977, formula 5A.42 (from memory)
  double se_residual = 0.0;  ///< residual form, as R package survey computes it
};

/// errors   as stratified_mean; too_few_plots also for a stratum of one plot
Result<PostStratified> post_stratified_mean(std::span<const Stratum> strata);

/// Over several stands, the estimate with the error of post-stratification (formula 5A.42) on n - L
/// degrees of freedom; over one stand, mean_estimate. Errors: as post_stratified_mean, but a
/// stratum of one plot gives a mean without an error (trust one_plot).
Result<Estimate<double>> post_stratified_estimate(std::span<const Stratum> strata,
                                                  Confidence confidence);

}  // namespace oaklight
