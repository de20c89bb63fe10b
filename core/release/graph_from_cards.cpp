#include <algorithm>
#include <map>
#include <optional>
#include <tuple>

#include "core/release/release_graph.hpp"

namespace oaklight {
namespace {

struct Judged {
  Closeness closeness = Closeness::clear;
  ContactBasis basis = ContactBasis::seen_clear;
};

/// Contact of a neighbour that may compete, where nobody looked up.
Judged judge_by_distance(const TreeFacts& crop, const TreeFacts& neighbour,
                         const std::optional<TapedLength>& distance,
                         const ContactSettings& settings) {
  if (!distance) return {Closeness::doubtful, ContactBasis::look_up};
  const Closeness closeness =
      closeness_by_distance(crop.dbh.inches(), neighbour.dbh.inches(), distance->feet(), settings);
  if (closeness == Closeness::clear) return {closeness, ContactBasis::far_enough};
  if (closeness == Closeness::doubtful) return {closeness, ContactBasis::look_up};
  // The height gate cannot be applied, so nearness alone does not prove contact (R2.14).
  if (!neighbour.crown_class) return {Closeness::doubtful, ContactBasis::no_crown_class};
  return {closeness, ContactBasis::near_enough};
}

/// Stems of one base (X6.03) that part in a tight fork: cut one, and the other one splits (R6.62).
bool twins(const TreeFacts& a, const TreeFacts& b, const std::optional<TapedLength>& distance,
           const ContactSettings& settings) {
  const auto tight = [](const TreeFacts& facts) {
    return facts.conditions.has(Condition::clump) && facts.conditions.has(Condition::v_fork);
  };
  return tight(a) && tight(b) && distance && distance->feet() <= settings.clump_reach;
}

Judged judge(const TreeFacts& crop, const TreeFacts& neighbour, const Contact& contact,
             const ContactSettings& settings) {
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
  return judge_by_distance(crop, neighbour, contact.distance, settings);
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

CrownContact contact_between(const std::vector<ReleaseTree>& trees, Pair pair,
                             const Contact& contact, const ContactSettings& settings) {
  const TreeFacts& crop = trees[pair.first].facts;
  const TreeFacts& neighbour = trees[pair.second].facts;
  const Judged judged = judge(crop, neighbour, contact, settings);
  CrownContact c{pair.first, pair.second, judged.closeness, judged.basis, contact.sides, false, {}};
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

}  // namespace

Result<ReleaseGraph> graph_from_cards(std::span<const WalkTree> walk,
                                      std::span<const Contact> contacts, StandId stand,
                                      const ContactSettings& settings) {
  std::vector<ReleaseTree> trees;
  for (const WalkTree& tree : walk) {
    if (tree.stand != stand) continue;
    trees.push_back({tree.id.value, tree.tag, tree.facts, tree.crop, tree.looked});
  }
  std::sort(trees.begin(), trees.end(), [](const ReleaseTree& a, const ReleaseTree& b) {
    return std::tie(a.tag, a.id) < std::tie(b.tag, b.id);
  });
  std::map<Uuid, std::uint32_t> place;
  for (std::uint32_t i = 0; i < trees.size(); ++i) place.emplace(trees[i].id, i);

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
    const CrownContact between = contact_between(trees, pair, contact, settings);
    const auto [it, added] = found.emplace(pair, between);
    if (!added) merge(it->second, between);
    if (contact.seen != Seen::not_looked) trees[pair.first].looked.add(between.sides);
  }
  mirror(found, trees);
  std::vector<CrownContact> list;
  list.reserve(found.size());
  for (const auto& entry : found) list.push_back(entry.second);
  return ReleaseGraph(ReleaseGraph::Source::cards, std::move(trees), std::move(list));
}

}  // namespace oaklight
