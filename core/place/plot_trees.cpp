#include "core/place/plot_trees.hpp"

#include <map>

#include "core/place/geodesy.hpp"

namespace oaklight {

std::vector<std::optional<Position>> plot_tree_positions(const TractData& data) {
  std::map<PlotId, Position> centres;
  for (const Plot& plot : data.plots) {
    if (plot.position) centres.emplace(plot.id, *plot.position);
  }
  std::vector<std::optional<Position>> positions;
  for (const Tree& tree : data.trees) {
    const auto centre = centres.find(tree.plot);
    const bool known = centre != centres.end() && tree.azimuth && tree.distance;
    positions.push_back(
        known ? std::optional(position_at(centre->second, *tree.azimuth, tree.distance->feet()))
              : std::nullopt);
  }
  return positions;
}

}  // namespace oaklight
