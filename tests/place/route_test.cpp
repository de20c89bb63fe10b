#include "core/place/route.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <numeric>

#include "core/place/seeded_draw.hpp"

namespace oaklight {
namespace {

WalkCosts random_costs(std::size_t places, SeededDraw& draw) {
  std::vector<std::pair<double, double>> at(places);
  for (auto& [x, y] : at) {
    x = 5000.0 * draw.uniform();
    y = 5000.0 * draw.uniform();
  }
  WalkCosts costs(places);
  for (std::size_t a = 0; a < places; ++a) {
    for (std::size_t b = 0; b < a; ++b) {
      costs.set(a, b, std::hypot(at[a].first - at[b].first, at[a].second - at[b].second));
    }
  }
  return costs;
}

double length_of(const WalkCosts& costs, const std::vector<std::size_t>& order) {
  double sum = costs.feet(0, order.front()) + costs.feet(order.back(), 0);
  for (std::size_t i = 1; i < order.size(); ++i) sum += costs.feet(order[i - 1], order[i]);
  return sum;
}

/// Every order tried: the plainest exact solver.
double shortest_by_trying_all(const WalkCosts& costs) {
  std::vector<std::size_t> order(costs.places() - 1);
  std::iota(order.begin(), order.end(), std::size_t{1});
  double least = length_of(costs, order);
  while (std::ranges::next_permutation(order).found) {
    least = std::min(least, length_of(costs, order));
  }
  return least;
}

void expect_each_once(const Tour& tour, const WalkCosts& costs) {
  std::vector<std::size_t> sorted = tour.order;
  std::ranges::sort(sorted);
  ASSERT_EQ(sorted.size(), costs.places() - 1);
  for (std::size_t i = 0; i < sorted.size(); ++i) ASSERT_EQ(sorted[i], i + 1);
  EXPECT_NEAR(tour.length.value, length_of(costs, tour.order), 1e-6);
}

TEST(Route, IsTheShortestThereIsForFewPlots) {
  SeededDraw draw(1);
  for (std::size_t places = 2; places <= 9; ++places) {
    for (int i = 0; i < 5; ++i) {
      const WalkCosts costs = random_costs(places, draw);
      const Tour tour = short_tour(costs);
      expect_each_once(tour, costs);
      EXPECT_TRUE(tour.exact);
      EXPECT_NEAR(tour.length.value, shortest_by_trying_all(costs), 1e-6) << places;
    }
  }
}

TEST(Route, OfTwelvePlotsIsExactAndTheQuickWayComesWithinFivePercentOfIt) {
  SeededDraw draw(2);
  double worst = 0.0;
  for (int i = 0; i < 50; ++i) {
    const WalkCosts costs = random_costs(kExactStops + 1, draw);
    const Tour exact = short_tour(costs);
    ASSERT_TRUE(exact.exact);
    const Tour quick = improved_tour(costs);
    expect_each_once(quick, costs);
    EXPECT_GE(quick.length.value, exact.length.value - 1e-6);
    EXPECT_LE(quick.bound.value, exact.length.value + 1e-6) << "a bound above the optimum";
    worst = std::max(worst, quick.length / exact.length - 1.0);
  }
  EXPECT_LE(worst, 0.05);
  RecordProperty("worst_over_optimum_pct", std::to_string(100.0 * worst));
  std::cout << "worst over optimum: " << 100.0 * worst << " %\n";
}

TEST(Route, BoundIsNeverAboveTheOptimumAndMostlyNear) {
  SeededDraw draw(3);
  double sum = 0.0;
  for (int i = 0; i < 20; ++i) {
    const WalkCosts costs = random_costs(11, draw);
    const Tour exact = exact_tour(costs);
    const Feet bound = tour_bound(costs, exact.length);
    EXPECT_LE(bound.value, exact.length.value + 1e-6);
    sum += bound / exact.length;
  }
  // Held and Karp's bound is within about 1 % of the optimum on random points (from memory).
  EXPECT_GT(sum / 20.0, 0.97);
}

TEST(Route, OfTwoHundredPlotsVisitsEachOnceAndSaysHowGoodItIs) {
  SeededDraw draw(4);
  const WalkCosts costs = random_costs(201, draw);
  const auto begun = std::chrono::steady_clock::now();
  const Tour tour = short_tour(costs);
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begun;
  expect_each_once(tour, costs);
  EXPECT_FALSE(tour.exact);
  EXPECT_GT(tour.bound.value, 0.0);
  EXPECT_LE(tour.bound.value, tour.length.value);
  EXPECT_LT(tour.gap(), 0.08);
  std::cout << "200 plots: gap " << 100.0 * tour.gap() << " %, " << took.count() << " s\n";
}

TEST(Route, OnASquareGridFindsTheKnownShortestWay) {
  // Derived: 6 x 6 places 100 ft apart; every step is at least 100 ft, and a way of 36 such steps
  // exists, so 3,600 ft is the shortest.
  WalkCosts costs(36);
  for (std::size_t a = 0; a < 36; ++a) {
    for (std::size_t b = 0; b < a; ++b) {
      const double x = static_cast<double>(a % 6) - static_cast<double>(b % 6);
      const double y = static_cast<double>(a / 6) - static_cast<double>(b / 6);
      costs.set(a, b, 100.0 * std::hypot(x, y));
    }
  }
  const Tour tour = short_tour(costs);
  EXPECT_NEAR(tour.length.value, 3600.0, 0.05 * 3600.0);
  EXPECT_LE(tour.bound.value, 3600.0 + 1e-6);
  EXPECT_GT(tour.bound.value, 3590.0);
}

TEST(Route, OfNoPlotOrOneIsPlain) {
  // By hand: 500 ft there and back.
  EXPECT_TRUE(short_tour(WalkCosts(1)).order.empty());
  WalkCosts one(2);
  one.set(0, 1, 500.0);
  EXPECT_DOUBLE_EQ(short_tour(one).length.value, 1000.0);
  EXPECT_DOUBLE_EQ(improved_tour(one).length.value, 1000.0);
}

}  // namespace
}  // namespace oaklight
