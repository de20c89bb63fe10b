#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "core/model/place.hpp"

namespace oaklight {

/// Twice the area that a closed ring goes round, in square degrees; positive when it goes
/// counter-clockwise with north up. Source: the trapezoid (shoelace) formula.
double doubled_area(const Ring& ring);

/// Why a ring bounds no ground; nothing when it does.
///
/// ring     as read; any winding
/// returns  a sentence: fewer than four positions, not closed, no area, or two edges that cross
/// assumes  the ring does not reach over the 180th meridian; edges are straight in degrees
/// accuracy an edge that only touches another at a point is not called a crossing
std::optional<std::string> ring_fault(const Ring& ring);

/// How many positions of these parts, holes included, would be tried for edges that cross: a ring
/// of more than 5,000 is refused before.
std::size_t positions_to_try(const std::vector<Polygon>& parts);

/// Whether a position lies inside a ring; one on its edge may count either way. Source: even-odd
/// rule.
bool goes_round(const Ring& ring, const Position& position);

/// Whether an edge of one ring crosses an edge of the other. Touching is not crossing.
bool rings_cross(const Ring& a, const Ring& b);

}  // namespace oaklight
