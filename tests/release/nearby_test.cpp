// What the map around a tree forbids: marks near a line that nobody confirmed, dead trees left
// beside a way.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/support/trees.hpp"

namespace oaklight::test {
namespace {

using ::testing::Contains;

/// An oak that an aspen touches, with the aspen's nearest lines of the map.
ReleaseInput oak_and_aspen(const MapNearby& near_aspen) {
  ReleaseInput input = input_of(cards(R"(
    crop O WO 14 co
    O aspen N 16 touches AS 10 co)"),
                                1.0);
  for (const ReleaseTree& tree : input.graph.trees()) {
    if (tree.tag == "aspen") input.nearby[tree.id] = near_aspen;
  }
  return input;
}

const TreeVerdict& aspen_of(const ReleasePlan& plan) { return verdict_on(plan, "aspen"); }

TEST(Nearby, AnAspenIsKilledStandingWhereNothingIsNear) {
  const ReleasePlan plan = recommend(oak_and_aspen({}));
  EXPECT_EQ(aspen_of(plan).verdict, Verdict::kill_standing);
}

// X6.02, common practice: a height that nobody measured counts as 100 ft, so two lengths are 200
// ft.
TEST(Nearby, NoTreeIsKilledStandingWithinTwoLengthsOfAWay) {
  const ReleasePlan near = recommend(oak_and_aspen({.unconfirmed_line = {}, .way = Feet{199.0}}));
  EXPECT_EQ(aspen_of(near).verdict, Verdict::take);
  EXPECT_THAT(aspen_of(near).rules, Contains("X6.02"));
  const ReleasePlan far = recommend(oak_and_aspen({.unconfirmed_line = {}, .way = Feet{200.0}}));
  EXPECT_EQ(aspen_of(far).verdict, Verdict::kill_standing);
}

// X5.03, common practice: 200 ft.
TEST(Nearby, NothingIsMarkedNearALineThatNobodyConfirmed) {
  const ReleasePlan near = recommend(oak_and_aspen({.unconfirmed_line = Feet{199.0}, .way = {}}));
  EXPECT_EQ(aspen_of(near).verdict, Verdict::keep);
  EXPECT_THAT(aspen_of(near).rules, Contains("X5.03"));
  const ReleasePlan far = recommend(oak_and_aspen({.unconfirmed_line = Feet{200.0}, .way = {}}));
  EXPECT_EQ(aspen_of(far).verdict, Verdict::kill_standing);
}

// One plot gives a mean and no error (Freese 1962, USDA Agriculture Handbook 232).
TEST(Sampling, OnePlotIsNoGroundForAList) {
  ReleaseInput input = oak_and_aspen({});
  input.stand.sampled = true;
  const ReleasePlan plan = recommend(input);
  EXPECT_EQ(plan.advice.treatment, Treatment::measure_first);
  EXPECT_EQ(aspen_of(plan).verdict, Verdict::look_again);
  input.stand.stocking_interval = std::pair(Percent{44}, Percent{101});
  const ReleasePlan unsure = recommend(input);
  EXPECT_EQ(unsure.advice.treatment, Treatment::release);
  EXPECT_THAT(unsure.advice.text, testing::HasSubstr("the floor lies inside that range"));
}

}  // namespace
}  // namespace oaklight::test
