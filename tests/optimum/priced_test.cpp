// The way taken in woods too large to search, on stands small enough for a second opinion: guards
// by prices, parts of the wood by dynamic programming.
#include <gtest/gtest.h>

#include <algorithm>

#include "core/release/guard_prices.hpp"
#include "tests/optimum/program_by_glpk.hpp"
#include "tests/optimum/random_stands.hpp"

namespace oaklight {
namespace {

constexpr std::uint32_t kSmallStands = 1200;
constexpr std::uint32_t kLargerStands = 8;

bool oaks_may_be_held(const ReleaseChoice& choice) {
  return std::any_of(choice.guards_of_full_plan.begin(), choice.guards_of_full_plan.end(),
                     [](const GuardState& state) {
                       return lacks(state, OakGroup::white) || lacks(state, OakGroup::red);
                     });
}

struct Counts {
  int stands = 0, bound = 0, proven = 0, held = 0;
};

/// What prices find, beside the proven best.
void compare(const ReleaseProblem& problem, const ReleaseChoice& best, std::int64_t most,
             Counts& counts) {
  ASSERT_TRUE(best.optimality.proven);
  Candidates candidates(problem, std::vector<bool>(problem.graph.trees().size(), false));
  PricedPlans plans(candidates);
  ASSERT_TRUE(plans.possible());
  const PricedPlan open = plans.best(tie_prices(candidates));
  std::int64_t light = 0;
  for (const std::int64_t one : open.light) light += one;
  EXPECT_EQ(light, most) << "without guards";
  ++counts.stands;
  if (all_hold(best.guards_of_full_plan)) return;
  const std::vector<GuardRow> rows = guard_rows(problem);
  if (std::any_of(rows.begin(), rows.end(), [](const GuardRow& row) { return row.room < 0; })) {
    return;
  }
  const bool holds = oaks_may_be_held(best);
  std::vector<bool> holdable(problem.graph.trees().size(), false);
  for (const GuardState& state : best.guards_of_full_plan) {
    for (std::size_t i = 0; holds && i < holdable.size(); ++i) {
      const OakGroup group = problem.traits[i].group();
      const bool named = group == OakGroup::white || group == OakGroup::red;
      holdable[i] = holdable[i] || (named && lacks(state, group));
    }
  }
  Candidates with_holds(problem, holdable);
  PricedPlans with_oaks(with_holds, holds);
  ASSERT_TRUE(with_oaks.possible());
  counts.held += holds ? 1 : 0;
  ++counts.bound;
  const BoundedPlan plan = priced_plan(with_holds, with_oaks, rows);
  EXPECT_LE(plan.light, best.optimality.objective);
  EXPECT_GE(plan.bound, best.optimality.objective);
  if (plan.light != plan.bound) return;
  ++counts.proven;
  EXPECT_EQ(plan.light, best.optimality.objective);
}

std::int64_t most_without_guards(const ReleaseProblem& problem) {
  ReleaseProblem open = problem;
  open.guards.reset();
  return choose(open).optimality.objective;
}

TEST(Priced, EqualsTheSearchOnSmallStands) {
  Counts counts;
  for (std::uint32_t seed = 1; seed <= kSmallStands; ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const test::RandomStand stand = test::random_stand(seed);
    const Groundwork ground(stand.input);
    ReleaseProblem problem = ground.problem;
    test::set_guards(problem, seed);
    compare(problem, choose(problem), most_without_guards(problem), counts);
    if (HasFailure()) break;
  }
  std::cout << counts.stands << " stands; a guard binds in " << counts.bound
            << ", proven by prices " << counts.proven << "; oaks may be held in " << counts.held
            << '\n';
  EXPECT_GT(counts.bound, 300);
  // Where a guard on the balance of the oaks binds and none may be held, a proof may fail.
  EXPECT_GE(100 * counts.proven, 99 * counts.bound);
  EXPECT_GT(counts.held, 20);
}

/// 80 to 100 trees, as many as GLPK solves in a second or so: prices find what it finds.
TEST(Priced, EqualsAnIntegerProgramOnLargerStands) {
  int stands = 0;
  for (std::uint32_t seed = 30'001; stands < static_cast<int>(kLargerStands); ++seed) {
    SCOPED_TRACE("seed " + std::to_string(seed));
    const test::RandomStand stand = test::random_stand(seed, 80, 100);
    const Groundwork ground(stand.input);
    ReleaseProblem problem = ground.problem;
    test::set_guards(problem, 2 * seed + 1);  // floors near what the stand holds
    Candidates candidates(problem, std::vector<bool>(problem.graph.trees().size(), false));
    PricedPlans plans(candidates);
    ASSERT_TRUE(plans.possible());
    const std::vector<GuardRow> rows = guard_rows(problem);
    if (std::any_of(rows.begin(), rows.end(), [](const GuardRow& row) { return row.room < 0; })) {
      continue;
    }
    const BoundedPlan plan = priced_plan(candidates, plans, rows);
    const std::vector<bool> none(problem.graph.trees().size(), false);
    EXPECT_EQ(plan.light, plan.bound);
    EXPECT_EQ(plan.light, test::best_by_glpk(problem, none).value_or(0));
    ++stands;
    if (HasFailure()) break;
  }
  std::cout << stands << " stands of 80 to 100 trees\n";
}

}  // namespace
}  // namespace oaklight
