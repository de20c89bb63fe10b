// The choice of crop trees and cuts is the best there is: against an integer program solved by
// GLPK, whose formulation stands in program_by_glpk.cpp, and against trying everything.
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/optimum/program_by_glpk.hpp"
#include "tests/optimum/random_stands.hpp"

namespace oaklight {
namespace {

constexpr std::uint32_t kStands = 2400;
constexpr std::uint32_t kTinyStands = 600;

std::vector<bool> holdable_of(const ReleaseProblem& problem, const ReleaseChoice& choice) {
  std::vector<bool> holdable(problem.graph.trees().size(), false);
  for (const GuardState& state : choice.guards_of_full_plan) {
    for (std::size_t i = 0; i < holdable.size(); ++i) {
      const OakGroup group = problem.traits[i].group();
      if (group == OakGroup::white || group == OakGroup::red) {
        holdable[i] = holdable[i] || lacks(state, group);
      }
    }
  }
  return holdable;
}

bool any_released(const ReleaseChoice& choice) {
  return std::count(choice.selection.standing.begin(), choice.selection.standing.end(),
                    Standing::released) > 0;
}

/// What every choice must be, whatever its points: within the guards, or nothing.
void expect_sound(const ReleaseProblem& problem, const ReleaseChoice& choice) {
  if (any_released(choice)) {
    EXPECT_TRUE(all_hold(choice.guards));
  }
  EXPECT_TRUE(choice.optimality.proven);
  EXPECT_EQ(choice.optimality.bound, choice.optimality.objective);
  std::int64_t points = 0;
  for (const std::uint32_t c : problem.ranked) {
    if (choice.selection.standing[c] != Standing::released) continue;
    EXPECT_FALSE(choice.taken[c]);
    const Light light = light_of(problem, choice.selection, choice.taken, c);
    const int sides = light.sides_free + std::min(light.sides_shared, problem.sides.shared_max);
    EXPECT_GE(sides, problem.sides.free_min);
    points += std::int64_t{problem.worth[c]} * sides;
  }
  // Light from trees taken for others comes on top.
  EXPECT_GE(points, choice.optimality.objective);
}

struct Counts {
  int stands = 0, bound = 0, held = 0, released = 0, pairs = 0;
};

void compare(std::uint32_t seed, const ReleaseProblem& problem, Counts& counts,
             std::optional<std::int64_t> (*best)(const ReleaseProblem&, const std::vector<bool>&)) {
  SCOPED_TRACE("seed " + std::to_string(seed));
  const ReleaseChoice choice = choose(problem);
  expect_sound(problem, choice);
  ReleaseProblem open = problem;
  open.guards.reset();
  const std::vector<bool> none(problem.graph.trees().size(), false);
  EXPECT_EQ(choose(open).optimality.objective, best(open, none).value_or(-1)) << "without guards";
  if (all_hold(choice.guards_of_full_plan)) {
    EXPECT_EQ(choice.optimality.objective, choose(open).optimality.objective);
  } else {
    ++counts.bound;
    EXPECT_EQ(choice.optimality.objective, best(problem, holdable_of(problem, choice)).value_or(0));
  }
  ++counts.stands;
  const auto& held = choice.selection.held;
  counts.held += std::count(held.begin(), held.end(), true) > 0 ? 1 : 0;
  counts.released += any_released(choice) ? 1 : 0;
}

TEST(Optimum, EqualsThatOfAnIntegerProgram) {
  Counts counts;
  for (std::uint32_t seed = 1; seed <= kStands; ++seed) {
    const test::RandomStand stand = test::random_stand(seed);
    const Groundwork ground(stand.input);
    ReleaseProblem problem = ground.problem;
    test::set_guards(problem, seed);
    compare(seed, problem, counts, test::best_by_glpk);
    if (HasFailure()) break;
  }
  std::cout << counts.stands << " stands, " << counts.released << " with a release, "
            << counts.bound << " where a guard binds, " << counts.held << " with oaks held\n";
  EXPECT_GT(counts.released, 1500);
  EXPECT_GT(counts.bound, 500);
  EXPECT_GT(counts.held, 20);
}

TEST(Optimum, EqualsThatOfTryingEverythingOnTinyStands) {
  Counts counts;
  for (std::uint32_t seed = 10'001; counts.stands < static_cast<int>(kTinyStands); ++seed) {
    const test::RandomStand stand = test::random_stand(seed, 4, 16);
    const Groundwork ground(stand.input);
    if (ground.problem.ranked.empty() || ground.problem.ranked.size() > 9) continue;
    ReleaseProblem problem = ground.problem;
    test::set_guards(problem, seed);
    compare(seed, problem, counts, test::best_by_trying_all);
    if (HasFailure()) break;
  }
  std::cout << counts.stands << " stands, " << counts.released << " with a release, "
            << counts.bound << " where a guard binds, " << counts.held << " with oaks held\n";
  EXPECT_GT(counts.bound, 50);
}

}  // namespace
}  // namespace oaklight
