#include "core/sample/stand_sample.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>

#include "tests/support/readings.hpp"
#include "tests/support/test_cruise.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight {
namespace {

using test::TestCruise;

/// One stand with a measured plot of one tree, to be spoiled by a test.
struct Small {
  TestCruise cruise;
  StandId stand = cruise.stand("Ridge", 40.0);
  PlotId plot = cruise.plot(stand);
  Small() { cruise.tree(plot, 802, 12.0); }
  [[nodiscard]] Result<StandSample> sample() const { return stand_sample(cruise.data, stand); }
};

ErrorCode code_of(const Result<StandSample>& sample) { return sample.error().code; }

TEST(StandSample, HoldsMeasuredAndEmptyPlotsOnly) {
  Small s;
  s.cruise.plot(s.stand, PlotStatus::empty);
  s.cruise.plot(s.stand, PlotStatus::skipped);
  s.cruise.plot(s.stand, PlotStatus::planned);
  s.cruise.plot(s.stand, PlotStatus::planned);
  const auto sample = s.sample().value();
  EXPECT_EQ(sample.plots.size(), 2U);
  EXPECT_EQ(sample.skipped, 1);
  EXPECT_EQ(sample.planned, 2);
}

TEST(StandSample, CountsAPointTreeAsExactlyItsFactorInBasalArea) {
  Small s;
  Tree& edge = s.cruise.tree(s.plot, 833, 17.3);
  edge.stems = 3;
  edge.edge_count = 2;
  const auto sample = s.sample().value();
  // By hand: 10 ft2 for one stem, 3 stems counted twice; 10 / (pi / 4), the area of 12 in.
  EXPECT_EQ(sample.trees[0].ba.value, 10.0);
  EXPECT_EQ(sample.trees[1].ba.value, 60.0);
  EXPECT_NEAR(sample.trees[0].trees.value, 12.7324, 5e-5);
}

TEST(StandSample, TellsTreesOfTheSmallPlot) {
  // By hand: 1 / 0.01 and 1 / 0.1 acre; 40 acres over either.
  Small s;
  s.cruise.data.cruises[0].design = FixedDesign{0.1, 0.01, test::dbh_in(4.5), UnitSystem::us};
  s.cruise.tree(s.plot, 316, 4.4);
  s.cruise.tree(s.plot, 316, 4.5);
  const auto sample = s.sample().value();
  EXPECT_FALSE(sample.trees[0].on_small_plot);
  EXPECT_TRUE(sample.trees[1].on_small_plot);
  EXPECT_FALSE(sample.trees[2].on_small_plot);
  EXPECT_DOUBLE_EQ(sample.trees[1].trees.value, 100.0);
  EXPECT_DOUBLE_EQ(sample.trees[2].trees.value, 10.0);
  EXPECT_DOUBLE_EQ(*plots_to_tile(sample, false), 400.0);
  EXPECT_DOUBLE_EQ(*plots_to_tile(sample, true), 4000.0);
}

TEST(StandSample, OfPointsHasNoNumberThatWouldTileTheStand) {
  EXPECT_FALSE(plots_to_tile(Small().sample().value(), false));
}

TEST(StandSample, LeavesOutTreesUnderTheSmallestTalliedAndSaysSo) {
  Small s;
  s.cruise.data.cruises[0].min_dbh = test::dbh_in(5.0);
  s.cruise.tree(s.plot, 316, 4.9);
  s.cruise.tree(s.plot, 316, 5.0);
  const auto sample = s.sample().value();
  EXPECT_EQ(sample.trees.size(), 2U);
  EXPECT_EQ(sample.below_min, 1);
}

TEST(StandSample, ComesOutTheSameForAnyOrderOfRecords) {
  Small s;
  for (int i = 0; i < 5; ++i) {
    const PlotId plot = s.cruise.plot(s.stand);
    s.cruise.tree(plot, 833, 10.0 + i);
    s.cruise.tree(plot, 802, 8.0 + i);
  }
  const auto first = s.sample().value();
  TractData turned = s.cruise.data;
  std::ranges::reverse(turned.plots);
  std::ranges::reverse(turned.trees);
  const auto second = stand_sample(turned, s.stand).value();
  ASSERT_EQ(first.trees.size(), second.trees.size());
  for (std::size_t i = 0; i < first.trees.size(); ++i) {
    EXPECT_EQ(first.trees[i].tree->id, second.trees[i].tree->id);
    EXPECT_EQ(first.trees[i].plot, second.trees[i].plot);
  }
}

TEST(StandSample, RefusesPlotsOfTwoDesigns) {
  Small s;
  s.cruise.next_cruise(FixedDesign{0.1, {}, {}, UnitSystem::us});
  s.cruise.plot(s.stand);
  EXPECT_EQ(code_of(s.sample()), ErrorCode::mixed_designs);
}

TEST(StandSample, RefusesPlotsThatDifferInTheSmallestTree) {
  Small s;
  s.cruise.next_cruise(PointDesign{}).min_dbh = test::dbh_in(5.0);
  s.cruise.plot(s.stand);
  EXPECT_EQ(code_of(s.sample()), ErrorCode::mixed_designs);
}

TEST(StandSample, JoinsTwoCruisesOfOneDesign) {
  Small s;
  s.cruise.next_cruise(PointDesign{});
  s.cruise.plot(s.stand, PlotStatus::empty);
  EXPECT_EQ(s.sample().value().plots.size(), 2U);
}

TEST(StandSample, RefusesAPlotThatWasVisitedTwice) {
  Small s;
  s.cruise.next_cruise(PointDesign{});
  s.cruise.plot(s.stand);
  s.cruise.data.plots.back().label = s.cruise.data.plots.front().label;
  EXPECT_EQ(code_of(s.sample()), ErrorCode::duplicate);
}

TEST(StandSample, RefusesTwoPlotsOfOneId) {
  Small s;
  s.cruise.data.plots.push_back(s.cruise.data.plots.front());
  EXPECT_EQ(code_of(s.sample()), ErrorCode::duplicate);
}

TEST(StandSample, RefusesAStandOfWhichNoPlotWasVisited) {
  TestCruise cruise;
  const StandId stand = cruise.stand("Cove", 20.0);
  EXPECT_EQ(code_of(stand_sample(cruise.data, stand)), ErrorCode::no_data) << "no plots at all";
  cruise.plot(stand, PlotStatus::planned);
  cruise.plot(stand, PlotStatus::skipped);
  EXPECT_EQ(code_of(stand_sample(cruise.data, stand)), ErrorCode::no_data);
}

TEST(StandSample, RefusesTreesWhereTheyCannotBe) {
  for (const PlotStatus status : {PlotStatus::planned, PlotStatus::empty, PlotStatus::skipped}) {
    Small s;
    s.cruise.data.plots[0].status = status;
    s.cruise.plot(s.stand);
    EXPECT_EQ(code_of(s.sample()), ErrorCode::contradiction) << word_of(status);
  }
}

TEST(StandSample, RefusesTreesThatCountForNoneOrTooMany) {
  for (const auto& [stems, edge] : {std::pair(0, 1), {1, 0}, {-1, 1}, {2'000'000'000, 1}, {1, 9}}) {
    Small s;
    s.cruise.data.trees[0].stems = stems;
    s.cruise.data.trees[0].edge_count = edge;
    EXPECT_EQ(code_of(s.sample()), ErrorCode::contradiction) << stems << " " << edge;
  }
}

TEST(StandSample, RefusesDesignsThatCannotBeComputedWith) {
  for (const Design& design :
       {Design(PointDesign{0.0, UnitSystem::us}), Design(FixedDesign{0.0, {}, {}, UnitSystem::us}),
        Design(PointDesign{std::numeric_limits<double>::quiet_NaN(), UnitSystem::us})}) {
    Small s;
    s.cruise.data.cruises[0].design = design;
    EXPECT_EQ(code_of(s.sample()), ErrorCode::out_of_range);
  }
}

TEST(StandSample, RefusesRecordsWithoutTheirPlotStandOrCruise) {
  Small lost_tree;
  lost_tree.cruise.data.trees[0].plot = test::nth_id<PlotId>(999);
  EXPECT_EQ(code_of(lost_tree.sample()), ErrorCode::unknown_reference);
  Small lost_plot;
  lost_plot.cruise.data.plots[0].stand = test::nth_id<StandId>(999);
  EXPECT_EQ(code_of(lost_plot.sample()), ErrorCode::unknown_reference);
  Small lost_cruise;
  lost_cruise.cruise.data.plots[0].cruise = test::nth_id<CruiseId>(999);
  EXPECT_EQ(code_of(lost_cruise.sample()), ErrorCode::unknown_reference);
  Small lost_regen;
  lost_regen.cruise.regen(test::nth_id<PlotId>(999), 802, RegenHeight::under_1_ft, 1);
  EXPECT_EQ(code_of(lost_regen.sample()), ErrorCode::unknown_reference);
}

TEST(StandSample, RefusesSeedlingsWithoutGroundOrVisit) {
  Small no_size;
  no_size.cruise.regen(no_size.plot, 802, RegenHeight::under_1_ft, 3);
  EXPECT_EQ(code_of(no_size.sample()), ErrorCode::missing_value);

  Small planned;
  planned.cruise.data.cruises[0].regen_area = 0.001;
  planned.cruise.regen(planned.cruise.plot(planned.stand, PlotStatus::planned), 802,
                       RegenHeight::under_1_ft, 3);
  EXPECT_EQ(code_of(planned.sample()), ErrorCode::contradiction);

  Small no_area;
  no_area.cruise.data.cruises[0].regen_area = 0.0;
  EXPECT_EQ(code_of(no_area.sample()), ErrorCode::out_of_range);

  Small below;
  below.cruise.data.cruises[0].regen_area = 0.001;
  below.cruise.regen(below.plot, 802, RegenHeight::under_1_ft, -3);
  EXPECT_EQ(code_of(below.sample()), ErrorCode::contradiction);
}

TEST(StandSample, HoldsSeedlingsOfPlotsWithoutTrees) {
  Small s;
  s.cruise.data.cruises[0].regen_area = 0.001;
  s.cruise.regen(s.cruise.plot(s.stand, PlotStatus::empty), 802, RegenHeight::under_1_ft, 3);
  EXPECT_EQ(s.sample().value().regens.size(), 1U);
}

TEST(CruisedStands, TellOneStandsFaultWithoutLosingTheOthers) {
  Small s;
  const StandId planned = s.cruise.stand("Cove", 20.0);
  s.cruise.plot(planned, PlotStatus::planned);
  s.cruise.stand("Not cruised", 5.0);
  const auto stands = cruised_stands(s.cruise.data).value();
  ASSERT_EQ(stands.size(), 2U);
  EXPECT_TRUE(stands[0].sample);
  EXPECT_EQ(stands[1].sample.error().code, ErrorCode::no_data);
  EXPECT_EQ(stands[1].sample.error().where, "stand/Cove");
}

}  // namespace
}  // namespace oaklight
