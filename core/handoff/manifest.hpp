#pragma once

#include <string>

#include "core/handoff/packet.hpp"

namespace oaklight {

/// What a packet holds, as JSON for machines and for whoever checks that it came whole: counts of
/// each list, totals by product, checksum of the list, versions of what stands behind it. Without a
/// clock: the same packet gives the same bytes.
[[nodiscard]] std::string manifest_json(const Packet& packet);

}  // namespace oaklight
