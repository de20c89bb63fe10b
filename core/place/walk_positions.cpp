#include "core/place/walk_positions.hpp"

#include <algorithm>
#include <map>

#include "core/place/geodesy.hpp"

namespace oaklight {

std::vector<WalkTree> placed_walk_trees(const TractData& data) {
  std::vector<WalkTree> trees = data.walk_trees;
  std::map<WalkTreeId, WalkTree*> by_id;
  for (WalkTree& tree : trees) by_id.emplace(tree.id, &tree);

  std::vector<const Contact*> readings;
  for (const Contact& contact : data.contacts) {
    const bool known = by_id.contains(contact.crop) && by_id.contains(contact.neighbour);
    if (known && contact.azimuth && contact.distance) readings.push_back(&contact);
  }
  std::sort(readings.begin(), readings.end(),
            [](const Contact* a, const Contact* b) { return a->id < b->id; });

  // Each round places the neighbours of trees placed in the round before.
  bool placed_one = true;
  while (placed_one) {
    placed_one = false;
    for (const Contact* contact : readings) {
      const WalkTree& crop = *by_id.at(contact->crop);
      WalkTree& neighbour = *by_id.at(contact->neighbour);
      if (!crop.position || neighbour.position) continue;
      neighbour.position =
          position_at(*crop.position, *contact->azimuth, contact->distance->feet());
      placed_one = true;
    }
  }
  return trees;
}

}  // namespace oaklight
