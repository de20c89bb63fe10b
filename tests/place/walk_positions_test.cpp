#include "core/place/walk_positions.hpp"

#include <gtest/gtest.h>

#include "core/place/geodesy.hpp"

namespace oaklight {
namespace {

constexpr Position kHill{Degrees{38.4012}, Degrees{-82.3345}};

template <class IdType>
IdType id(std::uint8_t n) {
  IdType made;
  made.value.bytes[15] = n;
  return made;
}

WalkTree tree(std::uint8_t n, std::optional<Position> position = std::nullopt) {
  WalkTree made{.id = id<WalkTreeId>(n),
                .stand = {},
                .tag = std::to_string(n),
                .facts = TreeFacts{.species = {802}, .dbh = *Dbh::from_tenths(120, UnitSystem::us)},
                .position = position};
  return made;
}

Contact reading(std::uint8_t n, std::uint8_t crop, std::uint8_t neighbour, double azimuth,
                std::int32_t feet) {
  return {.id = id<ContactId>(n),
          .crop = id<WalkTreeId>(crop),
          .neighbour = id<WalkTreeId>(neighbour),
          .distance = *TapedLength::from_hundredths(feet * 100, UnitSystem::us),
          .azimuth = Degrees{azimuth}};
}

TEST(WalkPositions, ANeighbourStandsWhereTheCardSays) {
  TractData data;
  data.walk_trees = {tree(1, kHill), tree(2)};
  data.contacts = {reading(1, 1, 2, 90, 20)};
  const auto placed = placed_walk_trees(data);
  ASSERT_TRUE(placed[1].position);
  const LocalFeet local = local_feet(kHill, *placed[1].position);
  EXPECT_NEAR(local.east.value, 20.0, 1e-6);
  EXPECT_NEAR(local.north.value, 0.0, 1e-6);
  EXPECT_FALSE(data.walk_trees[1].position) << "the record itself stays as it was read";
}

TEST(WalkPositions, ARecordedPositionIsNeverChanged) {
  const Position measured{Degrees{38.4013}, Degrees{-82.3345}};
  TractData data;
  data.walk_trees = {tree(1, kHill), tree(2, measured)};
  data.contacts = {reading(1, 1, 2, 90, 20)};
  EXPECT_EQ(placed_walk_trees(data)[1].position, measured);
}

TEST(WalkPositions, ACropTreeWithoutPositionIsPlacedByAnotherCardAndHandsItOn) {
  // By hand: 20 and 10 ft north of the tree whose place is known.
  TractData data;
  data.walk_trees = {tree(3), tree(2), tree(1, kHill)};
  data.contacts = {reading(1, 2, 3, 0, 10), reading(2, 1, 2, 0, 20)};
  const auto placed = placed_walk_trees(data);
  ASSERT_TRUE(placed[0].position);
  EXPECT_NEAR(local_feet(kHill, *placed[0].position).north.value, 30.0, 1e-6);
}

TEST(WalkPositions, TheCardWithTheLowerIdWins) {
  TractData data;
  data.walk_trees = {tree(1, kHill), tree(2)};
  data.contacts = {reading(9, 1, 2, 180, 50), reading(4, 1, 2, 90, 20)};
  EXPECT_NEAR(local_feet(kHill, *placed_walk_trees(data)[1].position).east.value, 20.0, 1e-6);
}

/// A tree of the plot at the hill that wears a tag, 40 ft south of its centre.
TractData tallied_with_tag(const std::string& tag, int species) {
  TractData data;
  data.plots = {{.id = id<PlotId>(1), .stand = {}, .cruise = {}, .label = "1", .position = kHill}};
  Tree made{
      .id = {},
      .plot = id<PlotId>(1),
      .facts = TreeFacts{.species = {species}, .dbh = *Dbh::from_tenths(120, UnitSystem::us)}};
  made.azimuth = Degrees{180.0};
  made.distance = *TapedLength::from_hundredths(4'000, UnitSystem::us);
  made.tag = tag;
  data.trees = {made};
  return data;
}

TEST(WalkPositions, ACardWhoseTagWasTalliedOnAPlotStandsWhereThePlotSays) {
  // By hand: 40 ft south of the plot as tallied, and 20 ft east of there.
  TractData data = tallied_with_tag("7", 802);
  data.walk_trees = {tree(7), tree(8)};
  data.contacts = {reading(1, 7, 8, 90, 20)};
  const auto placed = placed_walk_trees(data);
  ASSERT_TRUE(placed[0].position && placed[1].position);
  EXPECT_NEAR(local_feet(kHill, *placed[0].position).north.value, -40.0, 1e-6);
  EXPECT_NEAR(local_feet(kHill, *placed[1].position).east.value, 20.0, 1e-6) << "and hands it on";
}

TEST(WalkPositions, ATagTellsNothingOfAnotherTree) {
  TractData other_species = tallied_with_tag("7", 833);
  other_species.walk_trees = {tree(7)};
  EXPECT_FALSE(placed_walk_trees(other_species)[0].position);
  TractData twice = tallied_with_tag("7", 802);
  twice.trees.push_back(twice.trees.front());
  twice.walk_trees = {tree(7)};
  EXPECT_FALSE(placed_walk_trees(twice)[0].position) << "two trees of plots wear it";
  TractData untagged = tallied_with_tag("", 802);
  untagged.walk_trees = {tree(7)};
  untagged.walk_trees.front().tag.clear();
  EXPECT_FALSE(placed_walk_trees(untagged)[0].position);
}

TEST(WalkPositions, WhatIsNotRecordedStaysUnknown) {
  TractData data;
  data.walk_trees = {tree(1, kHill), tree(2), tree(3), tree(4)};
  Contact no_azimuth = reading(1, 1, 2, 0, 20);
  no_azimuth.azimuth.reset();
  Contact no_distance = reading(2, 1, 3, 0, 20);
  no_distance.distance.reset();
  const Contact of_a_lost_tree = reading(3, 7, 4, 0, 20);
  data.contacts = {no_azimuth, no_distance, of_a_lost_tree};
  const auto placed = placed_walk_trees(data);
  for (std::size_t i = 1; i < placed.size(); ++i) EXPECT_FALSE(placed[i].position) << i;
}

}  // namespace
}  // namespace oaklight
