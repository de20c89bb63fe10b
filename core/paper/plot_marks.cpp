#include "core/paper/plot_marks.hpp"

namespace oaklight {
namespace {

constexpr double kWide = kPlotMarkReach;
constexpr double kRoomForLetter = 7.0;  // radius

QPainterPath shape_of(PlotStatus status, QPointF c, double r) {
  QPainterPath path;
  switch (status) {
    case PlotStatus::planned:
      path.addEllipse(c, r, r);
      break;
    case PlotStatus::measured:
      path.addRect(c.x() - 0.86 * r, c.y() - 0.86 * r, 1.72 * r, 1.72 * r);
      break;
    case PlotStatus::empty:
      path.moveTo(c.x(), c.y() - kWide * r);
      path.lineTo(c.x() + kWide * r, c.y());
      path.lineTo(c.x(), c.y() + kWide * r);
      path.lineTo(c.x() - kWide * r, c.y());
      path.closeSubpath();
      break;
    case PlotStatus::skipped:
      path.moveTo(c.x() - kWide * r, c.y() - 0.95 * r);
      path.lineTo(c.x() + kWide * r, c.y() - 0.95 * r);
      path.lineTo(c.x(), c.y() + kWide * r);
      path.closeSubpath();
      break;
  }
  return path;
}

Ink edge_of_status(PlotStatus status) {
  switch (status) {
    case PlotStatus::planned:
      return Ink::black;
    case PlotStatus::measured:
      return Ink::leave;
    case PlotStatus::empty:
      return Ink::soft;
    case PlotStatus::skipped:
      return Ink::stop;
  }
  return Ink::black;
}

}  // namespace

QString words_of(PlotStatus status) {
  switch (status) {
    case PlotStatus::planned:
      return QStringLiteral("to do");
    case PlotStatus::measured:
      return QStringLiteral("done");
    case PlotStatus::empty:
      return QStringLiteral("empty");
    case PlotStatus::skipped:
      return QStringLiteral("skipped");
  }
  return {};
}

void draw_plot(Drawing& drawing, PlotStatus status, QPointF centre, double radius, bool next) {
  if (next) {
    QPainterPath ring;
    const double r = radius + 0.6 * kNextRing;
    ring.addEllipse(centre, r, r);
    drawing.outline(ring, {0.55 * kNextRing, Ink::light});
  }
  const double pen = status == PlotStatus::planned ? 1.2 : 1.7;
  drawing.shape(shape_of(status, centre, radius - pen / 2.0), Ink::white,
                {pen, edge_of_status(status)});
  if (radius < kRoomForLetter) return;
  const double up = status == PlotStatus::skipped ? 0.28 * radius : 0.0;
  drawing.text_centred(centre + QPointF(0.0, 3.6 - up), words_of(status).left(1).toUpper(),
                       kSmallStrongText);
}

void draw_person(Drawing& drawing, QPointF centre) {
  drawing.dot(centre, 7.5, Ink::white);
  drawing.dot(centre, 6.5, Ink::water);
  drawing.dot(centre, 4.6, Ink::white);
  drawing.dot(centre, 3.0, Ink::water);
}

}  // namespace oaklight
