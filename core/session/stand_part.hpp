#pragma once

#include "core/session/live_tract.hpp"

namespace oaklight {

/// What a stand's figures and its recommendation are made of: the tract, its cruises and lines, the
/// stand with its plots and their records, and its walk with cards and marks. Cost: the records of
/// the stand, not of the tract. Errors: unknown_reference.
Result<TractData> stand_part(const LiveTract& live, StandId stand);

/// Of it only what its figures are made of: no walk. Errors: unknown_reference.
Result<TractData> stand_plots(const LiveTract& live, StandId stand);

}  // namespace oaklight
