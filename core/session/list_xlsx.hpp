#pragma once

#include <string>

#include "core/base/result.hpp"
#include "core/handoff/packet.hpp"

namespace oaklight {

/// The list of a packet as a spreadsheet (Office Open XML), as bytes. Three sheets: what to read
/// first, the list with typed cells under a head that stays, totals. There is no formula in it, and
/// no text is taken for one. The same packet gives the same bytes.
///
/// folder   where it is put together, in a folder of its own whose name ends in ".making"
/// errors   cannot_write; out_of_range for a text longer than a cell holds (32,767 characters)
Result<std::string> list_xlsx(const Packet& packet, const std::string& folder);

}  // namespace oaklight
