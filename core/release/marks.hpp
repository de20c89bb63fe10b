#pragma once

#include <vector>

#include "core/release/plan.hpp"

namespace oaklight {

/// The default way to take a tree (R6.14, R6.18): killed standing by girdling, felled, or by
/// machine only where an ash is mostly dead. Season, hazards and herbicide are not asked here.
[[nodiscard]] Method default_method(const TreeFacts& facts, const Species* species, Verdict verdict,
                                    const RemovalSettings& settings);

/// A plan made from cards as marks, one for each tree of the walk, in the order of the plan. The
/// destination is left open.
///
/// input  what the plan was made from
/// ids    where the marks' ids come from
[[nodiscard]] std::vector<Mark> to_marks(const ReleasePlan& plan, const ReleaseInput& input,
                                         IdSource& ids);

}  // namespace oaklight
