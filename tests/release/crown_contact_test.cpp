#include "core/release/crown_contact.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "core/measure/crown_width.hpp"
#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

const ContactSettings& settings() { return test::shipped_knowledge().settings.contact; }

/// Distances worked out for invented pairs of trees, ft, printed to a tenth. Derived: crowded radii
/// by Gingrich 1967 and open radii by Krajicek, Brinkman and Gingrich 1961, coefficients from
/// memory.
struct WorkedPair {
  const char* label;
  double a, b, expected, look_up;
};
constexpr WorkedPair kWorked[] = {
    {"oak16_ironwood5", 16, 5, 16.9, 25.3}, {"oak16_maple4", 16, 4, 16.2, 24.4},
    {"oak16_hickory8", 16, 8, 19.0, 28.1},  {"oak16_maple12", 16, 12, 21.8, 31.7},
    {"oak16_aspen11", 16, 11, 21.1, 30.8},  {"oak16_basswood13", 16, 13, 22.4, 32.6},
    {"oak15_maple10", 15, 10, 19.7, 29.0},  {"oak15_ash11", 15, 11, 20.4, 29.9},
    {"oak15_basswood9", 15, 9, 19.0, 28.1}, {"oak14_basswood19", 14, 19, 25.1, 36.3},
    {"oak14_maple11", 14, 11, 19.7, 29.0},  {"oak14_elm9", 14, 9, 18.4, 27.2},
    {"oak14_aspen10", 14, 10, 19.1, 28.1},  {"oak13_maple8", 13, 8, 17.0, 25.3},
    {"oak13_oak18", 13, 18, 23.8, 34.5},
};
class WorkedLimits : public testing::TestWithParam<WorkedPair> {};
TEST_P(WorkedLimits, MatchTheWorkedDistances) {
  const auto& p = GetParam();
  const ContactLimits limits = contact_limits(Inches{p.a}, Inches{p.b}, settings());
  EXPECT_NEAR(limits.expected.value, p.expected, 0.05);
  EXPECT_NEAR(limits.look_up.value, p.look_up, 0.05);
}
INSTANTIATE_TEST_SUITE_P(Pairs, WorkedLimits, testing::ValuesIn(kWorked),
                         [](const auto& row) { return std::string(row.param.label); });

TEST(CrownContact, ConflictDistanceOfAFifteenAndASixteenInchOak) {
  // Printed as 31.5 ft in the rule; derived from Krajicek et al. 1961.
  EXPECT_NEAR(conflict_distance(Inches{15}, Inches{16}).value, 31.5, 0.05);
}

TEST(CrownContact, DistanceSortsNeighboursIntoThreeClasses) {
  const auto at = [](double feet) {
    return closeness_by_distance(Inches{16}, Inches{12}, Feet{feet}, settings());
  };
  EXPECT_EQ(at(21.7), Closeness::touching);
  EXPECT_EQ(at(21.9), Closeness::doubtful);
  EXPECT_EQ(at(31.6), Closeness::doubtful);
  EXPECT_EQ(at(31.8), Closeness::clear);
}

TEST(CrownContact, ABearingLiesOnOneSideOrNearACornerOnTwo) {
  const Degrees blur = settings().side_blur;
  EXPECT_EQ(sides_at(Degrees{0}, blur), (Sides{Side::north}));
  EXPECT_EQ(sides_at(Degrees{359}, blur), (Sides{Side::north}));
  EXPECT_EQ(sides_at(Degrees{-30}, blur), (Sides{Side::north}));
  EXPECT_EQ(sides_at(Degrees{90}, blur), (Sides{Side::east}));
  EXPECT_EQ(sides_at(Degrees{30}, blur), (Sides{Side::north}));
  EXPECT_EQ(sides_at(Degrees{36}, blur), (Sides{Side::north, Side::east}));
  EXPECT_EQ(sides_at(Degrees{54}, blur), (Sides{Side::north, Side::east}));
  EXPECT_EQ(sides_at(Degrees{230}, blur), (Sides{Side::south, Side::west}));
  EXPECT_EQ(sides_at(Degrees{320}, blur), (Sides{Side::north, Side::west}));
}

