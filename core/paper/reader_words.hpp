#pragma once

#include "core/handoff/reader_words.hpp"
#include "core/paper/symbols.hpp"

namespace oaklight {

/// What a mark says to this reader.
QString words_of(TreeMark mark, PacketReader reader);

}  // namespace oaklight
