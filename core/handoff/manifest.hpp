#pragma once

#include <span>
#include <string>

#include "core/handoff/packet.hpp"

namespace oaklight {

/// One file of a packet, whole.
struct PacketBytes {
  std::string name;  ///< "logger.csv"
  std::string what;  ///< in words: "the list"
  std::string bytes;
};

/// What a packet holds, as JSON for machines and for whoever checks that it came whole: counts of
/// each list, totals by product, size and checksum of the list and of each file, versions of what
/// stands behind it. Without a clock: the same packet and files give the same bytes.
[[nodiscard]] std::string manifest_json(const Packet& packet,
                                        std::span<const PacketBytes> files = {});

}  // namespace oaklight
