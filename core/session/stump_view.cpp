#include "core/session/stump_view.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <numeric>

#include "core/handoff/order.hpp"
#include "core/handoff/stump_lists.hpp"
#include "core/handoff/tree_cautions.hpp"
#include "core/place/walk_positions.hpp"
#include "core/session/local.hpp"

namespace oaklight {
namespace {

double far(const std::optional<Leg>& leg) {
  return leg ? leg->distance.value : std::numeric_limits<double>::infinity();
}

void fill_order(StumpView& view, const std::optional<Position>& here) {
  const auto& listed = view.check.listed;
  for (const ListedTree& tree : listed) {
    const bool both = here && tree.position;
    view.legs.push_back(both ? std::optional(leg_between(*here, *tree.position)) : std::nullopt);
  }
  view.order.resize(listed.size());
  std::iota(view.order.begin(), view.order.end(), 0U);
  std::ranges::sort(view.order, [&](std::size_t a, std::size_t b) {
    const bool open_a = listed[a].state == ListState::not_seen;
    const bool open_b = listed[b].state == ListState::not_seen;
    if (open_a != open_b) return open_a;
    if (open_a && far(view.legs[a]) != far(view.legs[b])) {
      return far(view.legs[a]) < far(view.legs[b]);
    }
    return tag_before(listed[a].tag, listed[b].tag);
  });
}

LeaveTree leave_tree(const StumpWalk& walk, const WalkTree& tree) {
  LeaveTree row{tree.id,
                tree.tag,
                walk.stand_name(tree.stand),
                walk.species_name(tree.facts.species),
                tree.facts.dbh,
                tree.crop,
                {},
                {},
                tree.position};
  const auto& findings = walk.findings_of(tree.id);
  if (!findings.empty()) {
    row.finding = findings.back()->finding;
    row.wound = findings.back()->wound;
  }
  return row;
}

}  // namespace

Result<StumpCheck> stump_check_for(const TractData& data, const TractKnowledge& knowledge,
                                   PacketOptions options) {
  options.table_versions = knowledge.table_versions;
  options.limits = knowledge.release.settings.cautions;
  PacketTables tables{knowledge.species(), knowledge.cautions, knowledge.seasons};
  tables.local = local_numbers(data, knowledge);
  return make_stump_check(data, tables, knowledge.release.settings.damage, options);
}

Result<StumpView> stump_view(const TractData& data, const TractKnowledge& knowledge,
                             const PacketOptions& options, std::optional<Position> here) {
  auto check = stump_check_for(data, knowledge, options);
  if (!check) return check.error();
  const auto marks = latest_marks(data);
  if (!marks) return marks.error();
  StumpView view;
  view.check = *std::move(check);
  fill_order(view, here);
  const StumpWalk walk(data, knowledge.species(), *marks);
  for (const WalkTree& tree : walk.trees) {
    if (!is_listed(*marks, tree.id)) view.leave.push_back(leave_tree(walk, tree));
  }
  std::ranges::sort(
      view.leave, [](const LeaveTree& a, const LeaveTree& b) { return tag_before(a.tag, b.tag); });
  return view;
}

}  // namespace oaklight
