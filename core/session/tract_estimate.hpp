#pragma once

#include <vector>

#include "core/session/decide.hpp"
#include "core/store/tract_store.hpp"

namespace oaklight {

/// What a whole tract was found to hold, and what it was worked out from.
struct TractEstimate {
  TractData data;  ///< without its trees
  CruiseEstimate estimate;
  std::vector<StandFigures> figures;
  EstimateOptions options;  ///< with the local curves that were fitted
};

/// estimate_tract and stand_figures of a file, in one pass over its trees: each is checked as
/// load() checks it, packed into some bytes and forgotten. Whole stay the trees whose height was
/// measured, for the local curves, and those of stands with two designs on one plot.
///
/// errors   of TractStore::load, estimate_tract and stand_figures; when no stand was cruised, the
///          error of CruiseEstimate::all
Result<TractEstimate> estimate_of(const TractStore& store, const TractKnowledge& knowledge,
                                  EstimateOptions options);

}  // namespace oaklight
