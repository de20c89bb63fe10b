#include "core/paper/map_ground.hpp"

#include <cmath>

namespace oaklight {
namespace {

void draw_stand(Drawing& drawing, const MapStand& stand, const MapView& view) {
  QPainterPath path;
  path.setFillRule(Qt::OddEvenFill);
  for (const QPolygonF& ring : stand.rings) path.addPath(path_on_map(ring, view));
  if (!path.boundingRect().intersects(view.frame)) return;
  drawing.fill(path, Ink::tint, view.frame);
  drawing.outline(path, {1.1, Ink::soft}, view.frame);
}

void draw_line(Drawing& drawing, const MapTrack& track, const MapView& view) {
  constexpr double kWidest = 5.0;  // a line just outside may reach in by its strokes
  const QPainterPath path = path_on_map(track.points, view);
  const QRectF box = path.boundingRect().adjusted(-kWidest, -kWidest, kWidest, kWidest);
  if (!box.intersects(view.frame)) return;
  draw_track(drawing, path, track.kind, track.confirmed, view.frame);
}

/// An arrow's head in the middle of a leg that has room for one.
void draw_direction(Drawing& drawing, QPointF from, QPointF to, const QRectF& frame) {
  constexpr double kHead = 8.0;
  const QPointF way = to - from;
  const double length = std::hypot(way.x(), way.y());
  if (length < 4.0 * kHead) return;
  const QPointF ahead = way / length;
  const QPointF aside(-ahead.y(), ahead.x());
  const QPointF tip = from + way / 2.0 + ahead * (kHead / 2.0);
  QPainterPath head(tip);
  head.lineTo(tip - ahead * kHead + aside * (kHead / 2.0));
  head.lineTo(tip - ahead * kHead - aside * (kHead / 2.0));
  head.closeSubpath();
  drawing.fill(head, Ink::black, frame);
}

/// A strong line on a bright one, so that it stands out from streams and trails in grey too.
void draw_walk(Drawing& drawing, std::span<const QPointF> walk, const MapView& view) {
  if (walk.size() < 2) return;
  const QPainterPath line = path_on_map(walk, view);
  drawing.outline(line, {4.2, Ink::white, {}, true}, view.frame);
  drawing.outline(line, {1.7, Ink::black, {}, true}, view.frame);
  for (std::size_t i = 1; i < walk.size(); ++i) {
    draw_direction(drawing, view.at(walk[i - 1]), view.at(walk[i]), view.frame);
  }
}

/// The outline that is being drawn: its corners as dots, dashed where it will close.
void draw_sketch(Drawing& drawing, std::span<const QPointF> sketch, const MapView& view) {
  if (sketch.empty()) return;
  drawing.outline(path_on_map(sketch, view), {1.6, Ink::black, {}}, view.frame);
  QPainterPath closing(view.at(sketch.back()));
  closing.lineTo(view.at(sketch.front()));
  drawing.outline(closing, {1.2, Ink::black, {4.0, 3.0}}, view.frame);
  for (const QPointF& corner : sketch) {
    QPainterPath dot;
    dot.addEllipse(view.at(corner), 3.0, 3.0);
    drawing.fill(dot, Ink::black);
  }
}

}  // namespace

QPainterPath path_on_map(std::span<const QPointF> ground, const MapView& view) {
  QPolygonF points;
  for (const QPointF& p : ground) points.append(view.at(p));
  QPainterPath path;
  path.addPolygon(points);
  return path;
}

void draw_map_ground(Drawing& drawing, const MapScene& scene, const MapView& view) {
  for (const MapStand& stand : scene.stands) draw_stand(drawing, stand, view);
  for (const MapTrack& track : scene.tracks) draw_line(drawing, track, view);
  draw_walk(drawing, scene.walk, view);
  draw_sketch(drawing, scene.sketch, view);
}

}  // namespace oaklight
