#include "core/release/release_graph.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <tuple>

#include "core/measure/crown_width.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_ids.hpp"
#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

using test::cards;
using test::nth_id;

const ContactSettings& settings() { return test::shipped_knowledge().settings.contact; }

ReleaseGraph graph_of(const test::ShortCards& c) {
  auto graph = graph_from_cards(c.trees, c.contacts, c.stand, settings());
  EXPECT_TRUE(graph) << to_text(graph.error());
  return *graph;
}

std::size_t place(const ReleaseGraph& graph, std::string_view tag) {
  for (std::size_t i = 0; i < graph.trees().size(); ++i) {
    if (graph.trees()[i].tag == tag) return i;
  }
  ADD_FAILURE() << "no tree " << tag;
  return 0;
}

const CrownContact* between(const ReleaseGraph& graph, std::string_view crop,
                            std::string_view neighbour) {
  for (const std::uint32_t i : graph.around(place(graph, crop))) {
    if (graph.contacts()[i].neighbour == place(graph, neighbour)) return &graph.contacts()[i];
  }
  return nullptr;
}

struct Judged {
  Closeness closeness;
  ContactBasis basis;
};
void PrintTo(const Judged& j, std::ostream* out) {
  *out << static_cast<int>(j.closeness) << "/" << static_cast<int>(j.basis);
}
bool operator==(const Judged& a, const Judged& b) {
  return a.closeness == b.closeness && a.basis == b.basis;
}

/// One neighbour of a white oak of 16 in on the north side.
Judged judged(const std::string& distance_seen_and_tree) {
  const ReleaseGraph graph = graph_of(cards("crop O WO 16 dom\nO n N " + distance_seen_and_tree));
  const CrownContact* c = between(graph, "O", "n");
  return {c->closeness, c->basis};
}

TEST(GraphFromCards, WhatAPersonSawOverridesTheDistance) {
  EXPECT_EQ(judged("40 touches RM 8 co"),
            (Judged{Closeness::touching, ContactBasis::seen_touching}));
  EXPECT_EQ(judged("40 over RM 8 co"), (Judged{Closeness::touching, ContactBasis::seen_over}));
  EXPECT_EQ(judged("8 none RM 12 co"), (Judged{Closeness::clear, ContactBasis::seen_clear}));
  EXPECT_EQ(judged("15 below PH 8 int"), (Judged{Closeness::clear, ContactBasis::seen_below}));
  EXPECT_EQ(judged("12 touches EL 9 int"),
            (Judged{Closeness::touching, ContactBasis::seen_touching}));
}

TEST(GraphFromCards, WhereNobodyLookedSizeAndDistanceDecide) {
  // Limits for 16 and 12 in: 21.8 and 31.7 ft, see crown_contact_test.
  EXPECT_EQ(judged("21 not_looked RM 12 co"),
            (Judged{Closeness::touching, ContactBasis::near_enough}));
  EXPECT_EQ(judged("25 not_looked RM 12 co"), (Judged{Closeness::doubtful, ContactBasis::look_up}));
  EXPECT_EQ(judged("32 not_looked RM 12 co"), (Judged{Closeness::clear, ContactBasis::far_enough}));
  EXPECT_EQ(judged("- not_looked RM 12 co"), (Judged{Closeness::doubtful, ContactBasis::look_up}));
}

TEST(GraphFromCards, OvertoppedAndDeadTreesCompeteAtNoDistance) {
  EXPECT_EQ(judged("6 not_looked IW 5 over"), (Judged{Closeness::clear, ContactBasis::overtopped}));
  EXPECT_EQ(judged("6 touches IW 5 over"), (Judged{Closeness::clear, ContactBasis::overtopped}));
  EXPECT_EQ(judged("12 touches WA 14 dead"), (Judged{Closeness::clear, ContactBasis::dead}));
}

TEST(GraphFromCards, WithoutACrownClassNearnessProvesNothing) {
  EXPECT_EQ(judged("10 not_looked RM 12"),
            (Judged{Closeness::doubtful, ContactBasis::no_crown_class}));
  EXPECT_EQ(judged("40 not_looked RM 12"), (Judged{Closeness::clear, ContactBasis::far_enough}));
  EXPECT_EQ(judged("10 touches RM 12"), (Judged{Closeness::touching, ContactBasis::seen_touching}));
}

