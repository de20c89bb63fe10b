#include "core/paper/crown_marks.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace oaklight {
namespace {

/// Slanting chords of a circle.
QPainterPath chords(QPointF middle, double radius) {
  constexpr double kEvery = 6.0;
  const QPointF along(std::numbers::sqrt2 / 2.0, -std::numbers::sqrt2 / 2.0);
  const QPointF across(along.y(), -along.x());
  QPainterPath path;
  for (double off = -radius + kEvery / 2.0; off < radius; off += kEvery) {
    const double half = std::sqrt(radius * radius - off * off);
    path.moveTo(middle + across * off - along * half);
    path.lineTo(middle + across * off + along * half);
  }
  return path;
}

}  // namespace

QPainterPath circle(QPointF middle, double radius) {
  QPainterPath path;
  path.addEllipse(middle, radius, radius);
  return path;
}

void draw_crown(Drawing& drawing, QPointF at, double radius, bool goes) {
  if (goes) {
    drawing.outline(chords(at, radius), {0.9, Ink::soft});
    const double dash = std::min(5.0, radius / 2.0);
    drawing.outline(circle(at, radius), {1.6, Ink::black, {dash, 0.6 * dash}});
  } else {
    drawing.outline(circle(at, radius), {1.8, Ink::leave});
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
