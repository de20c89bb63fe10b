#include "core/stand/stand_density.hpp"

#include <gtest/gtest.h>

#include "core/measure/basal_area.hpp"
#include "core/sample/cruise_estimate.hpp"
#include "tests/support/test_cruise.hpp"

namespace oaklight {
namespace {

using test::TestCruise;

StandDensity density(const TestCruise& cruise, StandId stand) {
  return stand_density(cruise.data, stand, test::test_species(), Inches{5.0}).value();
}

TEST(StandDensity, IsAnAverageOverEveryPlotEmptyOnesToo) {
  TestCruise cruise;
  const StandId stand = cruise.stand("Ridge", 40.0);
  for (int i = 0; i < 6; ++i) cruise.tree(cruise.plot(stand), 802, 12.0);
  for (int i = 0; i < 4; ++i) cruise.plot(stand, PlotStatus::empty);
  cruise.plot(stand, PlotStatus::skipped);
  const auto d = density(cruise, stand);
  EXPECT_EQ(d.plots, 10);
  EXPECT_DOUBLE_EQ(d.ba.value, 6.0);
  EXPECT_NEAR(d.live.trees, 7.6394, 5e-5);  // 0.6 trees a plot, 10 / (pi/4) each: derived
  EXPECT_NEAR(d.live.diameters, 12.0 * d.live.trees, 1e-12);
  EXPECT_NEAR(d.live.squared_diameters, 144.0 * d.live.trees, 1e-9);
}

TEST(StandDensity, HasTheFiguresOfTheEstimate) {
  const auto oracle = test::read_oracle_points();
  const auto e = cruise_estimate(oracle.data, test::test_species(), EstimateOptions{}).value();
  for (const StandEstimate& s : e.stands) {
    const auto d = stand_density(oracle.data, s.stand, test::test_species(), Inches{5.0}).value();
    EXPECT_NEAR(d.ba.value, s.figures->live.ba.mean.value, 1e-10);
    EXPECT_NEAR(d.live.trees, s.figures->live.trees.mean.value, 1e-10);
    EXPECT_EQ(d.plots, s.figures->plots);
  }
}

TEST(StandDensity, PartsOaksByGroup) {
  // By hand: 10 ft2 for each tree; three of the five live ones are oaks, two of them white.
  TestCruise cruise;
  const StandId stand = cruise.stand("Ridge", 40.0);
  const PlotId plot = cruise.plot(stand);
  for (const int fia : {802, 802, 833, 316, 400}) cruise.tree(plot, fia, 12.0);
  cruise.tree(plot, 837, 12.0).facts.status = TreeStatus::dead;
  const auto d = density(cruise, stand);
  EXPECT_DOUBLE_EQ(d.ba.value, 50.0);
  EXPECT_DOUBLE_EQ(d.ba_oak.value, 30.0);
  EXPECT_DOUBLE_EQ(d.ba_white_oak.value, 20.0);
  EXPECT_DOUBLE_EQ(d.ba_red_oak.value, 10.0);
}

TEST(StandDensity, GuardLeavesOutOvertoppedStemsUnderFiveInches) {
  // By hand: 10 trees an acre for each on a tenth of an acre; four of six count, then three.
  TestCruise cruise(FixedDesign{0.1, {}, {}, UnitSystem::us});
  const StandId stand = cruise.stand("Ridge", 40.0);
  const PlotId plot = cruise.plot(stand);
  const auto tree = [&](double dbh, std::optional<CrownClass> crown) {
    cruise.tree(plot, 316, dbh).facts.crown_class = crown;
  };
  tree(3.0, CrownClass::codominant);    // counted: main canopy
  tree(3.0, CrownClass::intermediate);  // counted: reaches into it
  tree(3.0, CrownClass::overtopped);
  tree(4.9, std::nullopt);
  tree(5.0, std::nullopt);            // counted
  tree(8.0, CrownClass::overtopped);  // counted
  const auto d = density(cruise, stand);
  EXPECT_DOUBLE_EQ(d.guard.trees, 40.0);
  EXPECT_DOUBLE_EQ(d.live.trees, 60.0);
  cruise.data.trees[5].facts.status = TreeStatus::dead;
  EXPECT_DOUBLE_EQ(density(cruise, stand).guard.trees, 30.0);
}

TEST(StandDensity, CountedTreesTakeTheSizesOfTheMeasuredOnes) {
  // By hand: a point with two oaks of 12 in, and one where four were counted: 30 ft2 an acre.
  TestCruise cruise;
  const StandId stand = cruise.stand("Ridge", 40.0);
  const PlotId plot = cruise.plot(stand);
  cruise.tree(plot, 802, 12.0);
  cruise.tree(plot, 802, 12.0);
  cruise.plot(stand);
  cruise.data.plots.back().note = "[count point: 802 4]";
  const auto d = density(cruise, stand);
  EXPECT_DOUBLE_EQ(d.ba.value, 30.0);
  EXPECT_DOUBLE_EQ(d.ba_white_oak.value, 30.0);
  EXPECT_NEAR(d.live.trees, 30.0 / basal_area(Inches{12.0}).value, 1e-9);
  cruise.data.trees.clear();
  EXPECT_EQ(stand_density(cruise.data, stand, test::test_species(), Inches{5.0}).error().code,
            ErrorCode::no_data)
      << "nothing tells the size of what was counted";
}

TEST(StandDensity, ACountOfASpeciesItDoesNotKnowIsRefused) {
  TestCruise cruise;
  const StandId stand = cruise.stand("Ridge", 40.0);
  cruise.tree(cruise.plot(stand), 802, 12.0);
  cruise.plot(stand);
  cruise.data.plots.back().note = "[count point: 1 4]";
  EXPECT_EQ(stand_density(cruise.data, stand, test::test_species(), Inches{5.0}).error().code,
            ErrorCode::unknown_species);
}

TEST(StandDensity, RefusesAStandWithoutASample) {
  TestCruise cruise;
  const StandId stand = cruise.stand("Ridge", 40.0);
  cruise.plot(stand, PlotStatus::planned);
  EXPECT_EQ(stand_density(cruise.data, stand, test::test_species(), Inches{5.0}).error().code,
            ErrorCode::no_data);
}

TEST(StandDensity, RefusesASpeciesItDoesNotKnow) {
  TestCruise cruise;
  const StandId stand = cruise.stand("Ridge", 40.0);
  cruise.tree(cruise.plot(stand), 1, 12.0);
  EXPECT_EQ(stand_density(cruise.data, stand, test::test_species(), Inches{5.0}).error().code,
            ErrorCode::unknown_species);
}

}  // namespace
}  // namespace oaklight
