#include <algorithm>
#include <map>
#include <optional>
#include <tuple>

#include "core/measure/crown_width.hpp"
#include "core/measure/local_curves.hpp"
#include "core/release/release_graph.hpp"

namespace oaklight {
namespace {

struct Judged {
  Closeness closeness = Closeness::clear;
  ContactBasis basis = ContactBasis::seen_clear;
};

/// The crown of one tree: measured, or by size: by the local curve where there is one.
struct Crown {
  std::optional<CrownShape> measured;
  std::optional<Feet> fitted;  ///< of a tree that nobody taped
  Feet by_size, widest_by_size;
  CrownShape crowded, open;

  Crown(const WalkTree& tree, std::span<const LocalCurve> curves)
      : measured(CrownShape::of(tree.crown)),
        fitted(measured
                   ? std::nullopt
                   : fitted_crown_radius(curves, tree.facts.species.fia, tree.facts.dbh.inches())),
        by_size(fitted.value_or(crowded_crown_radius(tree.facts.dbh.inches()))),
        // A crown may be wider than the mean of its like: doubt reaches as far as without a curve.
        widest_by_size(std::max(by_size, open_crown_radius(tree.facts.dbh.inches()))),
        crowded(CrownShape::circle(by_size)),
        open(CrownShape::circle(widest_by_size)) {}
  [[nodiscard]] const CrownShape& expected() const { return measured ? *measured : crowded; }
  [[nodiscard]] const CrownShape& widest() const { return measured ? *measured : open; }
};

/// Contact of two crowns by size, at least one of them by the local curve: as
/// closeness_by_distance.
Closeness closeness_by_size(const Crown& crop, const Crown& other, Feet distance,
                            const ContactSettings& settings) {
  if (distance <= crop.by_size + other.by_size) return Closeness::touching;
  const Feet far = crop.widest_by_size + other.widest_by_size + settings.look_up_extra;
  return distance <= far ? Closeness::doubtful : Closeness::clear;
}

/// Where a neighbour stands, as far as its crown's outline can be laid beside the crop crown's.
struct Standing2d {
  Feet distance;
  Degrees bearing;
};

std::optional<Standing2d> placed(const Contact& contact) {
  if (!contact.azimuth || !contact.distance) return std::nullopt;
  return Standing2d{contact.distance->feet(), *contact.azimuth};
}

bool meet(const CrownShape& crop, const CrownShape& other, const Standing2d& at, Feet gap) {
  return !closed_arcs(crop, other, at.distance, at.bearing, gap).empty();
}

/// Contact by crowns of which at least one was measured.
Closeness closeness_by_crowns(const Crown& crop, const Crown& other, const Standing2d& at,
                              const ContactSettings& settings) {
  if (crop.measured && other.measured) {
    const bool near = meet(*crop.measured, *other.measured, at, settings.gap);
    return near ? Closeness::touching : Closeness::clear;
  }
  if (meet(crop.expected(), other.expected(), at, Feet{0.0})) return Closeness::touching;
  const bool may = meet(crop.widest(), other.widest(), at, settings.look_up_extra);
  return may ? Closeness::doubtful : Closeness::clear;
}

/// Contact of a neighbour that may compete, where nobody looked up.
Judged judge_by_distance(const TreeFacts& crop, const TreeFacts& neighbour,
                         const std::optional<TapedLength>& distance,
                         std::optional<Closeness> by_crowns, const ContactSettings& settings) {
  if (!distance) return {Closeness::doubtful, ContactBasis::look_up};
  const Closeness closeness = by_crowns
                                  ? *by_crowns
                                  : closeness_by_distance(crop.dbh.inches(), neighbour.dbh.inches(),
                                                          distance->feet(), settings);
  if (closeness == Closeness::clear) return {closeness, ContactBasis::far_enough};
  if (closeness == Closeness::doubtful) return {closeness, ContactBasis::look_up};
  // The height gate cannot be applied, so nearness alone does not prove contact (R2.14).
  if (!neighbour.crown_class) return {Closeness::doubtful, ContactBasis::no_crown_class};
  return {closeness, ContactBasis::near_enough};
}

/// Stems of one base (X6.03).
bool one_base(const TreeFacts& a, const TreeFacts& b, const std::optional<TapedLength>& distance,
              const ContactSettings& settings) {
  return a.conditions.has(Condition::clump) && b.conditions.has(Condition::clump) && distance &&
         distance->feet() <= settings.clump_reach;
}

/// Stems of one base that part in a tight fork: cut one, and the other one splits (R6.62).
bool twins(const TreeFacts& a, const TreeFacts& b, const std::optional<TapedLength>& distance,
           const ContactSettings& settings) {
  return one_base(a, b, distance, settings) && a.conditions.has(Condition::v_fork) &&
         b.conditions.has(Condition::v_fork);
}

Judged judge(const TreeFacts& crop, const TreeFacts& neighbour, const Contact& contact,
             std::optional<Closeness> by_crowns, const ContactSettings& settings) {
  if (neighbour.status == TreeStatus::dead) return {Closeness::clear, ContactBasis::dead};
  if (neighbour.crown_class == CrownClass::overtopped) {
    return {Closeness::clear, ContactBasis::overtopped};
  }
  if (twins(crop, neighbour, contact.distance, settings)) {
    return {Closeness::clear, ContactBasis::one_crown};
  }
  switch (contact.seen) {
    case Seen::touches:
      return {Closeness::touching, ContactBasis::seen_touching};
    case Seen::over:
      return {Closeness::touching, ContactBasis::seen_over};
    case Seen::below:
      return {Closeness::clear, ContactBasis::seen_below};
    case Seen::none:
      return {Closeness::clear, ContactBasis::seen_clear};
    case Seen::not_looked:
      break;
  }
  return judge_by_distance(crop, neighbour, contact.distance, by_crowns, settings);
}

using Pair = std::pair<std::uint32_t, std::uint32_t>;  // crop, neighbour
using Found = std::map<Pair, CrownContact>;

/// Two records of one pair: the sides of both, and the closer view, because a missed contact costs
/// more than a false one. Does not depend on their order.
void merge(CrownContact& kept, const CrownContact& other) {
  kept.sides.add(other.sides);
  kept.will_meet = kept.will_meet || other.will_meet;
  if (std::tie(other.closeness, kept.basis) > std::tie(kept.closeness, other.basis)) {
    kept.closeness = other.closeness;
    kept.basis = other.basis;
  }
}

/// A contact as the neighbour meets it.
CrownContact turned_round(const CrownContact& contact) {
  CrownContact back = contact;
  std::swap(back.crop, back.neighbour);
  back.sides = opposite(contact.sides);
  if (contact.basis == ContactBasis::seen_below) {  // so the other one may well be above it
    back.closeness = Closeness::doubtful;
    back.basis = ContactBasis::look_up;
  }
  return back;
}

/// Two crop trees see each other: what one card says holds on the other.
void mirror(Found& found, const std::vector<ReleaseTree>& trees) {
  Found both = found;
  for (const auto& [pair, contact] : found) {
    if (!trees[pair.second].proposed) continue;
    // What is true of the neighbour's height or health is not true of the crop tree's.
    if (contact.basis == ContactBasis::dead || contact.basis == ContactBasis::overtopped) continue;
    const CrownContact back = turned_round(contact);
    const auto [it, added] = both.emplace(Pair{pair.second, pair.first}, back);
    if (!added && back.basis != ContactBasis::look_up) merge(it->second, back);
  }
  found = std::move(both);
}

CrownContact contact_between(const std::vector<ReleaseTree>& trees,
                             const std::vector<Crown>& crowns, Pair pair, const Contact& contact,
                             const ContactSettings& settings) {
  const TreeFacts& crop = trees[pair.first].facts;
  const TreeFacts& neighbour = trees[pair.second].facts;
  const Crown& own = crowns[pair.first];
  const Crown& other = crowns[pair.second];
  const auto at = placed(contact);
  std::optional<Closeness> by_crowns;
  if (at && (own.measured || other.measured)) {
    by_crowns = closeness_by_crowns(own, other, *at, settings);
  } else if (contact.distance && (own.fitted || other.fitted)) {
    by_crowns = closeness_by_size(own, other, contact.distance->feet(), settings);
  }
  const Judged judged = judge(crop, neighbour, contact, by_crowns, settings);
  CrownContact c;
  c.crop = pair.first;
  c.neighbour = pair.second;
  c.closeness = judged.closeness;
  c.basis = judged.basis;
  c.sides = contact.sides;
  c.one_base = one_base(crop, neighbour, contact.distance, settings);
  if (c.sides.empty() && contact.azimuth) {
    c.sides = sides_at(*contact.azimuth, settings.side_blur);
  }
  if (c.sides.empty() && c.closeness == Closeness::touching) {
    c.closeness = Closeness::doubtful;
    c.basis = ContactBasis::no_side;
  }
  c.will_meet =
      contact.distance &&
      contact.distance->feet() < conflict_distance(crop.dbh.inches(), neighbour.dbh.inches());
  return c;
}

/// What one neighbour closes of a measured crop crown; a pair of crop trees from both sides.
void add_edges(const std::vector<ReleaseTree>& trees, const std::vector<Crown>& crowns, Pair pair,
               const Contact& contact, Feet gap, MeasuredEdges& edges) {
  const auto at = placed(contact);
  if (!at) return;
  const auto arcs = [&](Pair one, Degrees bearing) {
    return closed_arcs(*crowns[one.first].measured, crowns[one.second].expected(), at->distance,
                       bearing, gap);
  };
  const auto drawn = [&](std::uint32_t crop) {
    return trees[crop].proposed && crowns[crop].measured.has_value();
  };
  constexpr Degrees kHalfTurn{180.0};
  const Pair back{pair.second, pair.first};
  // What a tree's own card says of a neighbour goes before what the neighbour's card says of it.
  if (drawn(back.first)) edges.closed.emplace(back, arcs(back, at->bearing + kHalfTurn));
  if (drawn(pair.first)) edges.closed[pair] = arcs(pair, at->bearing);
}

}  // namespace

Result<ReleaseGraph> graph_from_cards(std::span<const WalkTree> walk,
                                      std::span<const Contact> contacts, StandId stand,
                                      const ContactSettings& settings) {
  // Crowns of a stand are like those taped in it, by R2.08 where too few were.
  const std::vector<LocalCurve> curves = crown_curves(walk, stand);
  std::vector<const WalkTree*> order;
  for (const WalkTree& tree : walk) {
    if (tree.stand == stand) order.push_back(&tree);
  }
  std::sort(order.begin(), order.end(), [](const WalkTree* a, const WalkTree* b) {
    return std::tie(a->tag, a->id) < std::tie(b->tag, b->id);
  });
  std::vector<ReleaseTree> trees;
  std::vector<Crown> crowns;
  std::map<Uuid, std::uint32_t> place;
  MeasuredEdges edges;
  for (const WalkTree* tree : order) {
    const auto index = static_cast<std::uint32_t>(trees.size());
    place.emplace(tree->id.value, index);
    trees.push_back({tree->id.value, tree->tag, tree->facts, tree->crop, tree->looked});
    crowns.emplace_back(*tree, curves);
    if (crowns.back().measured) edges.crowns.emplace(index, *crowns.back().measured);
  }

  Found found;
  for (const Contact& contact : contacts) {
    const auto crop = place.find(contact.crop.value);
    const auto neighbour = place.find(contact.neighbour.value);
    if (crop == place.end() && neighbour == place.end()) continue;  // a card of another stand
    if (crop == place.end() || neighbour == place.end()) {
      return Error{
          ErrorCode::unknown_reference, "A card names a tree that is not in this stand's walk.",
          "contact/" + to_text(contact.id), "Put the crop tree and its neighbours into one stand."};
    }
    const Pair pair{crop->second, neighbour->second};
    const CrownContact between = contact_between(trees, crowns, pair, contact, settings);
    const auto [it, added] = found.emplace(pair, between);
    if (!added) merge(it->second, between);
    add_edges(trees, crowns, pair, contact, settings.gap, edges);
    if (contact.seen != Seen::not_looked) trees[pair.first].looked.add(between.sides);
  }
  mirror(found, trees);
  std::vector<CrownContact> list;
  list.reserve(found.size());
  for (const auto& entry : found) list.push_back(entry.second);
  return ReleaseGraph(ReleaseGraph::Source::cards, std::move(trees), std::move(list),
                      std::move(edges));
}

}  // namespace oaklight
