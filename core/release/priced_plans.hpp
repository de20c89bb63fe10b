#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <vector>

#include "core/release/candidates.hpp"
#include "core/release/elimination.hpp"
#include "core/release/guard_rows.hpp"

namespace oaklight {

/// What a plan costs beside its light: a price for each tree taken (by tree) and for each candidate
/// released (by candidate), in parts of kLightUnit to a point of light.
struct Prices {
  std::vector<std::int64_t> take, release;
};
inline constexpr std::int64_t kLightUnit = std::int64_t{1} << 30U;

/// The plan that is best at some prices.
struct PricedPlan {
  std::int64_t value = 0;               ///< light x kLightUnit less prices; no plan has more
  std::vector<std::uint32_t> released;  ///< candidates, in order
  std::vector<std::int64_t> light;      ///< of each of these
  std::vector<std::uint32_t> taken;     ///< trees, each once
};

/// The best plan without guards when trees have prices. No oak is held; oaks that may be held count
/// as costing nothing, so that the value is still one that no plan passes (see exact()).
class PricedPlans {
 public:
  explicit PricedPlans(Candidates& candidates);

  /// Whether best() gives the best plan of all; otherwise there is none to be had this way.
  [[nodiscard]] bool possible() const { return possible_; }
  /// Whether the value of best() is that of its plan: no oak may be held.
  [[nodiscard]] bool exact() const { return exact_; }

  /// prices  those of trees taken 0 or more, or the value is only a bound
  [[nodiscard]] PricedPlan best(const Prices& prices);

  /// Of the plans that have at least `least_value` at the prices of the last best() and keep within
  /// these guards, the one with the greatest value at `gains` (prices too). found: it is in `plan`;
  /// none: there is no such plan; too_many: nobody knows.
  [[nodiscard]] Elimination::Outcome best_within(const Prices& gains,
                                                 const std::vector<const GuardRow*>& guards,
                                                 std::int64_t least_value, PricedPlan& plan);

 private:
  /// One way in which a candidate may be released: alone, or in a unit with others.
  struct State {
    std::vector<std::uint32_t> unit;  // candidates, in order; empty: not released
    std::int64_t light = 0;
    std::uint32_t takes_from = 0, takes_to = 0;  // in takes_
  };

  void find_states(std::uint32_t c);
  void add_unit(const Candidates::Trees& unit);
  void build();
  /// The value of each state at some prices, in the order of the program.
  [[nodiscard]] std::vector<std::int64_t> values_at(const Prices& prices) const;
  [[nodiscard]] PricedPlan plan_chosen();

  Candidates& all_;
  bool possible_ = true, exact_ = true;
  std::vector<std::vector<State>> states_;   // by candidate
  std::vector<std::uint32_t> takes_;         // trees
  std::vector<std::uint32_t> shared_;        // by tree: its own variable; 0: none
  std::vector<std::uint32_t> shared_trees_;  // by variable after the candidates
  std::unique_ptr<Elimination> program_;
  std::vector<bool> flags_;  // by candidate
  std::vector<bool> seen_;   // by tree
  std::vector<std::int64_t> values_;
  std::vector<std::uint8_t> chosen_;
};

}  // namespace oaklight
