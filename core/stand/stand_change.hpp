#pragma once

#include <optional>
#include <span>

#include "core/sample/paired.hpp"

namespace oaklight {

/// What changed on an average acre between two visits to the same plots: live trees, and only what
/// stands on plots that both visits went to. Each interval stands for itself.
struct AreaChange {
  Acres acres;
  int pairs = 0;
  int only_first = 0;   ///< plots of the first visit that the second did not go to
  int only_second = 0;  ///< the other way round
  PairedChange<SquareFeetPerAcre> ba;
  PairedChange<TreesPerAcre> trees;
  std::optional<PairedChange<Inches>> qmd;  ///< nothing when one of the visits found no tree
  PairedChange<Percent> stocking;           ///< upland oak guide, live trees of 2 in and more
  /// Nothing when a stem of either visit has none that can be told: what was measured better the
  /// second time would pass for growth.
  std::optional<PairedChange<BoardFeetPerAcre>> board_feet;
  std::optional<PairedChange<CordsPerAcre>> cords;
  int without_board_feet = 0;  ///< stems of both visits, on the pairs
  int without_cords = 0;       ///< likewise; trees under 5 in are no firewood yet and count as 0
};

/// The change over one stand, or over several weighted by acres (of the second visit).
///
/// stands   paired stands; the samples they point to must outlive the call
/// errors   no_data without stands; unknown_species; out_of_range when one of several stands has no
///          acres; of paired_change
Result<AreaChange> area_change(std::span<const PairedStand* const> stands,
                               const SpeciesTable& species, const EstimateOptions& options);

}  // namespace oaklight
