#pragma once

#include <vector>

#include "core/release/traits.hpp"

namespace oaklight {

/// Sums over the trees that a plan takes and releases, on the ground that it covers.
struct CutTally {
  StockingSums live;     ///< trees taken
  StockingSums counted;  ///< of these, the ones that count for the stocking guards (R2.27)
  SquareFeet ba, ba_oak, ba_white_oak, ba_red_oak;
  StockingSums crops;  ///< crop trees released

  /// sign  +1 takes the tree, -1 puts it back
  void take(const TreeFacts& facts, const Traits& traits, double sign);
  void release(const TreeFacts& facts, double sign);
};

/// The floors and ceilings of one stand: all bind, the strictest wins (R4.12).
struct Guards {
  StandDensity before;
  Acres covered;
  Goal goal = Goal::mast;
  GuardSettings limits;
  CropCountSettings counts;
};

/// The stand after the cut, on the ground covered.
[[nodiscard]] StandDensity density_after(const Guards& guards, const CutTally& cut);

/// Step 9: each guard, and where this cut leaves it. A share that is below its floor before
/// anything is cut may not fall further.
[[nodiscard]] std::vector<GuardState> check_guards(const Guards& guards, const CutTally& cut);

[[nodiscard]] bool all_hold(const std::vector<GuardState>& states);

/// Whether a guard on the balance of the oaks is broken for want of oaks of this group (R3.60,
/// R3.62).
[[nodiscard]] bool lacks(const GuardState& state, OakGroup group);

/// Whether the oak groups keep their balance (R3.60, R3.62) after these oaks are taken.
[[nodiscard]] bool balance_holds(const Guards& guards, const CutTally& oaks_taken);

}  // namespace oaklight
