#pragma once

#include "core/release/plan.hpp"

namespace oaklight {

/// Step 3: whether this stand should be released at all, or waits, or needs another treatment
/// (R1.37, R4.01 - R4.08, R4.50 - R4.58). The text says why.
[[nodiscard]] Advice is_release_right_job(const StandFacts& stand, const ReleaseSettings& settings);

}  // namespace oaklight
