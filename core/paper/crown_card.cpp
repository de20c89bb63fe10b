#include <algorithm>
#include <cmath>

#include "core/measure/crown_width.hpp"
#include "core/measure/local_curves.hpp"
#include "core/paper/crown_chart.hpp"
#include "core/release/outcome.hpp"

namespace oaklight {
namespace {

using Curves = std::span<const LocalCurve>;

std::string short_name(const Species* species, SpeciesCode code) {
  return species != nullptr ? species->common_name : "species " + std::to_string(code.fia);
}

DrawnCrown drawn_crown(const TreeFacts& facts, const std::optional<CrownShape>& taped,
                       const Species* species, Curves curves) {
  if (taped) return {*taped, true};
  if (const auto radius = fitted_crown_radius(curves, facts.species.fia, facts.dbh.inches())) {
    return {.shape = CrownShape::circle(*radius), .fitted = true};
  }
  return {CrownShape::circle(species == nullptr
                                 ? crowded_crown_radius(facts.dbh.inches())
                                 : stand_grown_crown_width(*species, facts).width / 2.0)};
}

std::optional<CrownShape> taped_in(const ReleaseGraph& graph, std::uint32_t tree) {
  const auto found = graph.edges().crowns.find(tree);
  if (found == graph.edges().crowns.end()) return std::nullopt;
  return found->second;
}

CrownNeighbour neighbour_of(const ReleaseGraph& graph, const CrownContact& contact,
                            const std::vector<bool>& goes, const SpeciesTable& table,
                            Curves curves) {
  const ReleaseTree& tree = graph.trees()[contact.neighbour];
  const Species* species = table.find(tree.facts.species);
  CrownNeighbour neighbour{
      .tag = tree.tag,
      .species = short_name(species, tree.facts.species),
      .crown = drawn_crown(tree.facts, taped_in(graph, contact.neighbour), species, curves),
      .sides = contact.sides,
      .azimuth = {},
      .distance = {},
      .closeness = contact.closeness,
      .goes = goes[contact.neighbour],
      .crop = tree.proposed};
  graph.add_closed_by(contact, neighbour.arcs);
  return neighbour;
}

/// Where the records say that a neighbour stands: its own card first, then the other's turned
/// around.
void place(CrownNeighbour& neighbour, Uuid crop, Uuid other, std::span<const Contact> contacts) {
  constexpr double kHalfTurn = 180.0;
  for (const bool turned : {false, true}) {
    for (const Contact& c : contacts) {
      const Uuid from = turned ? c.neighbour.value : c.crop.value;
      const Uuid to = turned ? c.crop.value : c.neighbour.value;
      if (from != crop || to != other) continue;
      if (!neighbour.distance && c.distance) neighbour.distance = c.distance->feet();
      if (!neighbour.azimuth && c.azimuth) {
        neighbour.azimuth =
            turned ? Degrees{std::fmod(c.azimuth->value + kHalfTurn, 2.0 * kHalfTurn)} : *c.azimuth;
      }
    }
  }
}

/// What was seen, for drawing; where nobody looked it may be either.
Closeness closeness_of(Seen seen) {
  switch (seen) {
    case Seen::touches:
    case Seen::over:
      return Closeness::touching;
    case Seen::below:
    case Seen::none:
      return Closeness::clear;
    case Seen::not_looked:
      return Closeness::doubtful;
  }
  return Closeness::doubtful;
}

CrownCard empty_card(const std::string& tag, const TreeFacts& facts,
                     const std::optional<CrownShape>& taped, const SpeciesTable& species,
                     Curves curves) {
  const Species* known = species.find(facts.species);
  CrownCard card;
  card.tag = tag;
  card.species = short_name(known, facts.species);
  card.dbh = facts.dbh.inches();
  card.crown = drawn_crown(facts, taped, known, curves);
  card.by_arcs = card.crown.taped;
  return card;
}

}  // namespace

CrownCard crown_card(const std::string& tag, const TreeFacts& facts, const CrownRadii& taped,
                     const SpeciesTable& species, Curves curves) {
  return empty_card(tag, facts, CrownShape::of(taped), species, curves);
}

CrownNeighbour crown_neighbour(const std::string& tag, const TreeFacts& facts,
                               const CrownRadii& taped, const Contact& contact, Sides sides,
                               bool goes, const SpeciesTable& species, Curves curves) {
  const Species* known = species.find(facts.species);
  CrownNeighbour neighbour{.tag = tag,
                           .species = short_name(known, facts.species),
                           .crown = drawn_crown(facts, CrownShape::of(taped), known, curves),
                           .sides = sides,
                           .azimuth = contact.azimuth,
                           .distance = {},
                           .closeness = closeness_of(contact.seen),
                           .goes = goes};
  if (contact.distance) neighbour.distance = contact.distance->feet();
  return neighbour;
}

CrownEdge edge_of(std::span<const CrownNeighbour> neighbours, Sides looked, bool goes_gone) {
  CrownEdge edge;
  Sides doubt;
  Sides seen = looked;
  for (const CrownNeighbour& n : neighbours) {
    if (n.closeness == Closeness::clear) continue;
    if (n.closeness == Closeness::touching) seen.add(n.sides);
    if (goes_gone && n.goes) continue;
    if (n.closeness == Closeness::touching && !n.sides.empty()) {
      edge.closed.add(n.sides);
    } else {
      doubt.add(n.sides.empty() ? Sides::all() : n.sides);
    }
  }
  edge.unknown = without(without(Sides::all(), edge.closed), without(seen, doubt));
  edge.open = without(without(Sides::all(), edge.closed), edge.unknown);
  return edge;
}

CrownCard crown_card(const ReleaseGraph& graph, std::size_t crop, std::span<const Contact> contacts,
                     const std::vector<bool>& goes, const SpeciesTable& species, Curves curves) {
  const ReleaseTree& tree = graph.trees()[crop];
  const auto taped = taped_in(graph, static_cast<std::uint32_t>(crop));
  CrownCard card = empty_card(tree.tag, tree.facts, taped, species, curves);
  for (const std::uint32_t i : graph.around(crop)) {
    const CrownContact& contact = graph.contacts()[i];
    CrownNeighbour neighbour = neighbour_of(graph, contact, goes, species, curves);
    place(neighbour, tree.id, graph.trees()[contact.neighbour].id, contacts);
    card.neighbours.push_back(std::move(neighbour));
  }
  card.now = edge_of(card.neighbours, tree.looked, false);
  card.after = edge_of(card.neighbours, tree.looked, true);
  return card;
}

CrownCard mapped_crown_card(const ReleaseGraph& graph, std::size_t crop,
                            std::span<const MappedTree> places, const std::vector<bool>& goes,
                            const SpeciesTable& species) {
  CrownCard card = empty_card(graph.trees()[crop].tag, graph.trees()[crop].facts, {}, species, {});
  card.map = true;
  card.by_arcs = true;
  card.crown = {CrownShape::circle(crowded_crown_radius(*card.dbh))};
  const auto place_of = [places](Uuid id) {
    return std::find_if(places.begin(), places.end(),
                        [&id](const MappedTree& tree) { return tree.id == id; });
  };
  const auto own = place_of(graph.trees()[crop].id);
  for (const std::uint32_t i : graph.around(crop)) {
    const CrownContact& contact = graph.contacts()[i];
    const ReleaseTree& tree = graph.trees()[contact.neighbour];
    CrownNeighbour neighbour = neighbour_of(graph, contact, goes, species, {});
    neighbour.crown = {CrownShape::circle(crowded_crown_radius(tree.facts.dbh.inches()))};
    neighbour.crop = false;  // a map proposes every tree of the canopy
    const auto other = place_of(tree.id);
    if (own != places.end() && other != places.end()) {
      const double east = (other->east - own->east).value;
      const double north = (other->north - own->north).value;
      neighbour.distance = Feet{std::hypot(east, north)};
      neighbour.azimuth = Degrees{std::atan2(east, north) * 180.0 / std::numbers::pi};
    }
    card.neighbours.push_back(std::move(neighbour));
  }
  return card;
}

}  // namespace oaklight
