#pragma once

#include <cstdint>
#include <vector>

#include "core/release/guard_rows.hpp"
#include "core/release/priced_plans.hpp"

namespace oaklight {

/// A plan within the guards, and light that none within them passes.
struct BoundedPlan {
  std::vector<std::uint32_t> released;  ///< candidates, in order; allowed by every guard
  std::vector<std::uint32_t> held;      ///< oaks
  std::int64_t light = 0;
  std::int64_t bound = 0;
};

/// Prices so small that they decide between plans of equal light only: each tree taken, then its
/// basal area. Of all trees that one part of a wood gives they stay below a point of light.
[[nodiscard]] Prices tie_prices(const Candidates& candidates);

/// A plan near the best within the guards, with a bound that is near it too, for woods too large to
/// search. Each guard that binds gets a price: what a crop tree uses of it counts against its
/// light, and at the right prices the best plan without guards just keeps within them. At any
/// prices its value and the price of the whole room together are a bound (Lagrangian duality).
/// Prices are found by halving; then parts of the wood go over, one by one, from the plan at a
/// price too high to the one at a price too low, the best first, while the guards hold.
///
/// candidates  with the oaks that may be held
/// plans       theirs; any_price where a guard on shares of the oaks may bind
/// rows        of the problem; each holds when nothing is released
[[nodiscard]] BoundedPlan priced_plan(Candidates& candidates, PricedPlans& plans,
                                      const std::vector<GuardRow>& rows);

}  // namespace oaklight
