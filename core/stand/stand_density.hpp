#pragma once

#include "core/measure/stocking.hpp"
#include "core/model/mark.hpp"

namespace oaklight {

/// What stands on an average acre of one stand, estimated from its plots: plain means, which
/// stand-level guards compare with their floors. The same figures with errors are in AreaEstimate
/// (core/sample) and StandStocking.
struct StandDensity {
  int plots = 0;         ///< plots in the sample, empty ones included
  StockingSums live;     ///< every live tree tallied
  StockingSums guard;    ///< live trees for which counts_for_guard holds (rule R2.27)
  SquareFeetPerAcre ba;  ///< of the live trees
  SquareFeetPerAcre ba_oak;
  SquareFeetPerAcre ba_white_oak;  ///< white oak group
  SquareFeetPerAcre ba_red_oak;    ///< red oak group
};

/// Density of one stand from its measured and empty plots.
///
/// errors   of stand_sample (core/sample); unknown_species
/// guard_from  size from which guards count a tree whatever its crown class (rule R2.27)
/// assumes  a tree without a crown class counts for the guard only from that size on
Result<StandDensity> stand_density(const TractData& data, StandId stand,
                                   const SpeciesTable& species, Inches guard_from);

}  // namespace oaklight
