#include "core/place/plot_grid.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>

#include "core/place/flat_ground.hpp"

namespace oaklight {
namespace {

const Position kMiddle{Degrees{38.1}, Degrees{-82.5}};

Ring ring_of(const std::vector<LocalFeet>& corners) {
  Ring ring;
  for (const LocalFeet& corner : corners) ring.push_back(position_from_local(kMiddle, corner));
  ring.push_back(ring.front());
  return ring;
}
LocalFeet feet(double east, double north) { return {Feet{east}, Feet{north}}; }

/// An L of 1,200 x 1,200 ft less its north-east quarter: 1,080,000 ft2 (derived).
Polygon l_shape() {
  return {ring_of({feet(-600, -600), feet(600, -600), feet(600, 0), feet(0, 0), feet(0, 600),
                   feet(-600, 600)}),
          {}};
}
Polygon with_pond() {
  Polygon stand = l_shape();
  stand.holes.push_back(
      ring_of({feet(-400, -400), feet(-400, -200), feet(-200, -200), feet(-200, -400)}));
  return stand;
}

/// The share of ground that a grid cell of these spacings holds once.
constexpr GridLayout kLayout{Feet{260.0}, Feet{340.0}, Degrees{27.0}};

TEST(PlotGrid, PutsPointsInsideAndNeverInTheHole) {
  SeededDraw draw(5);
  const auto points = grid_positions(with_pond(), kLayout, random_start(draw)).value();
  EXPECT_GT(points.size(), 5U);
  const FlatPolygon flat = flat_polygon(with_pond());
  for (const Position& p : points) EXPECT_TRUE(holds(flat, local_feet(flat.origin, p)));
}

TEST(PlotGrid, KeepsItsSpacingsAndItsAzimuth) {
  const GridLayout layout{Feet{200.0}, Feet{300.0}, Degrees{30.0}};
  const auto points = grid_positions(l_shape(), layout, {0.3, 0.6}).value();
  ASSERT_GT(points.size(), 8U);
  for (std::size_t i = 1; i < points.size(); ++i) {
    const Leg leg = leg_between(points[i - 1], points[i]);
    if (leg.distance.value > 250.0) continue;  // on to the next line
    EXPECT_NEAR(leg.distance.value, 200.0, 0.001);
    EXPECT_NEAR(std::remainder(leg.azimuth.value - 30.0, 180.0), 0.0, 0.01);
  }
}

TEST(PlotGrid, ComesBackWithItsSeedAndDiffersWithAnother) {
  const auto with = [](std::uint64_t seed) {
    SeededDraw draw(seed);
    return grid_positions(l_shape(), kLayout, random_start(draw)).value();
  };
  EXPECT_EQ(with(7), with(7));
  EXPECT_NE(with(7), with(8));
}

TEST(SeededDraw, GivesTheSameNumbersOnEveryMachine) {
  // The C++ standard fixes the 10,000th number of the default-seeded generator (5489):
  // 9981545732273789042 ([rand.predef]).
  SeededDraw draw(5489);
  for (int i = 1; i < 10'000; ++i) draw.uniform();
  EXPECT_DOUBLE_EQ(draw.uniform(),
                   static_cast<double>(9981545732273789042U >> 11U) / 9007199254740992.0);
}

/// A part of the L as a rectangle.
struct Part {
  const char* name;
  double west, east, south, north;
};
/// Six strips 40 ft wide along edges, two corners, and four blocks inside.
constexpr Part kParts[] = {
    {"west edge", -600, -560, -400, 400}, {"south edge", -400, 400, -600, -560},
    {"east edge", 560, 600, -500, -50},   {"north edge", -500, -50, 560, 600},
    {"inner edge", 50, 500, -40, 0},      {"inner edge north", -40, 0, 50, 500},
    {"corner", -600, -500, -600, -500},   {"corner at the notch", -60, 0, -60, 0},
    {"block", -300, -150, 100, 300},      {"block", -300, -100, -300, -150},
    {"block", 100, 300, -400, -200},      {"block", 300, 480, -300, -150},
};
constexpr int kStarts = 10'000;
/// NIST/SEMATECH e-Handbook 1.3.6.7.4, 12 degrees of freedom, 0.001.
constexpr double kChiSquare = 32.910;

bool is_in(const Part& part, LocalFeet p) {
  return p.east.value >= part.west && p.east.value < part.east && p.north.value >= part.south &&
         p.north.value < part.north;
}

/// Chi-square of how often each part held a plot, over starts of its own for each part, so that
/// the parts are independent and each is a yes or no of known chance (all are smaller than a cell
/// and none is met twice by one grid).
double chi_square(int starts, const std::function<std::vector<Position>(SeededDraw&)>& layout) {
  double sum = 0.0;
  SeededDraw draw(20261125);
  for (const Part& part : kParts) {
    int met = 0;
    for (int i = 0; i < starts; ++i) {
      int here = 0;
      for (const Position& p : layout(draw)) here += is_in(part, local_feet(kMiddle, p)) ? 1 : 0;
      EXPECT_LE(here, 1);
      met += here;
    }
    const double chance = (part.east - part.west) * (part.north - part.south) / (400.0 * 500.0);
    const double expected = starts * chance;
    sum += (met - expected) * (met - expected) / (expected * (1.0 - chance));
  }
  return sum;
}

/// On this slant no two points of a grid fall in one part: two that lie within 40 ft across a strip
/// are more than 1,700 ft apart along it (derived from the two steps of the grid).
constexpr GridLayout kWide{Feet{400.0}, Feet{500.0}, Degrees{27.0}};

TEST(PlotGrid, GivesEveryPartOfTheStandTheSameChanceEdgesAndAll) {
  const Polygon stand = l_shape();
  const double got = chi_square(kStarts, [&](SeededDraw& draw) {
    return grid_positions(stand, kWide, random_start(draw)).value();
  });
  EXPECT_LT(got, kChiSquare);
  EXPECT_GT(got, 1.0) << "far too even for chance";
}

TEST(PlotGrid, WouldFailThatTestIfPlotsWereMovedInFromTheEdge) {
  // The trap: a plot within 40 ft of an edge is moved 40 ft towards the middle.
  const Polygon stand = l_shape();
  const double got = chi_square(1'000, [&](SeededDraw& draw) {
    auto points = grid_positions(stand, kWide, random_start(draw)).value();
    for (Position& p : points) {
      LocalFeet at = local_feet(kMiddle, p);
      if (at.east.value < -560.0) at.east += Feet{40.0};
      p = position_from_local(kMiddle, at);
    }
    return points;
  });
  EXPECT_GT(got, 2.0 * kChiSquare);
}

TEST(PlotGrid, HoldsAsManyPlotsAsTheGroundHasCellsOnAverage) {
  // Derived: with a random start the expected count is area / cell, 1,040,000 / 88,400 with the
  // pond taken out. Counts of one grid lie within a few of it; the mean of 10,000 within 0.1.
  SeededDraw draw(11);
  double sum = 0.0;
  const Polygon stand = with_pond();
  for (int i = 0; i < kStarts; ++i) {
    sum += static_cast<double>(grid_positions(stand, kLayout, random_start(draw)).value().size());
  }
  EXPECT_NEAR(sum / kStarts, 1'040'000.0 / (260.0 * 340.0), 0.1);
}

TEST(RandomPositions, AreEvenOverTheStand) {
  SeededDraw draw(3);
  const Polygon stand = with_pond();
  constexpr int kCount = 5'000;
  const auto points = random_positions(stand, kCount, draw).value();
  ASSERT_EQ(points.size(), static_cast<std::size_t>(kCount));
  int met[std::size(kParts)] = {};
  for (const Position& p : points) {
    for (std::size_t k = 0; k < std::size(kParts); ++k) {
      met[k] += is_in(kParts[k], local_feet(kMiddle, p)) ? 1 : 0;
    }
  }
  for (std::size_t k = 0; k < std::size(kParts); ++k) {
    const Part& part = kParts[k];
    double area = (part.east - part.west) * (part.north - part.south);
    if (part.west == -300 && part.north == -150) area -= 100.0 * 100.0;  // what the pond takes
    const double chance = area / 1'040'000.0;
    EXPECT_NEAR(met[k], kCount * chance, 4.5 * std::sqrt(kCount * chance * (1.0 - chance)))
        << part.name;
  }
}

TEST(PlotGrid, RefusesSpacingsThatCannotBe) {
  for (const double bad : {0.0, -10.0, std::nan("")}) {
    EXPECT_FALSE(grid_positions(l_shape(), {Feet{bad}, Feet{100.0}, Degrees{0.0}}, {}));
    EXPECT_FALSE(grid_positions(l_shape(), {Feet{100.0}, Feet{bad}, Degrees{0.0}}, {}));
  }
  EXPECT_FALSE(grid_positions(l_shape(), {Feet{1.0}, Feet{1.0}, Degrees{0.0}}, {}));
  SeededDraw draw(1);
  EXPECT_FALSE(random_positions(l_shape(), 0, draw));
}

}  // namespace
}  // namespace oaklight
