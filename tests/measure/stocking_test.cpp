#include "core/measure/stocking.hpp"

#include <gtest/gtest.h>

#include "core/measure/basal_area.hpp"

namespace oaklight {
namespace {

// Values: tests/published/mensuration.tsv and stocking.tsv.
TEST(Stocking, OfNoTreesIsNothing) {
  EXPECT_EQ(upland_oak_stocking({}), Percent{});
  EXPECT_EQ(crown_competition({}), Percent{});
  EXPECT_EQ(upland_oak_stocking(chart_sums(SquareFeetPerAcre{}, TreesPerAcre{})), Percent{});
}

TEST(Stocking, AddsUpTreeByTreeAndTakesBackWhatIsCut) {
  StockingSums stand;
  stand.add(Inches{12.0}, TreesPerAcre{60.0});
  const Percent before = upland_oak_stocking(stand);
  stand.add(Inches{6.0}, TreesPerAcre{100.0});
  EXPECT_GT(upland_oak_stocking(stand), before);
  stand.add(Inches{6.0}, TreesPerAcre{-100.0});
  EXPECT_NEAR(upland_oak_stocking(stand).value, before.value, 1e-9);
}

TEST(Stocking, IsFullOnItsOwnLines) {
  // By definition: the A line is stocking 100, the B line crown competition 100.
  for (const double qmd : {3.0, 8.7, 15.0, 22.0}) {
    const StockingLine a = a_line(Inches{qmd});
    const StockingLine b = b_line(Inches{qmd});
    EXPECT_NEAR(upland_oak_stocking(chart_sums(a.ba, a.trees)).value, 100.0, 1e-9);
    EXPECT_NEAR(crown_competition(chart_sums(b.ba, b.trees)).value, 100.0, 1e-9);
    EXPECT_NEAR(quadratic_mean_diameter(a.ba, a.trees).value, qmd, 1e-9);
    EXPECT_LT(b.ba, a.ba);
  }
}

TEST(Stocking, OfAMixedStandIsBelowThatOfLikeTreesOfItsMeanTree) {
  StockingSums mixed;
  mixed.add(Inches{5.0}, TreesPerAcre{100.0});
  mixed.add(Inches{15.0}, TreesPerAcre{50.0});
  const SquareFeetPerAcre ba{mixed.squared_diameters * kBasalAreaFactor};
  StockingSums alike;
  alike.add(quadratic_mean_diameter(ba, TreesPerAcre{150.0}), TreesPerAcre{150.0});
  EXPECT_LT(upland_oak_stocking(mixed), upland_oak_stocking(alike));
}

}  // namespace
}  // namespace oaklight
