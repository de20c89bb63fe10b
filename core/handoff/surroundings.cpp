#include "core/handoff/surroundings.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>

#include "core/measure/plot_geometry.hpp"
#include "core/place/geodesy.hpp"

namespace oaklight {
namespace {

/// Distances read from the crop tree of a card; the crop tree itself is at 0.
using Card = std::map<WalkTreeId, std::optional<Feet>>;

/// A tree of the tract that is a danger to others.
struct Hazard {
  std::string tag;  ///< "" when it wears none
  std::optional<WalkTreeId> walk_tree;
  std::optional<Position> position;
  std::optional<Feet> height;
  std::string name;  ///< to find it by
  Feet unsure{0};    ///< how far from `position` it may stand
};

std::optional<Feet> height_of(const TreeFacts& facts) {
  return facts.height ? std::optional(facts.height->feet()) : std::nullopt;
}

std::vector<Card> cards_of(const TractData& data) {
  std::map<WalkTreeId, Card> cards;
  for (const Contact& contact : data.contacts) {
    Card& card = cards[contact.crop];
    card[contact.crop] = Feet{0};
    card[contact.neighbour] =
        contact.distance ? std::optional(contact.distance->feet()) : std::nullopt;
  }
  std::vector<Card> list;
  for (auto& [crop, card] : cards) list.push_back(std::move(card));
  return list;
}

/// The least that two trees of a card can be apart; nothing when no card holds both.
std::optional<Feet> least_on_a_card(const std::vector<Card>& cards, WalkTreeId a, WalkTreeId b) {
  std::optional<Feet> least;
  for (const Card& card : cards) {
    const auto at_a = card.find(a);
    const auto at_b = card.find(b);
    if (at_a == card.end() || at_b == card.end()) continue;
    const bool taped = at_a->second && at_b->second;
    const Feet apart{taped ? std::fabs(at_a->second->value - at_b->second->value) : 0.0};
    least = least ? std::min(*least, apart) : apart;
  }
  return least;
}

/// A tallied tree as a hazard: at its azimuth and distance, or somewhere on its plot.
Hazard tallied_hazard(const Tree& tree, const TractData& data) {
  Hazard hazard{.tag = tree.tag, .height = height_of(tree.facts)};
  const auto plot = std::find_if(data.plots.begin(), data.plots.end(),
                                 [&](const Plot& p) { return p.id == tree.plot; });
  if (plot == data.plots.end()) return hazard;
  hazard.name = tree.tag.empty() ? "a tallied tree of plot " + plot->label : "tree " + tree.tag;
  if (!plot->position) return hazard;
  if (tree.azimuth && tree.distance) {
    hazard.position = position_at(*plot->position, *tree.azimuth, tree.distance->feet());
    return hazard;
  }
  hazard.position = plot->position;
  const auto cruise = std::find_if(data.cruises.begin(), data.cruises.end(),
                                   [&](const Cruise& c) { return c.id == plot->cruise; });
  if (cruise != data.cruises.end()) {
    hazard.unsure = limiting_distance(cruise->design, tree.facts.dbh, TapedTo::centre);
  }
  return hazard;
}

/// The trees of walk and plots whose facts `is_hazard` names.
template <class IsHazard>
std::vector<Hazard> hazards_of(const TractData& data, std::span<const WalkTree> trees,
                               IsHazard is_hazard) {
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
    hazards.push_back(tallied_hazard(tree, data));
  }
  return hazards;
}

std::vector<NearTree> seen_from(const WalkTree& tree, const std::vector<Hazard>& hazards,
                                const std::vector<Card>& cards) {
  std::vector<NearTree> near;
  for (const Hazard& hazard : hazards) {
    // A tallied tree with the same tag is this very tree.
    if (hazard.walk_tree == tree.id || (!hazard.tag.empty() && hazard.tag == tree.tag)) continue;
    std::optional<Feet> distance;
    if (tree.position && hazard.position) {
      const Feet to_centre = leg_between(*tree.position, *hazard.position).distance;
      distance = std::max(Feet{0}, to_centre - hazard.unsure);
    } else if (hazard.walk_tree) {
      distance = least_on_a_card(cards, tree.id, *hazard.walk_tree);
    }
    if (distance) near.push_back({*distance, hazard.height, hazard.name});
  }
  return near;
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
  const auto dead_ashes = hazards_of(data, trees, [&](const TreeFacts& facts) {
    const Species* kind = species.find(facts.species);
    return kind != nullptr && is_dead_ash(facts, *kind, limits);
  });
  const auto hung = hazards_of(data, trees, [](const TreeFacts& facts) {
    return facts.conditions.has(Condition::hung_tree);
  });
  const auto cards = cards_of(data);
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
         .dead_ashes = seen_from(tree, dead_ashes, cards),
         .hung_trees = seen_from(tree, hung, cards),
         .loose_limb_beside = under_limbs.contains(tree.id)});
  }
  return all;
}

}  // namespace oaklight
