#pragma once

#include <optional>
#include <vector>

#include "core/model/mark.hpp"

namespace oaklight {

/// Where a tree stands that was measured from a plot centre along a slope.
///
/// azimuth  from true north
/// taped    along the line, which rises by `slope`
[[nodiscard]] Position position_on_slope(Position centre, Degrees azimuth, Feet taped, Slope slope);

/// The places of the trees tallied on plots, from plot centre, azimuth and level distance; nothing
/// where one of the three is not recorded. No position is ever guessed.
///
/// returns  in the order of data.trees
/// assumes  azimuths from true north, distances level, as a Tree holds them
[[nodiscard]] std::vector<std::optional<Position>> plot_tree_positions(const TractData& data);

}  // namespace oaklight
