#pragma once

#include "core/sample/group_tally.hpp"
#include "core/session/knowledge.hpp"

namespace oaklight {

/// What was measured on the tract and stands in place of the book: curves fitted to its trees, and
/// its volume table. Cost: the trees of the data, where their curves were not worked out yet.
[[nodiscard]] LocalNumbersPtr local_numbers(const TractData& data, const TractKnowledge& knowledge);

/// The same options with what is local, where they have nothing of it yet.
[[nodiscard]] EstimateOptions with_local(EstimateOptions options, const TractData& data,
                                         const TractKnowledge& knowledge);

}  // namespace oaklight
