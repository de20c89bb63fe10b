#include "core/handoff/surroundings.hpp"

#include <gtest/gtest.h>

#include "tests/handoff/test_tract.hpp"

namespace oaklight {
namespace {

using namespace oaklight::test;

std::vector<Surroundings> around(const TestTract& tract) {
  return surroundings_of(tract.data, tract.data.walk_trees, species());
}

// Distances derived from the places that the tests give.
TEST(Surroundings, MeasureTheNearestLineOfEachKind) {
  TestTract tract;
  tract.tree("1").position = at(0, 0);
  tract.line(LineKind::stream, {at(-500, 40), at(500, 40)});
  tract.line(LineKind::stream, {at(-500, -90), at(500, -90)});
  tract.line(LineKind::road, {at(300, -500), at(300, 500)});
  tract.line(LineKind::trail, {at(-120, -500), at(-120, 500)});
  tract.line(LineKind::power_line, {at(700, -500), at(700, 500)});
  const Surroundings found = around(tract).front();
  EXPECT_NEAR(found.stream->value, 40, 1e-3);
  EXPECT_NEAR(found.way->value, 120, 1e-3);
  EXPECT_NEAR(found.power_line->value, 700, 1e-3);
  EXPECT_EQ(found.unconfirmed_line, std::nullopt);
}

TEST(Surroundings, AConfirmedLineIsNoDoubtfulOne) {
  TestTract tract;
  tract.tree("1").position = at(0, 0);
  tract.line(LineKind::neighbour_line, {at(-500, 60), at(500, 60)}).confirmed = true;
  EXPECT_EQ(around(tract).front().unconfirmed_line, std::nullopt);
  tract.data.lines.front().confirmed = false;
  EXPECT_NEAR(around(tract).front().unconfirmed_line->value, 60, 1e-3);
}

TEST(Surroundings, ATreeWithoutAPlaceHasNoDistances) {
  TestTract tract;
  tract.tree("1");
  tract.line(LineKind::stream, {at(-500, 40), at(500, 40)});
  EXPECT_EQ(around(tract).front().stream, std::nullopt);
  EXPECT_TRUE(around(tract).front().unplaced) << "which is not the same as far from all of them";
  tract.data.walk_trees.front().position = at(0, 0);
  EXPECT_FALSE(around(tract).front().unplaced);
  tract.data.walk_trees.front().position.reset();
  tract.data.lines.clear();
  EXPECT_FALSE(around(tract).front().unplaced) << "nothing to be near of";
}

TEST(Surroundings, SeeADeadAshByItsPlaceButNotTheTreeItself) {
  // By hand: 30, 40 and 50 ft.
  TestTract tract;
  tract.tree("1").position = at(0, 0);
  WalkTree& ash = tract.tree("2", kWhiteAsh);
  ash.position = at(30, 40);
  ash.facts.status = TreeStatus::dead;
  ash.facts.height = tape_ft(70);
  const auto found = around(tract);
  ASSERT_EQ(found[0].dead_ashes.size(), 1U);
  EXPECT_NEAR(found[0].dead_ashes[0].distance.value, 50, 1e-3);
  EXPECT_EQ(found[0].dead_ashes[0].height, Feet{70});
  EXPECT_TRUE(found[1].dead_ashes.empty());
  tract.data.walk_trees[1].tag.clear();
  EXPECT_TRUE(around(tract)[1].dead_ashes.empty()) << "not by its tag alone";
}

TEST(Surroundings, TreesOfOneCardAreNearEvenWithoutPlaces) {
  TestTract tract;
  const WalkTreeId crop = tract.tree("1", kWhiteOak).id;
  const WalkTreeId maple = tract.tree("2").id;
  WalkTree& ash = tract.tree("3", kWhiteAsh);
  ash.facts.status = TreeStatus::dead;
  const WalkTreeId ash_id = ash.id;
  tract.tree("4");
  tract.contact(crop, maple).distance = tape_ft(15);
  Contact& to_ash = tract.contact(crop, ash_id);
  to_ash.distance = tape_ft(22);
  const auto found = around(tract);
  ASSERT_EQ(found[0].dead_ashes.size(), 1U);
  EXPECT_EQ(found[0].dead_ashes[0].distance, Feet{22});
  ASSERT_EQ(found[1].dead_ashes.size(), 1U);
  EXPECT_EQ(found[1].dead_ashes[0].distance, Feet{7}) << "the least that they can be apart";
  EXPECT_TRUE(found[3].dead_ashes.empty()) << "on no card with the ash";

  tract.data.contacts.back().distance.reset();
  EXPECT_EQ(around(tract)[1].dead_ashes[0].distance, Feet{0}) << "not taped: near";
}

TEST(Surroundings, SeeADeadAshOfAPlot) {
  TestTract tract;
  tract.tree("1").position = at(0, 0);
  const PlotId plot = nth_id<PlotId>(1);
  const CruiseId cruise = nth_id<CruiseId>(1);
  tract.data.cruises.push_back({.id = cruise, .design = PointDesign{.factor = 10}});
  tract.data.plots.push_back({.id = plot, .cruise = cruise, .label = "12", .position = at(100, 0)});
  Tree ash{.id = nth_id<TreeId>(1),
           .plot = plot,
           .facts = {.species = {kWhiteAsh}, .dbh = dbh_in(14), .status = TreeStatus::dead}};
  ash.azimuth = Degrees{90};
  ash.distance = tape_ft(20);
  tract.data.trees = {ash};
  EXPECT_NEAR(around(tract)[0].dead_ashes.at(0).distance.value, 120, 1e-3);

  EXPECT_EQ(around(tract)[0].dead_ashes[0].name, "a tallied tree of plot 12");

  // Derived: a 14 in tree is on a point of 10 ft2/ac as far as 14 x 2.75 = 38.5 ft from its centre.
  tract.data.trees[0].distance.reset();
  EXPECT_NEAR(around(tract)[0].dead_ashes.at(0).distance.value, 61.5, 0.01);
  // Derived: a plot of 0.1 ac has a radius of sqrt(4356 / pi) = 37.24 ft.
  tract.data.cruises[0].design = FixedDesign{.area = 0.1};
  EXPECT_NEAR(around(tract)[0].dead_ashes.at(0).distance.value, 62.76, 0.01);
  tract.data.cruises[0].design = FixedDesign{.area = 1};
  EXPECT_EQ(around(tract)[0].dead_ashes.at(0).distance, Feet{0}) << "it may stand beside it";

  tract.data.trees[0].tag = "1";
  EXPECT_TRUE(around(tract)[0].dead_ashes.empty()) << "the same tag is the same tree";

  tract.data.trees[0].tag = "";
  tract.data.plots[0].position.reset();
  EXPECT_TRUE(around(tract)[0].dead_ashes.empty());
}

TEST(Surroundings, SeeHungTrees) {
  TestTract tract;
  tract.tree("1").position = at(0, 0);
  WalkTree& hung = tract.tree("2");
  hung.position = at(0, -80);
  hung.facts.conditions.add(Condition::hung_tree);
  const auto found = around(tract);
  EXPECT_NEAR(found[0].hung_trees.at(0).distance.value, 80, 1e-3);
  EXPECT_TRUE(found[1].hung_trees.empty());
}

TEST(Surroundings, ALooseLimbHangsOverTheTreesItsCrownTouches) {
  TestTract tract;
  const WalkTreeId crop = tract.tree("1", kWhiteOak).id;
  const WalkTreeId touching = tract.tree("2").id;
  const WalkTreeId apart = tract.tree("3").id;
  tract.data.walk_trees[0].facts.conditions.add(Condition::loose_limb);
  tract.contact(crop, touching).seen = Seen::touches;
  tract.contact(crop, apart).seen = Seen::none;
  const auto found = around(tract);
  EXPECT_FALSE(found[0].loose_limb_beside) << "its own limb is another caution";
  EXPECT_TRUE(found[1].loose_limb_beside);
  EXPECT_FALSE(found[2].loose_limb_beside);
}

}  // namespace
}  // namespace oaklight
