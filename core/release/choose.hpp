#pragma once

#include <string>
#include <vector>

#include "core/release/outcome.hpp"

namespace oaklight {

/// Why a candidate is not released.
struct Dropped {
  enum class Cause : std::uint8_t {
    no,      ///< it is released
    sides,   ///< it cannot reach its sides
    unsure,  ///< it may reach them; somebody has to look first
    better,  ///< it would meet the crown of a better crop tree, and they cannot be a pair
    guard,   ///< the stand could not spare the trees taken for it
  };
  Cause cause = Cause::no;
  std::uint32_t better = 0;  ///< the better tree
  GuardState guard;          ///< the first guard that it broke, as it stood with this tree released
};

/// What is chosen: crop trees released, and trees taken for them.
struct ReleaseChoice {
  Selection selection;
  std::vector<bool> taken;       ///< by tree
  std::vector<Dropped> dropped;  ///< by tree; of candidates
  CutTally cut;
  std::vector<GuardState> guards;               ///< of the choice
  std::vector<GuardState> guards_of_full_plan;  ///< before the first tree was dropped for a guard
};

/// Chooses crop trees to release and neighbours to take, so that the light released, weighted by
/// the worth of the crop trees, is high while every released tree reaches its sides (R1.61) and
/// every guard holds (R4.12). Greedy: candidates in the order of worth; while a guard is broken,
/// the lowest ranked crop tree is dropped together with the trees taken for it alone (R4.16,
/// R1.74).
///
/// returns  a sound choice, not always the best; the same for the same problem
[[nodiscard]] ReleaseChoice choose(const ReleaseProblem& problem);

}  // namespace oaklight
