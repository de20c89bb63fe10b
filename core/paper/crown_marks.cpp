#include "core/paper/crown_marks.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "core/paper/crown_spots.hpp"

namespace oaklight {
namespace {

constexpr double kQuarter = 90.0;

/// Slanting chords of a crown. Its outline is convex, so a chord is one stretch.
QPainterPath chords(QPointF stem, const CrownShape& crown, double scale) {
  constexpr double kEvery = 6.0;
  constexpr double kStep = 3.0;  // degrees
  const QPointF along(std::numbers::sqrt2 / 2.0, -std::numbers::sqrt2 / 2.0);
  const QPointF across(along.y(), -along.x());
  struct Point {
    double off, on;  // across and along the chords
  };
  std::vector<Point> edge;
  for (double bearing = 0.0; bearing <= 360.0; bearing += kStep) {
    const QPointF p = QPointF(towards(bearing).x(), -towards(bearing).y()) *
                      (crown.reach(Degrees{bearing}).value * scale);
    edge.push_back({QPointF::dotProduct(p, across), QPointF::dotProduct(p, along)});
  }
  const double reach = crown.widest().value * scale;
  QPainterPath path;
  for (double off = -reach + kEvery / 2.0; off < reach; off += kEvery) {
    std::vector<double> ends;
    for (std::size_t i = 0; i + 1 < edge.size(); ++i) {
      const Point& a = edge[i];
      const Point& b = edge[i + 1];
      if ((a.off < off) == (b.off < off)) continue;
      ends.push_back(a.on + (b.on - a.on) * (off - a.off) / (b.off - a.off));
    }
    if (ends.size() != 2) continue;
    path.moveTo(stem + across * off + along * ends[0]);
    path.lineTo(stem + across * off + along * ends[1]);
  }
  return path;
}

}  // namespace

QPainterPath outline_between(QPointF stem, const CrownShape& crown, double scale, double from,
                             double to) {
  QPainterPath path;
  for (double at = from; at < to;) {
    // A quarter ellipse keeps its axes between two of the four radii.
    const double start = kQuarter * std::floor(at / kQuarter);
    const double end = std::min(to, start + kQuarter);
    const double first = crown.reach(Degrees{start}).value * scale;
    const double second = crown.reach(Degrees{start + kQuarter}).value * scale;
    const bool upright = std::lround(start / kQuarter) % 2 == 0;
    const QSizeF half = upright ? QSizeF(second, first) : QSizeF(first, second);
    const QRectF box(stem.x() - half.width(), stem.y() - half.height(), 2.0 * half.width(),
                     2.0 * half.height());
    // arcTo counts the angle on the circle that the ellipse was squeezed from.
    const auto angle_of = [&half](double bearing) {
      const QPointF way = towards(bearing);
      const double angle = std::atan2(way.y() * half.width(), way.x() * half.height());
      return angle * 180.0 / std::numbers::pi;
    };
    const double begin = angle_of(at);
    if (path.isEmpty()) path.arcMoveTo(box, begin);
    path.arcTo(box, begin, std::remainder(angle_of(end) - begin, 360.0));
    at = end;
  }
  return path;
}

QPainterPath outline_of(QPointF stem, const CrownShape& crown, double scale) {
  QPainterPath path = outline_between(stem, crown, scale, 0.0, 360.0);
  path.closeSubpath();
  return path;
}

void draw_crown(Drawing& drawing, QPointF stem, const CrownShape& crown, double scale, bool goes) {
  if (goes) {
    drawing.outline(chords(stem, crown, scale), {0.9, Ink::soft});
    const double dash = std::min(5.0, crown.widest().value * scale / 2.0);
    drawing.outline(outline_of(stem, crown, scale), {1.6, Ink::black, {dash, 0.6 * dash}});
  } else {
    drawing.outline(outline_of(stem, crown, scale), {1.8, Ink::leave});
  }
}

Stroke pen_of(EdgeState state) {
  switch (state) {
    case EdgeState::open:
      return {kOpenEdge, Ink::light};
    case EdgeState::opens:
      return {kOpenEdge, Ink::light, {7.0, 3.0}};
    case EdgeState::shared:
      return {3.4, Ink::leave};
    case EdgeState::closed:
      return {1.6, Ink::black};
    case EdgeState::unknown:
      return {1.8, Ink::soft, {1.8, 3.4}};
  }
  return {};
}

}  // namespace oaklight
