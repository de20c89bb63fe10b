// What changed in a stand between two visits.

#include "core/stand/stand_change.hpp"

#include <gtest/gtest.h>

#include "tests/sample/ledger.hpp"
#include "tests/support/oracle_figures.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

TEST(AreaChange, OverStandsAsTheSurveyPackageSays) {
  // Figures: tests/golden/oracle. Acres by hand: 42.0 + 18.5 + 75.0.
  const OracleCruise before = read_oracle_points();
  const OracleCruise after = read_oracle_later();
  const auto first = samples_of(before.data);
  const auto second = samples_of(after.data);
  std::vector<PairedStand> pairs;
  for (std::size_t h = 0; h < first.size(); ++h) {
    pairs.push_back(pair_stand(first[h], second[h]).value());
  }
  std::vector<const PairedStand*> all;
  for (const PairedStand& p : pairs) all.push_back(&p);
  const AreaChange area = area_change(all, test_species(), {}).value();

  Ledger ledger("expected_paired.json");
  ledger.expect("/all/pairs", static_cast<double>(area.pairs));
  ledger.expect("/all/ba/change", area.ba.change.value);
  ledger.expect("/all/ba/se", plain(area.ba.se));
  ledger.expect("/all/tpa/change", area.trees.change.value);
  ledger.expect("/all/tpa/se", plain(area.trees.se));
  ledger.expect("/all/stocking/before", area.stocking.before.value);
  ledger.expect("/all/stocking/change", area.stocking.change.value);
  ledger.expect("/all/stocking/se", plain(area.stocking.se));
  ledger.expect("/all/stocking/lo", plain(area.stocking.lo));
  ledger.expect("/all/stocking/hi", plain(area.stocking.hi));
  ledger.expect("/all/qmd/change", area.qmd->change.value);
  ledger.expect("/all/qmd/se", plain(area.qmd->se));
  EXPECT_DOUBLE_EQ(area.acres.value, 135.5);
  EXPECT_EQ(area.only_first, 1);
  EXPECT_EQ(area.only_second, 1);
  // No logs were seen on any tree of either visit, so that board feet would be a guess.
  EXPECT_FALSE(area.board_feet.has_value());
  EXPECT_GT(area.without_board_feet, 0);
  // Nor cords: some trees are thicker than the table of cords.
  EXPECT_FALSE(area.cords.has_value());
  EXPECT_GT(area.without_cords, 0);
}

/// One stand of three points, seen twice.
class OneStand : public testing::Test {
 protected:
  static TestCruise visit(const std::vector<double>& dbh, std::optional<int> half_logs) {
    TestCruise cruise(PointDesign{10.0, UnitSystem::us});
    const StandId stand = cruise.stand("Upland", 40.0);
    for (std::size_t i = 0; i < dbh.size(); ++i) {
      const bool empty = !(dbh[i] > 0.0);
      const PlotId plot = cruise.plot(stand, empty ? PlotStatus::empty : PlotStatus::measured);
      if (!empty) cruise.tree(plot, 802, dbh[i]).facts.half_logs = half_logs;
    }
    return cruise;
  }
  static Result<AreaChange> change(const TestCruise& before, const TestCruise& after) {
    const StandSample first = stand_sample(before.data, before.data.stands[0].id).value();
    const StandSample second = stand_sample(after.data, after.data.stands[0].id).value();
    const PairedStand pair = pair_stand(first, second).value();
    const PairedStand* one = &pair;
    return area_change({&one, 1}, test_species(), {});
  }
};

TEST_F(OneStand, APlotThatWasEmptiedCountsAsZero) {
  const AreaChange area = change(visit({12, 12, 12}, 4), visit({12, 0, 12}, 4)).value();
  // Derived: 10 ft2 a tree; differences 0, -10, 0: mean -10/3, variance 100/3, SE 10/3.
  EXPECT_NEAR(area.ba.change.value, -10.0 / 3.0, 1e-12);
  EXPECT_NEAR(area.ba.se->value, 10.0 / 3.0, 1e-12);
  EXPECT_EQ(area.ba.changed, 1);
}

TEST_F(OneStand, DeadTreesAreGone) {
  TestCruise after = visit({12, 12, 12}, 4);
  after.data.trees[0].facts.status = TreeStatus::dead;
  EXPECT_NEAR(change(visit({12, 12, 12}, 4), after).value().ba.change.value, -10.0 / 3.0, 1e-12);
}

TEST_F(OneStand, ThatLostAllItsTreesHasNoMeanDiameterLeft) {
  // By hand: one tree of 10 ft2 on each plot, and none.
  const AreaChange area = change(visit({12, 12, 12}, 4), visit({0, 0, 0}, 4)).value();
  EXPECT_FALSE(area.qmd.has_value());
  EXPECT_NEAR(area.ba.change.value, -10.0, 1e-12);
  EXPECT_NEAR(area.trees.after.value, 0.0, 1e-12);
}

TEST_F(OneStand, LogsSeenAtOneVisitOnlyAreNoGrowthInBoardFeet) {
  const TestCruise seen = visit({14, 16, 18}, 4);
  const TestCruise not_seen = visit({14, 16, 18}, std::nullopt);
  const AreaChange half = change(not_seen, seen).value();
  EXPECT_FALSE(half.board_feet.has_value());
  EXPECT_EQ(half.without_board_feet, 3);
  const AreaChange both = change(seen, visit({15, 17, 19}, 4)).value();
  ASSERT_TRUE(both.board_feet.has_value());
  // At a point a tree stands for fewer trees the thicker it is; its board feet still grow.
  EXPECT_GT(both.board_feet->change.value, 0.0);
  EXPECT_GT(both.board_feet->se->value, 0.0);
}

TEST_F(OneStand, AThinTreeIsNoFirewoodYetAndAThickOneIsUnknown) {
  const AreaChange grown = change(visit({4.6, 12, 12}, 4), visit({5.4, 12, 12}, 4)).value();
  ASSERT_TRUE(grown.cords.has_value());
  EXPECT_GT(grown.cords->change.value, 0.0);
  EXPECT_EQ(grown.cords->changed, 1);
  const AreaChange thick = change(visit({21.8, 12, 12}, 4), visit({22.4, 12, 12}, 4)).value();
  EXPECT_FALSE(thick.cords.has_value());
  EXPECT_EQ(thick.without_cords, 1);
}

TEST_F(OneStand, UnknownSpeciesIsToldAndNotLeftOut) {
  TestCruise after = visit({12, 12, 12}, 4);
  after.data.trees[0].facts.species = SpeciesCode{12345};
  EXPECT_EQ(change(visit({12, 12, 12}, 4), after).error().code, ErrorCode::unknown_species);
}

}  // namespace
}  // namespace oaklight::test
