#pragma once

#include <string>

#include "core/handoff/packet.hpp"

namespace oaklight {

/// The table of a packet (list_table) as RFC 4180 with CRLF. Text that people typed cannot run as a
/// formula: a cell that would gets an apostrophe in front. An empty cell is "not known". The same
/// packet gives the same bytes.
[[nodiscard]] std::string marked_list_csv(const Packet& packet);

}  // namespace oaklight
