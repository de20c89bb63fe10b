#include "core/handoff/near_hazards.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/place/geodesy.hpp"
#include "core/place/shortest_degree.hpp"

namespace oaklight {
namespace {

constexpr double kHalfTurn = 180.0;
constexpr double kNearlyAPole = 0.01;  // cosine of the latitude

std::optional<Feet> height_of(const TreeFacts& facts) {
  return facts.height ? std::optional(facts.height->feet()) : std::nullopt;
}

}  // namespace

CardIndex::CardIndex(const TractData& data) {
  std::map<WalkTreeId, Card> cards;
  for (const Contact& contact : data.contacts) {
    Card& card = cards[contact.crop];
    card[contact.crop] = Feet{0};
    card[contact.neighbour] =
        contact.distance ? std::optional(contact.distance->feet()) : std::nullopt;
  }
  for (auto& [crop, card] : cards) {
    for (const auto& [tree, distance] : card) of_tree_[tree].push_back(cards_.size());
    cards_.push_back(std::move(card));
  }
}

std::optional<Feet> CardIndex::least_apart(WalkTreeId a, WalkTreeId b) const {
  std::optional<Feet> least;
  const auto of_a = of_tree_.find(a);
  if (of_a == of_tree_.end()) return least;
  for (const std::size_t i : of_a->second) {
    const auto at_a = cards_[i].find(a);
    const auto at_b = cards_[i].find(b);
    if (at_b == cards_[i].end()) continue;
    const bool taped = at_a->second && at_b->second;
    const Feet apart{taped ? std::fabs(at_a->second->value - at_b->second->value) : 0.0};
    least = least ? std::min(*least, apart) : apart;
  }
  return least;
}

std::vector<WalkTreeId> CardIndex::on_cards_with(WalkTreeId tree) const {
  std::vector<WalkTreeId> others;
  const auto cards = of_tree_.find(tree);
  if (cards == of_tree_.end()) return others;
  for (const std::size_t i : cards->second) {
    for (const auto& [other, distance] : cards_[i]) {
      if (other != tree) others.push_back(other);
    }
  }
  return others;
}

NearHazards::NearHazards(std::vector<Hazard> hazards, std::span<const WalkTree> trees,
                         const CardIndex& cards, const CautionLimits& limits)
    : hazards_(std::move(hazards)), cards_(cards), limits_(limits) {
  set_sides(trees);
  for (std::size_t i = 0; i < hazards_.size(); ++i) {
    if (hazards_[i].walk_tree) by_tree_.emplace(*hazards_[i].walk_tree, i);
    if (hazards_[i].position) squares_[square_of(*hazards_[i].position)].push_back(i);
  }
}

/// A side is as long as any tree of the tract reaches, so that whatever reaches a tree stands in
/// its square or in one that touches it.
void NearHazards::set_sides(std::span<const WalkTree> trees) {
  Feet reach = two_lengths(std::nullopt, limits_);
  for (const WalkTree& tree : trees)
    reach = std::max(reach, two_lengths(height_of(tree.facts), limits_));
  Feet unsure{0};
  double farthest_north = 0.0;
  bool first = true;
  for (const Hazard& hazard : hazards_) {
    reach = std::max(reach, two_lengths(hazard.height, limits_));
    unsure = std::max(unsure, hazard.unsure);
    if (!hazard.position) continue;
    if (first) middle_ = hazard.position->longitude;
    first = false;
    farthest_north = std::max(farthest_north, std::fabs(hazard.position->latitude.value));
  }
  // By the shortest degree a square is never too narrow.
  row_degrees_ = std::max(1.0, (reach + unsure).value) / kShortestDegreeFeet;
  const double cosine = std::cos((farthest_north + row_degrees_) * std::numbers::pi / kHalfTurn);
  column_degrees_ = cosine < kNearlyAPole ? 2.0 * kHalfTurn : row_degrees_ / cosine;
}

NearHazards::Square NearHazards::square_of(Position place) const {
  const double east = std::remainder(place.longitude.value - middle_.value, 2.0 * kHalfTurn);
  return {static_cast<std::int64_t>(std::floor(place.latitude.value / row_degrees_)),
          static_cast<std::int64_t>(std::floor(east / column_degrees_))};
}

std::vector<std::size_t> NearHazards::candidates(const WalkTree& tree) const {
  std::vector<std::size_t> found;
  if (tree.position) {
    const auto [row, column] = square_of(*tree.position);
    for (std::int64_t r = row - 1; r <= row + 1; ++r) {
      for (std::int64_t c = column - 1; c <= column + 1; ++c) {
        const auto square = squares_.find({r, c});
        if (square == squares_.end()) continue;
        found.insert(found.end(), square->second.begin(), square->second.end());
      }
    }
  }
  for (const WalkTreeId other : cards_.on_cards_with(tree.id)) {
    const auto hazard = by_tree_.find(other);
    if (hazard != by_tree_.end()) found.push_back(hazard->second);
  }
  std::ranges::sort(found);
  found.erase(std::unique(found.begin(), found.end()), found.end());
  return found;
}

std::optional<Feet> NearHazards::distance(const WalkTree& tree, const Hazard& hazard) const {
  if (tree.position && hazard.position) {
    const Feet to_centre = leg_between(*tree.position, *hazard.position).distance;
    return std::max(Feet{0}, to_centre - hazard.unsure);
  }
  return hazard.walk_tree ? cards_.least_apart(tree.id, *hazard.walk_tree) : std::nullopt;
}

std::vector<NearTree> NearHazards::seen_from(const WalkTree& tree) const {
  std::vector<NearTree> near;
  const Feet own_reach = two_lengths(height_of(tree.facts), limits_);
  for (const std::size_t i : candidates(tree)) {
    const Hazard& hazard = hazards_[i];
    // A tallied tree with the same tag is this very tree.
    if (hazard.walk_tree == tree.id || (!hazard.tag.empty() && hazard.tag == tree.tag)) continue;
    const auto apart = distance(tree, hazard);
    if (!apart || *apart > std::max(own_reach, two_lengths(hazard.height, limits_))) continue;
    near.push_back({*apart, hazard.height, hazard.name});
  }
  return near;
}

}  // namespace oaklight
