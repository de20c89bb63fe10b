#pragma once

#include "core/release/plan.hpp"

namespace oaklight {

/// What the tract file knows of a stand: its record and the figures of its plots.
///
/// errors   unknown_reference when there is no such stand; as stand_sample, but for no_data: a
/// stand
///          without plots has no `before`
Result<StandFacts> stand_facts(const TractData& data, StandId stand,
                               const ReleaseKnowledge& knowledge);

/// The recommendation's input for one stand from its crop tree cards.
///
/// errors   as stand_facts and graph_from_cards
Result<ReleaseInput> input_from_cards(const TractData& data, StandId stand,
                                      const ReleaseKnowledge& knowledge);

}  // namespace oaklight
