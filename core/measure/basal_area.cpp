#include "core/measure/basal_area.hpp"

#include <cmath>

namespace oaklight {

Inches quadratic_mean_diameter(SquareFeetPerAcre ba, TreesPerAcre trees) {
  if (trees.value <= 0.0) return Inches{};
  return Inches{std::sqrt(ba.value / trees.value / kBasalAreaFactor)};
}

}  // namespace oaklight
