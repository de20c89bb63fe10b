#include "core/place/flat_ground.hpp"

#include <algorithm>

namespace oaklight {

FlatPolygon flat_polygon(const Polygon& polygon) {
  const auto [south, north] = std::ranges::minmax(polygon.outer, {}, &Position::latitude);
  const auto [west, east] = std::ranges::minmax(polygon.outer, {}, &Position::longitude);
  FlatPolygon flat;
  flat.origin = {(south.latitude + north.latitude) / 2.0, (west.longitude + east.longitude) / 2.0};
  const auto add = [&](const Ring& ring) {
    auto& places = flat.rings.emplace_back();
    for (const Position& corner : ring) places.push_back(local_feet(flat.origin, corner));
  };
  add(polygon.outer);
  for (const Ring& hole : polygon.holes) add(hole);
  return flat;
}

bool holds(const FlatPolygon& polygon, LocalFeet place) {
  bool inside = false;
  for (const auto& ring : polygon.rings) {
    for (std::size_t i = 0; i + 1 < ring.size(); ++i) {
      const LocalFeet& a = ring[i];
      const LocalFeet& b = ring[i + 1];
      if ((a.north > place.north) == (b.north > place.north)) continue;
      const double along = (place.north - a.north) / (b.north - a.north);
      if (place.east < a.east + along * (b.east - a.east)) inside = !inside;
    }
  }
  return inside;
}

FlatSpan span_of(const FlatPolygon& polygon) {
  const auto& outer = polygon.rings.front();
  const auto [south, north] = std::ranges::minmax(outer, {}, &LocalFeet::north);
  const auto [west, east] = std::ranges::minmax(outer, {}, &LocalFeet::east);
  return {west.east, east.east, south.north, north.north};
}

}  // namespace oaklight
