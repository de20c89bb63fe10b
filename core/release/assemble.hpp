#pragma once

#include "core/release/candidates.hpp"
#include "core/release/choose.hpp"

namespace oaklight {

/// The whole choice that follows from the candidates released and the oaks held, with the reason
/// why each other candidate is not released.
///
/// invasive  whether invasive plants are taken too
[[nodiscard]] ReleaseChoice assemble(Candidates& candidates,
                                     const std::vector<std::uint32_t>& released,
                                     const std::vector<std::uint32_t>& held, bool invasive);

}  // namespace oaklight
