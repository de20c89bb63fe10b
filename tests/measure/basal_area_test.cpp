#include "core/measure/basal_area.hpp"

#include <gtest/gtest.h>

namespace oaklight {
namespace {

// Values: tests/published/mensuration.tsv and plots.tsv.
TEST(BasalArea, GrowsWithTheSquareOfTheDiameter) {
  EXPECT_EQ(basal_area(Inches{}), SquareFeet{});
  EXPECT_NEAR(basal_area(Inches{24.0}) / basal_area(Inches{12.0}), 4.0, 1e-12);
}

TEST(QuadraticMeanDiameter, IsNothingWithoutTrees) {
  EXPECT_EQ(quadratic_mean_diameter(SquareFeetPerAcre{}, TreesPerAcre{}), Inches{});
}

TEST(QuadraticMeanDiameter, OfLikeTreesIsTheirDiameter) {
  const SquareFeetPerAcre ba{50.0 * basal_area(Inches{13.7}).value};
  EXPECT_NEAR(quadratic_mean_diameter(ba, TreesPerAcre{50.0}).value, 13.7, 1e-12);
}

}  // namespace
}  // namespace oaklight
