#include "core/place/walk_positions.hpp"

#include <algorithm>
#include <map>

#include "core/place/geodesy.hpp"
#include "core/place/plot_trees.hpp"

namespace oaklight {
namespace {

/// Fills in the places of trees that a plot tells, found by their tags. A tag that two trees of
/// plots wear tells nothing.
void place_by_tag(const TractData& data, std::vector<WalkTree>& trees) {
  std::map<PlotId, StandId> stands;
  for (const Plot& plot : data.plots) stands.emplace(plot.id, plot.stand);
  const auto places = plot_tree_positions(data);
  std::map<std::pair<StandId, std::string>, std::optional<std::size_t>> tagged;
  for (std::size_t i = 0; i < data.trees.size(); ++i) {
    const Tree& tree = data.trees[i];
    const auto stand = stands.find(tree.plot);
    if (tree.tag.empty() || stand == stands.end()) continue;
    const auto [entry, fresh] = tagged.emplace(std::pair(stand->second, tree.tag), i);
    if (!fresh) entry->second.reset();
  }
  for (WalkTree& tree : trees) {
    if (tree.position || tree.tag.empty()) continue;
    const auto found = tagged.find({tree.stand, tree.tag});
    if (found == tagged.end() || !found->second) continue;
    if (data.trees[*found->second].facts.species == tree.facts.species)
      tree.position = places[*found->second];
  }
}

}  // namespace

std::vector<WalkTree> placed_walk_trees(const TractData& data) {
  std::vector<WalkTree> trees = data.walk_trees;
  place_by_tag(data, trees);
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
