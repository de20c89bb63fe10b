#include "core/release/choose.hpp"

#include <algorithm>

#include "core/release/assemble.hpp"
#include "core/release/greedy.hpp"
#include "core/release/repair.hpp"
#include "core/release/search.hpp"

namespace oaklight {
namespace {

/// Candidates above which no search is tried, and nodes x candidates of one search: counts, so that
/// a slow machine gives the answer of a fast one.
constexpr std::size_t kMostSearched = 400;
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

bool within(const ReleaseProblem& problem, const ReleaseChoice& choice) {
  return !problem.guards || all_hold(check_guards(*problem.guards, choice.cut));
}

}  // namespace

ReleaseChoice choose(const ReleaseProblem& problem) {
  Candidates candidates(problem, std::vector<bool>(problem.graph.trees().size(), false));
  const Unguarded unguarded = best_without_guards(problem, candidates);
  ReleaseChoice full = assemble(candidates, unguarded.found.released, {}, true);
  full.optimality = unguarded.found.optimality;
  full.guards_of_full_plan = full.guards;
  if (within(problem, full)) return full;

  Candidates with_holds(problem, holdable_oaks(problem, full.guards));
  const Found found = best_within_guards(problem, unguarded, with_holds);
  ReleaseChoice choice = assemble(with_holds, found.released, found.held, found.any);
  choice.optimality = found.optimality;
  choice.guards_of_full_plan = full.guards;
  return choice;
}

}  // namespace oaklight
