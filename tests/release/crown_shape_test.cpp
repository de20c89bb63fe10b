// Crowns with four measured radii: as outlines, and on cards.
#include "core/release/crown_shape.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

#include "core/release/plan.hpp"
#include "core/release/stand_facts.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_ids.hpp"
#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

double open(const CrownShape& crop, const CrownShape& other, double feet, double bearing,
            double gap = 2.0) {
  const auto arcs = closed_arcs(crop, other, Feet{feet}, Degrees{bearing}, Feet{gap});
  return open_share(arcs).value;
}

TEST(CrownShape, PassesThroughItsFourPointsAndIsAnEllipseBetween) {
  const CrownShape shape = CrownShape::measured(Feet{12}, Feet{9}, Feet{6}, Feet{15});
  EXPECT_DOUBLE_EQ(shape.reach(Degrees{0}).value, 12.0);
  EXPECT_DOUBLE_EQ(shape.reach(Degrees{90}).value, 9.0);
  EXPECT_DOUBLE_EQ(shape.reach(Degrees{180}).value, 6.0);
  EXPECT_DOUBLE_EQ(shape.reach(Degrees{270}).value, 15.0);
  EXPECT_DOUBLE_EQ(shape.reach(Degrees{360}).value, 12.0);
  EXPECT_DOUBLE_EQ(shape.reach(Degrees{-90}).value, 15.0);
  // Derived: on the ellipse x2/92 + y2/122 = 1 at 45 degrees r = sqrt(2) x 9 x 12 / sqrt(92 + 122).
  EXPECT_NEAR(shape.reach(Degrees{45}).value, std::sqrt(2.0) * 108.0 / 15.0, 1e-12);
}

TEST(CrownShape, ASideWithoutCrownReachesNowhere) {
  const CrownShape shape = CrownShape::measured(Feet{10}, Feet{0}, Feet{10}, Feet{10});
  EXPECT_EQ(shape.reach(Degrees{90}).value, 0.0);
  EXPECT_EQ(shape.reach(Degrees{60}).value, 0.0);
  EXPECT_DOUBLE_EQ(shape.reach(Degrees{0}).value, 10.0);
}

TEST(CrownShape, NeedsAllFourSides) {
  CrownRadii radii{test::tape_ft(10), test::tape_ft(8), test::tape_ft(9), {}};
  EXPECT_FALSE(CrownShape::of(radii));
  radii.west = test::tape_ft(11);
  ASSERT_TRUE(CrownShape::of(radii));
  EXPECT_DOUBLE_EQ(CrownShape::of(radii)->reach(Degrees{270}).value, 11.0);
}

// Law: four equal radii are the circle, to 1e-9 of its edge.
TEST(ClosedArcs, OfEqualRadiiAreTheArcOfTheCircle) {
  std::mt19937_64 random(20261125);
  std::uniform_real_distribution<double> radius(4.0, 20.0);
  std::uniform_real_distribution<double> distance(0.0, 45.0);
  std::uniform_real_distribution<double> turn(0.0, 360.0);
  for (int i = 0; i < 2000; ++i) {
    const double r = radius(random);
    const double q = radius(random);
    const double d = distance(random);
    const double b = turn(random);
    const Arc circle = closed_arc(Feet{r}, Feet{q}, Feet{d}, Degrees{b}, Feet{2});
    const double want = open_share(std::array{circle}).value;
    const double got = open(CrownShape::measured(Feet{r}, Feet{r}, Feet{r}, Feet{r}),
                            CrownShape::circle(Feet{q}), d, b);
    EXPECT_NEAR(got, want, 1e-9) << "r " << r << " q " << q << " d " << d << " bearing " << b;
  }
}

