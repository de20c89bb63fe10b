// Choices of an estimate that the design decides: two designs on the same plots, plots sorted into
// stands afterwards, the correction for a finite population, shares of plots.
#include <gtest/gtest.h>

#include <cmath>

#include "core/sample/cruise_estimate.hpp"
#include "tests/support/oracle_figures.hpp"
#include "tests/support/readings.hpp"

namespace oaklight {
namespace {

/// Points for trees of 5 in and more, and 1/100-acre plots at the same places for thinner ones.
struct TwoDesigns {
  test::TestCruise cruise{PointDesign{10.0}};
  StandId stand = cruise.stand("Ridge", 40.0);
  std::vector<PlotId> points, small;

  TwoDesigns() {
    cruise.data.cruises[0].min_dbh = test::dbh_in(5.0);
    for (const char* label : {"1", "2", "3"}) {
      points.push_back(cruise.plot(stand));
      cruise.data.plots.back().label = label;
    }
    cruise.next_cruise(FixedDesign{0.01}).min_dbh = test::dbh_in(1.0);
    for (const char* label : {"1", "2", "3"}) {
      small.push_back(cruise.plot(stand));
      cruise.data.plots.back().label = label;
    }
  }
  [[nodiscard]] Result<StandSample> sample() const { return stand_sample(cruise.data, stand); }
};

TEST(MixedDesigns, ATreeCountsInTheDesignOfItsSize) {
  TwoDesigns two;
  two.cruise.tree(two.points[0], 802, 12.0);
  two.cruise.tree(two.points[1], 802, 5.0);
  two.cruise.tree(two.small[0], 316, 2.0);
  two.cruise.tree(two.small[0], 316, 4.9);
  two.cruise.tree(two.small[2], 802, 5.0);  // thick: the point counts such trees
  two.cruise.tree(two.small[2], 802, 0.9);  // under the smallest of both
  const auto sample = two.sample().value();
  EXPECT_EQ(sample.plots.size(), 3U);
  EXPECT_EQ(sample.trees.size(), 4U);
  EXPECT_EQ(sample.below_min, 1);
  EXPECT_EQ(sample.min_dbh, test::dbh_in(1.0));
  EXPECT_EQ(sample.thick_from, test::dbh_in(5.0));
  const auto figures = cruise_estimate(two.cruise.data, test::test_species(), {}).value();
  const AreaEstimate& area = figures.all.value();
  // By hand: two thin trees of 100 an acre on one of 3 plots, and the points' trees: 10 ft2 each,
  // 10 / 0.7854 and 10 / 0.13635 trees an acre.
  EXPECT_NEAR(area.live.trees.mean.value, (200.0 + 12.7324 + 73.3386) / 3.0, 1e-3);
  EXPECT_EQ(area.plots, 3);
}

TEST(MixedDesigns, ThePlotsForThinTreesAreNoCountPoints) {
  TwoDesigns two;
  two.cruise.data.plots.back().note = "[count point]";
  const Error error = two.sample().error();
  EXPECT_EQ(error.code, ErrorCode::contradiction);
  EXPECT_EQ(error.where, "stand/Ridge/plot/3");
}

TEST(MixedDesigns, TheErrorIsThatOfThePlotsSums) {
  TwoDesigns two;
  for (int i = 0; i < 3; ++i) {
    for (int n = 0; n <= i; ++n)
      two.cruise.tree(two.points[static_cast<std::size_t>(i)], 802, 12.0);
  }
  two.cruise.tree(two.small[0], 316, 3.0);
  const auto figures = cruise_estimate(two.cruise.data, test::test_species(), {}).value();
  // By hand: 12.73240 trees a point tree; plots hold 1, 2 and 3 of them, the first 100 more.
  const double each = 10.0 / (std::acos(-1.0) / 4.0);
  const double values[] = {each + 100.0, 2.0 * each, 3.0 * each};
  const double mean = (values[0] + values[1] + values[2]) / 3.0;
  double squares = 0.0;
  for (const double v : values) squares += (v - mean) * (v - mean);
  EXPECT_NEAR(figures.all->live.trees.se->value, std::sqrt(squares / 2.0 / 3.0), 1e-9);
}

TEST(MixedDesigns, AreRefusedWhereThePlotsOrTheSmallestTreesAreNotTheirs) {
  TwoDesigns two;
  two.cruise.tree(two.points[0], 802, 12.0);
  two.cruise.data.plots.back().label = "4";
  EXPECT_EQ(two.sample().error().code, ErrorCode::mixed_designs);
  TwoDesigns same;
  same.cruise.data.cruises[1].min_dbh = test::dbh_in(5.0);
  EXPECT_EQ(same.sample().error().code, ErrorCode::mixed_designs);
  TwoDesigns skipped;
  skipped.cruise.data.plots.back().status = PlotStatus::skipped;
  EXPECT_EQ(skipped.sample().error().code, ErrorCode::mixed_designs);
}

TEST(PostStrata, GiveTheErrorOfPlotsSortedAfterwards) {
  const auto oracle = test::read_oracle_points();
  EstimateOptions options;
  options.placed_over_tract = true;
  const auto got = cruise_estimate(oracle.data, test::test_species(), options).value();
  // tests/golden/oracle, expected.json: post_stratified.ba_mean and se_cochran_5A42; 35 - 3.
  EXPECT_NEAR(got.all->live.ba.mean.value, 80.562730627306, 1e-9);
  EXPECT_NEAR(got.all->live.ba.se->value, 8.644648335817, 1e-9);
  EXPECT_EQ(got.all->live.ba.df, 32.0);
  const auto plain = cruise_estimate(oracle.data, test::test_species(), {}).value();
  EXPECT_EQ(got.stands[0].figures->live.ba.se, plain.stands[0].figures->live.ba.se);
}

TEST(OccupiedPlots, AreCountedByStandAndWeighedByAcres) {
  const auto oracle = test::read_oracle_points();
  const auto got = cruise_estimate(oracle.data, test::test_species(), {}).value();
  double share = 0.0;
  for (std::size_t h = 0; h < 3; ++h) {
    const AreaEstimate& stand = got.stands[h].figures.value();
    for (const SpeciesFigures& s : stand.by_species) {
      const auto wilson = share_estimate(s.figures.ba.found, stand.plots, Confidence{}).value();
      EXPECT_EQ(s.on_plots->share, wilson.share);
      EXPECT_EQ(s.on_plots->lo, wilson.lo);
      if (s.species.fia == 802) share += stand.acres.value * wilson.share.value;
    }
  }
  for (const SpeciesFigures& s : got.all->by_species) {
    if (s.species.fia != 802) continue;
    EXPECT_NEAR(s.on_plots->share.value, share / got.all->acres.value, 1e-9);  // derived
  }
}

TEST(OccupiedPlots, AreNotToldOverStandsOfDifferentDesigns) {
  test::TestCruise cruise(PointDesign{10.0});
  const StandId a = cruise.stand("A", 10.0);
  const StandId b = cruise.stand("B", 20.0);
  for (int i = 0; i < 2; ++i) cruise.tree(cruise.plot(a), 802, 12.0);
  cruise.next_cruise(FixedDesign{0.1});
  for (int i = 0; i < 2; ++i) cruise.tree(cruise.plot(b), 802, 12.0);
  const auto got = cruise_estimate(cruise.data, test::test_species(), {}).value();
  EXPECT_FALSE(got.all->by_species[0].on_plots);
  EXPECT_TRUE(got.stands[0].figures->by_species[0].on_plots);
  // By hand: 10 ft2 a point on 10 acres; 7.854 ft2 a plot of a tenth on 20.
  EXPECT_NEAR(got.all->live.ba.mean.value, (10.0 * 10.0 + 20.0 * 7.853982) / 30.0, 1e-6);
}

}  // namespace
}  // namespace oaklight
