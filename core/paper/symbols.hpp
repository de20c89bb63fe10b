#pragma once

#include <QPointF>
#include <QRectF>
#include <QString>

#include "core/handoff/packet.hpp"
#include "core/paper/drawing.hpp"

namespace oaklight {

/// What a tree on a packet's map or list is to the person who holds it. The shapes are told apart
/// without colour: a tree that is cut is a solid disc (a stump seen from above), a tree that stays
/// is a ring on a stem (a tree seen from the side), danger is a triangle.
enum class TreeMark {
  cut,
  trained,  ///< for a trained feller only
  crop,     ///< must not be cut: a crop tree
  keep,     ///< must not be cut
  other,    ///< tagged, but for other work than this reader's
};
inline constexpr auto kTreeMarks = {TreeMark::cut, TreeMark::trained, TreeMark::crop,
                                    TreeMark::keep, TreeMark::other};

/// The room a mark of that radius takes around its tree.
QRectF mark_box(QPointF tree, double radius);
void draw_mark(Drawing& drawing, TreeMark mark, QPointF tree, double radius);

/// How a line of the map is drawn; each kind has its own shape.
void draw_track(Drawing& drawing, const QPainterPath& path, LineKind kind, bool confirmed,
                const QRectF& clip);
QString words_of(LineKind kind, bool confirmed);

/// The landing: a solid square with a white heart, centred on it.
void draw_landing(Drawing& drawing, QPointF centre);

/// An arrow to true north, in a box of 44 x 52 pt whose upper left corner is given.
void draw_north_arrow(Drawing& drawing, QPointF corner);

/// Bars in feet and in metres that are right at any print size, side by side.
/// end              right end of their baseline
/// feet_per_point   ground feet in one point of paper
void draw_scale_bars(Drawing& drawing, QPointF end, double feet_per_point);

/// An empty square of 5 mm to tick, its left edge at x and centred on y.
void draw_tick_box(Drawing& drawing, double x, double y);
inline constexpr double kTickBox = 5.0 * 72.0 / 25.4;

/// How a caution binds, as a word: "STOP", "TAKE CARE", "NOTE".
QString words_of(Severity severity);
/// The word in a box; the worse it is, the blacker the box. Returns its width.
double draw_badge(Drawing& drawing, QPointF baseline, Severity severity);
double badge_width(Severity severity);

}  // namespace oaklight
