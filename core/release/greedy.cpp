#include "core/release/greedy.hpp"

#include <algorithm>

namespace oaklight {
namespace {

class Chooser {
 public:
  explicit Chooser(const ReleaseProblem& problem)
      : problem_(problem),
        selection_(problem.graph.trees().size()),
        outcomes_(problem.graph.trees().size()),
        wanted_(problem.graph.trees().size(), 0),
        dropped_(problem.graph.trees().size()) {}

  ReleaseChoice choose() {
    for (const std::uint32_t crop : problem_.ranked) decide(crop);
    settle_sides(problem_.ranked);
    for (const std::uint32_t tree : problem_.taken_anyway) want(tree, +1);
    settle_balance();
    settle_guards();
    return result();
  }

 private:
  const TreeFacts& facts(std::uint32_t tree) const { return problem_.graph.trees()[tree].facts; }
  bool released(std::uint32_t tree) const {
    return selection_.standing[tree] == Standing::released;
  }

  /// Released candidates whose crowns meet this one's, or will (R1.65, R2.25).
  std::vector<std::uint32_t> released_fellows(std::uint32_t crop) const {
    std::vector<std::uint32_t> fellows;
    for (const std::uint32_t i : problem_.graph.around(crop)) {
      const CrownContact& c = problem_.graph.contacts()[i];
      const bool meets = problem_.roles[i] == Role::fellow || c.will_meet;
      if (meets && released(c.neighbour)) fellows.push_back(c.neighbour);
    }
    return fellows;
  }

  /// The trees of the units that these belong to.
  std::vector<std::uint32_t> unit_of(const std::vector<std::uint32_t>& trees) const {
    std::vector<std::uint32_t> unit = trees;
    for (std::size_t i = 0; i < unit.size(); ++i) {  // grows while it is walked
      for (const std::uint32_t other : released_fellows(unit[i])) {
        const bool same = selection_.group[other] == selection_.group[unit[i]];
        if (same && std::find(unit.begin(), unit.end(), other) == unit.end()) {
          unit.push_back(other);
        }
      }
    }
    return unit;
  }

  bool fits_one_unit(const std::vector<std::uint32_t>& unit) const {
    const bool all_thin = std::all_of(unit.begin(), unit.end(), [&](std::uint32_t tree) {
      return facts(tree).dbh.inches() < problem_.sides.thin_below;
    });
    const int most = all_thin ? problem_.sides.group_max_thin : problem_.sides.group_max;
    return static_cast<int>(unit.size()) <= most;
  }

  void drop(std::uint32_t crop, Dropped::Cause cause, std::uint32_t better = 0) {
    if (released(crop)) {
      for (const std::uint32_t tree : outcomes_[crop].takes) want(tree, -1);
      outcomes_[crop].takes.clear();
      tally_.release(facts(crop), -1.0);
    }
    selection_.standing[crop] = cause == Dropped::Cause::guard ? Standing::waiting : Standing::out;
    dropped_[crop].cause = cause;
    dropped_[crop].better = better;
  }

  void want(std::uint32_t tree, int more) {
    const bool was = wanted_[tree] > 0;
    wanted_[tree] += more;
    const bool is = wanted_[tree] > 0;
    if (was == is || !problem_.guards) return;
    tally_.take(facts(tree), problem_.traits[tree], is ? 1.0 : -1.0);
  }

  /// Computes a released tree's outcome anew and books the difference.
  void refresh(std::uint32_t crop) {
    for (const std::uint32_t tree : outcomes_[crop].takes) want(tree, -1);
    outcomes_[crop] = outcome_of(problem_, selection_, crop);
    for (const std::uint32_t tree : outcomes_[crop].takes) want(tree, +1);
  }

  /// Releases the newcomers together with a unit that may be there already, if every tree of it
  /// reaches its sides; otherwise changes nothing. might_reach: it failed only for sides unknown.
  bool try_unit(const std::vector<std::uint32_t>& unit, const std::vector<std::uint32_t>& newcomers,
                bool& might_reach) {
    std::vector<std::uint32_t> groups;
    for (const std::uint32_t tree : unit) groups.push_back(selection_.group[tree]);
    for (const std::uint32_t tree : newcomers) selection_.standing[tree] = Standing::released;
    for (const std::uint32_t tree : unit) selection_.group[tree] = unit.front();
    bool reaches = true;
    might_reach = true;
    for (const std::uint32_t tree : unit) {
      const Outcome outcome = outcome_of(problem_, selection_, tree);
      reaches = reaches && outcome.reaches;
      might_reach = might_reach && outcome.might_reach;
    }
    if (reaches) {
      for (const std::uint32_t tree : newcomers) tally_.release(facts(tree), 1.0);
      for (const std::uint32_t tree : unit) refresh(tree);
      return true;
    }
    for (std::size_t i = 0; i < unit.size(); ++i) selection_.group[unit[i]] = groups[i];
    for (const std::uint32_t tree : newcomers) selection_.standing[tree] = Standing::open;
    return false;
  }

