#pragma once

#include <string>

#include "core/base/result.hpp"
#include "core/handoff/packet.hpp"
#include "core/paper/page.hpp"

class QIODevice;

namespace oaklight {

/// Writes a packet as PDF, typefaces embedded, text in reading order, title and language told.
///
/// packet   any; a packet without trees gives pages that say so
/// device   open for writing; left open
/// errors   cannot_write: the device is not open, refuses bytes, or nothing can be painted
/// assumes  called on the thread of the Qt application, or on the main thread where there is none
///          (one is made then, for as long as the call lasts)
/// accuracy the same packet and paper give the same bytes: its day stands for the time of writing
Status write_packet_pdf(const Packet& packet, PaperSize paper, QIODevice& device);

/// The same, as the bytes of the file.
Result<std::string> packet_pdf(const Packet& packet, PaperSize paper);

}  // namespace oaklight
