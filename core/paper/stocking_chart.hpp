#pragma once

#include <optional>

#include "core/paper/picture.hpp"
#include "core/sample/cruise_estimate.hpp"
#include "core/stand/stand_density.hpp"
#include "core/stand/stand_stocking.hpp"

namespace oaklight {

/// Where a stand lies on the guide.
struct StockingPoint {
  TreesPerAcre trees;
  SquareFeetPerAcre ba;
  Percent stocking;                        ///< 100 is the A line
  std::optional<Percent> stocking_half;    ///< half width of its interval
  std::optional<TreesPerAcre> trees_half;  ///< half widths, for the box of error
  std::optional<SquareFeetPerAcre> ba_half;
  Confidence confidence = {};  ///< of these intervals

  /// Nothing without trees.
  [[nodiscard]] std::optional<Inches> qmd() const;
};

/// One stand on the upland oak guide.
struct StockingChart {
  std::optional<StockingPoint> now;
  std::optional<StockingPoint> after;  ///< after release
  std::optional<GuideFit> fit;         ///< nothing: only the diameters are judged
};

/// The point of an estimate. live: the same area's figures, for the box of error; it is drawn only
/// where they are of the same trees, that is where no live tree under kStockingMinDbh was tallied.
StockingPoint stocking_point(const StandStocking& stocking, const AreaEstimate* live = nullptr);
/// The point of a plan's `before` or `after`: plain means of all live trees, without error.
StockingPoint stocking_point(const StandDensity& density);

/// Basal area over number of trees, with the A and B lines, lines of equal mean diameter, the
/// points with an arrow between them and the box of error. The lines are dashed where the printed
/// guide had ended. A stand outside the guide is drawn where it lies, and the picture says so.
/// Without a point it shows the guide and says what is missing.
/// assumes  a PaperApplication lives
Drawing draw_stocking_chart(const StockingChart& chart, const PictureFrame& frame);

}  // namespace oaklight
