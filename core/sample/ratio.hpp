#pragma once

#include <optional>
#include <span>

#include "core/sample/confidence.hpp"
#include "core/units/units.hpp"

namespace oaklight {

/// Two values of each plot (or tree) of one stand: x[i] and y[i] belong together. Plots on which
/// both are 0 may be left out, as long as plots counts them.
struct PairedStratum {
  double size = 1.0;  ///< as Stratum::size
  int plots = 0;
  std::span<const double> x{};
  std::span<const double> y{};
  std::optional<double> population{};
};

/// A ratio of two sums with its error.
struct Ratio {
  double ratio = 0.0;                  ///< sum of y over sum of x, combined over stands
  double x_mean = 0.0;                 ///< of the sample
  std::optional<double> residual_se{}; /**< of the mean of y - ratio * x; over a known mean of x it
                                          is the ratio's error when that mean is known */
  std::optional<double> se{};          ///< residual_se over the sample's mean of x
  int plots = 0;
};

/// Ratio of sums (not the mean of ratios), over one stand or combined over several.
///
/// errors   no_data without strata or when x sums to 0; too_few_plots as moments_of; not_a_number;
///          out_of_range for a size not above 0
/// returns  no error when a stand has a single plot
/// accuracy its bias is of the order of 1/n
/// source   Cochran 1977, chapter 6 (from memory); checked against R package survey
Result<Ratio> ratio_of_sums(std::span<const PairedStratum> strata);

/// Quadratic mean diameter from mean basal area and mean trees, with its error.
struct MeanDiameter {
  Inches qmd;
  std::optional<Inches> se{};
};

/// From basal area (y) over trees (x) of the plots.
///
/// errors   of ratio_of_sums
/// accuracy the estimate leans upward in small samples, as ratios do
/// source   delta method on the ratio: se = qmd / 2 * se(ratio) / ratio
Result<MeanDiameter> mean_diameter(std::span<const PairedStratum> trees_and_ba);

}  // namespace oaklight
