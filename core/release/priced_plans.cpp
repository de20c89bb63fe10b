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

PricedPlans::PricedPlans(Candidates& candidates)
    : all_(candidates),
      states_(candidates.size()),
      flags_(candidates.size(), false),
      seen_(candidates.problem().graph.trees().size(), false) {
  const SideSettings& sides = all_.sides();
  possible_ = std::max(sides.group_max, sides.group_max_thin) <= kLargestUnit;
  for (std::uint32_t c = 0; c < all_.size(); ++c) states_[c].push_back({});
  for (std::uint32_t c = 0; possible_ && c < all_.size(); ++c) find_states(c);
  if (possible_) build();
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
  if (states_[c].size() > kMostStates) possible_ = false;
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
  bool fine = true;
  for (const std::uint32_t c : unit) {
    fine = fine && (all_.beside_holdable(c) || all_.outcome(c, flags_).reaches);
  }
  if (fine) {
    for (const std::uint32_t c : unit) {
      const LocalOutcome& outcome = all_.outcome(c, flags_);
      State state{unit, outcome.light, static_cast<std::uint32_t>(takes_.size()), 0};
      if (all_.beside_holdable(c)) {
        state.light = all_.most_light(c);
        exact_ = false;
      } else {
        takes_.insert(takes_.end(), outcome.takes.begin(), outcome.takes.end());
      }
      state.takes_to = static_cast<std::uint32_t>(takes_.size());
      states_[c].push_back(std::move(state));
    }
  }
  for (const std::uint32_t c : unit) flags_[c] = false;
}

void PricedPlans::build() {
  // A tree that several candidates may take is a variable of its own: it goes or it stays.
  constexpr std::uint32_t kNone = 0xffffffffU;
  shared_.assign(all_.problem().graph.trees().size(), 0);
  std::vector<std::uint32_t> taker(shared_.size(), kNone);
  std::vector<std::uint8_t> counts;
  for (std::uint32_t c = 0; c < all_.size(); ++c) {
    counts.push_back(static_cast<std::uint8_t>(states_[c].size()));
  }
  for (std::uint32_t c = 0; c < all_.size(); ++c) {
    for (const State& state : states_[c]) {
      for (std::uint32_t i = state.takes_from; i < state.takes_to; ++i) {
        const std::uint32_t tree = takes_[i];
        if (taker[tree] == kNone) taker[tree] = c;
        if (taker[tree] == c || shared_[tree] != 0) continue;
        shared_[tree] = static_cast<std::uint32_t>(counts.size());
        shared_trees_.push_back(tree);
        counts.push_back(2);
      }
    }
  }
  program_ = std::make_unique<Elimination>(std::move(counts));
  for (std::uint32_t c = 0; c < all_.size(); ++c) {
    for (std::uint32_t s = 1; s < states_[c].size(); ++s) {
      const State& state = states_[c][s];
      for (std::uint32_t i = state.takes_from; i < state.takes_to; ++i) {
        if (shared_[takes_[i]] != 0) program_->forbid(c, s, shared_[takes_[i]], 0);
      }
      // What it meets is released in the same unit, or not at all.
      for (const std::uint32_t d : all_.meets(c)) {
        const bool together = std::binary_search(state.unit.begin(), state.unit.end(), d);
        for (std::uint32_t t = 0; t < states_[d].size(); ++t) {
          const bool same = t > 0 && states_[d][t].unit == state.unit;
          if (together ? !same : t > 0) program_->forbid(c, s, d, t);
        }
      }
    }
  }
  possible_ = program_->prepare(kLargestTable);
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
    const auto variable = static_cast<std::uint32_t>(all_.size() + i);
    values[program_->first(variable) + 1] = -prices.take[shared_trees_[i]];
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
    }
  }
  for (const std::uint32_t tree : plan.taken) seen_[tree] = false;
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
      const auto variable = static_cast<std::uint32_t>(all_.size() + i);
      uses[program_->first(variable) + 1] = guard->take[shared_trees_[i]];
    }
    budget.uses.push_back(std::move(uses));
    budget.rooms.push_back(guard->room);
  }
  const Elimination::Outcome outcome = program_->best_within(values_, budget, chosen_);
  if (outcome == Elimination::Outcome::found) plan = plan_chosen();
  return outcome;
}

}  // namespace oaklight
