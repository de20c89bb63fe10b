#include "core/paper/symbols.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/number_text.hpp"
#include "core/paper/page.hpp"

namespace oaklight {
namespace {

constexpr double kStem = 0.95;  // length of the stem under a ring, in radii

void draw_ring(Drawing& drawing, QPointF centre, double radius, double pen, Ink ink) {
  drawing.dot(centre, radius + pen / 2.0, ink);
  drawing.dot(centre, radius - pen / 2.0, Ink::white);
}

/// A ring with a white heart on a short stem: a tree that stays.
void draw_standing(Drawing& drawing, QPointF tree, double r, double pen) {
  const QPointF foot = tree + QPointF(0.0, r * (1.0 + kStem));
  QPainterPath stem(tree + QPointF(0.0, r));
  stem.lineTo(foot);
  stem.moveTo(foot - QPointF(0.55 * r, 0.0));
  stem.lineTo(foot + QPointF(0.55 * r, 0.0));
  drawing.outline(stem, {pen * 1.2, Ink::leave});
  draw_ring(drawing, tree, r, pen, Ink::leave);
}

void draw_other(Drawing& drawing, QPointF tree, double r) {
  QPainterPath box;
  box.addRect(tree.x() - 0.85 * r, tree.y() - 0.85 * r, 1.7 * r, 1.7 * r);
  drawing.shape(box, Ink::white, {0.24 * r, Ink::soft});
}

void draw_danger(Drawing& drawing, QPointF tree, double r) {
  QPainterPath path(tree + QPointF(0.0, -1.15 * r));
  path.lineTo(tree + QPointF(1.1 * r, 0.8 * r));
  path.lineTo(tree + QPointF(-1.1 * r, 0.8 * r));
  path.closeSubpath();
  drawing.shape(path, Ink::white, {0.26 * r, Ink::stop});
  QPainterPath call;
  call.addRect(tree.x() - 0.13 * r, tree.y() - 0.5 * r, 0.26 * r, 0.66 * r);
  call.addRect(tree.x() - 0.15 * r, tree.y() + 0.3 * r, 0.3 * r, 0.3 * r);
  drawing.fill(call, Ink::stop);
}

/// Short strokes across a line, like the arms of its poles, where the clip shows them.
QPainterPath ticks_across(const QPainterPath& path, double every, double half, const QRectF& clip) {
  constexpr double kMostTicks = 2000.0;
  QPainterPath ticks;
  const double length = path.length();
  const int count = static_cast<int>(std::min(length / every, kMostTicks));
  for (int i = 0; i < count; ++i) {
    const double t = path.percentAtLength((i + 0.5) * every);
    const QPointF at = path.pointAtPercent(t);
    if (!clip.contains(at)) continue;
    const double angle = path.angleAtPercent(t) * std::numbers::pi / 180.0;
    const QPointF across(std::sin(angle) * half, std::cos(angle) * half);
    ticks.moveTo(at - across);
    ticks.lineTo(at + across);
  }
  return ticks;
}

/// The largest of 1, 2, 5 times a power of ten that is not above the limit.
double round_length(double limit) {
  const double power = std::pow(10.0, std::floor(std::log10(limit)));
  for (const double step : {5.0, 2.0}) {
    if (step * power <= limit) return step * power;
  }
  return power;
}

/// A bar with a black first half and its length behind it, ending at the given x. Returns where it
/// begins.
double draw_bar(Drawing& drawing, QPointF end, double points, const QString& label) {
  constexpr double kHeight = 5.0;
  const double words = text_width(label, kSmallText) + 4.0;
  const QRectF bar(end.x() - words - points, end.y() - kHeight - 1.5, points, kHeight);
  drawing.fill_rect(bar, Ink::white);
  drawing.fill_rect(QRectF(bar.topLeft(), QSizeF(points / 2.0, kHeight)), Ink::black);
  drawing.outline_rect(bar, {0.8, Ink::black});
  drawing.text_ending(end, label, kSmallText);
  return bar.left();
}

QString length_words(double length, const char* unit) {
  return QString::fromStdString(grouped_text(length, length < 1.0 ? 2 : 0)) +
         QString::fromLatin1(unit);
}

}  // namespace

QRectF mark_box(QPointF tree, double radius) {
  return {tree.x() - 1.2 * radius, tree.y() - 1.3 * radius, 2.4 * radius,
          (1.3 + 1.0 + kStem + 0.1) * radius};
}

void draw_mark(Drawing& drawing, TreeMark mark, QPointF tree, double radius) {
  switch (mark) {
    case TreeMark::cut:
      drawing.dot(tree, radius, Ink::black);
      return;
    case TreeMark::other:
      draw_other(drawing, tree, radius);
      return;
    case TreeMark::crop:
      draw_standing(drawing, tree, 1.15 * radius, 0.26 * radius);
      draw_ring(drawing, tree, 0.6 * radius, 0.22 * radius, Ink::leave);
      return;
    case TreeMark::keep:
      draw_standing(drawing, tree, radius, 0.26 * radius);
      return;
    case TreeMark::trained:
      draw_danger(drawing, tree, 1.1 * radius);
      return;
  }
}

void draw_track(Drawing& drawing, const QPainterPath& path, LineKind kind, bool confirmed,
                const QRectF& clip) {
  switch (kind) {
    case LineKind::stream:
      drawing.outline(path, {2.2, Ink::water}, clip);
      return;
    case LineKind::neighbour_line:
      drawing.outline(
          path,
          {1.8, Ink::black,
           confirmed ? std::vector<double>{14.0, 3.0, 3.0, 3.0} : std::vector<double>{5.0, 5.0}},
          clip);
      return;
    case LineKind::road:
      drawing.outline(path, {4.6, Ink::black}, clip);
      drawing.outline(path, {3.0, Ink::white}, clip);
      return;
    case LineKind::trail:
      drawing.outline(path, {1.4, Ink::soft, {2.0, 2.5}}, clip);
      return;
    case LineKind::power_line:
      drawing.outline(path, {1.0, Ink::stop}, clip);
      if (const QPainterPath ticks = ticks_across(path, 13.0, 3.5, clip); !ticks.isEmpty()) {
        drawing.outline(ticks, {1.0, Ink::stop}, clip);
      }
      return;
  }
}

QString words_of(LineKind kind, bool confirmed) {
  switch (kind) {
    case LineKind::stream:
      return QStringLiteral("Stream");
    case LineKind::neighbour_line:
      return confirmed ? QStringLiteral("Neighbor line, confirmed")
                       : QStringLiteral("Neighbor line, NOT CONFIRMED");
    case LineKind::road:
      return QStringLiteral("Road");
    case LineKind::trail:
      return QStringLiteral("Trail");
    case LineKind::power_line:
      return QStringLiteral("Power line");
  }
  return {};
}

void draw_landing(Drawing& drawing, QPointF centre) {
  drawing.fill_rect(QRectF(centre.x() - 6.0, centre.y() - 6.0, 12.0, 12.0), Ink::white);
  drawing.fill_rect(QRectF(centre.x() - 5.0, centre.y() - 5.0, 10.0, 10.0), Ink::black);
  drawing.dot(centre, 2.2, Ink::white);
}

void draw_north_arrow(Drawing& drawing, QPointF corner) {
  const double x = corner.x() + 22.0;
  const double top = corner.y();
  QPainterPath left(QPointF(x, top));
  left.lineTo(x - 8.0, top + 24.0);
  left.lineTo(x, top + 19.0);
  left.closeSubpath();
  QPainterPath right(QPointF(x, top));
  right.lineTo(x + 8.0, top + 24.0);
  right.lineTo(x, top + 19.0);
  right.closeSubpath();
  drawing.fill(left, Ink::black);
  drawing.outline(left, {0.8, Ink::black});
  drawing.outline(right, {0.8, Ink::black});
  drawing.text_centred(QPointF(x, top + 37.0), QStringLiteral("N"), kSubheadText);
  drawing.text_centred(QPointF(x, top + 49.0), QStringLiteral("true"), kSmallText);
}

void draw_scale_bars(Drawing& drawing, QPointF end, double feet_per_point) {
  constexpr double kLongest = 52.0;
  const double room = kLongest * feet_per_point;
  const double metres = round_length(to_metres(Feet{room}).value);
  const double feet = round_length(room);
  const double x = draw_bar(drawing, end, to_feet(Metres{metres}).value / feet_per_point,
                            length_words(metres, " m"));
  draw_bar(drawing, QPointF(x - 10.0, end.y()), feet / feet_per_point, length_words(feet, " ft"));
}

void draw_tick_box(Drawing& drawing, double x, double y) {
  drawing.outline_rect(QRectF(x, y - kTickBox / 2.0, kTickBox, kTickBox), {1.1, Ink::black});
}

QString words_of(Severity severity) {
  switch (severity) {
    case Severity::stop:
      return QStringLiteral("STOP");
    case Severity::extra_care:
      return QStringLiteral("TAKE CARE");
    case Severity::note:
      return QStringLiteral("NOTE");
  }
  return {};
}

double badge_width(Severity severity) {
  constexpr double kPadding = 4.0;
  return text_width(words_of(severity), kSmallStrongText) + 2.0 * kPadding;
}

double draw_badge(Drawing& drawing, QPointF baseline, Severity severity) {
  const double width = badge_width(severity);
  const QRectF box(baseline.x(), baseline.y() - 9.6, width, 12.6);
  const bool stop = severity == Severity::stop;
  if (stop) drawing.fill_rect(box, Ink::stop_ground);
  if (severity == Severity::extra_care) drawing.outline_rect(box, {1.0, Ink::black});
  drawing.text(baseline + QPointF(4.0, 0.0), words_of(severity),
               kSmallStrongText.in(stop ? Ink::on_ground : Ink::black));
  return width;
}

}  // namespace oaklight
