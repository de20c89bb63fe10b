#pragma once

#include <vector>

#include "core/model/mark.hpp"

namespace oaklight {

/// The trees of the marking walk, with positions filled in where other records tell them. A tree
/// that was also tallied on a plot, with the same tag and species in the same stand, stands where
/// that plot's azimuth and distance put it (plot_tree_positions). A neighbour without a position
/// stands at the azimuth and distance that were read from a crop tree whose position is known. A
/// neighbour that is a crop tree itself hands its place on to its own card. A position that was
/// recorded is never changed; of two cards that tell a place, the one with the lower contact id is
/// taken.
///
/// returns  copies in the order of data.walk_trees
/// assumes  azimuths from true north, distances level
[[nodiscard]] std::vector<WalkTree> placed_walk_trees(const TractData& data);

}  // namespace oaklight
