#include "core/measure/stocking.hpp"

#include "core/measure/basal_area.hpp"

namespace oaklight {
namespace {

/// c0 * trees + c1 * sum of diameters + c2 * sum of squared diameters.
struct Coefficients {
  double trees, diameters, squared;
};
constexpr Coefficients kStocking{-0.00507, 0.01698, 0.00317};      // Gingrich 1967, from memory
constexpr Coefficients kCrownCompetition{0.0175, 0.0205, 0.0060};  // Krajicek 1961, from memory

double combine(const Coefficients& c, const StockingSums& s) {
  return c.trees * s.trees + c.diameters * s.diameters + c.squared * s.squared_diameters;
}

/// Trees of one quadratic mean diameter at which the combination reaches 100 %.
StockingLine line_at_100(const Coefficients& c, Inches qmd) {
  const SquareFeet each = basal_area(qmd);
  const double per_tree = combine(c, chart_sums(SquareFeetPerAcre{each.value}, TreesPerAcre{1.0}));
  const TreesPerAcre trees{100.0 / per_tree};
  return {SquareFeetPerAcre{trees.value * each.value}, trees};
}

}  // namespace

StockingSums chart_sums(SquareFeetPerAcre ba, TreesPerAcre trees) {
  if (trees.value <= 0.0) return {};
  const double mean = -0.259 + 0.973 * quadratic_mean_diameter(ba, trees).value;  // from memory
  return {trees.value, trees.value * mean, ba.value / kBasalAreaFactor};
}

Percent upland_oak_stocking(const StockingSums& sums) { return Percent{combine(kStocking, sums)}; }

Percent crown_competition(const StockingSums& sums) {
  return Percent{combine(kCrownCompetition, sums)};
}

StockingLine a_line(Inches qmd) { return line_at_100(kStocking, qmd); }

StockingLine b_line(Inches qmd) { return line_at_100(kCrownCompetition, qmd); }

}  // namespace oaklight
