// Two visits to one stand in one tract file: the newest counts, the earlier one can be asked for.

#include "core/sample/visits.hpp"

#include <gtest/gtest.h>

#include "core/sample/stand_sample.hpp"
#include "tests/support/test_cruise.hpp"

namespace oaklight::test {
namespace {

/// Plots 1 and 2 of one stand in 2026, and the same again in 2031.
class Revisit : public testing::Test {
 protected:
  void SetUp() override {
    cruise_.data.cruises.back().name = "2026";
    cruise_.data.cruises.back().date = "2026-06-09";
    stand_ = cruise_.stand("Upland", 40.0);
    visit(12.0);
    cruise_.next_cruise(PointDesign{10.0, UnitSystem::us}).name = "2031";
    cruise_.data.cruises.back().date = "2031-06-11";
    visit(14.0);
  }
  void visit(double dbh) {
    for (const char* label : {"1", "2"}) {
      const PlotId plot = cruise_.plot(stand_);
      cruise_.data.plots.back().label = label;
      cruise_.tree(plot, 802, dbh);
    }
  }
  double dbh_of(const TractData& data) {
    return stand_sample(data, stand_).value().trees.front().tree->facts.dbh.inches().value;
  }
  TestCruise cruise_{PointDesign{10.0, UnitSystem::us}};
  StandId stand_;
};

TEST_F(Revisit, TheNewestVisitIsHowTheStandStandsNow) {
  // By hand: trees of 12 in in 2026, of 14 in in 2031.
  const StandSample sample = stand_sample(cruise_.data, stand_).value();
  EXPECT_EQ(sample.plots.size(), 2U);
  EXPECT_EQ(visits_left_out(cruise_.data),
            (VisitsLeftOut{{stand_, cruise_.data.cruises.front().id}}));
  EXPECT_EQ(sample.trees.size(), 2U);
  EXPECT_NEAR(dbh_of(cruise_.data), 14.0, 1e-9);
}

TEST_F(Revisit, TheVisitBeforeCanBeAskedFor) {
  // By hand: trees of 12 in in 2026.
  const TractData before = before_newest_visit(cruise_.data);
  EXPECT_EQ(before.plots.size(), 2U);
  EXPECT_EQ(before.trees.size(), 2U);
  EXPECT_NEAR(dbh_of(before), 12.0, 1e-9);
  EXPECT_TRUE(visits_left_out(before).empty());
}

TEST_F(Revisit, OfThreeVisitsTheOneBeforeTheNewestIsTheSecond) {
  // By hand: trees of 14 in in 2031.
  cruise_.next_cruise(PointDesign{10.0, UnitSystem::us}).date = "2036-06-10";
  visit(15.5);
  EXPECT_NEAR(dbh_of(cruise_.data), 15.5, 1e-9);
  EXPECT_NEAR(dbh_of(before_newest_visit(cruise_.data)), 14.0, 1e-9);
}

TEST_F(Revisit, AVisitThatIsOnlyPlannedDoesNotReplaceTheLast) {
  // By hand: trees of 12 in in 2026; 2031 was not visited.
  for (std::size_t i = 2; i < 4; ++i) cruise_.data.plots[i].status = PlotStatus::planned;
  cruise_.data.trees.erase(cruise_.data.trees.begin() + 2, cruise_.data.trees.end());
  EXPECT_NEAR(dbh_of(cruise_.data), 12.0, 1e-9);
  EXPECT_EQ(before_newest_visit(cruise_.data).plots.size(), 4U);
}

TEST_F(Revisit, ByAnotherDesignReplacesTheLastToo) {
  // By hand: trees of 14 in in 2031.
  cruise_.data.cruises.back().design = FixedDesign{0.2, {}, {}, UnitSystem::us};
  EXPECT_NEAR(dbh_of(cruise_.data), 14.0, 1e-9);
}

TEST_F(Revisit, WithoutADayIsRefusedAsPlotsOfOneLabel) {
  cruise_.data.cruises.back().date.clear();
  EXPECT_EQ(stand_sample(cruise_.data, stand_).error().code, ErrorCode::duplicate);
  cruise_.data.cruises.back().date = cruise_.data.cruises.front().date;
  EXPECT_EQ(stand_sample(cruise_.data, stand_).error().code, ErrorCode::duplicate);
}

TEST_F(Revisit, PlotsOfOtherLabelsAreOneSampleStill) {
  cruise_.data.plots[2].label = "3";
  cruise_.data.plots[3].label = "4";
  const StandSample sample = stand_sample(cruise_.data, stand_).value();
  EXPECT_EQ(sample.plots.size(), 4U);
  EXPECT_TRUE(visits_left_out(cruise_.data).empty());
}

TEST_F(Revisit, ACruiseCanBeAskedForByItsName) {
  // By hand: trees of 12 in in 2026, of 14 in in 2031.
  EXPECT_NEAR(dbh_of(of_cruise(cruise_.data, "2026")), 12.0, 1e-9);
  EXPECT_NEAR(dbh_of(of_cruise(cruise_.data, "2031")), 14.0, 1e-9);
  EXPECT_TRUE(of_cruise(cruise_.data, "2027").plots.empty());
}

}  // namespace
}  // namespace oaklight::test
