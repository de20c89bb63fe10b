#include "core/paper/crown_spots.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace oaklight {
namespace {

/// The middle of the sides on which it stands; nothing without a side.
std::optional<double> bearing_of(Sides sides) {
  QPointF sum;
  double bearing = 0.0;
  std::optional<double> first;
  for (const Side side : kSides) {
    if (sides.has(side)) {
      sum += towards(bearing);
      if (!first) first = bearing;
    }
    bearing += 90.0;
  }
  if (std::hypot(sum.x(), sum.y()) < 0.1) return first;  // opposite sides have no middle
  return std::atan2(sum.x(), sum.y()) * 180.0 / std::numbers::pi;
}

/// A distance for a neighbour whose own was not taped: what was seen of the crowns.
double likely_distance(const CrownCard& card, const CrownNeighbour& n, double bearing) {
  const double own = card.crown.shape.reach(Degrees{bearing}).value;
  const double other = n.crown.shape.reach(Degrees{bearing + 180.0}).value;
  const double both = own + other;
  switch (n.closeness) {
    case Closeness::touching:
      return both - 0.25 * std::min(own, other);
    case Closeness::doubtful:
      return both;
    case Closeness::clear:
      return both + 3.0;
  }
  return both;
}

}  // namespace

QPointF towards(double bearing) {
  const double angle = radians(Degrees{bearing});
  return {std::sin(angle), std::cos(angle)};
}

std::vector<std::optional<CrownSpot>> spots_of(const CrownCard& card) {
  constexpr double kBeside = 24.0;  // degrees
  std::vector<std::optional<CrownSpot>> spots;
  std::vector<double> used;
  for (const CrownNeighbour& n : card.neighbours) {
    std::optional<double> bearing;
    if (n.azimuth) {
      bearing = n.azimuth->value;
    } else if ((bearing = bearing_of(n.sides))) {
      const auto same = std::count(used.begin(), used.end(), *bearing);
      used.push_back(*bearing);
      const double step = kBeside * static_cast<double>((same + 1) / 2);
      *bearing += same % 2 == 1 ? step : -step;
    }
    if (!bearing) {
      spots.emplace_back();
      continue;
    }
    const double distance = n.distance ? n.distance->value : likely_distance(card, n, *bearing);
    spots.push_back(CrownSpot{towards(*bearing) * distance, n.azimuth && n.distance});
  }
  return spots;
}

}  // namespace oaklight
