#pragma once

#include <numbers>

#include "core/units/units.hpp"

namespace oaklight {

/// Square feet of basal area for one inch of diameter, squared: pi / (4 * 12 * 12), the area of a
/// circle of 1 in diameter in square feet. The field value 0.005454 is this number rounded.
inline constexpr double kBasalAreaFactor =
    std::numbers::pi / (4.0 * kInchesPerFoot * kInchesPerFoot);

/// Cross-section of one stem at breast height. Total, not per acre. Source: area of a circle.
[[nodiscard]] constexpr SquareFeet basal_area(Inches dbh) {
  return SquareFeet{kBasalAreaFactor * dbh.value * dbh.value};
}

/// Quadratic mean diameter: the diameter of the tree of mean basal area. 0 in when there are no
/// trees. Source: definition.
[[nodiscard]] Inches quadratic_mean_diameter(SquareFeetPerAcre ba, TreesPerAcre trees);

}  // namespace oaklight
