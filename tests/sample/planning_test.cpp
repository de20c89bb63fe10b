#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numeric>
#include <vector>

#include "core/sample/allocation.hpp"
#include "core/sample/plot_spacing.hpp"
#include "core/sample/plots_needed.hpp"

namespace oaklight {
namespace {

double reached(int n, double cv) { return student_t(Confidence{}, n - 1) * cv / std::sqrt(n); }

TEST(PlotsNeeded, IsTheSmallestNumberWhoseOwnIntervalIsNarrowEnough) {
  for (double cv = 1.0; cv < 200.0; cv *= 1.3) {
    for (const double goal : {2.0, 5.0, 10.0, 20.0, 50.0}) {
      const int n = plots_needed(Percent{cv}, {Percent{goal}, Confidence{}}).value();
      EXPECT_LE(reached(n, cv), goal + 1e-9) << cv << " " << goal;
      if (n == 2) continue;
      EXPECT_GT(reached(n - 1, cv), goal) << cv << " " << goal;
    }
  }
}

TEST(PlotsNeeded, EndsWherePuttingTheAnswerBackIntoTGoesRound) {
  // Derived: with n plots the formula asks for ceil((t(n-1) cv / goal)^2). Where it asks for 6 with
  // 5 and for 5 with 6 it has no answer; the smallest n that meets the goal by its own t is 6.
  const double cv = 17.0;
  const double goal = 20.0;
  const auto again = [&](int n) {
    const double x = student_t(Confidence{}, n - 1) * cv / goal;
    return static_cast<int>(std::ceil(x * x));
  };
  ASSERT_EQ(again(5), 6);
  ASSERT_EQ(again(6), 5);
  EXPECT_EQ(plots_needed(Percent{cv}, {Percent{goal}, Confidence{}}).value(), 6);
}

TEST(PlotsNeeded, NeverExceedsAStandOfFixedPlots) {
  for (const double population : {2.0, 10.0, 100.0, 1000.0}) {
    const auto n = plots_needed(Percent{120.0}, {Percent{1.0}, Confidence{}}, population).value();
    EXPECT_LE(n, population);
    EXPECT_LE(n, plots_needed(Percent{120.0}, {Percent{1.0}, Confidence{}}).value());
  }
}

TEST(PlotsNeeded, AreTwoWhenPlotsAgree) { EXPECT_EQ(plots_needed(Percent{0.0}, {}).value(), 2); }

TEST(PlotsNeeded, RefusesGoalsThatCannotBePlanned) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(plots_needed(Percent{nan}, {}).error().code, ErrorCode::out_of_range);
  EXPECT_EQ(plots_needed(Percent{-1.0}, {}).error().code, ErrorCode::out_of_range);
  EXPECT_EQ(plots_needed(Percent{40.0}, {Percent{0.0}, {}}).error().code, ErrorCode::out_of_range);
  EXPECT_EQ(plots_needed(Percent{40.0}, {Percent{nan}, {}}).error().code, ErrorCode::out_of_range);
  EXPECT_EQ(plots_needed(Percent{400.0}, {Percent{0.1}, {}}).error().code, ErrorCode::out_of_range);
}

TEST(PlotPlan, SpreadsByAcresTimesSpreadAndMeetsTheGoal) {
  const std::vector<PlannedStand> stands{
      {Acres{42.0}, 104.0, 48.0}, {Acres{18.5}, 72.5, 42.0}, {Acres{75.0}, 69.0, 53.0}};
  const auto plan = plan_plots(stands, {Percent{20.0}, Confidence{}}).value();
  EXPECT_EQ(plan.plots, std::accumulate(plan.by_stand.begin(), plan.by_stand.end(), 0));
  EXPECT_GT(plan.by_stand[2], plan.by_stand[0]);
  EXPECT_GT(plan.by_stand[0], plan.by_stand[1]);
  const std::vector<double> acres{42.0, 18.5, 75.0};
  const std::vector<double> sds{48.0, 42.0, 53.0};
  const std::vector<double> plots(plan.by_stand.begin(), plan.by_stand.end());
  const double mean = (42.0 * 104.0 + 18.5 * 72.5 + 75.0 * 69.0) / 135.5;
  const double half =
      student_t(Confidence{}, plan.plots - 3) * allocation_se(acres, sds, plots) / mean;
  EXPECT_LE(100.0 * half, 20.0);
  EXPECT_GT(100.0 * half, 18.0) << "far more plots than the goal asks for";
}

TEST(PlotPlan, GivesEveryStandAtLeastTwo) {
  const std::vector<PlannedStand> stands{{Acres{100.0}, 80.0, 40.0}, {Acres{1.0}, 80.0, 0.0}};
  const auto plan = plan_plots(stands, {Percent{20.0}, Confidence{}}).value();
  EXPECT_EQ(plan.by_stand[1], 2);
}

TEST(PlotPlan, CannotRestOnNothing) {
  EXPECT_EQ(plan_plots({}, {}).error().code, ErrorCode::no_data);
  const std::vector<PlannedStand> bare{{Acres{10.0}, 0.0, 0.0}, {Acres{10.0}, 0.0, 0.0}};
  EXPECT_EQ(plan_plots(bare, {}).error().code, ErrorCode::no_data);
}

TEST(RuleOfThumb, NeverAsksForFewerPointsOnMoreAcres) {
  int last = 0;
  for (double acres = 0.5; acres <= 200.0; acres += 0.5) {
    const int n = rule_of_thumb_points(Acres{acres}).value();
    EXPECT_GE(n, last) << acres;
    last = n;
  }
  // Above 10 acres one an acre, and part points count up.
  EXPECT_EQ(rule_of_thumb_points(Acres{10.0}).value(), 10);
  EXPECT_EQ(rule_of_thumb_points(Acres{10.05}).value(), 11);
  EXPECT_EQ(rule_of_thumb_points(Acres{201.0}).error().code, ErrorCode::outside_table);
  EXPECT_EQ(rule_of_thumb_points(Acres{0.0}).error().code, ErrorCode::out_of_range);
}

TEST(Allocation, GivesOutAllPlots) {
  const std::vector<double> acres{42.0, 18.5, 75.0};
  const std::vector<double> sds{48.0, 42.0, 53.0};
  for (const auto& shares : {proportional_shares(40, acres), neyman_shares(40, acres, sds)}) {
    EXPECT_NEAR(std::accumulate(shares.begin(), shares.end(), 0.0), 40.0, 1e-9);
  }
}

TEST(Allocation, ByNeymanIsNeverWorseThanByAcres) {
  const std::vector<double> acres{42.0, 18.5, 75.0};
  for (const double sd : {1.0, 20.0, 42.0, 100.0}) {
    const std::vector<double> sds{48.0, sd, 53.0};
    EXPECT_LE(allocation_se(acres, sds, neyman_shares(40, acres, sds)),
              allocation_se(acres, sds, proportional_shares(40, acres)) + 1e-12);
  }
}

TEST(Allocation, WithoutAnySpreadGoesByAcres) {
  const std::vector<double> acres{30.0, 10.0};
  EXPECT_EQ(neyman_shares(40, acres, std::vector{0.0, 0.0}), proportional_shares(40, acres));
}

TEST(PlotSpacing, TilesTheStand) {
  const Feet square = square_spacing(Acres{40.0}, 20);
  EXPECT_NEAR(square.value * square.value * 20, 40.0 * 43560.0, 1e-6);
  EXPECT_NEAR(spacing_on_lines(Acres{40.0}, 20, square).value, square.value, 1e-9);
}

}  // namespace
}  // namespace oaklight
