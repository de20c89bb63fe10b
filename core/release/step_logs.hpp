#pragma once

#include <vector>

#include "core/release/verdicts.hpp"

namespace oaklight {

/// What each step did, for a reader who wants to follow: one entry for each step, in order. Trees
/// are named one by one on cards; on a map they are counted.
[[nodiscard]] std::vector<StepLog> step_logs(const Workings& work,
                                             const std::vector<TreeVerdict>& verdicts);

}  // namespace oaklight
