// Trees and contacts of crop tree cards. Decisions by hand are in overrule.cpp.
#include "core/session/card_work.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

#include "core/session/form_check.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/records_named.hpp"

namespace oaklight {
namespace {

std::string card_path(const WalkTree& crop) { return "card/" + crop.tag; }

std::string tree_text(const TractKnowledge& knowledge, const WalkTree& tree) {
  return tree.tag + ": " + species_name(knowledge, tree.facts.species) + " " +
         dbh_text(tree.facts.dbh);
}

std::optional<Error> fault_of(const LiveTract& live, const TractKnowledge& knowledge,
                              const WalkTree& tree) {
  FormCheck check(knowledge.form, "crop_trees", "walk_tree/" + tree.tag, tree.facts.dbh.system());
  check.refuse_if(tree.tag.empty(), ErrorCode::missing_value, "tag",
                  "A tree of the walk wears a tag.", "Give it the number that hangs on it.");
  check.text("tag", tree.tag);
  check.refuse_if(knowledge.species().find(tree.facts.species) == nullptr,
                  ErrorCode::unknown_species, "species",
                  "Species " + std::to_string(tree.facts.species.fia) + " is not in the table.",
                  "Choose another, or add it to the tract's species.");
  check_facts(check, tree.facts);
  check.quantity("slope_pct", tree.slope);
  if (tree.position) {
    check.number("lat", tree.position->latitude.value)
        .number("lon", tree.position->longitude.value);
  }
  const WalkTree* wearer = live.by_tag(tree.tag);
  check.refuse_if(wearer != nullptr && wearer->id != tree.id, ErrorCode::duplicate, "tag",
                  "Tag " + tree.tag + " hangs on another tree already.",
                  "Use the next number, or put that tree on this card.");
  return check.fault();
}

bool crowds(Seen seen) { return seen == Seen::touches || seen == Seen::over; }

Degrees middle_of(Side side) { return Degrees{90.0 * static_cast<int>(side)}; }

double degrees_apart(Degrees a, Degrees b) {
  const double apart = std::fmod(std::fabs(a.value - b.value), 360.0);
  return std::min(apart, 360.0 - apart);
}

bool points_away(Degrees azimuth, Sides sides) {
  constexpr double kBehind = 90.0;  // a wide crown reaches round a corner, not to the other side
  return std::ranges::none_of(kSides, [&](Side side) {
    return sides.has(side) && degrees_apart(azimuth, middle_of(side)) <= kBehind;
  });
}

std::optional<Error> fault_of(const TractKnowledge& knowledge, const WalkTree& crop,
                              const ContactDraft& draft) {
  const UnitSystem system = draft.distance ? draft.distance->system() : UnitSystem::us;
  FormCheck check(knowledge.form, "crop_trees", card_path(crop), system);
  check.length("distance", draft.distance).quantity("azimuth_deg", draft.azimuth);
  check.refuse_if(
      crowds(draft.seen) && draft.sides.empty() && !draft.azimuth, ErrorCode::missing_value, "side",
      "The neighbour crowds the crop tree, on no side.", "Give its side, or its azimuth.");
  check.refuse_if(draft.azimuth && !draft.sides.empty() && points_away(*draft.azimuth, draft.sides),
                  ErrorCode::contradiction, "azimuth_deg",
                  "The azimuth points away from the side that is given.",
                  "Read it from the crop tree to the neighbour, or correct the side.");
  return check.fault();
}

WalkTree walk_tree_of(const LiveTract& live, WalkTreeId id, StandId stand,
                      const WalkTreeDraft& draft) {
  WalkTree tree{id, stand, draft.tag.empty() ? next_tag(live) : draft.tag, draft.facts};
  tree.position = draft.position;
  tree.slope = draft.slope;
  return tree;
}

void fill(Contact& contact, const ContactDraft& draft) {
  contact.sides = draft.sides;
  contact.seen = draft.seen;
  contact.distance = draft.distance;
  contact.azimuth = draft.azimuth;
}

/// The card's own tree; an Error when the id is no crop tree in use.
Result<const WalkTree*> crop_of(const LiveTract& live, WalkTreeId id) {
  const WalkTree* tree = live.find(id);
  if (tree == nullptr || !tree->crop) return no_such("crop tree", to_text(id));
  return tree;
}

/// Whether a tree stands on some card besides those of `but`, or has one of its own.
bool is_needed(const LiveTract& live, const WalkTree& tree, WalkTreeId but) {
  if (tree.crop && tree.id != but) return true;
  return std::ranges::any_of(live.contacts_with(tree.id),
                             [&](const Contact* contact) { return contact->crop != but; });
}

/// Takes a tree out of the walk, and with it its mark and its counts.
void leave_walk(const LiveTract& live, const WalkTree& tree, Action& action) {
  if (const Mark* mark = live.mark_of(tree.id)) action.changes.emplace_back(Remove{mark->id});
  for (const AcornCount* count : live.acorn_counts_of(tree.id)) {
    action.changes.emplace_back(Remove{count->id});
  }
  action.changes.emplace_back(Remove{tree.id});
}

}  // namespace

WalkTreeDraft draft_of(const WalkTree& tree) {
  return {tree.tag, tree.facts, tree.position, tree.slope};
}

ContactDraft draft_of(const Contact& contact) {
  return {contact.sides, contact.seen, contact.distance, contact.azimuth};
}

std::string next_tag(const LiveTract& live) {
  constexpr int kMost = 100'000'000;
  int highest = 0;
  for (const WalkTree& tree : live.data().walk_trees) {
    int number = 0;
    const char* end = tree.tag.data() + tree.tag.size();
    const auto read = std::from_chars(tree.tag.data(), end, number);
    if (read.ec == std::errc{} && read.ptr == end && number < kMost) {
      highest = std::max(highest, number);
    }
  }
  return std::to_string(highest + 1);
}

Result<Action> add_crop_tree(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                             StandId stand, const WalkTreeDraft& draft) {
  if (live.find(stand) == nullptr) return no_such("stand", to_text(stand));
  WalkTree tree = walk_tree_of(live, WalkTreeId{}, stand, draft);
  tree.crop = true;
  if (auto fault = fault_of(live, knowledge, tree)) return *std::move(fault);
  tree.id = ids.next_id<WalkTreeTag>();
  return Action{"crop tree " + tree_text(knowledge, tree), {tree}};
}

Result<Action> make_crop_tree(const LiveTract& live, const TractKnowledge& knowledge,
                              WalkTreeId id) {
  const WalkTree* tree = live.find(id);
  if (tree == nullptr) return no_such("tree", to_text(id));
  WalkTree crop = *tree;
  crop.crop = true;
  return Action{"crop tree " + tree_text(knowledge, crop), {crop}};
}

Result<Action> add_neighbour(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                             WalkTreeId crop_id, const WalkTreeDraft& draft,
                             const ContactDraft& standing) {
  const auto crop = crop_of(live, crop_id);
  if (!crop) return crop.error();
  WalkTree tree = walk_tree_of(live, WalkTreeId{}, (*crop)->stand, draft);
  if (auto fault = fault_of(live, knowledge, tree)) return *std::move(fault);
  if (auto fault = fault_of(knowledge, **crop, standing)) return *std::move(fault);
  tree.id = ids.next_id<WalkTreeTag>();
  Contact contact{ids.next_id<ContactTag>(), crop_id, tree.id, {}, {}, {}, {}};
  fill(contact, standing);
  return Action{"neighbour " + tree_text(knowledge, tree), {tree, contact}};
}

Result<Action> add_known_neighbour(const LiveTract& live, const TractKnowledge& knowledge,
                                   IdSource& ids, WalkTreeId crop_id, WalkTreeId neighbour_id,
                                   const ContactDraft& standing) {
  const auto crop = crop_of(live, crop_id);
  if (!crop) return crop.error();
  const WalkTree* neighbour = live.find(neighbour_id);
  if (neighbour == nullptr) return no_such("tree", to_text(neighbour_id));
  if (neighbour_id == crop_id || neighbour->stand != (*crop)->stand) {
    return Error{ErrorCode::contradiction,
                 neighbour_id == crop_id ? "A crop tree is no neighbour of its own."
                                         : "That tree stands in another stand.",
                 card_path(**crop) + "/tag", "Choose another tree."};
  }
  for (const Contact* contact : live.contacts_of(crop_id)) {
    if (contact->neighbour != neighbour_id) continue;
    return Error{ErrorCode::duplicate, "Tree " + neighbour->tag + " is on this card already.",
                 card_path(**crop) + "/tag", "Change what was seen of it instead."};
  }
  if (auto fault = fault_of(knowledge, **crop, standing)) return *std::move(fault);
  Contact contact{ids.next_id<ContactTag>(), crop_id, neighbour_id, {}, {}, {}, {}};
  fill(contact, standing);
  return Action{"neighbour " + tree_text(knowledge, *neighbour), {contact}};
}

Result<Action> change_contact(const LiveTract& live, const TractKnowledge& knowledge, ContactId id,
                              const ContactDraft& draft) {
  const Contact* contact = live.find(id);
  if (contact == nullptr) return no_such("neighbour", to_text(id));
  const auto crop = crop_of(live, contact->crop);
  if (!crop) return crop.error();
  if (auto fault = fault_of(knowledge, **crop, draft)) return *std::move(fault);
  Contact changed = *contact;
  fill(changed, draft);
  const WalkTree* neighbour = live.find(contact->neighbour);
  const std::string tag = neighbour == nullptr ? "" : " " + neighbour->tag;
  return Action{"look at neighbour" + tag + " again", {changed}};
}

Result<Action> correct_walk_tree(const LiveTract& live, const TractKnowledge& knowledge,
                                 WalkTreeId id, const WalkTreeDraft& draft) {
  const WalkTree* tree = live.find(id);
  if (tree == nullptr) return no_such("tree", to_text(id));
  WalkTree corrected = *tree;
  corrected.tag = draft.tag.empty() ? tree->tag : draft.tag;
  corrected.facts = draft.facts;
  corrected.position = draft.position;
  corrected.slope = draft.slope;
  if (auto fault = fault_of(live, knowledge, corrected)) return *std::move(fault);
  return Action{"correct " + tree_text(knowledge, corrected), {corrected}};
}

Result<Action> look_open(const LiveTract& live, WalkTreeId id, Side side) {
  const auto crop = crop_of(live, id);
  if (!crop) return crop.error();
  for (const Contact* contact : live.contacts_of(id)) {
    const bool gap = contact->seen == Seen::none || contact->seen == Seen::below;
    const bool there =
        contact->sides.has(side) || (contact->sides.empty() && contact->azimuth &&
                                     degrees_apart(*contact->azimuth, middle_of(side)) <= 45.0);
    if (gap || !there) continue;
    const WalkTree* neighbour = live.find(contact->neighbour);
    return Error{
        ErrorCode::contradiction,
        "Neighbour " + (neighbour == nullptr ? "" : neighbour->tag) + " stands on this side.",
        card_path(**crop) + "/side",
        "Say of it that there is a clear gap, or take it off the card."};
  }
  WalkTree looked = **crop;
  looked.looked.add(side);
  return Action{"open " + std::string(word_of(side)) + " of " + looked.tag, {looked}};
}

Result<Action> unlook(const LiveTract& live, WalkTreeId id, Side side) {
  const auto crop = crop_of(live, id);
  if (!crop) return crop.error();
  WalkTree looked = **crop;
  looked.looked = {};
  for (const Side other : kSides) {
    if (other != side && (*crop)->looked.has(other)) looked.looked.add(other);
  }
  return Action{"not looked " + std::string(word_of(side)) + " of " + looked.tag, {looked}};
}

Result<Action> remove_neighbour(const LiveTract& live, const TractKnowledge& knowledge,
                                ContactId id) {
  const Contact* contact = live.find(id);
  if (contact == nullptr) return no_such("neighbour", to_text(id));
  const WalkTree* tree = live.find(contact->neighbour);
  if (tree == nullptr) return no_such("tree", to_text(contact->neighbour));
  Action action{"remove neighbour " + tree_text(knowledge, *tree), {Remove{id}}};
  if (!is_needed(live, *tree, contact->crop)) leave_walk(live, *tree, action);
  return action;
}

Result<Action> remove_crop_tree(const LiveTract& live, const TractKnowledge& knowledge,
                                WalkTreeId id) {
  const auto crop = crop_of(live, id);
  if (!crop) return crop.error();
  Action action{"remove card " + tree_text(knowledge, **crop), {}};
  for (const Contact* contact : live.contacts_of(id)) {
    action.changes.emplace_back(Remove{contact->id});
    const WalkTree* neighbour = live.find(contact->neighbour);
    if (neighbour != nullptr && !is_needed(live, *neighbour, id)) {
      leave_walk(live, *neighbour, action);
    }
  }
  if (!is_needed(live, **crop, id)) {
    leave_walk(live, **crop, action);
  } else {
    WalkTree neighbour = **crop;
    neighbour.crop = false;
    neighbour.looked = {};
    action.changes.emplace_back(std::move(neighbour));
  }
  return action;
}

}  // namespace oaklight
