#pragma once

#include <string>
#include <vector>

#include "core/session/tract_session.hpp"

namespace oaklight::command {

/// The figures of a cruise as JSON: each estimate with mean, se, df, lo, hi and trust; null is
/// "cannot be told". Units are in the names.
std::string estimate_json(const CruiseEstimate& estimate, const std::vector<StandFigures>& figures,
                          const TractData& data, const SpeciesTable& species,
                          const EstimateOptions& options);

}  // namespace oaklight::command