// Law: a quarter turn of everything changes nothing.
TEST(ClosedArcs, TurnedByAQuarterWithTheirRadiiAreTheSameShare) {
  std::mt19937_64 random(7);
  std::uniform_real_distribution<double> radius(0.0, 20.0);
  std::uniform_real_distribution<double> distance(1.0, 40.0);
  std::uniform_real_distribution<double> turn(0.0, 360.0);
  for (int i = 0; i < 500; ++i) {
    std::array<Feet, 4> a;
    std::array<Feet, 4> b;
    for (Feet& f : a) f = Feet{radius(random)};
    for (Feet& f : b) f = Feet{radius(random)};
    const double d = distance(random);
    const double bearing = turn(random);
    const double before = open(CrownShape::measured(a[0], a[1], a[2], a[3]),
                               CrownShape::measured(b[0], b[1], b[2], b[3]), d, bearing);
    const double after = open(CrownShape::measured(a[3], a[0], a[1], a[2]),
                              CrownShape::measured(b[3], b[0], b[1], b[2]), d, bearing + 90.0);
    EXPECT_NEAR(after, before, 1e-7) << i;
  }
}

// A fine grid of points of the edge, each asked by itself, is the other way to the same share.
TEST(ClosedArcs, AreWhatAFineGridOfTheEdgeShows) {
  std::mt19937_64 random(11);
  std::uniform_real_distribution<double> radius(3.0, 18.0);
  for (int i = 0; i < 40; ++i) {
    const CrownShape crop = CrownShape::measured(Feet{radius(random)}, Feet{radius(random)},
                                                 Feet{radius(random)}, Feet{radius(random)});
    const CrownShape other = CrownShape::measured(Feet{radius(random)}, Feet{radius(random)},
                                                  Feet{radius(random)}, Feet{radius(random)});
    const double d = radius(random) + 6.0;
    constexpr int kPoints = 36'000;
    int closed = 0;
    for (int k = 0; k < kPoints; ++k) {
      const double t = k * 360.0 / kPoints;
      const double r = crop.reach(Degrees{t}).value;
      const double east = r * std::sin(radians(Degrees{t})) - d;  // the other stands due east
      const double north = r * std::cos(radians(Degrees{t}));
      const double seen = std::atan2(east, north) * 180.0 / std::numbers::pi;
      closed += std::hypot(east, north) < other.reach(Degrees{seen}).value + 2.0 ? 1 : 0;
    }
    EXPECT_NEAR(open(crop, other, d, 90.0), 100.0 - 100.0 * closed / kPoints, 0.02) << i;
  }
}

/// A crop tree of 14 in and one neighbour of 10 in due north, nobody looked.
struct TwoTrees {
  TractData data;
  StandId stand = test::nth_id<StandId>(1);

  explicit TwoTrees(double feet, Seen seen = Seen::not_looked) {
    data.stands = {{stand, "S", Acres{10}, Acres{1}, Goal::mast, {}, {}, {}}};
    const auto facts = test::trees("WO 14 co, RM 10 co");
    data.walk_trees = {
        {test::nth_id<WalkTreeId>(1), stand, "O", facts[0].facts, true, {}, {}, {}},
        {test::nth_id<WalkTreeId>(2), stand, "m", facts[1].facts, false, {}, {}, {}}};
    data.walk_trees[0].looked = {Side::east, Side::south, Side::west};
    data.contacts = {{test::nth_id<ContactId>(1),
                      data.walk_trees[0].id,
                      data.walk_trees[1].id,
                      {},
                      seen,
                      test::tape_ft(feet),
                      Degrees{0.0}}};
  }
  TwoTrees& crown(std::size_t tree, double n, double e, double s, double w) {
    data.walk_trees[tree].crown = {test::tape_ft(n), test::tape_ft(e), test::tape_ft(s),
                                   test::tape_ft(w)};
    return *this;
  }
  [[nodiscard]] ReleaseInput input() const {
    return *input_from_cards(data, stand, test::shipped_knowledge());
  }
  [[nodiscard]] Closeness closeness() const { return input().graph.contacts()[0].closeness; }
  [[nodiscard]] Light light() const { return *recommend(input()).trees[0].before; }
};