TEST(CrownContact, WhatIsNorthOfOneTreeHasThatTreeToItsSouth) {
  EXPECT_EQ(opposite({Side::north, Side::east}), (Sides{Side::south, Side::west}));
  EXPECT_EQ(opposite(opposite(Sides{Side::west})), (Sides{Side::west}));
}

TEST(Arcs, EqualCrownsWhoseEdgesMeetAndOneThatReachesTheStem) {
  // Radius 10, gap 0. At 10 ft the other edge runs through the stem, and the circles cross where
  // cos t = 10 / (2 * 10): half an arc of 60 degrees. At 20 ft they touch in one point.
  const auto half = [](double distance, double gap) {
    return closed_arc(Feet{10}, Feet{10}, Feet{distance}, Degrees{90}, Feet{gap}).half.value;
  };
  EXPECT_NEAR(half(10, 0), 60.0, 1e-12);
  EXPECT_NEAR(half(20, 0), 0.0, 1e-12);
  EXPECT_NEAR(half(21, 0), 0.0, 1e-12);
  // With a gap of 2 ft a crown 21 ft off still closes a strip, one at 22 ft none.
  EXPECT_NEAR(half(21, 2), std::acos((100.0 + 441.0 - 144.0) / 420.0) * 180.0 / std::numbers::pi,
              1e-12);
  EXPECT_NEAR(half(22, 2), 0.0, 1e-12);
}

TEST(Arcs, ACrownUnderAMuchLargerOneIsClosedAllRound) {
  // By definition: half of the whole way round.
  const Arc arc = closed_arc(Feet{5}, Feet{20}, Feet{3}, Degrees{10}, Feet{2});
  EXPECT_EQ(open_share(std::array{arc}).value, 0.0);
  EXPECT_EQ(closed_arc(Feet{5}, Feet{20}, Feet{0}, Degrees{10}, Feet{2}).half.value, 180.0);
}

TEST(Arcs, OpenShareCountsOverlapsOnceAndGoesRoundThroughNorth) {
  // By hand: 90 of 360 degrees closed leave 75 %; 45 more beyond the overlap leave 62.5 %.
  const auto share = [](std::vector<Arc> arcs) { return open_share(arcs).value; };
  EXPECT_EQ(share({}), 100.0);
  EXPECT_NEAR(share({{Degrees{0}, Degrees{45}}}), 75.0, 1e-12);
  EXPECT_NEAR(share({{Degrees{0}, Degrees{45}}, {Degrees{45}, Degrees{45}}}), 62.5, 1e-12);
  EXPECT_NEAR(share({{Degrees{350}, Degrees{20}}, {Degrees{-10}, Degrees{20}}}),
              100.0 * (1.0 - 40.0 / 360.0), 1e-12);
  EXPECT_NEAR(share({{Degrees{100}, Degrees{30}}, {Degrees{300}, Degrees{30}}}),
              100.0 * (1.0 - 120.0 / 360.0), 1e-12);
  EXPECT_NEAR(share({{Degrees{100}, Degrees{0}}}), 100.0, 1e-12);
}

TEST(Arcs, TheOrderOfArcsDoesNotMatter) {
  std::vector<Arc> arcs = {{Degrees{10}, Degrees{30}},
                           {Degrees{80}, Degrees{55}},
                           {Degrees{300}, Degrees{70}},
                           {Degrees{10}, Degrees{12}}};
  const double share = open_share(arcs).value;
  std::reverse(arcs.begin(), arcs.end());
  EXPECT_EQ(open_share(arcs).value, share);
}

}  // namespace
}  // namespace oaklight
