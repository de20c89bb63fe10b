#include "core/stand/composition.hpp"

#include <gtest/gtest.h>

#include "core/sample/cruise_estimate.hpp"
#include "core/stand/stand_table.hpp"
#include "tests/support/test_cruise.hpp"

namespace oaklight {
namespace {

using test::TestCruise;

Result<Composition> composition_of(const TractData& data) {
  const auto cruised = cruised_stands(data).value();
  std::vector<const StandSample*> samples;
  for (const CruisedStand& c : cruised) samples.push_back(&c.sample.value());
  return composition(samples, test::test_species());
}

TEST(Composition, AddsUpToTheWholeLargestFirst) {
  // By definition: shares of a whole, in percent.
  const auto c = composition_of(test::read_oracle_points().data).value();
  double sum = 0.0;
  for (std::size_t i = 0; i < c.species.size(); ++i) {
    sum += c.species[i].part.share.value;
    if (i == 0) continue;
    EXPECT_LE(c.species[i].part.share, c.species[i - 1].part.share);
  }
  EXPECT_EQ(c.species.size(), 8U);
  EXPECT_NEAR(sum, 100.0, 1e-9);
  EXPECT_NEAR(c.oak.share.value, c.white_oak.share.value + c.red_oak.share.value, 1e-9);
}

TEST(Composition, IsTheRatioOfTheMeansOverStands) {
  // tests/golden/oracle: oak 45.29520295203 of 80.562730627306 ft2 an acre.
  const auto c = composition_of(test::read_oracle_points().data).value();
  EXPECT_NEAR(c.oak.share.value, 100.0 * 45.29520295203 / 80.562730627306, 1e-8);
  EXPECT_GT(c.oak.se->value, 0.0);
}

TEST(Composition, HasTheErrorOfPlotsAndNotOfTrees) {
  // Derived: every plot is all oak or all maple, 10 trees each. Trees by themselves would claim
  // sqrt(0.25 / 40) = 7.9 points; the four plots say sqrt(0.25 / 3) = 28.9.
  TestCruise cruise;
  const StandId stand = cruise.stand("Flat", 40.0);
  for (const int fia : {802, 316, 802, 316}) {
    const PlotId plot = cruise.plot(stand);
    for (int i = 0; i < 10; ++i) cruise.tree(plot, fia, 12.0);
  }
  const auto c = composition_of(cruise.data).value();
  EXPECT_DOUBLE_EQ(c.oak.share.value, 50.0);
  EXPECT_NEAR(c.oak.se->value, 28.8675, 5e-5);
}

TEST(Composition, LeavesOutDeadTreesAndNeedsALiveOne) {
  // By hand: the one live tree is all there is.
  TestCruise cruise;
  const PlotId plot = cruise.plot(cruise.stand("Flat", 40.0));
  cruise.tree(plot, 316, 12.0).facts.status = TreeStatus::dead;
  EXPECT_EQ(composition_of(cruise.data).error().code, ErrorCode::no_data);
  cruise.tree(plot, 802, 12.0);
  EXPECT_DOUBLE_EQ(composition_of(cruise.data)->white_oak.share.value, 100.0);
  EXPECT_EQ(composition_of(cruise.data)->species.size(), 1U) << "no line for the dead maple";
  EXPECT_FALSE(composition_of(cruise.data)->oak.se) << "one plot tells no error";
}

TEST(Composition, HasTheTreesThatWereOnlyCounted) {
  // By hand: 10 ft2 for each tree; two oaks measured, and at a count point one oak and one maple.
  TestCruise cruise;
  const StandId stand = cruise.stand("Flat", 40.0);
  const PlotId plot = cruise.plot(stand);
  cruise.tree(plot, 802, 12.0);
  cruise.tree(plot, 802, 12.0);
  cruise.plot(stand);
  cruise.data.plots.back().note = "[count point: 802 1, 316 1]";
  EXPECT_DOUBLE_EQ(composition_of(cruise.data)->white_oak.share.value, 75.0);
  cruise.data.plots.back().note = "[count point: 1 1]";
  EXPECT_EQ(composition_of(cruise.data).error().code, ErrorCode::unknown_species);
}

TEST(Composition, PutsEqualSharesInTheOrderOfTheirCodes) {
  TestCruise cruise;
  const PlotId plot = cruise.plot(cruise.stand("Flat", 40.0));
  for (const int fia : {833, 316, 802, 621}) cruise.tree(plot, fia, 12.0);
  cruise.tree(plot, 621, 12.0);
  std::vector<int> order;
  const auto c = composition_of(cruise.data).value();
  for (const SpeciesShare& s : c.species) order.push_back(s.species.fia);
  EXPECT_EQ(order, (std::vector{621, 316, 802, 833}));
}

TEST(StandTable, HasEveryClassFromSmallestToLargestAndSpeciesByBasalArea) {
  // By hand: 10 ft2 for each tree: two oaks of 6 in, one of 14 in, a maple of 8 in.
  TestCruise cruise;
  const PlotId plot = cruise.plot(cruise.stand("Flat", 40.0));
  for (const double dbh : {6.0, 6.4, 14.0}) cruise.tree(plot, 802, dbh);
  cruise.tree(plot, 316, 8.0);
  const auto e = cruise_estimate(cruise.data, test::test_species(), EstimateOptions{}).value();
  const AreaEstimate& area = e.stands[0].figures.value();
  const auto table = stand_table(area, ClassWidth::two_inches);
  ASSERT_EQ(table.columns, (std::vector{SpeciesCode{802}, SpeciesCode{316}}));
  ASSERT_EQ(table.rows.size(), 5U);  // 6, 8, 10, 12, 14
  EXPECT_EQ(table.rows[0].dbh_class, DbhClass{6});
  EXPECT_DOUBLE_EQ(table.rows[0].cells[0]->ba.mean.value, 20.0);
  EXPECT_EQ(table.rows[0].cells[1], nullptr);
  EXPECT_DOUBLE_EQ(table.rows[1].cells[1]->ba.mean.value, 10.0);
  EXPECT_EQ(table.rows[2].all, nullptr) << "no tree of 10 in";
  EXPECT_DOUBLE_EQ(table.rows[4].all->ba.mean.value, 10.0);
  EXPECT_DOUBLE_EQ(table.column_sums[0]->ba.mean.value, 30.0);
  EXPECT_EQ(table.all, &area.live);
}

TEST(StandTable, OfNoTreesHasNoRows) {
  TestCruise cruise;
  cruise.plot(cruise.stand("Flat", 40.0), PlotStatus::empty);
  const auto e = cruise_estimate(cruise.data, test::test_species(), EstimateOptions{}).value();
  EXPECT_TRUE(stand_table(*e.all, ClassWidth::two_inches).rows.empty());
}

}  // namespace
}  // namespace oaklight
