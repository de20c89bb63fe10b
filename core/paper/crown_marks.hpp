#pragma once

#include "core/paper/crown_edge.hpp"
#include "core/paper/drawing.hpp"

namespace oaklight {

inline constexpr double kOpenEdge = 6.0;  ///< the pen of an open edge, pt

/// The outline of a crown around its stem, north up.
/// scale  pt a foot
QPainterPath outline_of(QPointF stem, const CrownShape& crown, double scale);
/// The part of it between two bearings, clockwise, not closed.
QPainterPath outline_between(QPointF stem, const CrownShape& crown, double scale, double from,
                             double to);

/// A neighbour's crown: hatched with a dashed edge where it goes, a plain line where it stays.
void draw_crown(Drawing& drawing, QPointF stem, const CrownShape& crown, double scale, bool goes);

/// How the edge of the crop crown is drawn.
Stroke pen_of(EdgeState state);

}  // namespace oaklight
