#include "core/release/work_site.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "core/place/geodesy.hpp"
#include "tests/support/trees.hpp"

namespace oaklight::test {
namespace {

/// Crop trees of white and red oaks, anywhere within half a mile.
ShortCards scattered_crops(int count, std::mt19937& chance) {
  std::string lines;
  for (int i = 0; i < count; ++i) {
    lines += "crop T" + std::to_string(i) + (chance() % 2 == 0 ? " WO" : " RO") + " 15 co lc=45\n";
  }
  ShortCards scattered = cards(lines);
  const Position hill{Degrees{38.5}, Degrees{-81.5}};
  for (WalkTree& tree : scattered.trees) {
    tree.position = position_at(hill, Degrees{static_cast<double>(chance() % 360)},
                                Feet{static_cast<double>(chance() % 2640)});
  }
  return scattered;
}

/// Definition: the least distance to another crop tree of the group.
double nearest_of_kind(const std::vector<WalkTree>& trees, const WalkTree& tree) {
  double least = 1e9;
  for (const WalkTree& other : trees) {
    if (other.id == tree.id || other.facts.species != tree.facts.species) continue;
    least = std::min(least, leg_between(*tree.position, *other.position).distance.value);
  }
  return least;
}

TEST(WorkSite, FindsTheNearestCropTreeOfItsKindWhereverItStands) {
  std::mt19937 chance(20261130);
  for (int wood = 0; wood < 20; ++wood) {
    const ShortCards scattered = scattered_crops(30, chance);
    const ReleaseInput input = input_of(scattered, 200.0);
    const ReleasePlan plan = recommend(input);
    const std::vector<Surroundings> around(scattered.trees.size());
    const auto cases = work_cases({scattered.trees, around, scattered.contacts}, plan, input);
    int crops = 0;
    for (std::size_t i = 0; i < cases.size(); ++i) {
      ASSERT_TRUE(plan.trees[i].crop) << "all are kept";
      const auto tree = std::ranges::find(scattered.trees, plan.trees[i].tag, &WalkTree::tag);
      ASSERT_TRUE(cases[i].kin.has_value());
      EXPECT_EQ(cases[i].kin->value, nearest_of_kind(scattered.trees, *tree));
      ++crops;
    }
    EXPECT_EQ(crops, 30) << "as many as the test made";
  }
}

}  // namespace
}  // namespace oaklight::test
