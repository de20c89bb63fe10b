#pragma once

#include "core/session/live_tract.hpp"

namespace oaklight {

/// What is left to do on the crop tree cards of a tract.
struct CardsLeft {
  int crop_trees = 0;
  int sides_open = 0;  ///< crop trees with a side at which nobody looked up
  int undecided = 0;   ///< crop trees without a verdict
  int look_again = 0;  ///< trees of the walk, of any kind, to be looked at again
};
/// Cost: the trees of the walk.
[[nodiscard]] CardsLeft cards_left(const LiveTract& live);

}  // namespace oaklight
