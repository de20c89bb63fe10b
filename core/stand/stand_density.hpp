#pragma once

#include "core/measure/stocking.hpp"
#include "core/model/mark.hpp"

namespace oaklight {

/// What stands on an average acre of one stand, estimated from its plots. The figures that stand-level
/// guards compare with their floors; their errors are in StandEstimate (sample/estimate_stand.hpp).
struct StandDensity {
  int plots = 0;           ///< plots in the sample, empty ones included
  StockingSums live;       ///< every live tree tallied
  StockingSums guard;      ///< live main-canopy trees and all live trees of 5 in and more (rule R2.27)
  SquareFeetPerAcre ba;    ///< of the live trees
  SquareFeetPerAcre ba_oak;
  SquareFeetPerAcre ba_white_oak;  ///< white oak group
  SquareFeetPerAcre ba_red_oak;    ///< red oak group
};

/// Density of one stand from its measured and empty plots.
///
/// errors   no_data when the stand has no measured or empty plot
/// assumes  a tree without a crown class counts as main canopy for the guard only when it is 5 in or more
Result<StandDensity> stand_density(const TractData& data, StandId stand, const SpeciesTable& species);

}  // namespace oaklight
