#pragma once

#include <optional>
#include <vector>

#include "core/model/mark.hpp"

namespace oaklight {

/// The places of the trees tallied on plots, from plot centre, azimuth and level distance; nothing
/// where one of the three is not recorded. No position is ever guessed.
///
/// returns  in the order of data.trees
/// assumes  azimuths from true north, distances level, as a Tree holds them
[[nodiscard]] std::vector<std::optional<Position>> plot_tree_positions(const TractData& data);

}  // namespace oaklight
