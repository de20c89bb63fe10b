#include "mobile/desk/unwalked.hpp"

#include <algorithm>

bool is_unwalked(const oaklight::LiveTract& live, const oaklight::Stand& stand) {
  return !stand.walked && !live.walk_trees_of(stand.id).empty();
}

int unwalked_row(const oaklight::LiveTract& live) {
  const auto& stands = live.data().stands;
  const auto found = std::ranges::find_if(
      stands, [&](const oaklight::Stand& stand) { return is_unwalked(live, stand); });
  return found == stands.end() ? -1 : static_cast<int>(found - stands.begin());
}
