// Calls about the sides of a crop tree card, and what leaves it.
#include <array>

#include "core/session/card_work.hpp"
#include "mobile/web/bridge/tract_json.hpp"
#include "mobile/web/bridge/walk_draft.hpp"

namespace oaklight::web {
namespace {

template <class Make>
Result<Json> change_side(WebDesk& desk, const Arguments& arguments, const Make& make) {
  const auto crop = arguments.id<WalkTreeId>("crop");
  if (!crop) return crop.error();
  const auto side = arguments.word<Side>("side");
  if (!side) return arguments.missing("side");
  const auto written =
      desk.submit([&](OpenTract& tract) { return make(tract.live, *crop, *side); });
  if (!written) return written.error();
  return changed(desk);
}

Result<Json> look_open_call(WebDesk& desk, const Arguments& arguments) {
  return change_side(desk, arguments, look_open);
}
Result<Json> unlook_call(WebDesk& desk, const Arguments& arguments) {
  return change_side(desk, arguments, unlook);
}

Result<Json> remove_card(WebDesk& desk, const Arguments& arguments) {
  const auto crop = arguments.id<WalkTreeId>("crop");
  if (!crop) return crop.error();
  const auto written = desk.submit(
      [&](OpenTract& tract) { return remove_crop_tree(tract.live, tract.knowledge, *crop); });
  if (!written) return written.error();
  return changed(desk);
}

Result<Json> remove_beside(WebDesk& desk, const Arguments& arguments) {
  const auto contact = arguments.id<ContactId>("contact");
  if (!contact) return contact.error();
  const auto written = desk.submit(
      [&](OpenTract& tract) { return remove_neighbour(tract.live, tract.knowledge, *contact); });
  if (!written) return written.error();
  return changed(desk);
}

constexpr std::array kCalls = {
    NamedCall{"lookOpen", look_open_call}, NamedCall{"unlook", unlook_call},
    NamedCall{"removeCard", remove_card}, NamedCall{"removeNeighbour", remove_beside}};

}  // namespace

std::span<const NamedCall> card_calls() { return kCalls; }

Result<WalkTreeDraft> walk_draft(const Arguments& arguments) {
  const Arguments given = arguments.inside("facts");
  const auto species = given.species();
  if (!species) return species.error();
  const auto dbh = given.dbh();
  if (!dbh) return dbh.error();
  WalkTreeDraft draft{
      .tag = arguments.text("tag").value_or(""),
      .facts = {*species, *dbh, {}, {}, {}, {}, {}, {}, {}, {}},
      .position = {},
      .slope = {},
  };
  if (const Status put = put_facts(draft.facts, given); !put) return put.error();
  if (const auto slope = given.number("slope")) draft.slope = Percent{*slope};
  return draft;
}

Result<ContactDraft> contact_of(const Arguments& arguments, UnitSystem system, ContactDraft draft) {
  if (const Json* sides = arguments.find("sides"); sides != nullptr && sides->is_array()) {
    draft.sides = {};
    for (const Json& word : *sides) {
      const auto side = word.is_string() ? from_word<Side>(word.get<std::string>()) : std::nullopt;
      if (!side) return arguments.missing("sides");
      draft.sides.add(*side);
    }
  }
  if (const auto seen = arguments.word<Seen>("seen")) draft.seen = *seen;
  if (const auto azimuth = arguments.number("azimuth")) draft.azimuth = Degrees{*azimuth};
  if (const auto distance = arguments.whole("distance_hundredths")) {
    const auto length = TapedLength::from_hundredths(*distance, system);
    if (!length) return length.error();
    draft.distance = *length;
  }
  return draft;
}

}  // namespace oaklight::web
