#pragma once

#include <optional>
#include <span>

#include "core/base/result.hpp"
#include "core/model/place.hpp"

namespace oaklight {

// Everything here works on the WGS 84 ellipsoid with level distances. Positions are finite, with
// latitudes in -90 .. 90. Method: Karney 2013, Algorithms for geodesics, J. Geodesy 87:43-55.

/// Where one stands after walking a level distance along an azimuth (from true north, clockwise).
/// accuracy far below a millimetre
[[nodiscard]] Position position_at(Position from, Degrees azimuth, Feet distance);

/// How to walk from one position to another.
struct Leg {
  Degrees azimuth;  ///< at the start, from true north, 0 <= azimuth < 360; 0 when there is no way
  Feet distance;
};
[[nodiscard]] Leg leg_between(Position from, Position to);

/// A place on flat ground around an origin.
struct LocalFeet {
  Feet east;
  Feet north;
  friend bool operator==(const LocalFeet&, const LocalFeet&) = default;
};

/// The place of a position on the flat ground around the origin, for drawing and for crown
/// geometry: true distance and azimuth from the origin (azimuthal equidistant projection).
/// accuracy between two points within 5 miles of the origin, distances are right to 1 in 1,000,000
[[nodiscard]] LocalFeet local_feet(Position origin, Position place);

/// The reverse of local_feet.
[[nodiscard]] Position position_from_local(Position origin, LocalFeet place);

/// Shortest distance from a position to a line through these points.
///
/// returns  nothing when the line has no points; the distance to the point when it has one
/// accuracy for lines within 5 miles, 1 in 1,000,000
[[nodiscard]] std::optional<Feet> distance_to_line(Position from, std::span<const Position> line);

/// Area of ground inside the outer ring less that of the holes, whichever way the rings run.
///
/// errors   bad_geometry: a ring with fewer than three corners, or holes larger than the outside
/// assumes  rings that do not cross themselves
[[nodiscard]] Result<Acres> polygon_acres(const Polygon& polygon);

}  // namespace oaklight
