#include "core/release/choose.hpp"

#include <algorithm>

#include "core/release/assemble.hpp"
#include "core/release/greedy.hpp"
#include "core/release/guard_prices.hpp"
#include "core/release/repair.hpp"
#include "core/release/search.hpp"

namespace oaklight {
namespace {

/// Candidates up to which the search decides, and up to which it does where prices cannot; nodes x
/// candidates of one search. Counts, so that a slow machine gives the answer of a fast one.
constexpr std::size_t kFewest = 40;
constexpr std::size_t kMostSearched = 400;
constexpr std::size_t kMostTwice = 3000;
constexpr std::int64_t kWork = 20'000'000;

std::int64_t nodes_for(std::size_t candidates) {
  if (candidates > kMostSearched) return 0;
  return kWork / std::max<std::int64_t>(1, static_cast<std::int64_t>(candidates));
}

/// A choice in the making: candidates released, trees held, and how good it is.
struct Found {
  Candidates::Trees released, held;
  Optimality optimality;
  bool any = true;  ///< false: the guards allow nothing, not even the removal of invasive plants
};

std::vector<std::uint32_t> released_of(const Candidates& candidates, const ReleaseChoice& choice) {
  std::vector<std::uint32_t> released;
  for (std::uint32_t c = 0; c < candidates.size(); ++c) {
    if (choice.selection.standing[candidates.tree(c)] == Standing::released) released.push_back(c);
  }
  return released;
}

/// The best plan of each component, as if the stand had no guards.
struct Unguarded {
  Found found;
  std::vector<Candidates::Trees> components;
  std::vector<std::int64_t> best_of;
};

Unguarded best_without_guards(const ReleaseProblem& problem, Candidates& candidates) {
  ReleaseProblem open = problem;
  open.guards.reset();
  const std::vector<std::uint32_t> start = released_of(candidates, greedy_choice(open));
  Unguarded best{{}, candidates.components(), {}};
  for (const Candidates::Trees& component : best.components) {
    SearchTask task{component, {}, {}, nullptr, {{}, {}}, nodes_for(component.size())};
    task.blocks.assign(component.size(), 0);
    std::set_intersection(start.begin(), start.end(), component.begin(), component.end(),
                          std::back_inserter(task.starts.back()));
    const SearchResult result = search(candidates, task);
    best.found.released.insert(best.found.released.end(), result.released.begin(),
                               result.released.end());
    best.found.optimality.proven = best.found.optimality.proven && result.finished;
    best.found.optimality.objective += result.score.light;
    best.found.optimality.bound += result.bound;
    best.best_of.push_back(result.bound);
  }
  std::sort(best.found.released.begin(), best.found.released.end());
  return best;
}

std::vector<bool> holdable_oaks(const ReleaseProblem& problem,
                                const std::vector<GuardState>& states) {
  std::vector<bool> holdable(problem.graph.trees().size(), false);
  for (const OakGroup group : {OakGroup::white, OakGroup::red}) {
    const bool lacking = std::any_of(states.begin(), states.end(),
                                     [&](const GuardState& s) { return lacks(s, group); });
    if (!lacking) continue;
    for (std::size_t i = 0; i < holdable.size(); ++i) {
      holdable[i] = holdable[i] || problem.traits[i].group() == group;
    }
  }
  return holdable;
}

/// The best plan within the guards, over all components at once.
Found best_within_guards(const ReleaseProblem& problem, const Unguarded& unguarded,
                         Candidates& candidates) {
  const std::vector<GuardRow> rows = guard_rows(problem);
  SearchTask task;
  for (std::uint32_t block = 0; block < unguarded.components.size(); ++block) {
    for (const std::uint32_t c : unguarded.components[block]) {
      task.order.push_back(c);
      task.blocks.push_back(block);
    }
  }
  task.best_of = unguarded.best_of;
  task.rows = &rows;
  task.starts = {{},
                 released_of(candidates, greedy_choice(problem)),
                 repaired(candidates, rows, unguarded.found.released)};
  task.nodes = nodes_for(candidates.size());
  const SearchResult result = search(candidates, task);
  Found found{result.released,
              result.held,
              {result.finished, result.score.light, result.bound},
              result.found};
  found.optimality.bound = std::min(result.bound, unguarded.found.optimality.bound);
  return found;
}

/// A sound plan with a loose bound, for woods so dense in oaks that no table holds their choices.
Found best_by_greed(const ReleaseProblem& problem, const ReleaseChoice& full) {
  const ReleaseChoice greedy = greedy_choice(problem);
  Candidates candidates(problem, holdable_oaks(problem, full.guards));
  Found found{released_of(candidates, greedy), {}, {false, 0, full.optimality.bound}, true};
  std::vector<bool> released(candidates.size(), false);
  for (const std::uint32_t c : found.released) released[c] = true;
  for (std::uint32_t tree = 0; tree < greedy.selection.held.size(); ++tree) {
    if (greedy.selection.held[tree]) found.held.push_back(tree);
  }
  for (const std::uint32_t c : found.released) {
    found.optimality.objective += candidates.outcome(c, released, &greedy.selection.held).light;
  }
  found.any = all_hold(greedy.guards);
  return found;
}

/// The best plan within the guards where prices find it, which they do in any wood whose crop trees
/// form units of three at most.
Found best_at_prices(const ReleaseProblem& problem, const ReleaseChoice& full,
                     Candidates& candidates, PricedPlans& plans) {
  const std::vector<GuardRow> rows = guard_rows(problem);
  if (std::any_of(rows.begin(), rows.end(), [](const GuardRow& row) { return row.room < 0; })) {
    return {{}, {}, {}, false};  // broken before anything is released
  }
  const std::vector<bool> holdable = holdable_oaks(problem, full.guards);
  BoundedPlan plan;
  if (std::none_of(holdable.begin(), holdable.end(), [](bool may) { return may; })) {
    plan = priced_plan(candidates, plans, rows);
    // A guard on shares may bind although the full plan keeps it: then trees that give back count.
    if (plan.light < plan.bound && candidates.size() <= kMostTwice) {
      PricedPlans exact(candidates, true);
      const BoundedPlan again = exact.possible() ? priced_plan(candidates, exact, rows) : plan;
      if (again.light >= plan.light)
        plan = {again.released, again.held, again.light, std::min(plan.bound, again.bound)};
    }
  } else {
    Candidates with_holds(problem, holdable);
    PricedPlans with_oaks(with_holds, true);
    if (!with_oaks.possible()) return best_by_greed(problem, full);
    plan = priced_plan(with_holds, with_oaks, rows);
  }
  plan.bound = std::min(plan.bound, full.optimality.bound);
  return {plan.released, plan.held, {plan.light == plan.bound, plan.light, plan.bound}, true};
}

bool within(const ReleaseProblem& problem, const ReleaseChoice& choice) {
  return !problem.guards || all_hold(check_guards(*problem.guards, choice.cut));
}

/// A choice within the guards, its reasons those of the stand that the full plan would leave.
ReleaseChoice finish(Candidates& candidates, const Found& found, const ReleaseChoice& full) {
  ReleaseChoice choice = assemble(candidates, found.released, found.held, found.any);
  choice.optimality = found.optimality;
  choice.guards_of_full_plan = full.guards;
  return choice;
}

ReleaseChoice choose_by_search(const ReleaseProblem& problem, Candidates& candidates) {
  const Unguarded unguarded = best_without_guards(problem, candidates);
  ReleaseChoice full = assemble(candidates, unguarded.found.released, {}, true);
  full.optimality = unguarded.found.optimality;
  full.guards_of_full_plan = full.guards;
  if (within(problem, full)) return full;
  Candidates with_holds(problem, holdable_oaks(problem, full.guards));
  return finish(with_holds, best_within_guards(problem, unguarded, with_holds), full);
}

ReleaseChoice choose_at_prices(const ReleaseProblem& problem, Candidates& candidates,
                               PricedPlans& plans) {
  const PricedPlan best = plans.best(tie_prices(candidates));
  ReleaseChoice full = assemble(candidates, best.released, {}, true);
  for (const std::int64_t light : best.light) full.optimality.objective += light;
  full.optimality.bound = full.optimality.objective;
  full.guards_of_full_plan = full.guards;
  if (within(problem, full)) return full;
  const Found found = best_at_prices(problem, full, candidates, plans);
  if (found.held.empty()) return finish(candidates, found, full);
  Candidates with_holds(problem, holdable_oaks(problem, full.guards));
  return finish(with_holds, found, full);
}

}  // namespace

ReleaseChoice choose(const ReleaseProblem& problem) {
  Candidates candidates(problem, std::vector<bool>(problem.graph.trees().size(), false));
  if (candidates.size() > kFewest) {
    PricedPlans plans(candidates);
    if (plans.possible()) return choose_at_prices(problem, candidates, plans);
  }
  return choose_by_search(problem, candidates);
}

}  // namespace oaklight
