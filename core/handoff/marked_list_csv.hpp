#pragma once

#include <string>

#include "core/handoff/packet.hpp"

namespace oaklight {

/// Every tree of a packet, one a line. Column `list` says which list it is on: first "cut", then
/// "trained_feller_only" (logger) or "leave_alone" (firewood cutter), then "keep", then "not_yours"
/// (trees of other work), each in the packet's order. Method, product and volume are empty for
/// trees that this reader does not cut. RFC 4180 with CRLF; units in the names of the columns; text
/// that people typed cannot run as a formula; an empty cell is "not known". The same packet gives
/// the same bytes.
[[nodiscard]] std::string marked_list_csv(const Packet& packet);

}  // namespace oaklight
