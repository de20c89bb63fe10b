#pragma once

#include <span>
#include <vector>

#include "core/release/cautions.hpp"

namespace oaklight {

/// What is around each tree of the marking walk: mapped lines, and dead ashes, hung-up trees and
/// loose limbs on other trees of the walk and on the plots.
///
/// trees    the trees of data.walk_trees, with positions filled in as far as they are known
/// returns  one for each of `trees`, in their order; distances from a tree without a position are
///          nothing. Trees of one card whose distance is not known count as near each other. Of dead
///          ashes and hung-up trees those that reach the tree or that it reaches (limits.lengths of
///          the taller one)
[[nodiscard]] std::vector<Surroundings> surroundings_of(const TractData& data,
                                                        std::span<const WalkTree> trees,
                                                        const SpeciesTable& species,
                                                        const CautionLimits& limits = {});

}  // namespace oaklight
