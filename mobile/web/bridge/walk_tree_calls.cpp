// Calls about one tree of the marking walk while it is named: what may be said of it, and saving
// that.
#include <array>

#include "core/session/card_work.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/records_named.hpp"
#include "mobile/web/bridge/tract_json.hpp"
#include "mobile/web/bridge/tree_json.hpp"
#include "mobile/web/bridge/walk_draft.hpp"

namespace oaklight::web {
namespace {

constexpr const char* kWords = "WalkTreeViewModel";

Json side_choices(const OpenTract& tract, const ContactDraft& standing) {
  return choices_of(tract, "side", [&](const std::string& word) {
    const auto side = from_word<Side>(word);
    return side && standing.sides.has(*side);
  });
}

/// What is seen on a tree; that it is dead comes first.
Json condition_choices(const OpenTract& tract, const TreeFacts* facts) {
  Json choices = choices_of(tract, "condition", [&](const std::string& word) {
    const auto seen = from_word<Condition>(word);
    return facts != nullptr && seen && facts->conditions.has(*seen);
  });
  choices.insert(choices.begin(),
                 Json{{"word", word_of(TreeStatus::dead)},
                      {"label", phrase(kWords, "Dead")},
                      {"help", ""},
                      {"group", nullptr},
                      {"on", facts != nullptr && facts->status == TreeStatus::dead}});
  return choices;
}

Json walk_choices(const OpenTract& tract, const TreeFacts* facts, const ContactDraft& standing) {
  const auto crown = [&](const std::string& word) {
    return facts != nullptr && facts->crown_class && word == word_of(*facts->crown_class);
  };
  const auto seen = [&](const std::string& word) { return word == word_of(standing.seen); };
  return {{"side", side_choices(tract, standing)},
          {"seen", choices_of(tract, "seen", seen)},
          {"crown_class", choices_of(tract, "crown_class", crown)},
          {"condition", condition_choices(tract, facts)}};
}

/// What is known of the tree that the page names, or of the new one that it begins: of a crop tree
/// of a stand, or of a neighbour on a side of one.
Result<Json> walk_tree(WebDesk& desk, const Arguments& arguments) {
  const OpenTract& tract = *desk.tract();
  if (arguments.has("tree")) {
    const auto id = arguments.id<WalkTreeId>("tree");
    const WalkTree* tree = id ? tract.live.find(*id) : nullptr;
    if (tree == nullptr) return no_such("tree", arguments.text("tree").value_or(""));
    ContactDraft standing;
    if (const auto contact = arguments.id<ContactId>("contact")) {
      if (const Contact* known = tract.live.find(*contact)) standing = oaklight::draft_of(*known);
    }
    return Json{{"title", phrase(kWords, "Tree %1", {tree->tag})},
                {"tag", tree->tag},
                {"facts", facts_json(tree->facts)},
                {"name", species_words(tract.knowledge, tree->facts.species)},
                {"dbh", dbh_text(tree->facts.dbh)},
                {"choices", walk_choices(tract, &tree->facts, standing)}};
  }
  ContactDraft standing;
  Json title = phrase(kWords, "New crop tree");
  if (arguments.has("crop")) {
    const auto crop = arguments.id<WalkTreeId>("crop");
    const WalkTree* tree = crop ? tract.live.find(*crop) : nullptr;
    if (tree == nullptr) return no_such("crop tree", arguments.text("crop").value_or(""));
    title = phrase(kWords, "Neighbour of %1", {tree->tag});
    if (const auto side = arguments.word<Side>("side")) standing.sides.add(*side);
    standing.seen = Seen::touches;
  }
  return Json{{"title", title},   {"tag", next_tag(tract.live)},
              {"facts", nullptr}, {"name", nullptr},
              {"dbh", nullptr},   {"choices", walk_choices(tract, nullptr, standing)}};
}

Result<Json> wearer(WebDesk& desk, const Arguments& arguments) {
  const OpenTract& tract = *desk.tract();
  const WalkTree* tree = tract.live.by_tag(arguments.text("tag").value_or(""));
  return Json{{"known", tree == nullptr
                            ? Json()
                            : tree_words(tract.knowledge, tree->facts.species, tree->facts.dbh)}};
}

Result<Action> new_tree(OpenTract& tract, const Arguments& arguments) {
  const auto standing = contact_of(arguments, arguments.inside("facts").system(), ContactDraft{});
  if (!standing) return standing.error();
  std::optional<WalkTreeId> crop;
  if (arguments.has("crop")) {
    const auto id = arguments.id<WalkTreeId>("crop");
    if (!id) return id.error();
    crop = *id;
  }
  if (const WalkTree* known = tract.live.by_tag(arguments.text("tag").value_or(""))) {
    return crop ? add_known_neighbour(tract.live, tract.knowledge, tract.ids, *crop, known->id,
                                      *standing)
                : make_crop_tree(tract.live, tract.knowledge, known->id);
  }
  const auto draft = walk_draft(arguments);
  if (!draft) return draft.error();
  if (crop) {
    return add_neighbour(tract.live, tract.knowledge, tract.ids, *crop, *draft, *standing);
  }
  const auto stand = arguments.id<StandId>("stand");
  if (!stand) return stand.error();
  return add_crop_tree(tract.live, tract.knowledge, tract.ids, *stand, *draft);
}

/// Saves a tree that was looked at again: how it stands, and what is seen on it. Two actions, as
/// each can be undone by itself; the first is made only where something changes.
Status save_again(WebDesk& desk, const Arguments& arguments) {
  const auto id = arguments.id<WalkTreeId>("tree");
  if (!id) return id.error();
  const WalkTree* tree = desk.tract()->live.find(*id);
  if (tree == nullptr) return no_such("tree", to_text(*id));
  WalkTreeDraft draft = oaklight::draft_of(*tree);
  if (const auto tag = arguments.text("tag")) draft.tag = *tag;
  if (const Status put = put_facts(draft.facts, arguments.inside("facts")); !put) return put;
  if (arguments.has("contact")) {
    const auto contact = arguments.id<ContactId>("contact");
    if (!contact) return contact.error();
    const Contact* known = desk.tract()->live.find(*contact);
    if (known == nullptr) return no_such("neighbour", to_text(*contact));
    const ContactDraft before = oaklight::draft_of(*known);
    const auto standing = contact_of(arguments, draft.facts.dbh.system(), before);
    if (!standing) return standing.error();
    if (standing->sides != before.sides || standing->seen != before.seen) {
      const auto written = desk.submit([&](OpenTract& tract) {
        return change_contact(tract.live, tract.knowledge, *contact, *standing);
      });
      if (!written) return written.error();
    }
  }
  const auto written = desk.submit(
      [&](OpenTract& tract) { return correct_walk_tree(tract.live, tract.knowledge, *id, draft); });
  return written ? Status(Done{}) : written.error();
}

Result<Json> save_walk_tree(WebDesk& desk, const Arguments& arguments) {
  if (arguments.has("tree")) {
    if (const Status saved = save_again(desk, arguments); !saved) return saved.error();
    return changed(desk, {{"crop", arguments.text("crop").value_or(*arguments.text("tree"))}});
  }
  const auto written = desk.submit([&](OpenTract& tract) { return new_tree(tract, arguments); });
  if (!written) return written.error();
  const WalkTree* tree = desk.tract()->live.by_tag(arguments.text("tag").value_or(""));
  const auto crop = arguments.text("crop");
  if (crop) return changed(desk, {{"crop", *crop}});
  return changed(desk, {{"crop", tree == nullptr ? Json() : Json(to_text(tree->id))}});
}

Result<Json> make_crop(WebDesk& desk, const Arguments& arguments) {
  const auto tree = arguments.id<WalkTreeId>("tree");
  if (!tree) return tree.error();
  const auto written = desk.submit(
      [&](OpenTract& tract) { return make_crop_tree(tract.live, tract.knowledge, *tree); });
  if (!written) return written.error();
  return changed(desk);
}

constexpr std::array kCalls = {NamedCall{"walkTree", walk_tree},
                               NamedCall{"saveWalkTree", save_walk_tree},
                               NamedCall{"wearer", wearer}, NamedCall{"makeCropTree", make_crop}};

}  // namespace

std::span<const NamedCall> walk_tree_calls() { return kCalls; }

}  // namespace oaklight::web
