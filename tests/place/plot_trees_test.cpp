#include "core/place/plot_trees.hpp"

#include <gtest/gtest.h>

#include "core/place/geodesy.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight {
namespace {

const Position kCentre{Degrees{38.1}, Degrees{-82.5}};

Tree tree(PlotId plot, std::optional<Degrees> azimuth, std::optional<TapedLength> distance) {
  return {.id = {},
          .plot = plot,
          .facts = TreeFacts{.species = {802}, .dbh = test::dbh_in(12.0)},
          .azimuth = azimuth,
          .distance = distance};
}

TEST(PlotTrees, HaveNoPlaceWhereOneReadingIsMissing) {
  TractData data;
  const auto placed = test::nth_id<PlotId>(1);
  const auto unplaced = test::nth_id<PlotId>(2);
  data.plots = {Plot{.id = placed, .position = kCentre}, Plot{.id = unplaced}};
  const Degrees east{90.0};
  const TapedLength feet = test::tape_ft(25.5);
  data.trees = {tree(placed, east, feet), tree(unplaced, east, feet),
                tree(placed, std::nullopt, feet), tree(placed, east, std::nullopt)};
  const auto places = plot_tree_positions(data);
  ASSERT_EQ(places.size(), 4U);
  ASSERT_TRUE(places[0]);
  EXPECT_NEAR(leg_between(kCentre, *places[0]).distance.value, 25.5, 1e-6);
  EXPECT_NEAR(leg_between(kCentre, *places[0]).azimuth.value, 90.0, 1e-6);
  EXPECT_FALSE(places[1]);
  EXPECT_FALSE(places[2]);
  EXPECT_FALSE(places[3]);
}

}  // namespace
}  // namespace oaklight
