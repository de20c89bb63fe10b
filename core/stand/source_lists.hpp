#pragma once

#include <vector>

#include "core/stand/sources.hpp"

namespace oaklight {

// The parts of source_notes() that have files of their own.

void add_sampling_notes(std::vector<SourceNote>& notes);  ///< double sampling, shares, choices
void add_local_notes(std::vector<SourceNote>& notes);     ///< what was measured here
void add_work_notes(std::vector<SourceNote>& notes);      ///< light, lists, stumps, later years

}  // namespace oaklight
