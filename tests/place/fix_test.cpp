// Fixes of a receiver: which are poor, what many at one place say, which way one walks.
#include "core/place/fix.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/place/geodesy.hpp"

namespace oaklight {
namespace {

const Position kCentre{Degrees{38.1}, Degrees{-82.5}};
constexpr Metres kLimit{10.0};

Fix fix_at(double east_m, double north_m, std::optional<double> accuracy_m = 4.0,
           std::int64_t ms = 0) {
  Fix fix;
  fix.at = position_from_local(kCentre, {to_feet(Metres{east_m}), to_feet(Metres{north_m})});
  if (accuracy_m) fix.accuracy = Metres{*accuracy_m};
  fix.ms = ms;
  return fix;
}

double metres_off(Position a, Position b) { return to_metres(leg_between(a, b).distance).value; }

TEST(Fix, IsPoorWithAWorseAccuracyThanAllowedOrWithoutOne) {
  EXPECT_FALSE(poor(fix_at(0, 0, 10.0), kLimit));
  EXPECT_TRUE(poor(fix_at(0, 0, 10.1), kLimit));
  EXPECT_TRUE(poor(fix_at(0, 0, std::nullopt), kLimit)) << "not told is not good";
}

TEST(MeanFix, OfNoneIsNothing) { EXPECT_FALSE(mean_fix({}, kLimit)); }

TEST(MeanFix, IsTheMiddleWithItsSpread) {
  // Derived: four fixes 3 m off to each side lie 3 m from their middle.
  const auto mean = mean_fix({fix_at(3, 0), fix_at(-3, 0), fix_at(0, 3), fix_at(0, -3)}, kLimit);
  ASSERT_TRUE(mean);
  EXPECT_LT(metres_off(mean->at, kCentre), 1e-6);
  EXPECT_NEAR(mean->spread.value, 3.0, 1e-6);
  EXPECT_EQ(mean->fixes, 4);
  EXPECT_EQ(mean->poor_fixes, 0);
  EXPECT_FALSE(mean->poor);
  ASSERT_TRUE(mean->accuracy);
  EXPECT_NEAR(mean->accuracy->value, 4.0, 1e-12) << "never divided by the root of their number";
}

TEST(MeanFix, IsNoBetterThanItsSpread) {
  const auto mean = mean_fix({fix_at(9, 0, 2.0), fix_at(-9, 0, 2.0)}, kLimit);
  ASSERT_TRUE(mean && mean->accuracy);
  EXPECT_NEAR(mean->accuracy->value, 9.0, 1e-6);
}

TEST(MeanFix, LeavesPoorFixesOutWhileThereIsABetterOne) {
  const auto mean = mean_fix({fix_at(1, 0), fix_at(200, 0, 60.0), fix_at(300, 0, {})}, kLimit);
  ASSERT_TRUE(mean);
  EXPECT_EQ(mean->fixes, 1);
  EXPECT_EQ(mean->poor_fixes, 2);
  EXPECT_NEAR(metres_off(mean->at, fix_at(1, 0).at), 0.0, 1e-6);
}

TEST(MeanFix, OfPoorFixesAloneSaysSo) {
  // By hand: the mean of 30 and 20 m.
  const auto told = mean_fix({fix_at(2, 0, 30.0), fix_at(-2, 0, 20.0)}, kLimit);
  ASSERT_TRUE(told && told->accuracy);
  EXPECT_TRUE(told->poor);
  EXPECT_EQ(told->fixes, 2);
  EXPECT_NEAR(told->accuracy->value, 25.0, 1e-12);
  const auto untold = mean_fix({fix_at(0, 0, {})}, kLimit);
  ASSERT_TRUE(untold);
  EXPECT_TRUE(untold->poor);
  EXPECT_FALSE(untold->accuracy) << "not told stays nothing, never 0";
}

TEST(MeanFix, ComesNearerToThePlaceThanOneFix) {
  // A law: the mean of n independent fixes errs by sigma / sqrt(n) a side. 400 means of 25 fixes
  // with sigma 5 m: the mean error a side is 1 m, held within 4.5 standard errors of a variance.
  std::mt19937_64 chance(11);
  std::normal_distribution<double> off(0.0, 5.0);
  double squares = 0.0;
  constexpr int kMeans = 400;
  for (int i = 0; i < kMeans; ++i) {
    std::vector<Fix> fixes;
    for (int k = 0; k < 25; ++k) fixes.push_back(fix_at(off(chance), off(chance)));
    const LocalFeet place = local_feet(kCentre, mean_fix(fixes, kLimit)->at);
    squares += std::pow(to_metres(place.east).value, 2) + std::pow(to_metres(place.north).value, 2);
  }
  const double variance = squares / (2.0 * kMeans);
  EXPECT_NEAR(variance, 1.0, 4.5 * std::sqrt(2.0 / (2.0 * kMeans)));
}

Fix walked(double course, double speed, std::int64_t ms) {
  Fix fix = fix_at(0, 0, 4.0, ms);
  fix.course = Degrees{course};
  fix.speed = MetresPerSecond{speed};
  return fix;
}

TEST(Heading, IsTheCourseOfOneWhoWalks) {
  Heading heading;
  EXPECT_FALSE(heading.at(0));
  heading.add(walked(123.0, 1.2, 1000));
  EXPECT_EQ(heading.at(1000), Degrees{123.0});
  EXPECT_EQ(heading.at(6000), Degrees{123.0});
  EXPECT_FALSE(heading.at(6001)) << "an old course is none";
}

TEST(Heading, OfOneWhoStandsIsNone) {
  Heading heading;
  heading.add(walked(123.0, 1.2, 1000));
  heading.add(walked(271.0, 0.1, 2000));
  EXPECT_FALSE(heading.at(2000)) << "the course of a standing receiver is noise";
}

TEST(Heading, IsTheWayBetweenFixesWhereNoCourseIsTold) {
  // By hand: each fix lies due south of the one before.
  Heading heading;
  for (int i = 0; i <= 6; ++i) {
    heading.add(fix_at(0.0, -1.5 * i, 4.0, 1000 * i));
    if (i < 6) {
      EXPECT_FALSE(heading.at(1000 * i)) << "under 8 m after " << i << " s";
    }
  }
  ASSERT_TRUE(heading.at(6000));
  EXPECT_NEAR(heading.at(6000)->value, 180.0, 0.01);
}

}  // namespace
}  // namespace oaklight
