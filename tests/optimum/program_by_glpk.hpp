#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/release/choose.hpp"

namespace oaklight::test {

/// The best that an integer program of the same problem gives, by GLPK.
///
/// holdable  by tree: oaks that may be held
/// returns   points; nothing when no choice, not even an empty one, is within the guards
std::optional<std::int64_t> best_by_glpk(const ReleaseProblem& problem,
                                         const std::vector<bool>& holdable);

/// The best by trying each set of candidates and each set of oaks to hold.
std::optional<std::int64_t> best_by_trying_all(const ReleaseProblem& problem,
                                               const std::vector<bool>& holdable);

}  // namespace oaklight::test
