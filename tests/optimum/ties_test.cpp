// Between plans of equal light: fewer trees taken, then less basal area taken, whichever way the
// best plan is found. And what greed books is what it took.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/measure/basal_area.hpp"
#include "core/release/greedy.hpp"
#include "core/release/guard_prices.hpp"
#include "tests/optimum/random_stands.hpp"

namespace oaklight {
namespace {

/// Two oaks that are alike and far apart, each with three maples to take; the guard lets one of
/// them be released.
class TwoAlike : public testing::Test {
 protected:
  TwoAlike()
      : input_(test::input_of(test::cards(R"(
    crop A WO 16 co
    A a1 N 18 touches RM 14.9 co
    A a2 S 18 touches RM 14.9 co
    A a3 W 18 touches RM 15.3 co
    crop B WO 16 co
    B b1 N 18 touches RM 15.0 co
    B b2 S 18 touches RM 15.0 co
    B b3 W 18 touches RM 15.0 co)"),
                              1.0)),
        ground_(input_),
        problem_(ground_.problem) {
    problem_.guards->counts.max = TreesPerAcre{1.0};
  }

  [[nodiscard]] std::vector<std::string> tags(const std::vector<std::uint32_t>& trees) const {
    std::vector<std::string> all;
    for (const std::uint32_t tree : trees) all.push_back(problem_.graph.trees()[tree].tag);
    return all;
  }

  ReleaseInput input_;
  Groundwork ground_;
  ReleaseProblem problem_;
};

// By hand, in tenths of an inch: 3 x 150^2 = 67,500 is less than 2 x 149^2 + 153^2 = 67,811. The
// diameters are so near each other that a rounding to other units turns it round.
TEST_F(TwoAlike, TheSearchTakesLessBasalArea) {
  const ReleaseChoice choice = choose(problem_);
  ASSERT_TRUE(choice.optimality.proven);
  std::vector<std::uint32_t> released;
  for (std::uint32_t i = 0; i < choice.taken.size(); ++i) {
    if (choice.selection.standing[i] == Standing::released) released.push_back(i);
  }
  EXPECT_EQ(tags(released), std::vector<std::string>{"B"});
}

TEST_F(TwoAlike, PricesTakeLessBasalArea) {
  Candidates candidates(problem_, std::vector<bool>(problem_.graph.trees().size(), false));
  PricedPlans plans(candidates);
  ASSERT_TRUE(plans.possible());
  const BoundedPlan plan = priced_plan(candidates, plans, guard_rows(problem_));
  EXPECT_EQ(plan.light, plan.bound);
  std::vector<std::uint32_t> released;
  for (const std::uint32_t c : plan.released) released.push_back(candidates.tree(c));
  EXPECT_EQ(tags(released), std::vector<std::string>{"B"});
}

TEST_F(TwoAlike, ATreeThatTheStandCannotSpareTellsWhereItWouldLeaveIt) {
  // By definition: three maples of 15 in, of what stands on the acre.
  problem_.guards->limits.removal_max = Percent{3.0};
  const ReleaseChoice choice = choose(problem_);
  const auto b = std::ranges::find(problem_.graph.trees(), "B", &ReleaseTree::tag);
  const Dropped& dropped =
      choice.dropped[static_cast<std::size_t>(b - problem_.graph.trees().begin())];
  ASSERT_EQ(dropped.cause, Dropped::Cause::guard);
  EXPECT_EQ(dropped.guard.rule, "R4.11");
  const double maples = 3.0 * basal_area(Inches{15.0}).value;
  EXPECT_NEAR(dropped.guard.after, 100.0 * maples / problem_.guards->before.ba.value, 1e-9);
}

TEST(Greedy, BooksWhatItTakesAndReleasesAndNothingElse) {
  int dropped = 0;
  for (std::uint32_t seed = 1; seed <= 300; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const test::RandomStand stand = test::random_stand(seed);
    const Groundwork ground(stand.input);
    ReleaseProblem problem = ground.problem;
    if (!problem.guards) continue;
    test::set_guards(problem, seed);
    const ReleaseChoice choice = greedy_choice(problem);
    CutTally fresh;
    for (std::uint32_t i = 0; i < choice.taken.size(); ++i) {
      const TreeFacts& facts = problem.graph.trees()[i].facts;
      if (choice.taken[i]) fresh.take(facts, problem.traits[i], 1.0);
      if (choice.selection.standing[i] == Standing::released) fresh.release(facts, 1.0);
      dropped += choice.dropped[i].cause == Dropped::Cause::guard ? 1 : 0;
    }
    EXPECT_NEAR(choice.cut.crops.trees, fresh.crops.trees, 1e-9);
    EXPECT_NEAR(choice.cut.crops.diameters, fresh.crops.diameters, 1e-9);
    EXPECT_NEAR(choice.cut.live.trees, fresh.live.trees, 1e-9);
    EXPECT_NEAR(choice.cut.live.squared_diameters, fresh.live.squared_diameters, 1e-6);
    EXPECT_NEAR(choice.cut.counted.trees, fresh.counted.trees, 1e-9);
    EXPECT_NEAR(choice.cut.ba.value, fresh.ba.value, 1e-9);
    EXPECT_NEAR(choice.cut.ba_oak.value, fresh.ba_oak.value, 1e-9);
    EXPECT_NEAR(choice.cut.ba_white_oak.value, fresh.ba_white_oak.value, 1e-9);
    EXPECT_NEAR(choice.cut.ba_red_oak.value, fresh.ba_red_oak.value, 1e-9);
  }
  EXPECT_GT(dropped, 100) << "no guard ever let go of a tree";
}

}  // namespace
}  // namespace oaklight