  /// Steps 5 and 6 for one candidate: alone, in a unit, or not at all.
  void decide(std::uint32_t crop) {
    if (selection_.standing[crop] != Standing::open) return;  // came in with a better one
    const std::vector<std::uint32_t> fellows = released_fellows(crop);
    std::vector<std::uint32_t> unit = unit_of(fellows);
    unit.push_back(crop);
    bool might_reach = false;
    if (fits_one_unit(unit) && try_unit(unit, {crop}, might_reach)) return;
    if (!fellows.empty()) {
      drop(crop, Dropped::Cause::better, fellows.front());
      for (const std::uint32_t tree : fellows) refresh(tree);
    } else if (!pair_with_a_lesser(crop)) {
      drop(crop, might_reach ? Dropped::Cause::unsure : Dropped::Cause::sides);
    }
  }

  /// A candidate that cannot be released alone, because a lesser one that must stay closes a side:
  /// the two may be a pair (R1.64).
  bool pair_with_a_lesser(std::uint32_t crop) {
    for (const std::uint32_t i : problem_.graph.around(crop)) {
      const std::uint32_t other = problem_.graph.contacts()[i].neighbour;
      if (problem_.roles[i] != Role::fellow || selection_.standing[other] != Standing::open)
        continue;
      std::vector<std::uint32_t> unit = unit_of(released_fellows(other));
      unit.insert(unit.end(), {other, crop});
      bool might_reach = false;
      if (fits_one_unit(unit) && try_unit(unit, {other, crop}, might_reach)) return true;
    }
    return false;
  }

  /// Step 10: drops, poorest first, whatever no longer reaches its sides, and looks again at those
  /// whose crowns it meets.
  void settle_sides(std::vector<std::uint32_t> look_at) {
    while (!look_at.empty()) {
      const std::uint32_t crop = look_at.back();
      look_at.pop_back();
      if (!released(crop)) continue;
      refresh(crop);
      const Outcome& outcome = outcomes_[crop];
      if (outcome.reaches) continue;
      drop(crop, outcome.might_reach ? Dropped::Cause::unsure : Dropped::Cause::sides);
      for (const std::uint32_t other : released_fellows(crop)) look_at.push_back(other);
    }
  }

  /// R3.60, R3.62: oaks are taken, the best crop tree's first, only while both groups keep their
  /// share; the rest are held.
  void settle_balance() {
    if (!problem_.guards) return;
    for (bool changed = true; changed;) {
      changed = false;
      CutTally oaks;
      std::vector<bool> counted(wanted_.size(), false);
      for (const std::uint32_t crop : problem_.ranked) {
        if (!released(crop)) continue;
        for (const std::uint32_t tree : outcomes_[crop].takes) {
          if (counted[tree] || !problem_.traits[tree].is_oak()) continue;
          counted[tree] = true;
          oaks.take(facts(tree), problem_.traits[tree], 1.0);
          if (balance_holds(*problem_.guards, oaks)) continue;
          oaks.take(facts(tree), problem_.traits[tree], -1.0);
          selection_.held[tree] = true;
          changed = true;
        }
      }
      if (changed) settle_sides(problem_.ranked);
    }
  }

  /// Step 9.
  void settle_guards() {
    if (!problem_.guards) return;
    std::vector<GuardState> states = check_guards(*problem_.guards, tally_);
    full_plan_ = states;
    for (auto crop = problem_.ranked.rbegin(); crop != problem_.ranked.rend() && !all_hold(states);
         ++crop) {
      if (!released(*crop)) continue;
      dropped_[*crop].guard =
          *std::find_if(states.begin(), states.end(), [](const GuardState& s) { return !s.holds; });
      drop(*crop, Dropped::Cause::guard);
      settle_sides(released_fellows(*crop));
      states = check_guards(*problem_.guards, tally_);
    }
    if (all_hold(states)) return;
    for (const std::uint32_t tree : problem_.taken_anyway) want(tree, -1);
  }

  ReleaseChoice result() {
    ReleaseChoice choice{selection_, {}, dropped_, tally_, {}, full_plan_, {}};
    for (const int wanted : wanted_) choice.taken.push_back(wanted > 0);
    if (problem_.guards) choice.guards = check_guards(*problem_.guards, tally_);
    return choice;
  }

  const ReleaseProblem& problem_;
  Selection selection_;
  std::vector<Outcome> outcomes_;  // of released trees
  std::vector<int> wanted_;        // released trees that take this one
  std::vector<Dropped> dropped_;
  CutTally tally_;
  std::vector<GuardState> full_plan_;
};

}  // namespace

ReleaseChoice greedy_choice(const ReleaseProblem& problem) { return Chooser(problem).choose(); }

}  // namespace oaklight
