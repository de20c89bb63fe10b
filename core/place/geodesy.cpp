#include "core/place/geodesy.hpp"

#include <GeographicLib/AzimuthalEquidistant.hpp>
#include <GeographicLib/Geodesic.hpp>
#include <GeographicLib/PolygonArea.hpp>
#include <algorithm>
#include <cmath>

namespace oaklight {
namespace {

using GeographicLib::Geodesic;

const Geodesic& earth() { return Geodesic::WGS84(); }

/// Distance from the origin to the segment between two places.
double distance_to_segment(LocalFeet a, LocalFeet b) {
  const double ax = a.east.value;
  const double ay = a.north.value;
  const double dx = b.east.value - ax;
  const double dy = b.north.value - ay;
  const double length_squared = dx * dx + dy * dy;
  const double along =
      length_squared > 0.0 ? std::clamp(-(ax * dx + ay * dy) / length_squared, 0.0, 1.0) : 0.0;
  return std::hypot(ax + along * dx, ay + along * dy);
}

Result<SquareMetres> ring_area(const Ring& ring) {
  const std::size_t corners =
      ring.size() > 1 && ring.front() == ring.back() ? ring.size() - 1 : ring.size();
  if (corners < 3) {
    return Error{ErrorCode::bad_geometry, "A ring with fewer than three corners has no area.", "",
                 "Draw the outline with at least three corners."};
  }
  GeographicLib::PolygonArea area(earth());
  for (std::size_t i = 0; i < corners; ++i) {
    area.AddPoint(ring[i].latitude.value, ring[i].longitude.value);
  }
  double perimeter = 0.0;
  double square_metres = 0.0;
  area.Compute(false, true, perimeter, square_metres);
  return SquareMetres{std::fabs(square_metres)};
}

}  // namespace

Position position_at(Position from, Degrees azimuth, Feet distance) {
  Position to;
  earth().Direct(from.latitude.value, from.longitude.value, azimuth.value,
                 to_metres(distance).value, to.latitude.value, to.longitude.value);
  return to;
}

Leg leg_between(Position from, Position to) {
  double metres = 0.0;
  double azimuth = 0.0;
  double azimuth_at_end = 0.0;
  earth().Inverse(from.latitude.value, from.longitude.value, to.latitude.value, to.longitude.value,
                  metres, azimuth, azimuth_at_end);
  // At no distance the library answers 180, which would read as "go south".
  if (metres == 0.0) azimuth = 0.0;
  if (azimuth < 0.0) azimuth += 360.0;
  return {Degrees{azimuth}, to_feet(Metres{metres})};
}

LocalFeet local_feet(Position origin, Position place) {
  double east = 0.0;
  double north = 0.0;
  const GeographicLib::AzimuthalEquidistant projection(earth());
  projection.Forward(origin.latitude.value, origin.longitude.value, place.latitude.value,
                     place.longitude.value, east, north);
  return {to_feet(Metres{east}), to_feet(Metres{north})};
}

Position position_from_local(Position origin, LocalFeet place) {
  Position to;
  const GeographicLib::AzimuthalEquidistant projection(earth());
  projection.Reverse(origin.latitude.value, origin.longitude.value, to_metres(place.east).value,
                     to_metres(place.north).value, to.latitude.value, to.longitude.value);
  return to;
}

std::optional<Feet> distance_to_line(Position from, std::span<const Position> line) {
  if (line.empty()) return std::nullopt;
  LocalFeet last = local_feet(from, line.front());
  double nearest = distance_to_segment(last, last);
  for (const Position& point : line.subspan(1)) {
    const LocalFeet next = local_feet(from, point);
    nearest = std::min(nearest, distance_to_segment(last, next));
    last = next;
  }
  return Feet{nearest};
}

Result<Acres> polygon_acres(const Polygon& polygon) {
  auto area = ring_area(polygon.outer);
  if (!area) return area.error();
  SquareMetres left = *area;
  for (const Ring& hole : polygon.holes) {
    const auto hole_area = ring_area(hole);
    if (!hole_area) return hole_area.error();
    left -= *hole_area;
  }
  if (left.value < 0.0) {
    return Error{ErrorCode::bad_geometry, "The holes are larger than the outline.", "",
                 "Check which ring is the outline and which are holes."};
  }
  return to_acres(left);
}

}  // namespace oaklight
