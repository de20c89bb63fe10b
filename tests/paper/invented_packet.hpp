#pragma once

#include <cstdint>

#include "core/handoff/packet.hpp"

namespace oaklight::test {

/// A packet as the hand-off would make it, all invented: `trees` to cut around crop trees that are
/// scattered over three stands of a tract, with some trees for a trained feller and some trees of
/// other work. The same arguments give the same packet on any machine.
Packet invented_packet(int trees, std::uint32_t seed = 1,
                       PacketReader reader = PacketReader::logger);

}  // namespace oaklight::test
