// Moments that are kept up to date beside those that are computed anew.
#include "core/sample/running_moments.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>
#include <vector>

namespace oaklight {
namespace {

constexpr double kHeld = 0x1p-49;  // what a value may be off, by the header
constexpr double kUnit = 0x1p-53;  // of rounding in double

// Derived: 10, 20 and 60 on 3 of 5 plots: mean 18, squares 64 + 4 + 1764 + 2 * 324.
TEST(RunningMoments, AreThoseOfTheValuesThatAreThere) {
  RunningMoments kept;
  for (const double x : {10.0, 0.0, 20.0, 60.0}) kept.add(x);
  const Moments m = kept.of(5);
  EXPECT_EQ(m.plots, 5);
  EXPECT_EQ(m.found, 3);
  EXPECT_EQ(m.mean, 18.0);
  EXPECT_EQ(m.squares, 2480.0);
}

// Derived: 0.1 on one of 4 plots is 0.025.
TEST(RunningMoments, KeepNothingOfWhatWasTakenOut) {
  RunningMoments kept;
  const RunningMoments fresh;
  kept.add(0.1);
  for (int i = 0; i < 1000; ++i) {
    kept.add(1e11 / 3.0 + i);
    kept.add(1e-9 / 7.0);
  }
  for (int i = 0; i < 1000; ++i) {
    kept.remove(1e11 / 3.0 + i);
    kept.remove(1e-9 / 7.0);
  }
  EXPECT_NEAR(kept.of(4).mean, 0.025, kHeld);
  kept.remove(0.1);
  EXPECT_EQ(kept.found(), 0);
  EXPECT_EQ(kept.of(4).mean, fresh.of(4).mean);
  EXPECT_EQ(kept.of(4).squares, 0.0);
}

TEST(RunningMoments, KeepTheirDigitsFarFromZero) {
  RunningMoments kept;
  for (const double x : {1e8 + 1.0, 1e8 + 2.0, 1e8 + 3.0}) kept.add(x);
  EXPECT_EQ(*kept.of(3).variance(), 1.0);
}

TEST(RunningMoments, OfMostPlotsOfTheLargestValuesDoNotOverflow) {
  RunningMoments kept;
  const double most = std::nextafter(RunningMoments::kBelow, 0.0);
  for (int i = 0; i < 1000; ++i) kept.add(most);
  EXPECT_EQ(kept.of(1000).mean, most);
  EXPECT_EQ(kept.of(1000).squares, 0.0);
  const double n = std::numeric_limits<int>::max();  // the others are 0
  const Moments m = kept.of(std::numeric_limits<int>::max());
  EXPECT_NEAR(m.squares / (1000.0 * most * most * (1.0 - 1000.0 / n)), 1.0, 8.0 * kUnit);
}

TEST(RunningMoments, HoldNoValueThatTheyCannotAdd) {
  EXPECT_TRUE(RunningMoments::holds(0.0));
  EXPECT_TRUE(RunningMoments::holds(1e12));
  for (const double bad : {-1.0, RunningMoments::kBelow, std::numeric_limits<double>::infinity(),
                           std::numeric_limits<double>::quiet_NaN()}) {
    EXPECT_FALSE(RunningMoments::holds(bad));
  }
}

// The bounds of the header: each value off by h, and what moments_of itself rounds away.
TEST(RunningMoments, LieWithinTheirBoundOfTheMomentsComputedAnew) {
  std::mt19937 chance(20261130);
  for (int round = 0; round < 300; ++round) {
    RunningMoments kept;
    std::vector<double> there;
    const double scale = std::pow(10.0, static_cast<double>(chance() % 14) - 6.0);
    for (int step = 0; step < 120; ++step) {
      if (!there.empty() && chance() % 3 == 0) {
        const std::size_t out = chance() % there.size();
        kept.remove(there[out]);
        there.erase(there.begin() + static_cast<std::ptrdiff_t>(out));
      } else {
        there.push_back(scale * std::generate_canonical<double, 53>(chance));
        kept.add(there.back());
      }
    }
    const int n = static_cast<int>(there.size()) + static_cast<int>(chance() % 5);
    ASSERT_GT(n, 1);
    const Moments anew = moments_of(there, n).value();
    const Moments m = kept.of(n);
    EXPECT_EQ(m.found, anew.found);
    const double mean_off = kHeld + (n + 4) * kUnit * anew.mean;
    EXPECT_NEAR(m.mean, anew.mean, mean_off);
    const double root = std::sqrt(anew.squares);
    EXPECT_NEAR(std::sqrt(m.squares), root,
                std::sqrt(n) * mean_off + (n / 2.0 + 8.0) * kUnit * root);
  }
}

}  // namespace
}  // namespace oaklight
