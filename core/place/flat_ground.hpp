#pragma once

#include <vector>

#include "core/place/geodesy.hpp"

namespace oaklight {

/// A polygon laid flat around an origin; rings closed, the outer one first.
struct FlatPolygon {
  Position origin;  ///< the middle of its outer ring's span
  std::vector<std::vector<LocalFeet>> rings;
};

/// accuracy distances inside a stand of some miles are right to 1 in 1,000,000
/// assumes  an outer ring with corners
[[nodiscard]] FlatPolygon flat_polygon(const Polygon& polygon);

/// Whether a place lies inside: in the outer ring and in no hole. On the edge it may count either
/// way, but two polygons that share an edge never both hold a place. Source: even-odd rule.
[[nodiscard]] bool holds(const FlatPolygon& polygon, LocalFeet place);

/// The span of a polygon.
struct FlatSpan {
  Feet west, east, south, north;
};
[[nodiscard]] FlatSpan span_of(const FlatPolygon& polygon);

}  // namespace oaklight
