#pragma once

#include <QPointF>
#include <QString>

#include "core/model/tract.hpp"
#include "core/paper/drawing.hpp"

namespace oaklight {

/// "to do", "done", "empty", "skipped".
QString words_of(PlotStatus status);

/// A plot: to do a circle, done a square, empty a diamond, skipped a triangle, each with the first
/// letter of its word where the mark has room for it. The next one wears a thick ring.
void draw_plot(Drawing& drawing, PlotStatus status, QPointF centre, double radius, bool next);
inline constexpr double kPlotMarkReach = 1.35;  ///< a mark reaches so many radii from its middle
inline constexpr double kNextRing = 6.0;        ///< what the ring adds to the radius

/// Where the person stands: a dot in a ring.
void draw_person(Drawing& drawing, QPointF centre);

}  // namespace oaklight
