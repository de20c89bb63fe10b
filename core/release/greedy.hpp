#pragma once

#include "core/release/choose.hpp"

namespace oaklight {

/// A sound choice, fast, not always the best: candidates in the order of worth; while a guard is
/// broken, the lowest ranked crop tree is dropped together with the trees taken for it alone
/// (R4.16, R1.74). What choose() starts from, and falls back on for woods too large to search.
[[nodiscard]] ReleaseChoice greedy_choice(const ReleaseProblem& problem);

}  // namespace oaklight
