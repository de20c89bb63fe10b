#include "core/session/marks_view.hpp"

#include <algorithm>
#include <utility>

#include "core/handoff/tree_cautions.hpp"
#include "core/place/walk_positions.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/walk.hpp"

namespace oaklight {
namespace {

bool is_cut(Verdict verdict) {
  return verdict == Verdict::take || verdict == Verdict::kill_standing;
}

void count(const MarkRow& row, MarkTotals& totals) {
  ++totals.trees;
  if (!row.mark) {
    ++totals.undecided;
    return;
  }
  ++totals.by_verdict[static_cast<std::size_t>(row.mark->verdict)];
  totals.by_hand += row.mark->by_hand ? 1 : 0;
  const bool stop = std::ranges::any_of(
      row.cautions, [](const Caution& caution) { return caution.severity == Severity::stop; });
  totals.stops += is_cut(row.mark->verdict) && stop ? 1 : 0;
}

}  // namespace

Result<MarksView> marks_view(const TractData& data, const TractKnowledge& knowledge,
                             std::optional<StandId> stand, std::optional<Day> work_day) {
  PacketOptions options;
  options.work_day = work_day;
  options.limits = knowledge.release.settings.cautions;
  const PacketTables tables{knowledge.species(), knowledge.cautions, knowledge.seasons};
  const auto cautions = cautions_of_walk(data, tables, options);
  if (!cautions) return cautions.error();
  const auto marks = latest_marks(data);
  if (!marks) return marks.error();
  const auto placed = placed_walk_trees(data);
  MarksView view;
  for (std::size_t i = 0; i < placed.size(); ++i) {
    const WalkTree& tree = placed[i];
    if (stand && tree.stand != *stand) continue;
    MarkRow row{tree.id,    tree.stand, tree.tag, species_name(knowledge, tree.facts.species),
                tree.facts, tree.crop};
    const auto mark = marks->find(tree.id);
    if (mark != marks->end()) row.mark = *mark->second;
    row.position = tree.position;
    row.cautions = (*cautions)[i];
    count(row, view.totals);
    view.rows.push_back(std::move(row));
  }
  std::ranges::stable_sort(
      view.rows, [](const MarkRow& a, const MarkRow& b) { return natural_less(a.tag, b.tag); });
  return view;
}

}  // namespace oaklight
