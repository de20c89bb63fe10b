#include "core/handoff/stump_check.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include "core/handoff/order.hpp"
#include "core/handoff/stump_lists.hpp"
#include "core/handoff/tree_cautions.hpp"
#include "core/place/walk_positions.hpp"

namespace oaklight {
namespace {

/// How one marked tree stands by its findings.
ListState state_of(const std::vector<const Stump*>& findings) {
  if (findings.empty()) return ListState::not_seen;
  const Finding first = findings.front()->finding;
  const bool agree =
      std::ranges::all_of(findings, [&](const Stump* stump) { return stump->finding == first; });
  if (!agree) return ListState::unclear;
  switch (first) {
    case Finding::as_marked:
      return ListState::done;
    case Finding::standing:
      return ListState::standing;
    case Finding::hung:
      return ListState::hung;
    case Finding::not_marked:
    case Finding::hurt:
      break;
  }
  return ListState::unclear;
}

/// What sends somebody out again comes first.
int rank(ListState state) {
  switch (state) {
    case ListState::hung:
      return 0;
    case ListState::standing:
      return 1;
    case ListState::unclear:
      return 2;
    case ListState::not_seen:
      return 3;
    case ListState::done:
      break;
  }
  return 4;
}

std::vector<std::string> sentences(const StumpCheck& check) {
  std::vector<std::string> lines;
  const auto unmarked_hung = std::ranges::count(check.unmarked, true, &UnmarkedTree::hung);
  const int hung = check.of(ListState::hung) + static_cast<int>(unmarked_hung);
  const int standing = check.of(ListState::standing);
  if (hung > 0) {
    lines.push_back(
        (hung == 1 ? "One tree is hung up." : std::to_string(hung) + " trees are hung up.") +
        std::string(" Nobody goes under or beside a hung tree; a trained person with a "
                    "machine brings it down."));
  }
  if (standing > 0 || check.of(ListState::not_seen) > 0 || check.of(ListState::unclear) > 0) {
    lines.emplace_back(
        "This list sends people to trees that may still stand. It is no order to cut: whoever "
        "fells a tree looks at it again and goes by the packet's cautions.");
  }
  lines.emplace_back(
      "A fresh cut holds broken limbs overhead, bent stems under load and logs that roll. Look up "
      "before each step under a crown, stay uphill of logs, and do not walk it alone, in wind or "
      "while anybody is felling.");
  lines.emplace_back(
      "Wear a hard hat. Local codes, licensed practice and whoever answers for the work govern.");
  return lines;
}

std::vector<Caution> walking_cautions(const CautionTable& table) {
  std::vector<Caution> cautions;
  for (const char* code : {"HUNG_IN", "WIDOWMAKER", "SPRING_POLE"}) {
    cautions.push_back(table.entry(code).caution);
  }
  return cautions;
}

/// How many trees of the walk were to be left, and what became of them.
void count_damage(StumpCheck& check, const std::vector<WalkTree>& walk,
                  const std::map<WalkTreeId, const Mark*>& marks) {
  for (const WalkTree& tree : walk) {
    if (is_listed(marks, tree.id)) continue;
    ++check.left_damage.left;
    if (tree.crop) ++check.crop_damage.left;
  }
  for (const UnmarkedTree& tree : check.unmarked) {
    if (tree.tag.empty()) continue;
    ++check.left_damage.cut;
    if (tree.crop) ++check.crop_damage.cut;
  }
  for (const HurtTree& tree : check.hurt) {
    if (tree.tag.empty()) {
      ++check.hurt_without_tag;
      continue;
    }
    ++(tree.badly() ? check.left_damage.badly : check.left_damage.other);
    if (tree.crop) ++(tree.badly() ? check.crop_damage.badly : check.crop_damage.other);
  }
}

std::vector<TagTwice> tags_twice(const StumpWalk& walk) {
  std::vector<TagTwice> twice;
  for (const WalkTree& tree : walk.trees) {
    const auto& findings = walk.findings_of(tree.id);
    if (findings.size() < 2) continue;
    TagTwice entry{tree.tag, {}};
    for (const Stump* stump : findings) entry.findings.push_back(stump->finding);
    twice.push_back(std::move(entry));
  }
  std::ranges::sort(twice,
                    [](const TagTwice& a, const TagTwice& b) { return tag_before(a.tag, b.tag); });
  return twice;
}

ListedTree listed_tree(const StumpWalk& walk, const WalkTree& tree, const Mark& mark,
                       const std::vector<Caution>& cautions) {
  const auto& findings = walk.findings_of(tree.id);
  ListedTree row{.tree = tree.id,
                 .tag = tree.tag,
                 .stand = walk.stand_name(tree.stand),
                 .species = walk.species_name(tree.facts.species),
                 .dbh = tree.facts.dbh,
                 .verdict = mark.verdict,
                 .destination = mark.destination,
                 .state = state_of(findings),
                 .findings = static_cast<int>(findings.size()),
                 .cautions = cautions,
                 .position = tree.position,
                 .note = {}};
  if (!findings.empty()) row.note = findings.back()->note;
  if (row.state == ListState::hung) {
    // Before all that its record told while it stood.
    row.cautions.insert(row.cautions.begin(),
                        {"HUNG_UP", Severity::stop,
                         "This tree is cut and not down. Stay two tree lengths away from it; a "
                         "trained person with a machine only.",
                         "common practice"});
  }
  // What was done is no danger to whoever walks there by this tree's record.
  if (row.state == ListState::done) row.cautions.clear();
  return row;
}

std::string volume_words(const UnmarkedTotals& totals, const LocalNumbers* local) {
  if (totals.local_board_feet + totals.local_cords == 0) return "";
  const auto trees = [](int count) {
    return std::to_string(count) + (count == 1 ? " tree" : " trees");
  };
  const std::string& source = local->volumes.source;
  return "By the local table" + (source.empty() ? "" : " (" + source + ")") +
         " [local_volume]: board feet of " + trees(totals.local_board_feet) + ", cords of " +
         trees(totals.local_cords) + ". All others by the book.";
}

}  // namespace

int StumpCheck::of(ListState state) const {
  return static_cast<int>(std::ranges::count(listed, state, &ListedTree::state));
}
int StumpCheck::looked_at() const {
  return static_cast<int>(listed.size()) - of(ListState::not_seen);
}
std::optional<Percent> StumpCheck::share_done() const {
  if (looked_at() == 0) return std::nullopt;
  return Percent{100.0 * of(ListState::done) / looked_at()};
}

Result<StumpCheck> make_stump_check(const TractData& data, const PacketTables& tables,
                                    const DamageSettings& limits, const PacketOptions& options) {
  const auto marks = latest_marks(data);
  if (!marks) return marks.error();
  const auto cautions = cautions_of_walk(data, tables, options);
  if (!cautions) return cautions.error();
  const StumpWalk walk(data, tables.species, *marks);
  StumpCheck check;
  check.tract = data.tract;
  check.made_on = to_text(options.today);
  check.log_rule = std::string(name_of(options.log_rule));
  for (std::size_t i = 0; i < walk.trees.size(); ++i) {
    const WalkTree& tree = walk.trees[i];
    if (!is_listed(*marks, tree.id)) continue;
    const Mark& mark = *marks->at(tree.id);
    check.rule_version = mark.rule_version;
    check.listed.push_back(listed_tree(walk, tree, mark, (*cautions)[i]));
  }
  if (check.listed.empty()) {
    return Error{ErrorCode::nothing_marked, "No tree of the tract is marked to be cut or killed.",
                 "marks", "Recommend or mark trees first; then there is a list to check against."};
  }
  std::ranges::sort(check.listed, [](const ListedTree& a, const ListedTree& b) {
    if (rank(a.state) != rank(b.state)) return rank(a.state) < rank(b.state);
    return tag_before(a.tag, b.tag);
  });
  check.unmarked = unmarked_trees(walk, options.log_rule, limits.product, tables.local.get());
  check.unmarked_totals = totals_of(check.unmarked);
  check.volumes_by = volume_words(check.unmarked_totals, tables.local.get());
  check.hurt = hurt_trees(walk);
  check.twice = tags_twice(walk);
  check.crop_damage = {.limit = limits.crop_trees, .rule = "R7.42"};
  check.left_damage = {.limit = limits.left_trees, .rule = "R7.43"};
  count_damage(check, walk.trees, *marks);
  check.before_you_go = sentences(check);
  check.cautions = walking_cautions(tables.cautions);
  return check;
}

}  // namespace oaklight
