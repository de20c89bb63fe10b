#pragma once

#include <string>
#include <vector>

#include "core/session/decide.hpp"

namespace oaklight::command {

/// An estimate for people to read: each figure with its error and the key of its source note.
[[nodiscard]] std::string estimate_text(const CruiseEstimate& estimate,
                                        const std::vector<StandFigures>& figures,
                                        const TractData& data, const SpeciesTable& species,
                                        const EstimateOptions& options);

/// What a reader must know about how far a figure can be leaned on; "" where it is fair.
[[nodiscard]] std::string trust_words(Trust trust);

}  // namespace oaklight::command
