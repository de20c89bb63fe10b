#pragma once

#include <string>
#include <vector>

#include "core/handoff/stump_check.hpp"

namespace oaklight::command {

/// A stump check as JSON: counts, shares, what was cut without a mark and what it was worth, hurt
/// trees with their wounds, damage against its limits, the audit, and the files written.
std::string stumps_json(const StumpCheck& check, const std::optional<StumpAudit>& audit,
                        const std::vector<std::string>& written);

}  // namespace oaklight::command
