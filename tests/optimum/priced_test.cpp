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

/// Young white oaks in rows, a red oak with a conk, which is no crop tree, between each four of
/// them: units of three that hold red oaks in more ways than a table has room for.
test::RandomStand white_oaks_among_red() {
  constexpr double kGap = 14.0;  // feet: crowns in a row do not meet yet, and will
  std::vector<MappedTree> map;
  const auto add = [&](int species, double east, double north) {
    const auto place = static_cast<std::uint32_t>(map.size() + 1);
    TreeFacts facts{SpeciesCode{species}, test::dbh_in(5.0)};
    facts.crown_class = CrownClass::codominant;
    if (species == 833) facts.conditions.add(Condition::conk);
    map.push_back({test::nth_id<TreeId>(place).value, std::to_string(1000 + place), facts,
                   Feet{east}, Feet{north}});
  };
  for (int i = 0; i < 8; ++i) {
    for (int j = 0; j < 8; ++j) {
      add(802, kGap * i, kGap * j);
      add(833, kGap * (i + 0.5), kGap * (j + 0.5));
    }
  }
  return test::stand_of(std::move(map), 2.0, Unbounded{});
}

TEST(Priced, AWoodTooDenseInOaksGetsASoundPlanUnderALooseBound) {
  const test::RandomStand stand = white_oaks_among_red();
  const Groundwork ground(stand.input);
  ReleaseProblem problem = ground.problem;
  ASSERT_TRUE(problem.guards);
  test::set_guards(problem, 4);  // nothing binds but the balance of the oaks
  problem.guards->limits.oak_group_min = Percent{45.0};  // of the oaks; each has half
  const ReleaseChoice choice = choose(problem);
  ASSERT_TRUE(oaks_may_be_held(choice));
  EXPECT_FALSE(choice.optimality.proven);
  EXPECT_GT(choice.optimality.objective, 0);
  EXPECT_LT(choice.optimality.objective, choice.optimality.bound);
  EXPECT_TRUE(all_hold(choice.guards));
  EXPECT_FALSE(all_hold(choice.guards_of_full_plan));

  const std::vector<bool>& held = choice.selection.held;
  Candidates candidates(problem, held);
  std::vector<bool> released;
  for (std::uint32_t c = 0; c < candidates.size(); ++c) {
    released.push_back(choice.selection.standing[candidates.tree(c)] == Standing::released);
  }
  std::int64_t light = 0;
  for (std::uint32_t c = 0; c < candidates.size(); ++c) {
    if (!released[c]) continue;
    const LocalOutcome& outcome = candidates.outcome(c, released, &held);
    EXPECT_TRUE(outcome.reaches) << c;
    light += outcome.light;
  }
  EXPECT_EQ(light, choice.optimality.objective);
  for (std::size_t tree = 0; tree < held.size(); ++tree) {
    if (!held[tree]) continue;
    EXPECT_FALSE(choice.taken[tree]) << tree;
    EXPECT_NE(problem.traits[tree].group(), OakGroup::none) << tree;
  }
}

}  // namespace
}  // namespace oaklight
