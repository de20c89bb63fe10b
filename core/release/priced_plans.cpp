#include "core/release/priced_plans.hpp"

#include <algorithm>

namespace oaklight {
namespace {

constexpr std::size_t kLargestTable = 1U << 20U;
constexpr std::size_t kMostStates = 250;
constexpr int kLargestUnit = 3;
constexpr std::size_t kMostLabels = 400'000;

bool meet(const Candidates& all, std::uint32_t a, std::uint32_t b) {
  return std::binary_search(all.meets(a).begin(), all.meets(a).end(), b);
}

}  // namespace

PricedPlans::PricedPlans(Candidates& candidates, bool any_price)
    : all_(candidates),
      any_price_(any_price),
      states_(candidates.size()),
      flags_(candidates.size(), false),
      seen_(candidates.problem().graph.trees().size(), false),
      held_(seen_.size(), false) {
  const SideSettings& sides = all_.sides();
  possible_ = std::max(sides.group_max, sides.group_max_thin) <= kLargestUnit;
  for (std::uint32_t c = 0; c < all_.size(); ++c) states_[c].push_back({});
  for (std::uint32_t c = 0; possible_ && c < all_.size(); ++c) find_states(c);
  for (const auto& states : states_) possible_ = possible_ && states.size() <= kMostStates;
  if (!possible_) return;
  find_shared();
  std::vector<std::uint8_t> counts;
  for (const auto& states : states_) counts.push_back(static_cast<std::uint8_t>(states.size()));
  for (const Shared& s : shared_trees_) {
    counts.push_back(static_cast<std::uint8_t>(1 + s.owners + (s.held ? 1 : 0)));
  }
  program_ = std::make_unique<Elimination>(std::move(counts));
  for (std::uint32_t c = 0; c < all_.size(); ++c) {
    for (std::uint32_t s = 0; s < states_[c].size(); ++s) {
      bar_shared(c, s);
      if (s > 0) bar_meetings(c, s);
    }
  }
  possible_ = program_->prepare(kLargestTable);
}

/// Units of which c is the first member.
void PricedPlans::find_states(std::uint32_t c) {
  if (all_.most_light(c) == 0) return;
  add_unit({c});
  for (const std::uint32_t d : all_.meets(c)) {
    if (d > c && all_.fits({c, d})) add_unit({c, d});
    if (!all_.thin(c) || !all_.thin(d)) continue;
    // Three in a row: c - d - e, or d in front.
    for (const std::uint32_t e : all_.meets(d)) {
      if (e == c || (e < d && meet(all_, c, e))) continue;
      Candidates::Trees unit{c, d, e};
      std::sort(unit.begin(), unit.end());
      if (unit.front() == c && all_.fits(unit)) add_unit(unit);
    }
    for (const std::uint32_t e : all_.meets(c)) {
      if (e <= d || meet(all_, d, e)) continue;
      Candidates::Trees unit{c, d, e};
      std::sort(unit.begin(), unit.end());
      if (unit.front() == c && all_.fits(unit)) add_unit(unit);
    }
  }
}

void PricedPlans::add_unit(const Candidates::Trees& unit) {
  for (const std::uint32_t c : unit) {
    if (all_.most_light(c) == 0) return;
    const auto& known = states_[c];
    if (std::any_of(known.begin(), known.end(), [&](const State& s) { return s.unit == unit; })) {
      return;
    }
  }
  for (const std::uint32_t c : unit) flags_[c] = true;
  std::vector<std::vector<State>> found(unit.size());
  for (std::size_t i = 0; i < unit.size(); ++i) add_states(unit[i], unit, found[i]);
  for (const std::uint32_t c : unit) flags_[c] = false;
  if (std::any_of(found.begin(), found.end(), [](const auto& list) { return list.empty(); })) {
    return;
  }
  for (std::size_t i = 0; i < unit.size(); ++i) {
    states_[unit[i]].insert(states_[unit[i]].end(), found[i].begin(), found[i].end());
  }
}

/// What c may come to in this unit: with no oak held, and with each that it would take held, one
/// after the other, as long as it reaches its sides.
void PricedPlans::add_states(std::uint32_t c, const Candidates::Trees& unit,
                             std::vector<State>& found) {
  std::vector<std::vector<std::uint32_t>> open{{}};
  for (std::size_t next = 0; next < open.size(); ++next) {  // grows while it is walked
    const std::vector<std::uint32_t> held = open[next];
    for (const std::uint32_t oak : held) held_[oak] = true;
    const LocalOutcome& outcome = all_.outcome(c, flags_, &held_);
    for (const std::uint32_t oak : held) held_[oak] = false;
    if (!outcome.reaches) continue;
    State state{unit, outcome.light, static_cast<std::uint32_t>(takes_.size()), 0, held};
    takes_.insert(takes_.end(), outcome.takes.begin(), outcome.takes.end());
    state.takes_to = static_cast<std::uint32_t>(takes_.size());
    found.push_back(std::move(state));
    for (const std::uint32_t tree : outcome.takes) {
      if (!all_.holdable(tree)) continue;
      std::vector<std::uint32_t> more = held;
      more.insert(std::lower_bound(more.begin(), more.end(), tree), tree);
      if (std::find(open.begin(), open.end(), more) == open.end()) open.push_back(std::move(more));
    }
  }
}

/// A tree that several candidates may take, or that may be held, is a variable of its own.
void PricedPlans::find_shared() {
  std::vector<std::vector<std::uint32_t>> takers(seen_.size());
  std::vector<bool> may_hold(seen_.size(), false);
  std::vector<std::uint32_t> order;
  for (std::uint32_t c = 0; c < all_.size(); ++c) {
    for (const State& state : states_[c]) {
      for (std::uint32_t i = state.takes_from; i < state.takes_to; ++i) {
        std::vector<std::uint32_t>& list = takers[takes_[i]];
        if (list.empty()) order.push_back(takes_[i]);
        if (list.empty() || list.back() != c) list.push_back(c);
      }
      for (const std::uint32_t oak : state.held) may_hold[oak] = true;
    }
  }
  shared_.assign(seen_.size(), 0);
  for (const std::uint32_t tree : order) {
    if (takers[tree].size() < 2 && !may_hold[tree]) continue;
    shared_[tree] = static_cast<std::uint32_t>(all_.size() + shared_trees_.size());
    const auto owners = static_cast<std::uint32_t>(any_price_ ? takers[tree].size() : 1);
    shared_trees_.push_back({tree, std::move(takers[tree]), may_hold[tree], owners});
    if (owners > kMostStates) possible_ = false;
  }
}

/// What a state of a candidate leaves to the trees around it.
void PricedPlans::bar_shared(std::uint32_t c, std::uint32_t s) {
  const State& state = states_[c][s];
  const auto begin = takes_.begin() + state.takes_from;
  const auto end = takes_.begin() + state.takes_to;
  std::vector<std::uint32_t> around;  // trees with a variable that any state of c takes
  for (const State& any : states_[c]) {
    for (std::uint32_t i = any.takes_from; i < any.takes_to; ++i) {
      if (shared_[takes_[i]] != 0) around.push_back(takes_[i]);
    }
  }
  std::sort(around.begin(), around.end());
  around.erase(std::unique(around.begin(), around.end()), around.end());
  for (const std::uint32_t tree : around) {
    const std::uint32_t variable = shared_[tree];
    const Shared& shared = shared_trees_[variable - all_.size()];
    const auto rank = static_cast<std::uint32_t>(
        std::find(shared.takers.begin(), shared.takers.end(), c) - shared.takers.begin());
    const bool takes = std::find(begin, end, tree) != end;
    if (takes) {
      program_->forbid(c, s, variable, 0);
      if (shared.held) program_->forbid(c, s, variable, shared.owners + 1);
      // Of those that take it the first is named.
      for (std::uint32_t i = rank + 1; i < shared.owners; ++i) {
        program_->forbid(c, s, variable, i + 1);
      }
    } else if (any_price_) {
      program_->forbid(c, s, variable, rank + 1);
    }
  }
  for (const std::uint32_t oak : state.held) {
    const Shared& shared = shared_trees_[shared_[oak] - all_.size()];
    for (std::uint32_t i = 0; i <= shared.owners; ++i) program_->forbid(c, s, shared_[oak], i);
  }
}

/// What it meets is released in the same unit, or not at all.
void PricedPlans::bar_meetings(std::uint32_t c, std::uint32_t s) {
  const State& state = states_[c][s];
  for (const std::uint32_t d : all_.meets(c)) {
    const bool together = std::binary_search(state.unit.begin(), state.unit.end(), d);
    for (std::uint32_t t = 0; t < states_[d].size(); ++t) {
      const bool same = t > 0 && states_[d][t].unit == state.unit;
      if (together ? !same : t > 0) program_->forbid(c, s, d, t);
    }
  }
}

std::vector<std::int64_t> PricedPlans::values_at(const Prices& prices) const {
  std::vector<std::int64_t> values(program_->value_count(), 0);
  for (std::uint32_t c = 0; c < all_.size(); ++c) {
    for (std::uint32_t s = 1; s < states_[c].size(); ++s) {
      const State& state = states_[c][s];
      std::int64_t value = state.light * kLightUnit - prices.release[c];
      for (std::uint32_t i = state.takes_from; i < state.takes_to; ++i) {
        if (shared_[takes_[i]] == 0) value -= prices.take[takes_[i]];
      }
      values[program_->first(c) + s] = value;
    }
  }
  for (std::size_t i = 0; i < shared_trees_.size(); ++i) {
    const Shared& shared = shared_trees_[i];
    const std::size_t first = program_->first(static_cast<std::uint32_t>(all_.size() + i));
    for (std::size_t j = 1; j <= shared.owners; ++j) values[first + j] = -prices.take[shared.tree];
    if (shared.held) values[first + shared.owners + 1] = -kHoldTie;
  }
  return values;
}

PricedPlan PricedPlans::plan_chosen() {
  PricedPlan plan;
  for (std::uint32_t c = 0; c < all_.size(); ++c) {
    if (chosen_[c] == 0) continue;
    const State& state = states_[c][chosen_[c]];
    plan.released.push_back(c);
    plan.light.push_back(state.light);
    for (std::uint32_t i = state.takes_from; i < state.takes_to; ++i) {
      if (seen_[takes_[i]]) continue;
      seen_[takes_[i]] = true;
      plan.taken.push_back(takes_[i]);
      plan.taken_by.push_back(c);
    }
  }
  for (const std::uint32_t tree : plan.taken) seen_[tree] = false;
  for (std::size_t i = 0; i < shared_trees_.size(); ++i) {
    const Shared& shared = shared_trees_[i];
    if (!shared.held || chosen_[all_.size() + i] != shared.owners + 1) continue;
    plan.held.push_back(shared.tree);
    plan.held_by.push_back(shared.takers.front());
  }
  return plan;
}

PricedPlan PricedPlans::best(const Prices& prices) {
  values_ = values_at(prices);
  const std::int64_t value = program_->solve(values_, chosen_);
  PricedPlan plan = plan_chosen();
  plan.value = value;
  return plan;
}

Elimination::Outcome PricedPlans::best_within(const Prices& gains,
                                              const std::vector<const GuardRow*>& guards,
                                              std::int64_t least_value, PricedPlan& plan) {
  Budget budget{values_at(gains), {}, {}, least_value, kMostLabels};
  for (const GuardRow* guard : guards) {
    std::vector<std::int64_t> uses(program_->value_count(), 0);
    for (std::uint32_t c = 0; c < all_.size(); ++c) {
      for (std::uint32_t s = 1; s < states_[c].size(); ++s) {
        const State& state = states_[c][s];
        std::int64_t use = guard->release[all_.tree(c)];
        for (std::uint32_t i = state.takes_from; i < state.takes_to; ++i) {
          if (shared_[takes_[i]] == 0) use += guard->take[takes_[i]];
        }
        uses[program_->first(c) + s] = use;
      }
    }
    for (std::size_t i = 0; i < shared_trees_.size(); ++i) {
      const Shared& shared = shared_trees_[i];
      const std::size_t first = program_->first(static_cast<std::uint32_t>(all_.size() + i));
      for (std::size_t j = 1; j <= shared.owners; ++j) uses[first + j] = guard->take[shared.tree];
    }
    budget.uses.push_back(std::move(uses));
    budget.rooms.push_back(guard->room);
  }
  const Elimination::Outcome outcome = program_->best_within(values_, budget, chosen_);
  if (outcome == Elimination::Outcome::found) plan = plan_chosen();
  return outcome;
}

}  // namespace oaklight
