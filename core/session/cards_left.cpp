#include "core/session/cards_left.hpp"

namespace oaklight {

CardsLeft cards_left(const LiveTract& live) {
  CardsLeft left;
  for (const WalkTree& tree : live.data().walk_trees) {
    const Mark* mark = live.mark_of(tree.id);
    if (mark != nullptr && mark->verdict == Verdict::look_again) ++left.look_again;
    if (!tree.crop) continue;
    ++left.crop_trees;
    if (tree.looked != Sides::all()) ++left.sides_open;
    if (mark == nullptr) ++left.undecided;
  }
  return left;
}

}  // namespace oaklight
