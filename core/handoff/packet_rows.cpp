#include "core/handoff/packet_rows.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "core/handoff/list_volumes.hpp"
#include "core/handoff/order.hpp"
#include "core/handoff/surroundings.hpp"
#include "core/handoff/tree_cautions.hpp"
#include "core/handoff/work_notes.hpp"
#include "core/place/walk_positions.hpp"

namespace oaklight {
namespace {

/// The tract's own table before the book, as in estimates.
void set_volume(PacketRow& row, const TreeFacts& facts, LogRule rule, const LocalNumbers* local) {
  const ListVolumes own = local_volumes(local, facts.species, facts.dbh, facts.half_logs, rule);
  const ListVolumes book = book_volumes(facts.dbh, facts.half_logs, rule);
  PacketTree& tree = row.tree;
  if (tree.product == Product::sawlog) {
    row.local_volume = own.board_feet.has_value();
    tree.board_feet = row.local_volume ? own.board_feet : book.board_feet;
  }
  if (tree.product == Product::pulpwood || tree.product == Product::firewood) {
    row.local_volume = own.cords.has_value();
    tree.cords = row.local_volume ? own.cords : book.cords;
  }
}

bool by_stand_and_tag(const PacketRow& a, const PacketRow& b) {
  if (a.tree.stand != b.tree.stand) return tag_before(a.tree.stand, b.tree.stand);
  return tag_before(a.tree.tag, b.tree.tag);
}

/// Whether a mark no longer fits what is recorded of the tree: the rules never take or kill a crop
/// tree, a dead tree or one with a den, a nest or a line on it, so it was marked before that was
/// recorded. Of all but a crop tree a person who marked it by hand knew.
bool is_stale(const PacketTree& tree, const TreeFacts& facts, const Mark& mark) {
  if (mark.verdict != Verdict::take && mark.verdict != Verdict::kill_standing) return false;
  const auto has = [&](Condition c) { return facts.conditions.has(c); };
  const bool kept = facts.status == TreeStatus::dead || has(Condition::den) ||
                    has(Condition::nest) || has(Condition::line_tree) || has(Condition::legacy);
  return tree.crop || (!mark.by_hand && kept);
}

bool is_killed_standing(const Mark& mark) {
  return mark.verdict == Verdict::kill_standing ||
         (mark.verdict == Verdict::take && mark.method == Method::girdle);
}

/// Whether the work that a mark names is this reader's. Firewood that went to the logger because a
/// beginner must not touch it is named to the firewood cutter too, as trees to leave alone.
bool is_for(PacketReader reader, const PacketTree& tree, const Mark& mark) {
  const bool killed = is_killed_standing(mark);
  const bool felled = mark.verdict == Verdict::take && !killed;
  if (reader == PacketReader::owner) return felled || killed;
  if (reader == PacketReader::standing) return killed;
  if (felled && mark.destination == destination_of(reader)) return true;
  return reader == PacketReader::firewood && felled && mark.product == Product::firewood &&
         mark.destination && !may_work_from_list(reader, tree.method, tree.cautions);
}

/// The list of a tree whose packet tree is filled in.
ListKind list_of(const PacketTree& tree, const TreeFacts& facts, const Mark* mark,
                 PacketReader reader) {
  if (mark == nullptr) return tree.crop ? ListKind::keep : ListKind::others;
  if (is_stale(tree, facts, *mark)) return ListKind::others;
  if (mark->verdict == Verdict::keep) return ListKind::keep;
  if (!is_for(reader, tree, *mark)) return ListKind::others;
  return may_work_from_list(reader, tree.method, tree.cautions) ? ListKind::work
                                                                : ListKind::trained;
}

/// What the mark says, or that there is none.
void set_decision(PacketTree& tree, const Mark* mark, PacketReader reader) {
  if (mark != nullptr) {
    tree.verdict = mark->verdict;
    tree.method = mark->method;
    tree.product = mark->product;
    if (mark->verdict == Verdict::take) tree.destination = mark->destination;
    // What a person typed is between him and the owner.
    tree.reason = mark->by_hand && reader != PacketReader::owner
                      ? "Decided by the person who marked the trees."
                      : mark->reason;
  } else {
    tree.verdict = tree.crop ? Verdict::keep : Verdict::look_again;
    tree.reason = tree.crop ? "Proposed as a crop tree; nothing is decided." : "";
  }
}

/// Leaves only the cautions that tell whoever walks by that this tree itself is dangerous: what
/// stands around a tree matters to those who cut it.
void keep_own_dangers(std::vector<Caution>& cautions) {
  static constexpr std::array<std::string_view, 9> kOwn = {"DEAD_ASH",   "DEAD_TREE", "BROKEN_TOP",
                                                           "WIDOWMAKER", "HUNG_IN",   "CRACK_SPLIT",
                                                           "ROOT_LIFT",  "ASH_SICK",  "NEST"};
  std::erase_if(cautions, [](const Caution& caution) {
    return std::find(kOwn.begin(), kOwn.end(), caution.code) == kOwn.end();
  });
}

/// Why a tree is none of this reader's: the reason behind its mark would read like an order to cut
/// it. The owner is told the reason itself.
std::string why_others(const PacketTree& tree, const TreeFacts& facts, const Mark* mark,
                       PacketReader reader) {
  if (mark == nullptr) return "Nothing is decided for this tree.";
  if (is_stale(tree, facts, *mark)) {
    return "Look again: what is recorded of it changed after it was marked.";
  }
  if (tree.verdict == Verdict::look_again) {
    return reader == PacketReader::owner ? tree.reason
                                         : "To be looked at again; nothing is decided.";
  }
  if (is_killed_standing(*mark)) return "To be killed standing; must not be felled.";
  if (reader == PacketReader::standing) return "To be felled by others; must not be girdled.";
  return mark->destination ? "On another cutter's list." : "On nobody's list yet.";
}

const Stand* stand_of(const WalkTree& tree, const TractData& data) {
  const auto stand = std::find_if(data.stands.begin(), data.stands.end(),
                                  [&](const Stand& s) { return s.id == tree.stand; });
  return stand == data.stands.end() ? nullptr : &*stand;
}

/// What is known of the whole walk, in the order of data.walk_trees.
struct Walk {
  std::map<WalkTreeId, const Mark*> marks;
  std::vector<WalkTree> trees;
  std::vector<std::vector<Caution>> cautions;
  std::vector<std::optional<WorkNotes>> notes;

