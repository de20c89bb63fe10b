#include "core/sample/cruise_estimate.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "tests/support/readings.hpp"
#include "tests/support/test_cruise.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight {
namespace {

using test::TestCruise;

CruiseEstimate estimate(const TractData& data, const EstimateOptions& options = {}) {
  return cruise_estimate(data, test::test_species(), options).value();
}

AreaEstimate only_stand(const TractData& data, const EstimateOptions& options = {}) {
  return estimate(data, options).stands.at(0).figures.value();
}

TEST(CruiseEstimate, CountsEmptyPlotsAndLeavesOutThoseNotVisited) {
  // By hand: 10 ft2 for each of 24 trees, over 4 plots.
  TestCruise cruise;
  const StandId stand = cruise.stand("Ridge", 40.0);
  for (const int trees : {8, 6, 10}) {
    const PlotId plot = cruise.plot(stand);
    for (int i = 0; i < trees; ++i) cruise.tree(plot, 802, 12.0);
  }
  cruise.plot(stand, PlotStatus::empty);
  cruise.plot(stand, PlotStatus::skipped);
  cruise.plot(stand, PlotStatus::planned);
  const auto area = only_stand(cruise.data);
  EXPECT_DOUBLE_EQ(area.live.ba.mean.value, 60.0) << "80 is what dropping the empty plot gives";
  EXPECT_EQ(area.plots, 4);
  EXPECT_EQ(area.empty_plots, 1);
  EXPECT_EQ(area.skipped, 1);
  EXPECT_EQ(area.planned, 1);
  EXPECT_EQ(area.live.stems, 24);
}

TEST(CruiseEstimate, KeepsDeadTreesApart) {
  // By hand: one tree of 10 ft2 over two plots, alive and dead alike.
  TestCruise cruise;
  const StandId stand = cruise.stand("Ridge", 40.0);
  const PlotId plot = cruise.plot(stand);
  cruise.tree(plot, 802, 12.0);
  cruise.tree(plot, 833, 14.0).facts.status = TreeStatus::dead;
  cruise.plot(stand, PlotStatus::empty);
  const auto area = only_stand(cruise.data);
  EXPECT_DOUBLE_EQ(area.live.ba.mean.value, 5.0);
  EXPECT_DOUBLE_EQ(area.dead.ba.mean.value, 5.0);
  EXPECT_EQ(area.by_species.size(), 1U);
  EXPECT_EQ(area.by_class.size(), 1U);
  EXPECT_EQ(area.by_species_class.size(), 1U);
  EXPECT_FALSE(area.dead.board_feet) << "dead wood is no sawtimber";
  EXPECT_EQ(area.empty_plots, 1);
}

TEST(CruiseEstimate, OfNoTreesIsNotFoundAndHasNoMeanDiameter) {
  TestCruise cruise;
  const StandId stand = cruise.stand("Field", 10.0);
  for (int i = 0; i < 5; ++i) cruise.plot(stand, PlotStatus::empty);
  const auto area = only_stand(cruise.data);
  EXPECT_EQ(area.live.trees.trust, Trust::not_found);
  EXPECT_FALSE(area.live.qmd);
  EXPECT_EQ(area.empty_plots, 5);
  EXPECT_EQ(area.need.error().code, ErrorCode::too_few_plots);
}

TEST(CruiseEstimate, WeighsStandsByAcres) {
  // By hand: tallies of 10, 11, 12 and of 4, 5, 6 trees, weighed 30 to 70 acres.
  TestCruise cruise;
  for (const auto& [name, acres, tally] : {std::tuple("A", 30.0, 10), {"B", 70.0, 4}}) {
    const StandId stand = cruise.stand(name, acres);
    for (int p = 0; p < 3; ++p) {
      const PlotId plot = cruise.plot(stand);
      for (int i = 0; i < tally + p; ++i) cruise.tree(plot, 802, 12.0);
    }
  }
  const auto all = estimate(cruise.data).all.value();
  EXPECT_DOUBLE_EQ(all.live.ba.mean.value, 0.3 * 110.0 + 0.7 * 50.0);
  EXPECT_EQ(all.acres, Acres{100.0});
  EXPECT_EQ(all.plots, 6);
}

TEST(CruiseEstimate, ScalesTotalsWithAcresAndLeavesMeansAlone) {
  auto oracle = test::read_oracle_points();
  const auto before = estimate(oracle.data).all.value();
  for (Stand& s : oracle.data.stands) s.acres = s.acres * 3.0;
  const auto after = estimate(oracle.data).all.value();
  EXPECT_NEAR(after.live.ba.mean.value, before.live.ba.mean.value, 1e-10);
  EXPECT_NEAR(after.live.ba.se->value, before.live.ba.se->value, 1e-10);
  EXPECT_NEAR(total_of(after.live.ba, after.acres).se->value,
              3.0 * total_of(before.live.ba, before.acres).se->value, 1e-6);
}

TEST(CruiseEstimate, IsBitForBitTheSameInAnyOrderOfRecords) {
  auto oracle = test::read_oracle_points();
  const auto before = estimate(oracle.data).all.value();
  std::mt19937 random(20);  // fixed seed: the same shuffles every time
  for (int i = 0; i < 10; ++i) {
    std::ranges::shuffle(oracle.data.plots, random);
    std::ranges::shuffle(oracle.data.trees, random);
    const auto after = estimate(oracle.data).all.value();
    ASSERT_EQ(after.live.trees.mean, before.live.trees.mean);
    ASSERT_EQ(after.live.trees.se, before.live.trees.se);
    for (std::size_t k = 0; k < before.by_species_class.size(); ++k) {
      ASSERT_EQ(after.by_species_class[k].figures.trees.se,
                before.by_species_class[k].figures.trees.se);
    }
  }
}

TEST(CruiseEstimate, AddsUpFromItsCells) {
  const auto oracle = test::read_oracle_points();
  const auto all = estimate(oracle.data).all.value();
  double species = 0.0, classes = 0.0, cells = 0.0;
  for (const auto& s : all.by_species) species += s.figures.ba.mean.value;
  for (const auto& c : all.by_class) classes += c.figures.ba.mean.value;
  for (const auto& c : all.by_species_class) cells += c.figures.ba.mean.value;
  EXPECT_NEAR(species, all.live.ba.mean.value, 1e-10);
  EXPECT_NEAR(classes, all.live.ba.mean.value, 1e-10);
  EXPECT_NEAR(cells, all.live.ba.mean.value, 1e-10);
}

TEST(CruiseEstimate, FallsWhenAnEmptyPlotIsAdded) {
  auto oracle = test::read_oracle_points();
  const double before = only_stand(oracle.data).live.ba.mean.value;
  Plot empty = oracle.data.plots.front();
  empty.id = test::nth_id<PlotId>(100000);
  empty.label = "one more";
  empty.status = PlotStatus::empty;
  oracle.data.plots.push_back(empty);
  EXPECT_NEAR(only_stand(oracle.data).live.ba.mean.value, before * 12.0 / 13.0, 1e-10);
}

TEST(CruiseEstimate, TellsOverallFiguresOnlyWhenEveryCruisedStandHasSome) {
  TestCruise cruise;
  const StandId ridge = cruise.stand("Ridge", 40.0);
  cruise.tree(cruise.plot(ridge), 802, 12.0);
  const StandId cove = cruise.stand("Cove", 20.0);
  cruise.plot(cove, PlotStatus::planned);
  const StandId flat = cruise.stand("Flat", 20.0);
  const auto e = estimate(cruise.data);
  ASSERT_EQ(e.stands.size(), 2U);
  EXPECT_TRUE(e.stands[0].figures);
  EXPECT_EQ(e.stands[1].stand, cove);
  EXPECT_EQ(e.stands[1].figures.error().code, ErrorCode::no_data);
  EXPECT_EQ(e.all.error().code, ErrorCode::no_data);
  EXPECT_EQ(e.all.error().where, "stand/Cove");
  EXPECT_EQ(e.not_cruised, std::vector{flat});
}

TEST(CruiseEstimate, OfNothingSaysSo) {
  EXPECT_EQ(estimate(TractData{}).all.error().code, ErrorCode::no_data);
}

TEST(CruiseEstimate, DoesNotAverageStandsThatTallyDifferentTrees) {
  TestCruise cruise;
  cruise.tree(cruise.plot(cruise.stand("A", 40.0)), 802, 12.0);
  cruise.next_cruise(PointDesign{}).min_dbh = test::dbh_in(5.0);
  cruise.tree(cruise.plot(cruise.stand("B", 40.0)), 802, 12.0);
  const auto e = estimate(cruise.data);
  EXPECT_TRUE(e.stands[0].figures);
  EXPECT_TRUE(e.stands[1].figures);
  EXPECT_EQ(e.all.error().code, ErrorCode::mixed_designs);
}

TEST(CruiseEstimate, AveragesStandsOfDifferentPlotsThatTallyTheSameTrees) {
  TestCruise cruise;
  cruise.tree(cruise.plot(cruise.stand("A", 40.0)), 802, 12.0);
  cruise.next_cruise(FixedDesign{0.1, {}, {}, UnitSystem::us});
  cruise.tree(cruise.plot(cruise.stand("B", 40.0)), 802, 12.0);
  EXPECT_NEAR(estimate(cruise.data).all.value().live.ba.mean.value, (10.0 + 10.0 * 0.785398) / 2.0,
              1e-5);
}

TEST(CruiseEstimate, RefusesASpeciesItDoesNotKnow) {
  TestCruise cruise;
  cruise.tree(cruise.plot(cruise.stand("A", 40.0)), 1, 12.0);
  EXPECT_EQ(estimate(cruise.data).stands[0].figures.error().code, ErrorCode::unknown_species);
}

TEST(CruiseEstimate, NeedsAcresOnlyToWeighStands) {
  TestCruise cruise;
  cruise.tree(cruise.plot(cruise.stand("A", 0.0)), 802, 12.0);
  EXPECT_TRUE(estimate(cruise.data).stands[0].figures);
  cruise.tree(cruise.plot(cruise.stand("B", 10.0)), 802, 12.0);
  EXPECT_EQ(estimate(cruise.data).all.error().code, ErrorCode::out_of_range);
  EXPECT_EQ(estimate(cruise.data).all.error().where, "stand/A/acres");
}

TEST(CruiseEstimate, SaysHowManyMorePlotsItsGoalNeeds) {
  const auto oracle = test::read_oracle_points();
  EstimateOptions options;
  options.goal = Percent{20.0};
  const auto e = estimate(oracle.data, options);
  const auto stand = e.stands[0].figures.value();
  const int needed = plots_needed(*stand.live.ba.cv, {options.goal, options.confidence}).value();
  EXPECT_EQ(stand.need->plan.plots, needed);
  EXPECT_EQ(stand.need->more, needed - 12);
  const auto all = e.all.value();
  EXPECT_EQ(all.need->plan.by_stand.size(), 3U);
  EXPECT_GT(all.need->more, 0);
  options.goal = Percent{90.0};
  EXPECT_EQ(estimate(oracle.data, options).all->need->more, 0);
}

TEST(Volume, IsOfTheTreesWhoseVolumeCanBeToldAndCountsTheOthers) {
  TestCruise cruise(FixedDesign{0.1, {}, {}, UnitSystem::us});
  const StandId stand = cruise.stand("Ridge", 40.0);
  const PlotId plot = cruise.plot(stand);
  cruise.tree(plot, 802, 16.0).facts.half_logs = 4;
  cruise.tree(plot, 802, 16.0);                      // no logs recorded
  cruise.tree(plot, 802, 16.0).facts.half_logs = 0;  // looked at: no log in it
  cruise.tree(plot, 802, 8.0);                       // too thin to saw
  cruise.tree(plot, 531, 16.0);                      // a species that is not sawn
  cruise.plot(stand, PlotStatus::empty);
  const EstimateOptions options;
  const auto area = only_stand(cruise.data, options);
  const double one = tree_board_feet(options.log_rule, test::dbh_in(16.0), 4)->value;
  EXPECT_DOUBLE_EQ(area.live.board_feet->mean.value, 10.0 * one / 2.0);
  EXPECT_EQ(area.live.without_board_feet, 1);
  EXPECT_EQ(area.live.board_feet->found, 1);
  EXPECT_EQ(area.live.without_cords, 0);
}

TEST(Volume, IsNothingAndNotZeroWhenNoTreeHasOne) {
  TestCruise cruise;
  const StandId stand = cruise.stand("Ridge", 40.0);
  cruise.tree(cruise.plot(stand), 802, 30.0);
  const auto area = only_stand(cruise.data);
  EXPECT_FALSE(area.live.board_feet);
  EXPECT_EQ(area.live.without_board_feet, 1);
  EXPECT_FALSE(area.live.cords) << "30 in is outside the cord table";
  EXPECT_EQ(area.live.without_cords, 1);
}

TEST(Volume, OfADeadTreeIsNotTold) {
  TreeFacts tree{.species = SpeciesCode{802}, .dbh = test::dbh_in(16.0)};
  tree.half_logs = 4;
  const Species oak = *test::test_species().find(tree.species);
  EXPECT_TRUE(volumes_of(tree, oak, EstimateOptions{}).board_feet);
  EXPECT_TRUE(volumes_of(tree, oak, EstimateOptions{}).cords);
  tree.status = TreeStatus::dead;
  EXPECT_FALSE(volumes_of(tree, oak, EstimateOptions{}).board_feet);
  EXPECT_FALSE(volumes_of(tree, oak, EstimateOptions{}).cords);
}

TEST(Volume, GoesByTheLogRuleAsked) {
  TestCruise cruise;
  const StandId stand = cruise.stand("Ridge", 40.0);
  cruise.tree(cruise.plot(stand), 802, 16.0).facts.half_logs = 4;
  EstimateOptions options;
  options.log_rule = LogRule::doyle;
  const double doyle = only_stand(cruise.data, options).live.board_feet->mean.value;
  options.log_rule = LogRule::international;
  EXPECT_LT(doyle, only_stand(cruise.data, options).live.board_feet->mean.value);
}

/// Two stands with 1/1000-acre regeneration plots: oak on two of four, and on one of two.
TestCruise seedlings() {
  TestCruise cruise;
  cruise.data.cruises[0].regen_area = 0.001;
  const StandId ridge = cruise.stand("Ridge", 75.0);
  cruise.regen(cruise.plot(ridge, PlotStatus::empty), 802, RegenHeight::under_1_ft, 4);
  cruise.regen(cruise.plot(ridge, PlotStatus::empty), 833, RegenHeight::over_4_5_ft, 2);
  cruise.regen(cruise.plot(ridge, PlotStatus::empty), 316, RegenHeight::under_1_ft, 30);
  cruise.plot(ridge, PlotStatus::empty);
  const StandId cove = cruise.stand("Cove", 25.0);
  cruise.regen(cruise.plot(cove, PlotStatus::empty), 802, RegenHeight::under_1_ft, 1);
  cruise.plot(cove, PlotStatus::empty);
  return cruise;
}

TEST(Regeneration, IsToldBySpeciesAndHeightWithEveryPlotCounted) {
  // By hand: 1,000 an acre for each stem, over 4 plots: 4, 2 and 4 + 30 stems.
  const auto regen = only_stand(seedlings().data).regen.value();
  ASSERT_EQ(regen.cells.size(), 3U);
  EXPECT_EQ(regen.plots, 4);
  EXPECT_EQ(regen.cells[0].species, SpeciesCode{316});
  EXPECT_DOUBLE_EQ(regen.cells[0].stems.mean.value, 30.0 * 1000.0 / 4.0);
  EXPECT_DOUBLE_EQ(regen.oak[0].mean.value, 1000.0);
  EXPECT_EQ(regen.oak[1].trust, Trust::not_found);
  EXPECT_DOUBLE_EQ(regen.oak[2].mean.value, 500.0);
  EXPECT_DOUBLE_EQ(regen.all[0].mean.value, 8500.0);
}

TEST(Regeneration, SaysOnWhatShareOfPlotsAnOakStands) {
  const auto e = estimate(seedlings().data);
  const auto stand = e.stands[0].figures->regen->oak_plots.value();
  EXPECT_DOUBLE_EQ(stand.share.value, 50.0);
  EXPECT_EQ(stand.found, 2);
  const auto all = e.all->regen->oak_plots.value();
  EXPECT_DOUBLE_EQ(all.share.value, 0.75 * 50.0 + 0.25 * 50.0);
  EXPECT_LE(all.hi->value, 100.0);
  EXPECT_GE(all.lo->value, 0.0);
}

TEST(CruiseEstimate, TwoPlotsAStandAreEnoughToTellHowManyMoreAndOneIsNot) {
  TestCruise cruise;
  const StandId ridge = cruise.stand("Ridge", 40.0);
  const StandId cove = cruise.stand("Cove", 20.0);
  for (const StandId stand : {ridge, ridge, cove}) {
    const PlotId plot = cruise.plot(stand);
    for (std::size_t i = 0; i < cruise.data.plots.size(); ++i) cruise.tree(plot, 802, 12.0);
  }
  EXPECT_EQ(estimate(cruise.data).all->need.error().code, ErrorCode::too_few_plots);
  cruise.tree(cruise.plot(cove), 802, 12.0);
  EXPECT_TRUE(estimate(cruise.data).all->need.has_value());
}

TEST(Regeneration, ALineThatCountsNoneIsNoOak) {
  // By hand: oaks on one plot of two; on the other somebody wrote down a zero.
  TestCruise cruise;
  cruise.data.cruises[0].regen_area = 0.001;
  const StandId flat = cruise.stand("Flat", 40.0);
  cruise.regen(cruise.plot(flat, PlotStatus::empty), 802, RegenHeight::under_1_ft, 3);
  cruise.regen(cruise.plot(flat, PlotStatus::empty), 833, RegenHeight::under_1_ft, 0);
  const auto regen = only_stand(cruise.data).regen.value();
  EXPECT_DOUBLE_EQ(regen.oak_plots->share.value, 50.0);
}

TEST(Regeneration, IsNotToldWhereSeedlingsWereNotCounted) {
  TestCruise cruise;
  cruise.tree(cruise.plot(cruise.stand("A", 40.0)), 802, 12.0);
  EXPECT_FALSE(only_stand(cruise.data).regen);
}

TEST(Regeneration, HasNoShareOverPlotsOfDifferentSize) {
  TestCruise cruise = seedlings();
  cruise.next_cruise(PointDesign{}).regen_area = 0.01;
  const StandId flat = cruise.stand("Flat", 10.0);
  cruise.regen(cruise.plot(flat, PlotStatus::empty), 802, RegenHeight::under_1_ft, 3);
  cruise.plot(flat, PlotStatus::empty);
  const auto e = estimate(cruise.data);
  EXPECT_TRUE(e.stands[2].figures->regen->oak_plots);
  EXPECT_FALSE(e.all->regen->oak_plots);
  EXPECT_GT(e.all->regen->oak[0].mean.value, 0.0);
}

}  // namespace
}  // namespace oaklight
