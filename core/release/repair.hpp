#pragma once

#include <cstdint>
#include <vector>

#include "core/release/candidates.hpp"
#include "core/release/guard_rows.hpp"

namespace oaklight {

/// A sound choice within the guards, near the best in most woods and quick in any: from a good
/// choice without guards, crop trees are dropped that give the least light for what they use of the
/// guard broken worst, until none is broken; then whatever still fits is put back. No oak is held.
///
/// from     candidates, a choice that is allowed but for the guards
/// returns  candidates in order; none when the guards allow none
[[nodiscard]] std::vector<std::uint32_t> repaired(Candidates& candidates,
                                                  const std::vector<GuardRow>& rows,
                                                  const std::vector<std::uint32_t>& from);

}  // namespace oaklight