  [[nodiscard]] const Mark* mark_of(const WalkTree& tree) const {
    const auto at = marks.find(tree.id);
    return at == marks.end() ? nullptr : at->second;
  }
};

Result<Walk> read_walk(const TractData& data, const PacketTables& tables,
                       const PacketOptions& options) {
  auto marks = latest_marks(data);
  if (!marks) return marks.error();
  Walk walk{*std::move(marks), placed_walk_trees(data), {}, {}};
  const auto around = surroundings_of(data, walk.trees, tables.species, options.limits);
  auto cautions = cautions_of_walk(data, walk.trees, around, tables, options);
  if (!cautions) return cautions.error();
  walk.cautions = *std::move(cautions);
  auto notes = work_notes_of_walk(data, walk.trees, around, tables, options);
  if (!notes) return notes.error();
  walk.notes = *std::move(notes);
  return walk;
}

/// A way that the rules forbid is one more stop, unless a stop sends the tree away already.
void add_way_stop(PacketTree& tree, const Mark* mark) {
  const bool stopped = !tree.cautions.empty() && tree.cautions.front().severity == Severity::stop;
  if (mark == nullptr || stopped) return;
  if (auto stop = against_the_rules(*mark, tree.work)) {
    tree.cautions.insert(tree.cautions.begin(), *std::move(stop));
  }
}

PacketRow row_of(const Walk& walk, std::size_t i, const Stand& stand, const PacketTables& tables,
                 PacketReader reader, const PacketOptions& options) {
  const WalkTree& tree = walk.trees[i];
  const Mark* mark = walk.mark_of(tree);
  PacketRow row{.tree = {.tag = tree.tag,
                         .stand = stand.name,
                         .species = tables.species.find(tree.facts.species)->common_name,
                         .dbh = tree.facts.dbh,
                         .cautions = walk.cautions[i],
                         .position = tree.position,
                         .crop = tree.crop,
                         .work = walk.notes[i]},
                .slope = tree.slope};
  set_decision(row.tree, mark, reader);
  set_volume(row, tree.facts, options.log_rule, tables.local.get());
  add_way_stop(row.tree, mark);
  row.list = list_of(row.tree, tree.facts, mark, reader);
  const bool stays = row.list == ListKind::keep || row.list == ListKind::others;
  if (stays) row.tree.work.reset();
  if (stays && reader != PacketReader::owner) keep_own_dangers(row.tree.cautions);
  if (row.list == ListKind::others) {
    row.tree.reason = why_others(row.tree, tree.facts, mark, reader);
  }
  return row;
}

}  // namespace

Result<std::vector<PacketRow>> packet_rows(const TractData& data, const PacketTables& tables,
                                           PacketReader reader, const PacketOptions& options) {
  const auto walk = read_walk(data, tables, options);
  if (!walk) return walk.error();
  std::vector<PacketRow> rows;
  for (std::size_t i = 0; i < walk->trees.size(); ++i) {
    const Stand* stand = stand_of(walk->trees[i], data);
    if (stand == nullptr) {
      return Error{ErrorCode::unknown_reference, "The tree's stand is not in the tract.",
                   "walk_tree/" + walk->trees[i].tag + "/stand",
                   "Give the tree a stand of this tract."};
    }
    rows.push_back(row_of(*walk, i, *stand, tables, reader, options));
  }
  std::sort(rows.begin(), rows.end(), by_stand_and_tag);
  return rows;
}

}  // namespace oaklight
