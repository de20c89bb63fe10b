#include "core/session/stump_work.hpp"

#include <utility>

#include "core/session/form_check.hpp"
#include "core/session/records_named.hpp"

namespace oaklight {
namespace {

std::string words_of(Finding finding) {
  switch (finding) {
    case Finding::as_marked:
      return "found as marked";
    case Finding::standing:
      return "still standing";
    case Finding::hung:
      return "hung up";
    case Finding::not_marked:
      return "cut, not marked";
    case Finding::hurt:
      break;
  }
  return "hurt";
}

bool needs_list(Finding finding) {
  return finding == Finding::as_marked || finding == Finding::standing || finding == Finding::hung;
}

std::string path_of(const WalkTree* tree) {
  return tree == nullptr ? "stump" : "stump/" + tree->tag;
}

void check_list(FormCheck& check, const LiveTract& live, const WalkTree* tree, Finding finding) {
  check.refuse_if(tree == nullptr && needs_list(finding), ErrorCode::missing_value, "tag",
                  "Only a tree with a tag can be on the list.",
                  "Give its tag, or note it as cut without a mark.");
  if (tree == nullptr) return;
  const bool listed = is_listed(live, tree->id);
  check.refuse_if(needs_list(finding) && !listed, ErrorCode::contradiction, "finding",
                  "Tree " + tree->tag + " is not on the list.",
                  "If it was cut, note it as cut without a mark.");
  check.refuse_if(finding == Finding::not_marked && listed, ErrorCode::contradiction, "finding",
                  "Tree " + tree->tag + " is on the list.", "Note it as found as marked.");
  check.refuse_if(finding == Finding::hurt && listed, ErrorCode::contradiction, "finding",
                  "Tree " + tree->tag + " was to be cut, so a wound is no damage.",
                  "Note it as still standing.");
}

UnitSystem system_of(const StumpDraft& draft) {
  if (draft.over_bark) return draft.over_bark->system();
  if (draft.under_bark) return draft.under_bark->system();
  return draft.height ? draft.height->system() : UnitSystem::us;
}

/// A stump's reading for the form's limits, which are those of a tape.
std::optional<Dbh> as_tape(const std::optional<StumpDiameter>& diameter) {
  if (!diameter) return std::nullopt;
  const auto tape = Dbh::from_tenths(diameter->tenths(), diameter->system());
  return tape ? std::optional(*tape) : std::nullopt;
}

std::optional<Error> fault_of(const LiveTract& live, const TractKnowledge& knowledge,
                              const StumpDraft& draft) {
  const WalkTree* tree = draft.tree ? live.find(*draft.tree) : nullptr;
  if (draft.tree && tree == nullptr) return no_such("tree", to_text(*draft.tree));
  if (draft.stand && live.find(*draft.stand) == nullptr) {
    return no_such("stand", to_text(*draft.stand));
  }
  FormCheck check(knowledge.form, "stumps", path_of(tree), system_of(draft));
  check_list(check, live, tree, draft.finding);
  check.refuse_if(draft.species && knowledge.species().find(*draft.species) == nullptr,
                  ErrorCode::unknown_species, "species", "This species is not in the table.",
                  "Choose another, or add it to the tract's species.");
  check.dbh("over_bark", as_tape(draft.over_bark)).dbh("under_bark", as_tape(draft.under_bark));
  check.length("stump_height", draft.height);
  check.refuse_if(
      draft.over_bark && draft.under_bark && draft.over_bark->inches() < draft.under_bark->inches(),
      ErrorCode::contradiction, "under_bark", "The stump is thicker without its bark than with it.",
      "Change the two.");
  check.refuse_if(draft.finding != Finding::hurt && (draft.wound || draft.wound_place),
                  ErrorCode::contradiction, "wound", "Only a hurt tree has a wound.",
                  "Note it as hurt, or leave the wound out.");
  if (draft.position) {
    check.number("lat", draft.position->latitude.value)
        .number("lon", draft.position->longitude.value);
  }
  check.text("note", draft.note);
  return check.fault();
}

Stump stump_of(StumpId id, const StumpDraft& draft) {
  Stump stump;
  stump.id = id;
  stump.tree = draft.tree;
  stump.stand = draft.stand;
  stump.finding = draft.finding;
  stump.species = draft.species;
  stump.over_bark = draft.over_bark;
  stump.under_bark = draft.under_bark;
  stump.height = draft.height;
  stump.wound = draft.wound;
  stump.wound_place = draft.wound_place;
  stump.position = draft.position;
  stump.seen_on = draft.seen_on;
  stump.note = draft.note;
  return stump;
}

std::string label_of(const LiveTract& live, const StumpDraft& draft) {
  const WalkTree* tree = draft.tree ? live.find(*draft.tree) : nullptr;
  return (tree == nullptr ? "stump without a tag: " : "tag " + tree->tag + " ") +
         words_of(draft.finding);
}

Result<Action> put(const LiveTract& live, const TractKnowledge& knowledge, StumpId id,
                   const StumpDraft& draft) {
  if (auto fault = fault_of(live, knowledge, draft)) return *std::move(fault);
  return Action{label_of(live, draft), {stump_of(id, draft)}};
}

/// The draft that changes a tree's latest finding, or begins its first.
StumpDraft next_draft(const LiveTract& live, WalkTreeId tree, Finding finding,
                      std::string seen_on) {
  const auto findings = live.stumps_of(tree);
  StumpDraft draft = findings.empty() ? StumpDraft{.tree = tree} : draft_of(*findings.back());
  draft.finding = finding;
  draft.seen_on = std::move(seen_on);
  if (finding != Finding::hurt) {
    draft.wound.reset();
    draft.wound_place.reset();
  }
  return draft;
}

Result<Action> put_latest(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                          WalkTreeId tree, const StumpDraft& draft) {
  const auto findings = live.stumps_of(tree);
  const StumpId id = findings.empty() ? ids.next_id<StumpTag>() : findings.back()->id;
  return put(live, knowledge, id, draft);
}

}  // namespace

StumpDraft draft_of(const Stump& stump) {
  return {stump.tree,        stump.stand,      stump.finding, stump.species,
          stump.over_bark,   stump.under_bark, stump.height,  stump.wound,
          stump.wound_place, stump.position,   stump.seen_on, stump.note};
}

Result<Action> add_stump(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                         const StumpDraft& draft) {
  return put(live, knowledge, ids.next_id<StumpTag>(), draft);
}

Result<Action> note_finding(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                            WalkTreeId tree, Finding finding, std::string seen_on) {
  return put_latest(live, knowledge, ids, tree,
                    next_draft(live, tree, finding, std::move(seen_on)));
}

Result<Action> note_wound(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                          WalkTreeId tree, Wound wound, std::string seen_on) {
  StumpDraft draft = next_draft(live, tree, Finding::hurt, std::move(seen_on));
  draft.wound = wound;
  return put_latest(live, knowledge, ids, tree, draft);
}

bool is_listed(const LiveTract& live, WalkTreeId tree) {
  const Mark* mark = live.mark_of(tree);
  return mark != nullptr &&
         (mark->verdict == Verdict::take || mark->verdict == Verdict::kill_standing);
}

}  // namespace oaklight
