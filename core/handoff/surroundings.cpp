#include "core/handoff/surroundings.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "core/handoff/near_hazards.hpp"
#include "core/measure/plot_geometry.hpp"
#include "core/place/geodesy.hpp"

namespace oaklight {
namespace {

std::optional<Feet> height_of(const TreeFacts& facts) {
  return facts.height ? std::optional(facts.height->feet()) : std::nullopt;
}

/// Plots and cruises by their ids.
struct Plots {
  std::map<PlotId, const Plot*> plots;
  std::map<CruiseId, const Cruise*> cruises;

  explicit Plots(const TractData& data) {
    for (const Plot& plot : data.plots) plots.emplace(plot.id, &plot);
    for (const Cruise& cruise : data.cruises) cruises.emplace(cruise.id, &cruise);
  }
};

/// A tallied tree as a hazard: at its azimuth and distance, or somewhere on its plot.
Hazard tallied_hazard(const Tree& tree, const Plots& known) {
  Hazard hazard{.tag = tree.tag, .height = height_of(tree.facts)};
  const auto found = known.plots.find(tree.plot);
  if (found == known.plots.end()) return hazard;
  const Plot& plot = *found->second;
  hazard.name = tree.tag.empty() ? "a tallied tree of plot " + plot.label : "tree " + tree.tag;
  if (!plot.position) return hazard;
  if (tree.azimuth && tree.distance) {
    hazard.position = position_at(*plot.position, *tree.azimuth, tree.distance->feet());
    return hazard;
  }
  hazard.position = plot.position;
  const auto cruise = known.cruises.find(plot.cruise);
  if (cruise != known.cruises.end()) {
    hazard.unsure = limiting_distance(cruise->second->design, tree.facts.dbh, TapedTo::centre);
  }
  return hazard;
}

/// The trees of walk and plots whose facts `is_hazard` names.
template <class IsHazard>
std::vector<Hazard> hazards_of(const TractData& data, std::span<const WalkTree> trees,
                               const Plots& plots, IsHazard is_hazard) {
  std::vector<Hazard> hazards;
  for (const WalkTree& tree : trees) {
    if (!is_hazard(tree.facts)) continue;
    hazards.push_back({.tag = tree.tag,
                       .walk_tree = tree.id,
                       .position = tree.position,
                       .height = height_of(tree.facts),
                       .name = "tree " + tree.tag});
  }
  for (const Tree& tree : data.trees) {
    if (!is_hazard(tree.facts)) continue;
    hazards.push_back(tallied_hazard(tree, plots));
  }
  return hazards;
}

/// Distance to the nearest line that `wanted` accepts.
template <class Wanted>
std::optional<Feet> nearest_line(const WalkTree& tree, const TractData& data, Wanted wanted) {
  std::optional<Feet> nearest;
  if (!tree.position) return nearest;
  for (const MapLine& line : data.lines) {
    if (!wanted(line)) continue;
    const auto distance = distance_to_line(*tree.position, line.points);
    if (distance && (!nearest || *distance < *nearest)) nearest = distance;
  }
  return nearest;
}

/// Trees that a crown with a loose limb touches or overhangs, or is touched by.
std::set<WalkTreeId> beside_loose_limbs(const TractData& data, std::span<const WalkTree> trees) {
  std::set<WalkTreeId> loose;
  for (const WalkTree& tree : trees) {
    if (tree.facts.conditions.has(Condition::loose_limb)) loose.insert(tree.id);
  }
  std::set<WalkTreeId> beside;
  for (const Contact& contact : data.contacts) {
    if (contact.seen != Seen::touches && contact.seen != Seen::over) continue;
    if (loose.contains(contact.crop)) beside.insert(contact.neighbour);
    if (loose.contains(contact.neighbour)) beside.insert(contact.crop);
  }
  return beside;
}

}  // namespace

std::vector<Surroundings> surroundings_of(const TractData& data, std::span<const WalkTree> trees,
                                          const SpeciesTable& species,
                                          const CautionLimits& limits) {
  const CardIndex cards(data);
  const Plots plots(data);
  const auto near = [&](auto is_hazard) {
    return NearHazards(hazards_of(data, trees, plots, is_hazard), trees, cards, limits);
  };
  const NearHazards dead_ashes = near([&](const TreeFacts& facts) {
    const Species* kind = species.find(facts.species);
    return kind != nullptr && is_dead_ash(facts, *kind, limits);
  });
  const NearHazards hung =
      near([](const TreeFacts& facts) { return facts.conditions.has(Condition::hung_tree); });
  const auto under_limbs = beside_loose_limbs(data, trees);

  std::vector<Surroundings> all;
  for (const WalkTree& tree : trees) {
    const auto nearest = [&](auto wanted) { return nearest_line(tree, data, wanted); };
    all.push_back(
        {.unplaced = !tree.position && !data.lines.empty(),
         .slope = tree.slope,
         .stream = nearest([](const MapLine& l) { return l.kind == LineKind::stream; }),
         .unconfirmed_line = nearest(
             [](const MapLine& l) { return l.kind == LineKind::neighbour_line && !l.confirmed; }),
         .way = nearest([](const MapLine& l) {
           return l.kind == LineKind::road || l.kind == LineKind::trail;
         }),
         .power_line = nearest([](const MapLine& l) { return l.kind == LineKind::power_line; }),
         .dead_ashes = dead_ashes.seen_from(tree),
         .hung_trees = hung.seen_from(tree),
         .loose_limb_beside = under_limbs.contains(tree.id)});
  }
  return all;
}

}  // namespace oaklight