TEST(GraphFromCards, SidesComeFromTheCardElseFromTheAzimuth) {
  const ReleaseGraph graph = graph_of(cards(R"(
    crop O WO 16 dom
    O a N|E 20 touches RM 12 co
    O b az=182 20 touches RM 12 co
    O c az=312 20 touches RM 12 co)"));
  EXPECT_EQ(between(graph, "O", "a")->sides, (Sides{Side::north, Side::east}));
  EXPECT_EQ(between(graph, "O", "b")->sides, (Sides{Side::south}));
  EXPECT_EQ(between(graph, "O", "c")->sides, (Sides{Side::north, Side::west}));
}

TEST(GraphFromCards, AContactWithoutASideIsInDoubt) {
  test::ShortCards c = cards("crop O WO 16 dom\nO a N 20 touches RM 12 co");
  c.contacts[0].sides = {};
  const ReleaseGraph graph = graph_of(c);
  EXPECT_EQ(between(graph, "O", "a")->closeness, Closeness::doubtful);
  EXPECT_EQ(between(graph, "O", "a")->basis, ContactBasis::no_side);
}

TEST(GraphFromCards, TwoCropTreesMeetOnBothCards) {
  const ReleaseGraph graph = graph_of(cards(R"(
    crop A WO 15 co
    crop B RO 16 co
    A B E 18 touches)"));
  EXPECT_EQ(between(graph, "B", "A")->sides, (Sides{Side::west}));
  EXPECT_EQ(between(graph, "B", "A")->closeness, Closeness::touching);
  EXPECT_TRUE(between(graph, "B", "A")->will_meet);
}

TEST(GraphFromCards, WhereTwoCardsDifferTheCloserViewHolds) {
  const ReleaseGraph graph = graph_of(cards(R"(
    crop A WO 15 co
    crop B RO 16 co
    A B E 18 touches
    B A W 18 none)"));
  EXPECT_EQ(between(graph, "B", "A")->closeness, Closeness::touching);
  EXPECT_EQ(between(graph, "A", "B")->closeness, Closeness::touching);
}

TEST(GraphFromCards, ANeighbourMeetsNobodyOnACardItDoesNotHave) {
  const ReleaseGraph graph = graph_of(cards("crop A WO 15 co\nA m N 17 touches RM 10 co"));
  EXPECT_TRUE(graph.around(place(graph, "m")).empty());
  EXPECT_EQ(graph.towards(place(graph, "m")).size(), 1U);
}

TEST(GraphFromCards, TreesOfOtherStandsAreLeftOut) {
  test::ShortCards c = cards("crop A WO 15 co\nA m N 17 touches RM 10 co\ncrop B WO 14 co");
  c.trees[2].stand = nth_id<StandId>(2);
  EXPECT_EQ(graph_of(c).trees().size(), 2U);
}

TEST(GraphFromCards, ACardAcrossTwoStandsIsRefused) {
  test::ShortCards c = cards("crop A WO 15 co\nA m N 17 touches RM 10 co");
  c.trees[1].stand = nth_id<StandId>(2);
  const auto graph = graph_from_cards(c.trees, c.contacts, c.stand, settings());
  ASSERT_FALSE(graph);
  EXPECT_EQ(graph.error().code, ErrorCode::unknown_reference);
}

/// A seeded wood in which every tree could compete. Positions and sizes are invented.
std::vector<MappedTree> wood(std::uint32_t seed, std::size_t count, double side) {
  std::mt19937 random(seed);
  const auto within = [&](double from, double to) {  // own scaling: distributions differ by library
    return from + (to - from) * (static_cast<double>(random()) / 4294967296.0);
  };
  std::vector<MappedTree> map;
  for (std::uint32_t i = 1; i <= count; ++i) {
    TreeFacts facts{SpeciesCode{802}, test::dbh_in(within(4.0, 24.0))};
    facts.crown_class = within(0, 1) < 0.2 ? CrownClass::overtopped : CrownClass::codominant;
    const double east = within(0.0, side);
    map.push_back(
        {nth_id<TreeId>(i).value, std::to_string(i), facts, Feet{east}, Feet{within(0.0, side)}});
  }
  return map;
}

using Pair = std::tuple<std::string, std::string, bool>;  // crop, neighbour, touching

/// The definition, tree by tree.
std::vector<Pair> all_pairs(const std::vector<MappedTree>& map) {
  std::vector<Pair> pairs;
  const auto canopy = [](const MappedTree& t) {
    return t.facts.crown_class != CrownClass::overtopped;
  };
  for (const MappedTree& a : map) {
    for (const MappedTree& b : map) {
      if (&a == &b || !canopy(a) || !canopy(b)) continue;
      const double d = std::hypot(a.east.value - b.east.value, a.north.value - b.north.value);
      const Inches da = a.facts.dbh.inches();
      const Inches db = b.facts.dbh.inches();
      const bool touching =
          d < (crowded_crown_radius(da) + crowded_crown_radius(db) + settings().gap).value;
      if (touching || d < conflict_distance(da, db).value) {
        pairs.emplace_back(a.tag, b.tag, touching);
      }
    }
  }
  std::sort(pairs.begin(), pairs.end());
  return pairs;
}

TEST(GraphFromMap, FindsThePairsThatTryingAllOfThemFinds) {
  for (std::uint32_t seed = 1; seed <= 20; ++seed) {
    const auto map = wood(seed, 120, 200.0);
    const ReleaseGraph graph = graph_from_map(map, Unbounded{}, settings());
    std::vector<Pair> pairs;
    for (const CrownContact& c : graph.contacts()) {
      pairs.emplace_back(graph.trees()[c.crop].tag, graph.trees()[c.neighbour].tag,
                         c.closeness == Closeness::touching);
    }
    std::sort(pairs.begin(), pairs.end());
    ASSERT_EQ(pairs, all_pairs(map)) << "seed " << seed;
    ASSERT_GT(pairs.size(), 300U);
  }
}

TEST(GraphFromMap, TheOrderOfTheTreesDoesNotMatter) {
  auto map = wood(7, 100, 180.0);
  const ReleaseGraph first = graph_from_map(map, Unbounded{}, settings());
  std::mt19937 random(99);
  for (std::size_t i = map.size() - 1; i > 0; --i) std::swap(map[i], map[random() % (i + 1)]);
  const ReleaseGraph second = graph_from_map(map, Unbounded{}, settings());
  ASSERT_EQ(first.contacts().size(), second.contacts().size());
  for (std::size_t i = 0; i < first.contacts().size(); ++i) {
    EXPECT_EQ(first.contacts()[i].crop, second.contacts()[i].crop);
    EXPECT_EQ(first.contacts()[i].neighbour, second.contacts()[i].neighbour);
    EXPECT_EQ(first.contacts()[i].arc.half.value, second.contacts()[i].arc.half.value);
  }
}

TEST(GraphFromMap, AGapUnderTwoFeetIsClosed) {
  const auto at = [](double extra) {
    const Inches d{12};
    const Feet apart = 2.0 * crowded_crown_radius(d) + Feet{extra};
    std::vector<MappedTree> map = wood(1, 2, 1.0);
    for (MappedTree& tree : map) {
      tree.facts.dbh = test::dbh_in(12);
      tree.facts.crown_class = CrownClass::codominant;
      tree.east = tree.north = Feet{0};
    }
    map[1].east = apart;
    const ReleaseGraph graph = graph_from_map(map, Unbounded{}, settings());
    return graph.contacts().empty() ? Closeness::clear : graph.contacts()[0].closeness;
  };
  EXPECT_EQ(at(1.9), Closeness::touching);
  EXPECT_EQ(at(2.1), Closeness::clear);
}

TEST(GraphFromMap, SidesThatLookOutOfTheMapAreNotKnown) {
  std::vector<MappedTree> map = wood(1, 1, 1.0);
  map[0].facts.dbh = test::dbh_in(12);  // crowded radius 9.5 ft, so it looks 21 ft far
  map[0].east = Feet{25.0};
  map[0].north = Feet{0.0};
  const Sides seen = graph_from_map(map, CircleBounds{Feet{37.2}}, settings()).trees()[0].looked;
  EXPECT_FALSE(seen.has(Side::east));
  EXPECT_TRUE(seen.has(Side::west));
  const BoxBounds box{Feet{0}, Feet{-30}, Feet{100}, Feet{10}};
  const Sides in_box = graph_from_map(map, box, settings()).trees()[0].looked;
  EXPECT_EQ(in_box, (Sides{Side::east, Side::south, Side::west}));
  EXPECT_EQ(graph_from_map(map, Unbounded{}, settings()).trees()[0].looked, Sides::all());
}

TEST(GraphFromMap, ASideIsKnownWhereATreeLikeThisOneWouldStillBeOnTheMap) {
  // By definition: as far off as two crowns of its own size and the gap between them.
  std::vector<MappedTree> map = wood(1, 1, 1.0);
  map[0].facts.dbh = test::dbh_in(12);
  map[0].east = map[0].north = Feet{};
  const double reach = (2.0 * crowded_crown_radius(Inches{12.0}) + settings().gap).value;
  const auto looked = [&](double edge) {
    const Feet far{10.0 * reach};
    const BoxBounds box{.west = -far, .south = -far, .east = Feet{edge}, .north = far};
    return graph_from_map(map, box, settings()).trees()[0].looked.has(Side::east);
  };
  EXPECT_TRUE(looked(reach + 0.01));
  EXPECT_FALSE(looked(reach - 0.01));
}

TEST(MapOfPlot, TurnsAzimuthAndDistanceIntoPlaces) {
  Tree tree{nth_id<TreeId>(1), nth_id<PlotId>(1), {SpeciesCode{802}, test::dbh_in(10)}};
  tree.azimuth = Degrees{90};
  tree.distance = test::tape_ft(20);
  const auto map = map_of_plot(std::vector{tree});
  ASSERT_TRUE(map);
  EXPECT_NEAR((*map)[0].east.value, 20.0, 1e-9);
  EXPECT_NEAR((*map)[0].north.value, 0.0, 1e-9);
}

TEST(MapOfPlot, RefusesAMapWithHoles) {
  Tree tree{nth_id<TreeId>(1), nth_id<PlotId>(1), {SpeciesCode{802}, test::dbh_in(10)}};
  EXPECT_EQ(map_of_plot(std::vector{tree}).error().code, ErrorCode::missing_value);
  tree.azimuth = Degrees{90};
  tree.distance = test::tape_ft(20);
  tree.stems = 2;
  EXPECT_EQ(map_of_plot(std::vector{tree}).error().code, ErrorCode::contradiction);
}

}  // namespace
}  // namespace oaklight
