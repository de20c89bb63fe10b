#include "core/place/walk_ground.hpp"

#include <gtest/gtest.h>

#include <chrono>
#include <cmath>
#include <iostream>

#include "core/place/seeded_draw.hpp"

namespace oaklight {
namespace {

LocalFeet feet(double east, double north) { return {Feet{east}, Feet{north}}; }

/// Whether two segments cross, worked out apart from the code under test: by solving for both
/// shares along.
bool cross(LocalFeet a, LocalFeet b, LocalFeet c, LocalFeet d) {
  const double ux = (b.east - a.east).value, uy = (b.north - a.north).value;
  const double vx = (d.east - c.east).value, vy = (d.north - c.north).value;
  const double wx = (c.east - a.east).value, wy = (c.north - a.north).value;
  const double det = ux * vy - uy * vx;
  if (det == 0.0) return false;
  const double s = (wx * vy - wy * vx) / det;
  const double t = (wx * uy - wy * ux) / det;
  return s > 0.0 && s < 1.0 && t > 0.0 && t < 1.0;
}

void expect_crosses_nothing(const std::vector<LocalFeet>& way, const std::vector<FlatLine>& lines) {
  for (std::size_t i = 0; i + 1 < way.size(); ++i) {
    for (const FlatLine& line : lines) {
      for (std::size_t k = 0; k + 1 < line.size(); ++k) {
        EXPECT_FALSE(cross(way[i], way[i + 1], line[k], line[k + 1]));
      }
    }
  }
}

double length_of(const std::vector<LocalFeet>& way) {
  double sum = 0.0;
  for (std::size_t i = 0; i + 1 < way.size(); ++i) {
    sum +=
        std::hypot((way[i + 1].east - way[i].east).value, (way[i + 1].north - way[i].north).value);
  }
  return sum;
}

TEST(WalkGround, GoesStraightWhereNothingIsInTheWay) {
  // By hand: 300, 400 and 500.
  const std::vector<LocalFeet> stops = {feet(0, 0), feet(300, 400)};
  const WalkGround ground(stops, {});
  EXPECT_DOUBLE_EQ(ground.costs().feet(0, 1), 500.0);
  EXPECT_EQ(ground.way(0, 1).size(), 2U);
}

TEST(WalkGround, GoesRoundTheNearerEndOfAStream) {
  const std::vector<LocalFeet> stops = {feet(-100, 0), feet(100, 0)};
  const std::vector<FlatLine> stream = {{feet(0, -1000), feet(0, 300)}};
  const WalkGround ground(stops, stream);
  const auto way = ground.way(0, 1);
  expect_crosses_nothing(way, stream);
  // Derived: round the end at 300 ft it is twice sqrt(100^2 + 300^2) = 632.5 ft, and a few feet for
  // the step kept off it.
  EXPECT_NEAR(ground.costs().feet(0, 1), 632.5, 8.0);
  EXPECT_GE(ground.costs().feet(0, 1), 632.4);
  EXPECT_NEAR(length_of(way), ground.costs().feet(0, 1), 1e-6);
}

TEST(WalkGround, DoesNotSlipThroughAJointOfTheLine) {
  const std::vector<LocalFeet> stops = {feet(-100, 0), feet(100, 0), feet(-50, 0)};
  const std::vector<FlatLine> stream = {{feet(0, -500), feet(0, 0), feet(0, 500)}};
  const WalkGround ground(stops, stream);
  EXPECT_GT(ground.costs().feet(0, 1), 1000.0);
  EXPECT_GT(ground.costs().feet(2, 1), 1000.0);
  EXPECT_NEAR(ground.costs().feet(0, 2), 50.0, 1e-9);
}

TEST(WalkGround, SaysWhereThereIsNoWay) {
  const std::vector<LocalFeet> stops = {feet(0, 0), feet(500, 0)};
  const std::vector<FlatLine> ring = {
      {feet(-50, -50), feet(50, -50), feet(50, 50), feet(-50, 50), feet(-50, -50)}};
  const WalkGround ground(stops, ring);
  EXPECT_TRUE(std::isinf(ground.costs().feet(0, 1)));
  EXPECT_TRUE(ground.way(0, 1).empty());
}

TEST(WalkGround, KeepsToItsSideOfAWindingStream) {
  SeededDraw draw(9);
  FlatLine stream;
  for (int i = 0; i <= 40; ++i) stream.push_back(feet(50.0 * i, 200.0 * std::sin(0.7 * i)));
  std::vector<LocalFeet> stops;
  for (int i = 0; i < 20; ++i)
    stops.push_back(feet(2000.0 * draw.uniform(), 800.0 * draw.uniform() - 400.0));
  const std::vector<FlatLine> lines = {stream};
  const WalkGround ground(stops, lines);
  for (std::size_t a = 0; a < stops.size(); ++a) {
    for (std::size_t b = 0; b < a; ++b) {
      const auto way = ground.way(a, b);
      ASSERT_FALSE(way.empty());
      expect_crosses_nothing(way, lines);
      EXPECT_NEAR(length_of(way), ground.costs().feet(a, b), 1e-6);
    }
  }
}

TEST(WalkGround, OfTwoHundredStopsAndALongStreamIsQuick) {
  SeededDraw draw(10);
  FlatLine stream;
  for (int i = 0; i <= 240; ++i) stream.push_back(feet(20.0 * i, 150.0 * std::sin(0.3 * i)));
  std::vector<LocalFeet> stops;
  for (int i = 0; i < 201; ++i)
    stops.push_back(feet(4800.0 * draw.uniform(), 4000.0 * draw.uniform() - 2000.0));
  const std::vector<FlatLine> lines = {stream};
  const auto begun = std::chrono::steady_clock::now();
  const WalkGround ground(stops, lines);
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begun;
  std::cout << "200 stops, 240 walls: " << took.count() << " s\n";
  EXPECT_FALSE(std::isinf(ground.costs().feet(0, 200)));
}

TEST(WalkGround, LetsARoadOverAStream) {
  const FlatLine stream = {feet(0, -500), feet(0, 500)};
  const std::vector<FlatLine> road = {{feet(-300, 100), feet(300, 100)}};
  const auto open = opened_where_crossed(stream, road, Feet{15.0});
  ASSERT_EQ(open.size(), 2U);
  EXPECT_NEAR(open[0].back().north.value, 85.0, 1e-9);
  EXPECT_NEAR(open[1].front().north.value, 115.0, 1e-9);
  const std::vector<LocalFeet> stops = {feet(-100, 0), feet(100, 0)};
  // Derived: by the road at least 2 sqrt(100^2 + 85^2) = 262.5 ft; 1,019.8 ft round the end.
  EXPECT_NEAR(WalkGround(stops, open).costs().feet(0, 1), 268.0, 8.0);
  EXPECT_EQ(opened_where_crossed(stream, {}, Feet{15.0}).size(), 1U);
}

TEST(Simplified, KeepsEndsAndWhatLiesOffTheLine) {
  const FlatLine line = {feet(0, 0), feet(50, 1), feet(100, 40), feet(150, 1), feet(200, 0)};
  const FlatLine few = simplified(line, Feet{25.0});
  EXPECT_EQ(few, (FlatLine{feet(0, 0), feet(100, 40), feet(200, 0)}));
  EXPECT_EQ(simplified(line, Feet{0.0}).size(), 5U);
}

}  // namespace
}  // namespace oaklight
