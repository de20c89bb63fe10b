#pragma once

#include "core/paper/crown_edge.hpp"
#include "core/paper/drawing.hpp"

namespace oaklight {

inline constexpr double kOpenEdge = 6.0;  ///< the pen of an open edge, pt

QPainterPath circle(QPointF middle, double radius);

/// A neighbour's crown: hatched with a dashed edge where it goes, a plain ring where it stays.
void draw_crown(Drawing& drawing, QPointF at, double radius, bool goes);

/// How the edge of the crop crown is drawn.
Stroke pen_of(EdgeState state);

}  // namespace oaklight
