#pragma once

#include <array>
#include <span>
#include <vector>

#include "core/sample/group_tally.hpp"
#include "core/sample/share.hpp"

namespace oaklight {

/// Seedlings and saplings of one species and height.
struct RegenCell {
  SpeciesCode species;
  RegenHeight height = RegenHeight::under_1_ft;
  int counted = 0;
  Estimate<TreesPerAcre> stems;
};

/// The young trees of an area, from its regeneration plots.
struct RegenFigures {
  Acres plot;  ///< size of one regeneration plot; 0 where stands differ
  int plots = 0;
  std::vector<RegenCell> cells;  ///< by species code, then by height; only what was found
  std::array<Estimate<TreesPerAcre>, 3> all;  ///< by height, in the order of RegenHeight
  std::array<Estimate<TreesPerAcre>, 3> oak;
  /// Share of the plots with an oak of any height. It depends on the size of the plots, so there is
  /// none over stands with different ones.
  std::optional<ShareEstimate> oak_plots;
};

/// Regeneration of one stand, or of several weighted by acres.
///
/// returns  nothing when any of the stands has no regeneration plots
/// errors   unknown_species; as group_figures
Result<std::optional<RegenFigures>> regen_figures(std::span<const StandSample* const> stands,
                                                  const SpeciesTable& species,
                                                  const EstimateOptions& options);

}  // namespace oaklight
