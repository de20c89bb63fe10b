#include "core/session/crown_change.hpp"

#include <map>
#include <tuple>

#include "core/release/taken.hpp"

namespace oaklight {
namespace {

/// All cards of a tract, stand by stand.
Result<std::vector<CardView>> all_cards(const LiveTract& live, const TractKnowledge& knowledge) {
  std::set<StandId> with_cards;
  for (const WalkTree& tree : live.data().walk_trees) {
    if (tree.crop) with_cards.insert(tree.stand);
  }
  std::vector<CardView> cards;
  for (const Stand& stand : live.data().stands) {
    if (!with_cards.contains(stand.id)) continue;
    auto views = card_views(live, knowledge, stand.id);
    if (!views) return views.error();
    for (CardView& view : *views) cards.push_back(std::move(view));
  }
  return cards;
}

/// What a person wrote on a card about its crown.
using CardWords = std::vector<std::tuple<std::string, int, Seen>>;
CardWords words_of(const CardView& card) {
  CardWords words;
  for (const NeighbourView& n : card.neighbours) {
    int sides = 0;
    for (const Side side : kSides) sides = 2 * sides + (n.sides.has(side) ? 1 : 0);
    words.emplace_back(n.tag, sides, n.standing.seen);
  }
  return words;
}

bool carried_on(const CardView& then, const CardView& now) {
  return then.crop == now.crop && then.looked == now.looked && words_of(then) == words_of(now);
}

Sides free_sides(const std::array<SideState, 4>& states) {
  Sides free;
  std::size_t i = 0;
  for (const Side side : kSides) {
    if (states[i++] == SideState::free) free.add(side);
  }
  return free;
}

std::vector<OpenedGap> gaps_of(const CardView& card) {
  std::vector<OpenedGap> gaps;
  for (const NeighbourView& n : card.neighbours) {
    if (n.goes) gaps.push_back({n.sides, n.facts.dbh.inches()});
  }
  return gaps;
}

/// Sides free after the work that are free no more; nothing when one of them was not looked at.
std::optional<int> closed_again(const std::array<SideState, 4>& after,
                                const std::array<SideState, 4>& now) {
  int closed = 0;
  for (std::size_t i = 0; i < after.size(); ++i) {
    if (after[i] != SideState::free) continue;
    if (now[i] == SideState::unknown) return std::nullopt;
    closed += now[i] == SideState::free ? 0 : 1;
  }
  return closed;
}

CropTreeChange change_of(const CardView& card, const CardView* now, const std::string& stand,
                         const YearSettings& settings) {
  CropTreeChange change{.stand = stand,
                        .tag = card.tag,
                        .species = card.species,
                        .released = card.after.sides_free > card.before.sides_free,
                        .before = card.before,
                        .after = card.after,
                        .now = {},
                        .sides_closed = {},
                        .look = {}};
  if (now != nullptr) {
    change.now = now->after;
    change.sides_closed = closed_again(card.sides_after, now->sides_after);
    change.look_now =
        now->after.sides_free <= settings.sides_again && now->after.sides_unknown == 0;
    return change;
  }
  change.look = years_until_look(free_sides(card.sides_after), gaps_of(card), settings);
  change.look_now = change.look && !(change.look->latest > 0.0);
  return change;
}

}  // namespace

Result<std::vector<CropTreeChange>> crown_changes(const TractData& first, const TractData& second,
                                                  const std::set<WalkTreeId>& taken,
                                                  const TractKnowledge& knowledge) {
  // A fresh card shows what stands; on one that was carried on, the trees taken then are gone too.
  const LiveTract then(with_taken(first, taken));
  const LiveTract later(with_taken(second, taken));
  const auto cards = all_cards(then, knowledge);
  if (!cards) return cards.error();
  const auto cards_now = all_cards(later, knowledge);
  if (!cards_now) return cards_now.error();
  const auto years = YearSettings::from(knowledge.release.rules);
  if (!years) return years.error();
  std::map<std::string, const CardView*> by_tag;
  for (const CardView& card : *cards_now) by_tag.emplace(card.tag, &card);
  std::vector<CropTreeChange> changes;
  for (const CardView& card : *cards) {
    const auto found = by_tag.find(card.tag);
    const bool second_card = found != by_tag.end() && !carried_on(card, *found->second);
    const Stand* stand = then.find(card.stand);
    changes.push_back(change_of(card, second_card ? found->second : nullptr,
                                stand == nullptr ? "" : stand->name, *years));
  }
  return changes;
}

}  // namespace oaklight
