// What a map shows of a tract with records that are incomplete or off the globe. Invented.
#include "core/paper/map_scene.hpp"

#include <gtest/gtest.h>

#include <QRectF>
#include <limits>

#include "core/place/geodesy.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_cruise.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {
namespace {

const Position kMiddle{Degrees{38.214}, Degrees{-82.731}};  // invented; no survey behind it
const Position kPlaces[] = {{Degrees{91.0}, Degrees{-82.7}},
                            {Degrees{38.2}, Degrees{361.0}},
                            {Degrees{std::numeric_limits<double>::quiet_NaN()}, Degrees{-82.7}},
                            {Degrees{38.2}, Degrees{std::numeric_limits<double>::infinity()}}};

Position at(double east, double north) {
  return position_from_local(kMiddle, {Feet{east}, Feet{north}});
}

Ring square(double from, double to) {
  return {at(from, from), at(to, from), at(to, to), at(from, to), at(from, from)};
}

WalkTree& walked(TractData& data, StandId stand, const std::string& tag, bool crop) {
  const auto number = static_cast<std::uint32_t>(900 + data.walk_trees.size());
  data.walk_trees.push_back({.id = nth_id<WalkTreeId>(number),
                             .stand = stand,
                             .tag = tag,
                             .facts = {.species = SpeciesCode{802}, .dbh = dbh_in(12.0)},
                             .crop = crop});
  return data.walk_trees.back();
}

TEST(MapScene, WhatIsOffTheGlobeIsListedAndNotDrawn) {
  for (const Position& nowhere : kPlaces) {
    TestCruise cruise;
    const StandId stand = cruise.stand("One", 10.0);
    cruise.plot(stand);
    cruise.data.plots.back().position = nowhere;
    walked(cruise.data, stand, "7", true).position = nowhere;
    cruise.data.tract.landing = nowhere;
    const MapScene scene = make_scene(cruise.data, {.here = nowhere}, UnitSystem::us);
    EXPECT_TRUE(scene.empty());
    ASSERT_EQ(scene.nowhere.size(), 1U);
    EXPECT_EQ(scene.nowhere[0].tag, "7");
    EXPECT_EQ(scene.plots_nowhere.size(), 1U);
    EXPECT_FALSE(scene.landing);
    EXPECT_FALSE(scene.here);
    EXPECT_FALSE(ground_of(scene));
  }
}

TEST(MapScene, TreesAreMarkedByTheirVerdict) {
  TestCruise cruise;
  const StandId one = cruise.stand("One", 10.0);
  const StandId other = cruise.stand("Other", 10.0);
  const struct {
    const char* tag;
    bool crop;
    std::optional<Verdict> verdict;
    std::optional<TreeMark> mark;  ///< nothing: not on the map
  } kTrees[] = {{"crop", true, {}, TreeMark::crop},
                {"plain", false, {}, {}},
                {"kept", false, Verdict::keep, TreeMark::keep},
                {"kept crop", true, Verdict::keep, TreeMark::crop},
                {"taken", false, Verdict::take, TreeMark::cut},
                {"killed", false, Verdict::kill_standing, TreeMark::cut},
                {"again", false, Verdict::look_again, TreeMark::other}};
  for (const auto& tree : kTrees) {
    WalkTree& made = walked(cruise.data, one, tree.tag, tree.crop);
    made.position = at(10.0, 20.0);
    if (!tree.verdict) continue;
    Mark mark;
    mark.tree = made.id;
    mark.verdict = *tree.verdict;
    cruise.data.marks.push_back(mark);
  }
  walked(cruise.data, other, "elsewhere", true).position = at(500.0, 0.0);
  const MapScene scene = make_scene(cruise.data, {.stand = one}, UnitSystem::us);
  std::size_t shown = 0;
  for (const auto& tree : kTrees) {
    if (!tree.mark) continue;
    ASSERT_LT(shown, scene.trees.size()) << tree.tag;
    EXPECT_EQ(scene.trees[shown].tag, tree.tag);
    EXPECT_EQ(scene.trees[shown].mark, *tree.mark) << tree.tag;
    ++shown;
  }
  EXPECT_EQ(scene.trees.size(), shown) << "nor a tree of the other stand";
}

TEST(MapScene, OutlinesHaveTheirHolesAndTheirAcresOrHectares) {
  TestCruise cruise;
  const StandId one = cruise.stand("One", 10.0);
  cruise.stand("No outline", 5.0);
  cruise.stand("Two corners", 5.0);
  cruise.data.stands[0].boundary = Polygon{square(0, 600), {square(200, 300)}};
  cruise.data.stands[2].boundary = Polygon{{at(0, 0), at(9, 9)}, {}};
  cruise.plot(one);
  cruise.data.plots.back().label = "1";
  cruise.plot(cruise.data.stands[1].id);
  cruise.data.plots.back().label = "1";
  const MapScene us = make_scene(cruise.data, {}, UnitSystem::us);
  ASSERT_EQ(us.stands.size(), 1U);
  EXPECT_EQ(us.stands[0].label, "One, 10.0 acres");
  EXPECT_EQ(us.stands[0].rings.size(), 2U);
  // Derived: 600 by 600 ft, to what a flat view of the ellipsoid leaves.
  const QRectF ground = ground_of(us).value();
  EXPECT_NEAR(ground.width(), 600.0, 0.1);
  EXPECT_NEAR(ground.height(), 600.0, 0.1);
  // By hand: 10 acres of 0.404686 ha.
  EXPECT_EQ(make_scene(cruise.data, {}, UnitSystem::metric).stands[0].label, "One, 4.0 ha");
  // Plots of two stands that share a label are told apart.
  ASSERT_EQ(us.plots_nowhere.size(), 2U);
  EXPECT_EQ(us.plots_nowhere[0].label, "One 1");
  EXPECT_EQ(us.plots_nowhere[1].label, "No outline 1");
}

TEST(MapScene, LinesAloneMakeTheGroundAndStubsAreLeftOut) {
  TestCruise cruise;
  cruise.data.lines.push_back(
      {nth_id<MapLineId>(1), LineKind::stream, "run", true, {at(0, 0), kPlaces[0], at(300, 400)}});
  cruise.data.lines.push_back(
      {nth_id<MapLineId>(2), LineKind::trail, "stub", true, {at(0, 0), kPlaces[0]}});
  const MapScene scene = make_scene(cruise.data, {}, UnitSystem::us);
  ASSERT_EQ(scene.tracks.size(), 1U);
  EXPECT_EQ(scene.tracks[0].points.size(), 2) << "the position off the globe is passed over";
  const QRectF ground = ground_of(scene).value();
  EXPECT_NEAR(ground.width(), 300.0, 0.1) << "derived: as drawn";
  EXPECT_NEAR(ground.height(), 400.0, 0.1) << "derived: as drawn";
}

}  // namespace
}  // namespace oaklight::test
