#include <algorithm>
#include <utility>

#include "core/forms/csv_file.hpp"
#include "core/handoff/tree_cautions.hpp"
#include "core/measure/product.hpp"
#include "core/release/marks.hpp"
#include "core/session/card_work.hpp"
#include "core/session/decide.hpp"
#include "core/session/records_named.hpp"

namespace oaklight {
namespace {

/// The list that a tree goes on, by its cautions among all trees of the tract.
Result<Mark> with_destination(const LiveTract& live, const TractKnowledge& knowledge, Mark mark) {
  TractData data = live.data();
  mark.destination.reset();
  data.marks = {mark};
  const PacketTables tables{knowledge.species(), knowledge.cautions, knowledge.seasons};
  const auto marks = with_destinations(data, tables, {});
  if (!marks) return marks.error();
  return marks->front();
}

/// The crop trees beside a tree that was just decided otherwise: the reason of each tells how many
/// sides are free after the work, and that is no longer what it was.
Status put_crop_reasons_right(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                              const WalkTree& tree, Action& action) {
  if (live.contacts_with(tree.id).empty()) return Done{};
  LiveTract then = live;
  then.follow(action.changes);
  const auto plan = plan_stand(then.data(), knowledge, ids, tree.stand);
  if (!plan) return plan.error();
  for (const Contact* contact : live.contacts_with(tree.id)) {
    const Mark* old = live.mark_of(contact->crop);
    const auto now = std::ranges::find(plan->marks, contact->crop, &Mark::tree);
    if (old == nullptr || old->by_hand || now == plan->marks.end()) continue;
    if (old->verdict != now->verdict || old->reason == now->reason) continue;
    Mark mark = *old;
    mark.reason = now->reason;
    action.changes.emplace_back(std::move(mark));
  }
  return Done{};
}

Error no_mark(const WalkTree& tree) {
  return {ErrorCode::contradiction, "Tree " + tree.tag + " was not decided by hand.",
          "walk_tree/" + tree.tag + "/verdict", "There is nothing to take back."};
}

}  // namespace

Result<Action> overrule(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                        WalkTreeId id, Verdict verdict, std::string_view reason) {
  const WalkTree* tree = live.find(id);
  if (tree == nullptr) return no_such("tree", to_text(id));
  if (trimmed(reason).empty()) {
    return Error{ErrorCode::missing_value, "A decision by hand has a reason.",
                 "walk_tree/" + tree->tag + "/reason", "Say in a few words why."};
  }
  const Mark* before = live.mark_of(id);
  const Species* species = knowledge.species().find(tree->facts.species);
  Mark mark;
  mark.id = before == nullptr ? ids.next_id<MarkTag>() : before->id;
  mark.tree = id;
  mark.verdict = verdict;
  mark.method = default_method(tree->facts, species, verdict, knowledge.release.settings.removal);
  if (verdict == Verdict::take && species != nullptr) {
    const TreeFacts& facts = tree->facts;
    mark.product = product_of(*species, facts.dbh, facts.half_logs, facts.conditions,
                              knowledge.release.settings.product)
                       .product;
  }
  mark.reason = trimmed(reason);
  mark.by_hand = true;
  mark.rule_version = knowledge.release.rules.version();
  auto destined = with_destination(live, knowledge, std::move(mark));
  if (!destined) return destined.error();
  Action action{"overrule " + tree->tag + ": " + std::string(word_of(verdict)),
                {*std::move(destined)}};
  const auto right = put_crop_reasons_right(live, knowledge, ids, *tree, action);
  if (!right) return right.error();
  return action;
}

Result<Action> take_back_overrule(const LiveTract& live, const TractKnowledge& knowledge,
                                  IdSource& ids, WalkTreeId id) {
  const WalkTree* tree = live.find(id);
  if (tree == nullptr) return no_such("tree", to_text(id));
  const Mark* by_hand = live.mark_of(id);
  if (by_hand == nullptr || !by_hand->by_hand) return no_mark(*tree);
  const auto plan = plan_stand(live.data(), knowledge, ids, tree->stand);
  if (!plan) return plan.error();
  const auto found = std::ranges::find(plan->marks, id, &Mark::tree);
  if (found == plan->marks.end()) return no_mark(*tree);
  Mark mark = *found;
  mark.id = by_hand->id;
  Action action{"take back decision on " + tree->tag, {std::move(mark)}};
  const auto right = put_crop_reasons_right(live, knowledge, ids, *tree, action);
  if (!right) return right.error();
  return action;
}

}  // namespace oaklight
