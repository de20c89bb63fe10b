#pragma once

#include <optional>
#include <span>

#include "core/sample/group_tally.hpp"

namespace oaklight {

/// Smallest live tree that the stocking guide counts. Source: Service Forester's Handbook (Southern
/// Regional Extension Forestry), hardwood stocking charts.
inline constexpr Inches kStockingMinDbh{2.0};

/// Whether a tree is one that stand-level guards count: live, and of the size `from` or more (rule
/// R2.27), or in the main canopy (any crown class but overtopped). A smaller tree without a crown
/// class is not counted.
[[nodiscard]] bool counts_for_guard(const TreeFacts& facts, Inches from);

/// Whether the upland oak guide was made for such a stand.
struct GuideFit {
  bool diameters = false;    ///< mean diameter within kStockingGuideMin .. kStockingGuideMax
  bool printed = false;      ///< and within the range of the printed guide
  bool oak_hickory = false;  ///< oaks and hickories hold at least half of the basal area
  Percent oak_hickory_share;

  /// When not, the figure must be shown as outside the guide.
  [[nodiscard]] bool fits() const { return diameters && oak_hickory; }
};

/// How full an area is by the upland oak guide.
struct StandStocking {
  Estimate<Percent> stocking;           ///< live trees of 2 in and more; 100 is the A line
  Estimate<Percent> crown_competition;  ///< of the same trees; 100 is the B line
  Estimate<Percent> guard;              ///< stocking of the trees that guards count
  SquareFeetPerAcre ba;                 ///< of the live trees of 2 in and more
  TreesPerAcre trees;
  std::optional<Inches> qmd;      ///< of the same; nothing without trees
  std::optional<StockingLine> a;  ///< the lines at that mean diameter
  std::optional<StockingLine> b;
  GuideFit fit;
};

/// Stocking of one stand, or of several weighted by acres, with errors: a plot's stocking is a sum
/// over its trees, so that it is estimated like basal area.
///
/// guard_from  size from which guards count a tree whatever its crown class (rule R2.27)
/// errors   no_data without stands; unknown_species; as group_figures
/// source   core/measure/stocking.hpp; that the guide ends where oaks and hickories hold less than
///          half of the basal area is judgement
Result<StandStocking> stand_stocking(std::span<const StandSample* const> stands,
                                     const SpeciesTable& species, const EstimateOptions& options,
                                     Inches guard_from);

}  // namespace oaklight
