#include "core/release/elimination.hpp"

#include <algorithm>
#include <cassert>
#include <limits>
#include <queue>

namespace oaklight {
namespace {

/// Worth of what is forbidden: low enough that no sum of values makes up for it.
constexpr std::int64_t kNever = std::numeric_limits<std::int64_t>::min() / 64;

/// Entries of all tables together: a quarter of a gigabyte.
constexpr std::size_t kMostEntries = std::size_t{1} << 25U;

using Neighbours = std::vector<std::vector<std::uint32_t>>;

void join(std::vector<std::uint32_t>& list, std::uint32_t variable) {
  const auto at = std::lower_bound(list.begin(), list.end(), variable);
  if (at == list.end() || *at != variable) list.insert(at, variable);
}

void leave(std::vector<std::uint32_t>& list, std::uint32_t variable) {
  const auto at = std::lower_bound(list.begin(), list.end(), variable);
  if (at != list.end() && *at == variable) list.erase(at);
}

}  // namespace

Elimination::Elimination(std::vector<std::uint8_t> states)
    : states_(std::move(states)), first_(states_.size() + 1, 0), around_(states_.size()) {
  for (std::size_t i = 0; i < states_.size(); ++i) first_[i + 1] = first_[i] + states_[i];
}

void Elimination::forbid(std::uint32_t a, std::uint32_t state_a, std::uint32_t b,
                         std::uint32_t state_b) {
  assert(a != b);
  if (a > b) {
    std::swap(a, b);
    std::swap(state_a, state_b);
  }
  const auto known = std::find_if(around_[a].begin(), around_[a].end(),
                                  [&](const auto& entry) { return entry.first == b; });
  std::uint32_t edge = 0;
  if (known == around_[a].end()) {
    edge = static_cast<std::uint32_t>(edges_.size());
    edges_.push_back({a, b, static_cast<std::uint32_t>(forbidden_.size())});
    forbidden_.resize(forbidden_.size() + std::size_t{states_[a]} * states_[b], 0);
    around_[a].emplace_back(b, edge);
    around_[b].emplace_back(a, edge);
  } else {
    edge = known->second;
  }
  forbidden_[edges_[edge].table + state_a * states_[b] + state_b] = 1;
}

bool Elimination::prepare(std::size_t limit) {
  const auto count = static_cast<std::uint32_t>(states_.size());
  Neighbours left(count);
  for (const Edge& edge : edges_) {
    join(left[edge.a], edge.b);
    join(left[edge.b], edge.a);
  }
  // The variable with the fewest neighbours goes first, of equals the one with the lower number.
  using Entry = std::pair<std::uint32_t, std::uint32_t>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> queue;
  const auto degree = [&](std::uint32_t v) { return static_cast<std::uint32_t>(left[v].size()); };
  for (std::uint32_t v = 0; v < count; ++v) queue.emplace(degree(v), v);
  step_of_.assign(count, count);
  std::size_t table = 0;
  bool exact = true;
  while (!queue.empty()) {
    const auto [had, v] = queue.top();
    queue.pop();
    if (step_of_[v] != count || had != degree(v)) continue;
    Step step;
    step.variable = v;
    step.scope = left[v];
    for (const std::uint32_t w : step.scope) step.entries *= states_[w];
    step.table = table;
    table += step.entries;
    exact = step.entries <= limit && table <= kMostEntries;
    step_of_[v] = static_cast<std::uint32_t>(steps_.size());
    for (const std::uint32_t a : step.scope) {
      leave(left[a], v);
      for (const std::uint32_t b : step.scope) {
        if (a != b) join(left[a], b);
      }
      queue.emplace(degree(a), a);
    }
    left[v].clear();
    steps_.push_back(std::move(step));
    if (!exact) return false;
  }
  tables_.assign(table, 0);
  add_walks();
  return true;
}

/// Each table is received by the step of the first variable of its scope to go.
void Elimination::add_walks() {
  const auto count = static_cast<std::uint32_t>(states_.size());
  for (std::uint32_t s = 0; s < steps_.size(); ++s) {
    add_bars(s);
    const std::vector<std::uint32_t>& scope = steps_[s].scope;
    if (scope.empty()) continue;
    std::uint32_t next = count;
    for (const std::uint32_t w : scope) next = std::min(next, step_of_[w]);
    Step& to = steps_[next];
    Walk walk{steps_[s].table, s, 0, std::vector<std::size_t>(to.scope.size(), 0)};
    std::size_t stride = 1;
    for (std::size_t i = scope.size(); i-- > 0;) {
      if (scope[i] == to.variable) {
        walk.own = stride;
      } else {
        const auto place = std::lower_bound(to.scope.begin(), to.scope.end(), scope[i]);
        walk.strides[static_cast<std::size_t>(place - to.scope.begin())] = stride;
      }
      stride *= states_[scope[i]];
    }
    to.walks.push_back(std::move(walk));
  }
}

void Elimination::add_bars(std::uint32_t at) {
  Step& step = steps_[at];
  for (const auto& [other, e] : around_[step.variable]) {
    if (step_of_[other] <= at) continue;
    const Edge& edge = edges_[e];
    const bool first = edge.a == step.variable;
    const auto place = std::lower_bound(step.scope.begin(), step.scope.end(), other);
    step.bars.push_back({static_cast<std::size_t>(place - step.scope.begin()), edge.table,
                         first ? std::size_t{states_[edge.b]} : 1,
                         first ? 1 : std::size_t{states_[edge.b]}});
  }
}

void Elimination::begin(const Step& step, std::vector<std::uint8_t>& at,
                        std::vector<std::size_t>& places) const {
  at.assign(step.scope.size(), 0);
  places.clear();
  for (const Walk& walk : step.walks) places.push_back(walk.table);
}

void Elimination::advance(const Step& step, std::vector<std::uint8_t>& at,
                          std::vector<std::size_t>& places) const {
  for (std::size_t i = at.size(); i-- > 0;) {  // the last variable of the scope moves fastest
    const std::size_t wraps = states_[step.scope[i]] - 1U;
    if (at[i] < wraps) {
      ++at[i];
      for (std::size_t w = 0; w < places.size(); ++w) places[w] += step.walks[w].strides[i];
      return;
    }
    at[i] = 0;
    for (std::size_t w = 0; w < places.size(); ++w) places[w] -= step.walks[w].strides[i] * wraps;
  }
}

/// Fills the table of one step: for each set of states of its scope the best of its variable.
void Elimination::run(const Step& step, std::span<const std::int64_t> values) {
  const std::int64_t* own = values.data() + first_[step.variable];
  const std::size_t states = states_[step.variable];
  std::int64_t* out = tables_.data() + step.table;
  begin(step, at_, places_);
  for (std::size_t entry = 0; entry < step.entries; ++entry) {
    std::int64_t best = kNever;
    for (std::size_t s = 0; s < states; ++s) {
      if (barred(step, s, at_)) continue;
      std::int64_t sum = own[s];
      for (std::size_t w = 0; w < places_.size(); ++w) {
        sum += tables_[places_[w] + s * step.walks[w].own];
      }
      best = std::max(best, sum);
    }
    out[entry] = best;
    advance(step, at_, places_);
  }
}

std::int64_t Elimination::solve(std::span<const std::int64_t> values,
                                std::vector<std::uint8_t>& chosen) {
  std::int64_t total = 0;
  for (const Step& step : steps_) {
    run(step, values);
    if (step.scope.empty()) total += tables_[step.table];
  }
  chosen.assign(states_.size(), 0);
  for (auto step = steps_.rbegin(); step != steps_.rend(); ++step) {
    at_.clear();
    for (const std::uint32_t w : step->scope) at_.push_back(chosen[w]);
    std::int64_t best = kNever - 1;
    for (std::uint8_t s = 0; s < states_[step->variable]; ++s) {
      if (barred(*step, s, at_)) continue;
      std::int64_t sum = values[first_[step->variable] + s];
      for (const Walk& walk : step->walks) {
        std::size_t place = walk.table + s * walk.own;
        for (std::size_t i = 0; i < at_.size(); ++i) place += walk.strides[i] * at_[i];
        sum += tables_[place];
      }
      if (sum <= best) continue;
      best = sum;
      chosen[step->variable] = s;
    }
  }
  return total;
}

}  // namespace oaklight
