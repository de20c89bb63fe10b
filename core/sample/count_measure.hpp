#pragma once

#include <span>

#include "core/base/result.hpp"
#include "core/units/units.hpp"

namespace oaklight {

// Point cruises that count trees on all points and measure volumes on some: volume per acre is
// basal area (all points) times the ratio of volume to basal area (measured trees). With one basal
// area factor the ratio of sums over measured points equals the plain mean of the trees' ratios,
// since each tree adds the factor to the basal area; only their errors differ.

/// Error of a product of two independent means, each in percent of its mean: root of the sum of
/// squares. Source: Bruce 1961 (from memory); form discussed by Gove, Gregoire, Ducey and Lynch
/// 2020, Forest Ecosystems 7, doi 10.1186/s40663-020-00272-x.
[[nodiscard]] Percent product_error(Percent a, Percent b);

/// The same by the unbiased estimator, less the product of the two squares. Source: Goodman 1960,
/// Journal of the American Statistical Association 55:708-713 (from memory).
[[nodiscard]] Percent product_error_unbiased(Percent a, Percent b);

/// A mean from a cheap value on all n points and a dear one on m of them.
struct DoubleSample {
  double mean = 0.0;   ///< of the dear value
  double ratio = 0.0;  ///< dear over cheap
  double se = 0.0;
};

/// Ratio double sampling over one stand, whole points measured.
///
/// counted          the cheap value on each of the n points
/// measured_x, _y   the cheap and the dear value on the m measured points, in the same order
/// errors   too_few_plots: m below 2 or above n; missing_value: lists of unequal length;
///          no_data: nothing counted on the measured points; not_a_number
/// source   Cochran 1977, chapter 12 (from memory)
Result<DoubleSample> ratio_double_sample(std::span<const double> counted,
                                         std::span<const double> measured_x,
                                         std::span<const double> measured_y);

}  // namespace oaklight
