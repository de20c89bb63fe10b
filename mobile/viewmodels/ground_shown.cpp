#include "mobile/viewmodels/ground_shown.hpp"

#include <algorithm>

using oaklight::TractData;

std::shared_ptr<const TractData> ground_of(const TractData& data) {
  auto ground = std::make_shared<TractData>();
  ground->tract = data.tract;
  ground->stands = data.stands;
  ground->plots = data.plots;
  std::ranges::copy_if(data.trees, std::back_inserter(ground->trees),
                       [](const oaklight::Tree& tree) { return !tree.tag.empty(); });
  ground->walk_trees = data.walk_trees;
  ground->contacts = data.contacts;
  ground->marks = data.marks;
  ground->lines = data.lines;
  return ground;
}
