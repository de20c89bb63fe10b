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
  /// How the ground lies on the picture; nothing where no ground is drawn.
  struct Ground {
    Position origin;
    QPointF middle;  ///< feet east and north of the origin, at the point below
    QPointF at;      ///< pt, in the frame
    double feet_per_point = 1.0;
  };
  std::optional<Ground> ground = {};

  /// The plot nearest to a tap.
  /// reach    pt; nothing further from its middle is meant
  [[nodiscard]] std::optional<PlotId> plot_at(QPointF tap, double reach) const;
  /// The place under a tap; nothing where no ground is drawn.
  [[nodiscard]] std::optional<Position> place_at(QPointF tap) const;
};

/// The tract for a screen: stands, lines and landing, plots by status (each a shape with a letter),
/// the next one ringed, marked trees of the walk, where the person stands, and the outline that is
/// being drawn; north up, a scale bar. Plots without a position stand in rows below or beside it;
/// where nothing has a position they are all that is shown. Without plots it says what is missing.
/// assumes  a PaperApplication lives; positions on WGS 84, one that is off the globe counts as none
TractPicture draw_tract(const TractData& data, const TractMapFocus& focus,
                        const PictureFrame& frame);

}  // namespace oaklight
