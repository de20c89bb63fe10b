// Calls of the page Light: a stand decided, its guards and cards, and what a person decides there.
#include <algorithm>
#include <array>

#include "core/session/card_work.hpp"
#include "core/session/decide.hpp"
#include "core/session/records_named.hpp"
#include "mobile/desk/unwalked.hpp"
#include "mobile/web/bridge/card_json.hpp"
#include "mobile/web/bridge/tract_json.hpp"

namespace oaklight::web {
namespace {

Result<Json> light(WebDesk& desk, const Arguments& arguments) {
  const auto stand = arguments.id<StandId>("stand");
  if (!stand) return stand.error();
  OpenTract& tract = *desk.tract();
  const Stand* known = tract.live.find(*stand);
  if (known == nullptr) return no_such("stand", to_text(*stand));
  Json answer{{"advice", nullptr},
              {"problem", nullptr},
              {"unwalked", is_unwalked(tract.live, *known)},
              {"guards", Json::array()},
              {"cards", Json::array()}};
  const auto walk = tract.live.walk_trees_of(*stand);
  if (std::ranges::none_of(walk, [](const WalkTree* tree) { return tree->crop; })) return answer;
  const auto decided = decided_stand(tract, *stand);
  if (!decided) {
    answer["problem"] = decided.error().what + " " + decided.error().fix;
    return answer;
  }
  const auto& cards = (*decided)->cards;
  for (const CardView& card : cards) answer["cards"].push_back(card_line(tract, card));
  if (cards.empty()) return answer;
  answer["advice"] = cards.front().advice.text;
  for (const GuardView& guard : cards.front().guards) {
    answer["guards"].push_back(guard_json(guard));
  }
  return answer;
}

Result<Json> card(WebDesk& desk, const Arguments& arguments) {
  const auto crop = arguments.id<WalkTreeId>("crop");
  if (!crop) return crop.error();
  OpenTract& tract = *desk.tract();
  const WalkTree* tree = tract.live.find(*crop);
  if (tree == nullptr || !tree->crop) return no_such("crop tree", to_text(*crop));
  const auto decided = decided_stand(tract, tree->stand);
  if (!decided) return decided.error();
  const auto& cards = (*decided)->cards;
  const auto found = std::ranges::find(cards, *crop, &CardView::crop);
  if (found == cards.end()) return no_such("crop tree", to_text(*crop));
  if (const Status known = look_for_cautions(tract, **decided); !known) return known.error();
  return card_json(tract, *found, **decided);
}

Result<Json> decide(WebDesk& desk, const Arguments& arguments) {
  const auto stand = arguments.id<StandId>("stand");
  if (!stand) return stand.error();
  const auto written = desk.submit([&](OpenTract& tract) {
    return recommend_stand(tract.live.data(), tract.knowledge, tract.ids, *stand);
  });
  if (!written) return written.error();
  const int trees = static_cast<int>(*written);
  const Json notice =
      trees == 0 ? phrase("LightViewModel", "Nothing new: every tree is decided so already.")
                 : counted("Web", trees, "1 tree decided.", "%1 trees decided.");
  return changed(desk, {{"written", trees}, {"notice", notice}});
}

Result<Json> overrule_call(WebDesk& desk, const Arguments& arguments) {
  const auto tree = arguments.id<WalkTreeId>("tree");
  if (!tree) return tree.error();
  const auto verdict = arguments.word<Verdict>("verdict");
  if (!verdict) return arguments.missing("verdict");
  const auto written = desk.submit([&](OpenTract& tract) {
    return overrule(tract.live, tract.knowledge, tract.ids, *tree, *verdict,
                    arguments.text("reason").value_or(""));
  });
  if (!written) return written.error();
  return changed(desk);
}

Result<Json> take_back(WebDesk& desk, const Arguments& arguments) {
  const auto tree = arguments.id<WalkTreeId>("tree");
  if (!tree) return tree.error();
  const auto written = desk.submit([&](OpenTract& tract) {
    return take_back_overrule(tract.live, tract.knowledge, tract.ids, *tree);
  });
  if (!written) return written.error();
  return changed(desk);
}

Result<Json> reasons(WebDesk& /*desk*/, const Arguments& arguments) {
  using Words = std::array<const char*, 4>;
  constexpr Words kTake = {"It leans into the crop tree.", "Its stem is poor.",
                           "The owner wants it out.", nullptr};
  constexpr Words kKeep = {"It feeds wildlife here.", "A den or nest is in it.",
                           "It shelters the stem of the crop tree.", "The owner wants it kept."};
  constexpr Words kKill = {"Felling it would hurt the crop tree.", "A snag is wanted here.",
                           "It can not be felled safely.", nullptr};
  constexpr Words kAgain = {"The leaves were off.", "I could not see the crown.",
                            "I want a second opinion.", nullptr};
  const auto verdict = arguments.word<Verdict>("verdict").value_or(Verdict::look_again);
  Json list = Json::array();
  for (const char* words : verdict == Verdict::take            ? kTake
                           : verdict == Verdict::keep          ? kKeep
                           : verdict == Verdict::kill_standing ? kKill
                                                               : kAgain) {
    if (words != nullptr) list.push_back(phrase("CardViewModel", words));
  }
  return Json{{"reasons", list}};
}

constexpr std::array kCalls = {
    NamedCall{"light", light},        NamedCall{"card", card},
    NamedCall{"decide", decide},      NamedCall{"overrule", overrule_call},
    NamedCall{"takeBack", take_back}, NamedCall{"reasons", reasons, false}};

}  // namespace

std::span<const NamedCall> light_calls() { return kCalls; }

}  // namespace oaklight::web
