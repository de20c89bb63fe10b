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
/// What holding an oak costs: more than a tree taken does in tie_prices(), so that few are held.
inline constexpr std::int64_t kHoldTie = std::int64_t{1} << 18U;

/// The plan that is best at some prices.
struct PricedPlan {
  std::int64_t value = 0;               ///< light x kLightUnit less prices; no plan has more
  std::vector<std::uint32_t> released;  ///< candidates, in order
  std::vector<std::int64_t> light;      ///< of each of these
  std::vector<std::uint32_t> taken;     ///< trees, each once
  std::vector<std::uint32_t> taken_by;  ///< a candidate that takes each of these
  std::vector<std::uint32_t> held;      ///< oaks, in order
  std::vector<std::uint32_t> held_by;   ///< a candidate beside each of these
};

/// The best plan without guards when trees have prices: candidates released and oaks held. At 0 or
/// more for each tree no oak is worth holding; at a price below 0 of others it may be.
class PricedPlans {
 public:
  /// any_price  trees taken may have prices below 0 (guards on shares give back); slower
  explicit PricedPlans(Candidates& candidates, bool any_price = false);

  /// Whether best() gives the best plan of all; otherwise there is none to be had this way.
  [[nodiscard]] bool possible() const { return possible_; }

  /// prices  those of trees taken 0 or more unless any_price; otherwise the value is only a bound
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
    std::vector<std::uint32_t> held;             // oaks that it is reckoned with
  };
  /// A tree that has a variable of its own: nobody's business, taken, or held. With any_price it is
  /// told by whom it is taken (the first of those that do), so that it is never taken for nothing.
  struct Shared {
    std::uint32_t tree = 0;
    std::vector<std::uint32_t> takers;  // candidates, in order
    bool held = false;                  // some state holds it: the last state of the variable
    std::uint32_t owners = 1;           // states in which it is taken
  };

  void find_states(std::uint32_t c);
  void add_unit(const Candidates::Trees& unit);
  void add_states(std::uint32_t c, const Candidates::Trees& unit, std::vector<State>& found);
  void find_shared();
  void bar_shared(std::uint32_t c, std::uint32_t s);
  void bar_meetings(std::uint32_t c, std::uint32_t s);
  /// The value of each state at some prices, in the order of the program.
  [[nodiscard]] std::vector<std::int64_t> values_at(const Prices& prices) const;
  [[nodiscard]] PricedPlan plan_chosen();

  Candidates& all_;
  const bool any_price_;
  bool possible_ = true;
  std::vector<std::vector<State>> states_;  // by candidate
  std::vector<std::uint32_t> takes_;        // trees
  std::vector<std::uint32_t> shared_;       // by tree: its own variable; 0: none
  std::vector<Shared> shared_trees_;        // by variable after the candidates
  std::unique_ptr<Elimination> program_;
  std::vector<bool> flags_;  // by candidate
  std::vector<bool> seen_;   // by tree
  std::vector<bool> held_;   // by tree, scratch
  std::vector<std::int64_t> values_;
  std::vector<std::uint8_t> chosen_;
};

}  // namespace oaklight
