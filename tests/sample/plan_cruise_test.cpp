#include "core/sample/plan_cruise.hpp"

#include <gtest/gtest.h>

#include "core/sample/plot_spacing.hpp"

namespace oaklight {
namespace {

ErrorGoal goal(double pct, double level = 0.95) {
  return {Percent{pct}, Confidence::from_share(level).value()};
}
PlannedStand stand(double acres, double mean, double cv) {
  return {Acres{acres}, mean, cv / 100.0 * mean};
}

TEST(PlanCruise, OfOneStandIsTheTableOfPlotsNeeded) {
  // Derived table of plots by CV and error (tests/published/plots_needed.tsv): CV 50 %, error 20 %
  // at 95 % takes 27 plots, CV 40 % and 15 % at 90 % takes 22.
  const std::vector<PlannedStand> one = {stand(40.0, 90.0, 50.0)};
  for (const Allocation by : {Allocation::proportional, Allocation::neyman}) {
    EXPECT_EQ(plan_for_error(one, goal(20.0), by)->plots, 27);
    EXPECT_EQ(plan_for_error(std::vector{stand(10.0, 70.0, 40.0)}, goal(15.0, 0.90), by)->plots,
              22);
  }
}

TEST(PlanCruise, MeetsItsGoalAndOnePlotLessDoesNot) {
  const std::vector<PlannedStand> three = {stand(52, 90, 35), stand(38, 80, 55), stand(28, 60, 70)};
  for (const Allocation by : {Allocation::proportional, Allocation::neyman}) {
    const auto plan = plan_for_error(three, goal(15.0), by).value();
    EXPECT_LE(plan.half_width.value, 15.0 + 1e-9);
    int sum = 0;
    for (const int plots : plan.by_stand) sum += plots;
    EXPECT_EQ(sum, plan.plots);
    const auto fewer = plan_for_count(three, plan.plots - 4, goal(15.0).confidence, by).value();
    EXPECT_GT(fewer.half_width.value, 15.0);
  }
  EXPECT_LE(plan_for_error(three, goal(15.0), Allocation::neyman)->plots,
            plan_for_error(three, goal(15.0), Allocation::proportional)->plots + 1);
}

TEST(PlanCruise, SharesByAcresOrByAcresAndSpread) {
  // Derived: 30 plots over 20 and 10 acres are 20 and 10; with spreads 1 to 4 they are
  // 30 * 20 / 60 = 10 and 30 * 40 / 60 = 20.
  const std::vector<PlannedStand> two = {stand(20, 100, 20), stand(10, 100, 80)};
  const Confidence c;
  EXPECT_EQ(plan_for_count(two, 30, c, Allocation::proportional)->by_stand, (std::vector{20, 10}));
  EXPECT_EQ(plan_for_count(two, 30, c, Allocation::neyman)->by_stand, (std::vector{10, 20}));
}

TEST(PlanCruise, LeavesNoStandWithOnePlot) {
  const std::vector<PlannedStand> two = {stand(100, 90, 40), stand(1, 90, 40)};
  EXPECT_EQ(plan_for_count(two, 10, Confidence(), Allocation::proportional)->by_stand[1], 2);
}

TEST(PlanCruise, RefusesWhatCannotBePlanned) {
  const Confidence c;
  EXPECT_EQ(plan_for_count({}, 10, c, Allocation::neyman).error().code, ErrorCode::no_data);
  const std::vector<PlannedStand> one = {stand(40, 90, 50)};
  EXPECT_EQ(plan_for_count(one, 0, c, Allocation::neyman).error().code, ErrorCode::out_of_range);
  EXPECT_EQ(plan_for_error(one, goal(0.0), Allocation::proportional).error().code,
            ErrorCode::out_of_range);
}

TEST(PlanCruise, KnowsUsualSpreads) {
  // From memory: 20-30, 30-60, 60-100 %.
  EXPECT_DOUBLE_EQ(usual_spread(StandKind::even).middle().value, 25.0);
  EXPECT_DOUBLE_EQ(usual_spread(StandKind::mixed).middle().value, 45.0);
  EXPECT_DOUBLE_EQ(usual_spread(StandKind::patchy).middle().value, 80.0);
}

TEST(PlanCruise, HoursComeOfWorkAndOfWalking) {
  // Derived: 20 points on 40 acres lie 295.2 ft apart (published spacing); 20 x 15 min, and
  // 20 x 295.2 ft at 100 ft a minute are 59.0 min: 5.98 h.
  EXPECT_NEAR(expected_hours(20, Acres{40.0}, {15.0, 100.0}), 5.984, 0.001);
  EXPECT_EQ(plots_in_hours(5.985, Acres{40.0}, {15.0, 100.0}), 20);
  EXPECT_EQ(plots_in_hours(5.983, Acres{40.0}, {15.0, 100.0}), 19);
  EXPECT_EQ(plots_in_hours(0.0, Acres{40.0}, {}), 0);
  for (int n = 1; n < 200; n += 7) {
    const double hours = expected_hours(n, Acres{73.0}, {12.0, 80.0});
    EXPECT_EQ(plots_in_hours(hours + 1e-6, Acres{73.0}, {12.0, 80.0}), n);
  }
}

TEST(PlanCruise, AdvisesAFactorByBasalAreaAndDiameter) {
  // Derived: 90 ft2/ac over factor 15 are 6 trees a point; a 12 in tree counts to
  // 12 sqrt(75.625 / 15) = 26.9 ft.
  const FactorAdvice oak = advise_factor(SquareFeetPerAcre{90.0}, Inches{12.0});
  EXPECT_DOUBLE_EQ(oak.factor, 15.0);
  EXPECT_NEAR(oak.trees_a_point, 6.0, 1e-12);
  EXPECT_NEAR(oak.limit.value, 26.94, 0.01);
  EXPECT_DOUBLE_EQ(advise_factor(SquareFeetPerAcre{40.0}, Inches{6.0}).factor, 5.0);
  // 60 ft2/ac would ask for 10, under which a 20 in tree counts to 55 ft: 15 keeps it to 45 ft.
  EXPECT_DOUBLE_EQ(advise_factor(SquareFeetPerAcre{60.0}, Inches{20.0}).factor, 15.0);
}

TEST(PlanCruise, AdvisesAPlotByBasalAreaAndDiameter) {
  // Derived: 90 ft2/ac of 12 in trees (0.7854 ft2 each) are 114.6 an acre, 11.5 on 1/10 acre.
  const PlotAdvice oak = advise_plot(SquareFeetPerAcre{90.0}, Inches{12.0});
  EXPECT_DOUBLE_EQ(oak.area.value, 0.1);
  EXPECT_NEAR(oak.trees_a_plot, 11.46, 0.01);
  EXPECT_NEAR(oak.radius.value, 37.24, 0.01);  // published: 37.2 ft
  EXPECT_DOUBLE_EQ(advise_plot(SquareFeetPerAcre{70.0}, Inches{5.0}).area.value, 0.02);
  EXPECT_DOUBLE_EQ(advise_plot(SquareFeetPerAcre{90.0}, Inches{18.0}).area.value, 0.2);
}

}  // namespace
}  // namespace oaklight
