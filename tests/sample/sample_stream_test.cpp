// Trees that come one by one and are not kept give the very figures of a tract in memory.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "core/sample/cruise_estimate.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_cruise.hpp"

namespace oaklight {
namespace {

/// The figures from the same trees, handed over plot by plot.
CruiseEstimate streamed(TractData data) {
  std::vector<Tree> trees = std::move(data.trees);
  data.trees.clear();
  std::ranges::sort(trees, {}, [](const Tree& t) { return std::pair(t.plot, t.id); });
  SampleStream stream;
  EXPECT_TRUE(stream.begin(data));
  for (const Tree& tree : trees) EXPECT_TRUE(stream.take(tree));
  trees.clear();  // nothing may point at them any more
  const TractData moved = std::move(data);
  return cruise_estimate(moved, stream.finish(moved).value(), test::test_species(), {});
}

void expect_same(const GroupFigures& a, const GroupFigures& b) {
  EXPECT_EQ(a.stems, b.stems);
  EXPECT_EQ(a.ba.mean, b.ba.mean);
  EXPECT_EQ(a.ba.se, b.ba.se);
  EXPECT_EQ(a.trees.mean, b.trees.mean);
  EXPECT_EQ(a.trees.se, b.trees.se);
  ASSERT_EQ(a.stem_wood.has_value(), b.stem_wood.has_value());
  if (a.stem_wood) {
    EXPECT_EQ(a.stem_wood->mean, b.stem_wood->mean);
  }
  ASSERT_EQ(a.board_feet.has_value(), b.board_feet.has_value());
  if (a.board_feet) {
    EXPECT_EQ(a.board_feet->se, b.board_feet->se);
  }
}

void expect_same(const CruiseEstimate& a, const CruiseEstimate& b) {
  const AreaEstimate& one = a.all.value();
  const AreaEstimate& other = b.all.value();
  expect_same(one.live, other.live);
  expect_same(one.dead, other.dead);
  EXPECT_EQ(one.below_min, other.below_min);
  ASSERT_EQ(one.by_species_class.size(), other.by_species_class.size());
  for (std::size_t i = 0; i < one.by_species_class.size(); ++i)
    expect_same(one.by_species_class[i].figures, other.by_species_class[i].figures);
}

/// Trees of all kinds, in no order of plots.
void add_trees(test::TestCruise& cruise, const std::vector<PlotId>& plots, int trees) {
  std::mt19937 chance(20261130);
  for (int i = 0; i < trees; ++i) {
    cruise.tree(plots[chance() % plots.size()], chance() % 3 == 0 ? 316 : 802,
                1.0 + static_cast<double>(chance() % 200) / 10.0);
    Tree& tree = cruise.data.trees.back();
    tree.stems = 1 + static_cast<int>(chance() % 3);
    if (chance() % 5 == 0) tree.facts.status = TreeStatus::dead;
    if (chance() % 2 == 0) tree.facts.half_logs = static_cast<int>(chance() % 9);
    if (chance() % 4 == 0)
      tree.facts.height = TapedLength::from_hundredths(6000, UnitSystem::us).value();
  }
}

TEST(SampleStream, GivesTheSameDigitsAsTheTractInMemory) {
  test::TestCruise cruise;
  std::vector<PlotId> plots;
  for (const char* name : {"Ridge", "Cove"}) {
    const StandId stand = cruise.stand(name, 40.0);
    for (int i = 0; i < 6; ++i) plots.push_back(cruise.plot(stand));
  }
  add_trees(cruise, plots, 300);
  const auto whole = cruise_estimate(cruise.data, test::test_species(), {}).value();
  ASSERT_GT(whole.all.value().by_species_class.size(), 10U);
  expect_same(whole, streamed(cruise.data));
}

TEST(SampleStream, TwoDesignsOnTheSamePlotsAreNoOther) {
  test::TestCruise cruise{PointDesign{10.0}};
  const StandId stand = cruise.stand("Ridge", 40.0);
  std::vector<PlotId> plots;
  const auto lay_out = [&] {
    for (const char* label : {"1", "2", "3"}) {
      plots.push_back(cruise.plot(stand));
      cruise.data.plots.back().label = label;
    }
  };
  cruise.data.cruises[0].min_dbh = test::dbh_in(5.0);
  lay_out();
  cruise.next_cruise(FixedDesign{0.01}).min_dbh = test::dbh_in(1.0);
  lay_out();
  add_trees(cruise, plots, 100);
  const auto whole = cruise_estimate(cruise.data, test::test_species(), {}).value();
  ASSERT_GT(whole.all.value().below_min, 0);
  expect_same(whole, streamed(cruise.data));
}

}  // namespace
}  // namespace oaklight