// By size: crowded radii 10.9 and 8.2 ft (the table of R2.08), open ones 14.4 and 10.7.
TEST(MeasuredCrowns, DecideContactInsteadOfSize) {
  EXPECT_EQ(TwoTrees(18).closeness(), Closeness::touching);
  EXPECT_EQ(TwoTrees(22).closeness(), Closeness::doubtful);
  // A crop crown of 8 ft to the north leaves 18 - 8 - 8.2 = 1.8 ft to the maple's likely edge.
  EXPECT_EQ(TwoTrees(18).crown(0, 8, 14, 14, 14).closeness(), Closeness::doubtful);
  // Both measured: 22 - 8 - 8 = 6 ft of gap is open, and nobody has to look up.
  EXPECT_EQ(TwoTrees(22).crown(0, 8, 14, 14, 14).crown(1, 9, 9, 8, 9).closeness(),
            Closeness::clear);
  // 22 - 11 - 9.5 = 1.5 ft is less than the 2 ft of R1.52.
  EXPECT_EQ(TwoTrees(22).crown(0, 11, 14, 14, 14).crown(1, 9, 9, 9.5, 9).closeness(),
            Closeness::touching);
}

TEST(MeasuredCrowns, WhatSomebodySawStillDecides) {
  EXPECT_EQ(TwoTrees(30, Seen::touches).crown(0, 8, 14, 14, 14).crown(1, 9, 9, 8, 9).closeness(),
            Closeness::touching);
  EXPECT_EQ(TwoTrees(12, Seen::none).crown(0, 14, 14, 14, 14).crown(1, 9, 9, 9, 9).closeness(),
            Closeness::clear);
}

TEST(MeasuredCrowns, GiveTheOpenShareOfTheirOwnEdge) {
  // By hand: one closed side of four leaves 75 %.
  const double quarters = TwoTrees(16, Seen::touches).light().open.value;
  EXPECT_DOUBLE_EQ(quarters, 75.0);  // three free sides of a crown that nobody measured
  const TwoTrees drawn = TwoTrees(16, Seen::touches).crown(0, 10, 10, 10, 10).crown(1, 8, 8, 8, 8);
  const Arc arc = closed_arc(Feet{10}, Feet{8}, Feet{16}, Degrees{0}, Feet{2});
  EXPECT_NEAR(drawn.light().open.value, open_share(std::array{arc}).value, 1e-9);
  // Seen to touch though the outlines lie apart: its side is closed whole.
  const TwoTrees apart = TwoTrees(30, Seen::touches).crown(0, 10, 10, 10, 10).crown(1, 8, 8, 8, 8);
  EXPECT_DOUBLE_EQ(apart.light().open.value, 75.0);
  // A side at which nobody looked is not called open.
  TwoTrees unlooked = TwoTrees(16, Seen::touches).crown(0, 10, 10, 10, 10).crown(1, 8, 8, 8, 8);
  unlooked.data.walk_trees[0].looked = {Side::east, Side::south};
  EXPECT_NEAR(unlooked.light().open.value, open_share(std::array{arc}).value - 25.0, 1e-9);
}

TEST(MeasuredCrowns, APairOfCropTreesIsSeenFromBothSidesOfOneCard) {
  // Geometry: back from the neighbour is half a turn on.
  TwoTrees pair = TwoTrees(16, Seen::touches).crown(0, 10, 12, 9, 11).crown(1, 8, 7, 9, 6);
  pair.data.walk_trees[1].crop = true;
  pair.data.contacts[0].azimuth = Degrees{75.0};
  const ReleaseGraph graph = pair.input().graph;
  ASSERT_EQ(graph.trees()[1].tag, "m");
  const auto shape = [](double n, double e, double s, double w) {
    return CrownShape::measured(Feet{n}, Feet{e}, Feet{s}, Feet{w});
  };
  const auto back =
      closed_arcs(shape(8, 7, 9, 6), shape(10, 12, 9, 11), Feet{16}, Degrees{255.0}, Feet{2});
  const auto& got = graph.edges().closed.at({1, 0});
  ASSERT_EQ(got.size(), back.size());
  for (std::size_t i = 0; i < got.size(); ++i) {
    EXPECT_NEAR(got[i].middle.value, back[i].middle.value, 1e-9);
    EXPECT_NEAR(got[i].half.value, back[i].half.value, 1e-9);
  }
}

}  // namespace
}  // namespace oaklight
