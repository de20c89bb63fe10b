#pragma once

#include "core/handoff/packet.hpp"

namespace oaklight {

/// What pages and commands call their reader, his work and his lists. %1 is a count.
struct ReaderWords {
  const char* whom;             ///< "the logger"
  const char* signs_as;         ///< "Logger"
  const char* work_section;     ///< "TREES TO CUT"
  const char* work_heading;     ///< "Trees to cut: %1"
  const char* work_intro;       ///< what to do with the list
  const char* work_count;       ///< "to cut"
  const char* trained_section;  ///< "TRAINED FELLER ONLY"
  const char* trained_heading;
  const char* trained_intro;
  const char* trained_count;
  const char* others_heading;
  const char* others_count;
  const char* map_work;  ///< words of TreeMark::cut
  const char* map_trained;
  const char* map_other;
  const char* counted;  ///< "Trees to cut on this list: %1. Trees counted ..."
};
const ReaderWords& words_for(PacketReader reader);

}  // namespace oaklight
