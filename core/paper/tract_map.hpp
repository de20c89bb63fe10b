#pragma once

#include <optional>
#include <vector>

#include "core/model/mark.hpp"
#include "core/paper/map_scene.hpp"
#include "core/paper/picture.hpp"

namespace oaklight {

/// Where a plot is on the picture, so that a tap can find it.
struct PlotSpot {
  PlotId plot;
  QPointF at;           ///< pt, in the frame
  double radius = 0.0;  ///< of its mark
};

struct TractPicture {
  Drawing drawing;
  std::vector<PlotSpot> plots;  ///< those that are drawn

  /// The plot nearest to a tap.
  /// reach    pt; nothing further from its middle is meant
  [[nodiscard]] std::optional<PlotId> plot_at(QPointF tap, double reach) const;
};

/// The tract for a screen: stands, lines and landing, plots by status (each a shape with a letter),
/// the next one ringed, marked trees of the walk, and where the person stands; north up, a scale
/// bar. Plots without a position stand in rows below or beside it; where nothing has a position
/// they are all that is shown. Without plots it says what is missing.
/// assumes  a PaperApplication lives; positions on WGS 84, one that is off the globe counts as none
TractPicture draw_tract(const TractData& data, const TractMapFocus& focus,
                        const PictureFrame& frame);

}  // namespace oaklight
