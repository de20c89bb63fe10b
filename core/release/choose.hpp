#pragma once

#include <string>
#include <vector>

#include "core/release/outcome.hpp"
#include "core/release/plan.hpp"

namespace oaklight {

/// Why a candidate is not released.
struct Dropped {
  enum class Cause : std::uint8_t {
    no,      ///< it is released
    sides,   ///< it cannot reach its sides
    unsure,  ///< it may reach them; somebody has to look first
    better,  ///< it would meet the crown of a chosen crop tree, and they cannot be a pair
    guard,   ///< the stand could not spare the trees taken for it
  };
  Cause cause = Cause::no;
  std::uint32_t better = 0;  ///< the chosen tree
  GuardState guard;          ///< the first guard that it broke, as it stood with this tree released
};

/// What is chosen: crop trees released, and trees taken for them.
struct ReleaseChoice {
  Selection selection;
  std::vector<bool> taken;       ///< by tree
  std::vector<Dropped> dropped;  ///< by tree; of candidates
  CutTally cut;
  std::vector<GuardState> guards;               ///< of the choice
  std::vector<GuardState> guards_of_full_plan;  ///< of the best plan without guards
  Optimality optimality;
};

/// Chooses crop trees to release and neighbours to take. The problem, exactly:
///
///   choose   a set R of candidates (worth > 0) to release and a set H of oaks to hold
///   units    two trees of R meet when they touch or will meet (R2.25); each connected group of
///            meeting trees of R is one unit and may hold R1.66 trees at most (R1.65)
///   takes    of each c in R follow from R and H by outcome_of: every neighbour that goes is taken
///            where it frees a side (R1.62, R1.73: released fully, not in part), and of those that
///            may go the fewest without which c has too few sides. A candidate outside R may be
///            taken for a better one that cannot do without; a tree of H stays
///   sides    each c in R reaches its sides, a shared side counted (R1.61, R1.64, R1.67)
///   guards   each guard is linear in the trees taken and released, and holds (R4.12); invasive
///            plants are part of every cut
///   H        is empty when the best plan without guards keeps the balance of the oaks; otherwise
///            a subset of the oaks of the groups that this plan leaves short (R3.60, R3.62)
///   maximise the sum over R of worth x (free sides + shared sides that count), whole points. Free
///            sides are those that c's own takes give; light from a tree taken for another crop
///            tree comes on top and is not counted
///   ties     fewer oaks held, then fewer trees taken, then less basal area taken (from DBH in
///            tenths of an inch, so whole numbers), then the first in the order of search, which
///            the order of worth and tags fixes
///
/// A few candidates: branch and bound (search.hpp). More: dynamic programming over the graph of
/// their meetings and takes (elimination.hpp), guards by prices and then by going through every
/// plan that may still be better (guard_prices.hpp); there the last of the ties may fall either
/// way. All limits are counts, never a clock.
///
/// returns  the best choice with optimality.proven; or, for a stand too large, the best one found
///          and a bound that none can pass. The same for the same problem on any machine
[[nodiscard]] ReleaseChoice choose(const ReleaseProblem& problem);

}  // namespace oaklight
