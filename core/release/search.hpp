#pragma once

#include <cstdint>
#include <vector>

#include "core/release/candidates.hpp"
#include "core/release/guard_rows.hpp"

namespace oaklight {

/// What a choice is ranked by: more light, then less cost.
struct Score {
  std::int64_t light = 0;
  std::int64_t cost = 0;  ///< oaks held, trees taken, their basal area, in one number

  [[nodiscard]] bool beats(const Score& other) const {
    return light > other.light || (light == other.light && cost < other.cost);
  }
};

struct SearchResult {
  bool found = false;     ///< something better than nothing released
  bool finished = false;  ///< no node was left out: what is found is the best
  Score score;
  std::int64_t bound = 0;               ///< light that no choice passes
  std::vector<std::uint32_t> released;  ///< candidates
  std::vector<std::uint32_t> held;      ///< trees
};

/// Branch and bound over some candidates, one by one: released or not, the first branch first.
/// Oaks are held last, as few as the guards need. A branch ends where a released tree cannot reach
/// its sides, where a guard is broken by what is taken for sure, or where the bound does not pass
/// the best choice known. The bound is the least of: light of the candidates left, no more of each
/// set of trees that all meet than a unit holds; the best light of each component left; and, for
/// each guard, a fractional knapsack of the candidates left.
///
/// order   candidates; whole components
/// blocks  for each of order: the number of its component, rising
/// best_of by component: light that it cannot pass; empty: not known
/// rows    guards; none: nothing binds
/// starts  choices that may be allowed; the best of them is found again if nothing beats it
/// nodes   most nodes to look at
struct SearchTask {
  std::vector<std::uint32_t> order;
  std::vector<std::uint32_t> blocks;
  std::vector<std::int64_t> best_of;
  const std::vector<GuardRow>* rows = nullptr;
  std::vector<std::vector<std::uint32_t>> starts;
  std::int64_t nodes = 0;
};
[[nodiscard]] SearchResult search(Candidates& candidates, const SearchTask& task);

}  // namespace oaklight
