#include <algorithm>
#include <array>

#include "core/paper/map.hpp"
#include "core/paper/page.hpp"

namespace oaklight {
namespace {

constexpr double kBorder = 30.0;  // ground is kept this far from the frame, for labels

}  // namespace

double MapView::feet_per_point() const { return feet_per_inch / kPointsPerInch; }

QPointF MapView::at(QPointF ground) const {
  const QPointF off = (ground - middle) / feet_per_point();
  return frame.center() + QPointF(off.x(), -off.y());
}

QSizeF largest_ground(QSizeF frame, double feet_per_inch) {
  const QSizeF inside(frame.width() - 2.0 * kBorder, frame.height() - 2.0 * kBorder);
  return inside.expandedTo(QSizeF(0.0, 0.0)) * (feet_per_inch / kPointsPerInch);
}

QSizeF smallest_frame(QSizeF ground, double feet_per_inch) {
  const QSizeF inside = ground * (kPointsPerInch / feet_per_inch);
  return {inside.width() + 2.0 * kBorder, inside.height() + 2.0 * kBorder};
}

MapView fitting_view(const QRectF& frame, const QRectF& ground) {
  const auto fits = [&](double scale) {
    const QSizeF need = smallest_frame(ground.size(), scale);
    return need.width() <= frame.width() && need.height() <= frame.height();
  };
  // The scales of an engineer's rule and their multiples, then doubling.
  static constexpr std::array kUsual = {30.0,  40.0,  50.0,  60.0,  80.0,  100.0, 150.0,
                                        200.0, 300.0, 400.0, 500.0, 600.0, 800.0, 1000.0};
  const auto found = std::find_if(kUsual.begin(), kUsual.end(), fits);
  double scale = found == kUsual.end() ? kUsual.back() : *found;
  constexpr double kWholeEarth = 1e9;  // ft; a frame without room would never fit
  while (!fits(scale) && scale < kWholeEarth) scale *= 2.0;
  return {frame, ground.center(), scale};
}

MapView filling_view(const QRectF& frame, const QRectF& ground) {
  constexpr double kLargest = 20.0;  // ft in an inch
  constexpr double kClose = 22.0;    // the border, pt
  const double wide = std::max(frame.width() - 2.0 * kClose, 1.0);
  const double high = std::max(frame.height() - 2.0 * kClose, 1.0);
  const double feet_per_point = std::max(ground.width() / wide, ground.height() / high);
  return {frame, ground.center(), std::max(feet_per_point * kPointsPerInch, kLargest)};
}

}  // namespace oaklight
