#include "mobile/web/bridge/card_json.hpp"

#include <algorithm>

#include "core/base/number_text.hpp"
#include "core/session/marks_view.hpp"
#include "core/session/stand_part.hpp"

namespace oaklight::web {
namespace {

constexpr const char* kCard = "CardViewModel";
constexpr const char* kTree = "CardTreeModel";
constexpr std::array kSideOrder = {Side::north, Side::east, Side::south, Side::west};

bool is_marked(const CardView& card) {
  return card.mark.has_value() || std::ranges::any_of(card.neighbours, [](const auto& tree) {
           return tree.marked.has_value();
         });
}

/// With the marked trees gone; where nothing is marked yet, with those of the recommendation gone.
const Light& shown_after(const CardView& card) {
  return is_marked(card) ? card.after : card.recommended;
}

std::string light_text(const Light& light) { return number_text(light.open.value, 0) + "\u00a0%"; }

Json sides_words(const Light& light) {
  const Json free = phrase("Marks", "%1 of 4 sides free", {std::to_string(light.sides_free)});
  if (light.sides_unknown == 0) return free;
  return joined({free, phrase("Marks", ", %1 not known", {std::to_string(light.sides_unknown)})},
                "");
}

std::string_view state_word(SideState state) {
  switch (state) {
    case SideState::free:
      return "free";
    case SideState::shared:
      return "shared";
    case SideState::closed:
      return "closed";
    case SideState::unknown:
      break;
  }
  return "unknown";
}

Json side_words(const CardView& card, std::size_t side) {
  std::string by;
  for (const NeighbourView& tree : card.neighbours) {
    const bool crowds = tree.standing.seen != Seen::none && tree.standing.seen != Seen::below;
    if (crowds && tree.sides.has(kSideOrder[side])) by += (by.empty() ? "" : ", ") + tree.tag;
  }
  const bool opens = card.sides_after[side] == SideState::free;
  switch (card.sides_before[side]) {
    case SideState::free:
      return phrase(kCard, "open");
    case SideState::shared:
      return phrase(kCard, "shared with %1", {by});
    case SideState::closed:
      return phrase(kCard, opens ? "opens: %1 goes" : "closed by %1", {by});
    case SideState::unknown:
      break;
  }
  return by.empty() ? phrase(kCard, "not looked") : phrase(kCard, "not sure: %1", {by});
}

Json origin_words(bool marked, bool by_hand) {
  if (by_hand) return phrase(kTree, "decided by hand");
  return phrase(kTree, marked ? "decided by the rules" : "advised, not decided yet");
}

Json standing_words(const OpenTract& tract, const NeighbourView& tree) {
  std::vector<Json> parts;
  if (const ChoiceList* list = tract.knowledge.form.find_choices("seen")) {
    for (const Choice& choice : list->choices) {
      if (choice.word == word_of(tree.standing.seen)) parts.push_back(form_words(choice.label));
    }
  }
  std::vector<Json> letters;
  for (const Side side : kSides) {
    if (tree.sides.has(side)) letters.push_back(phrase("Marks", word_of(side)));
  }
  parts.push_back(letters.empty() ? phrase(kTree, "side not known") : joined(letters, " "));
  return joined(std::move(parts), ", ");
}

Json cautions_json(const DecidedStand& decided, WalkTreeId tree) {
  const auto found = decided.cautions->find(tree);
  return found == decided.cautions->end() ? Json::array() : caution_list(found->second);
}

Json row_json(WalkTreeId tree, Verdict verdict, bool marked, bool by_hand) {
  return {{"tree", to_text(tree)},
          {"verdict", word_of(verdict)},
          {"icon", verdict_icon(verdict)},
          {"verdictWords", verdict_words(verdict)},
          {"byHand", by_hand},
          {"origin", origin_words(marked, by_hand)}};
}

Json crop_json(const OpenTract& tract, const CardView& card, const DecidedStand& decided) {
  const bool by_hand = card.mark && card.mark->by_hand;
  Json row = row_json(card.crop, card.mark ? card.mark->verdict : card.verdict.verdict,
                      card.mark.has_value(), by_hand);
  row["cautions"] = cautions_json(decided, card.crop);
  row["contact"] = nullptr;
  row["title"] = tagged_words(tract.knowledge, card.tag, card.facts);
  row["standing"] = phrase(kTree, "the crop tree");
  row["reason"] = card.mark ? card.mark->reason : card.verdict.reason;
  row["rules"] = rule_list(card.mark ? card.mark->rules : card.verdict.rules);
  row["change"] = by_hand ? "" : card.verdict.what_would_change_it;
  return row;
}

Json neighbour_json(const OpenTract& tract, const NeighbourView& tree,
                    const DecidedStand& decided) {
  Json row = row_json(tree.tree, tree.marked.value_or(tree.recommended), tree.marked.has_value(),
                      tree.by_hand);
  row["cautions"] = cautions_json(decided, tree.tree);
  row["contact"] = to_text(tree.contact);
  row["title"] = tagged_words(tract.knowledge, tree.tag, tree.facts);
  row["standing"] = standing_words(tract, tree);
  row["reason"] = tree.reason;
  row["rules"] = rule_list(tree.rules);
  row["change"] = tree.by_hand ? "" : tree.what_would_change_it;
  // The facts changed since it was decided, or a person knows better.
  if (tree.marked && *tree.marked != tree.recommended) {
    row["change"] = phrase(kTree, "The rules now say: %1", {verdict_words(tree.recommended)});
  }
  return row;
}

/// What the whole bar of a guard stands for: room above the largest of the figures.
double full_of(const GuardState& guard) {
  constexpr double kHeadroom = 1.2;
  const double most = std::max({guard.limit, guard.before, guard.after});
  return most > 0.0 ? most * kHeadroom : 1.0;
}

}  // namespace

Result<DecidedStand*> decided_stand(OpenTract& tract, StandId stand) {
  auto& kept = tract.decided;
  if (kept && kept->stand == stand && kept->followed == tract.live.followed()) return &*kept;
  kept.reset();
  auto part = stand_part(tract.live, stand);
  if (!part) return part.error();
  auto cards = card_views(LiveTract(*std::move(part)), tract.knowledge, stand);
  if (!cards) return cards.error();
  kept = DecidedStand{stand, tract.live.followed(), *std::move(cards), std::nullopt};
  return &*kept;
}

Status look_for_cautions(const OpenTract& tract, DecidedStand& decided) {
  if (decided.cautions) return Done{};
  const auto view = marks_view(tract.live.data(), tract.knowledge, decided.stand, std::nullopt);
  if (!view) return view.error();
  auto& cautions = decided.cautions.emplace();
  for (const MarkRow& row : view->rows) cautions.emplace(row.tree, row.cautions);
  return Done{};
}

Json card_line(const OpenTract& tract, const CardView& card) {
  const Light& after = shown_after(card);
  return {{"crop", to_text(card.crop)},
          {"tag", card.tag},
          {"tree", tree_words(tract.knowledge, card.facts.species, card.facts.dbh)},
          {"before", light_text(card.before)},
          {"after", light_text(after)},
          {"sides", phrase("CardListModel", "%1 \u2192 %2",
                           {sides_words(card.before), std::to_string(after.sides_free)})}};
}

Json card_json(const OpenTract& tract, const CardView& card, const DecidedStand& decided) {
  const Light& after = shown_after(card);
  const Json as =
      phrase(kCard, is_marked(card) ? "as marked: %1" : "as advised: %1", {sides_words(after)});
  const WalkTree* crop = tract.live.find(card.crop);
  Json sides = Json::array();
  for (std::size_t side = 0; side < kSideOrder.size(); ++side) {
    sides.push_back({{"side", word_of(kSideOrder[side])},
                     {"state", state_word(card.sides_before[side])},
                     {"after", state_word(card.sides_after[side])},
                     {"words", side_words(card, side)},
                     {"looked", crop != nullptr && crop->looked.has(kSideOrder[side])}});
  }
  Json trees = Json::array();
  trees.push_back(crop_json(tract, card, decided));
  for (const NeighbourView& tree : card.neighbours) {
    trees.push_back(neighbour_json(tract, tree, decided));
  }
  return {{"crop", to_text(card.crop)},
          {"title", tagged_words(tract.knowledge, card.tag, card.facts)},
          {"light", {light_text(card.before), light_text(after)}},
          {"lightWords", {phrase(kCard, "light now: %1", {sides_words(card.before)}), as}},
          {"sides", sides},
          {"cautions", cautions_json(decided, card.crop)},
          {"trees", trees}};
}

Json guard_json(const GuardView& view) {
  constexpr const char* kWords = "GuardListModel";
  const GuardState& guard = view.state;
  const auto figure = [](double value) { return number_text(value, 1); };
  const Json words = phrase(
      kWords,
      guard.floor ? "%1: %2 now, %3 after; floor %4 %5" : "%1: %2 now, %3 after; ceiling %4 %5",
      {guard.name, figure(guard.before), figure(guard.after), figure(guard.limit), guard.unit});
  const char* state = !guard.holds ? "broken" : view.near_limit ? "near" : "holds";
  const char* state_words = !guard.holds ? "BROKEN" : view.near_limit ? "Near its limit" : "Holds";
  return {{"words", words},
          {"state", state},
          {"stateWords", phrase(kWords, state_words)},
          {"share", std::clamp(guard.after / full_of(guard), 0.0, 1.0)},
          {"limit", std::clamp(guard.limit / full_of(guard), 0.0, 1.0)},
          {"rule", guard.rule}};
}

}  // namespace oaklight::web
