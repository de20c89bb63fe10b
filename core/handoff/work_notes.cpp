#include "core/handoff/work_notes.hpp"

#include <algorithm>
#include <map>

#include "core/handoff/tree_cautions.hpp"
#include "core/release/work_site.hpp"

namespace oaklight {
namespace {

using Marks = std::map<WalkTreeId, const Mark*>;

bool goes(Verdict verdict) { return verdict == Verdict::take || verdict == Verdict::kill_standing; }

/// The marks as a plan over the trees of a graph, since that is what work is judged by.
ReleasePlan plan_of_marks(const ReleaseGraph& graph, const Marks& marks) {
  ReleasePlan plan;
  for (const ReleaseTree& tree : graph.trees()) {
    TreeVerdict verdict{.tree = tree.id, .tag = tree.tag, .crop = tree.proposed};
    const auto mark = marks.find(WalkTreeId{tree.id});
    if (mark != marks.end()) {
      verdict.verdict = mark->second->verdict;
      // Killed standing, whichever of the two ways the mark says so.
      const bool girdled = mark->second->method == Method::girdle;
      if (girdled && verdict.verdict == Verdict::take) verdict.verdict = Verdict::kill_standing;
    } else if (tree.proposed) {
      verdict.verdict = Verdict::keep;
    }
    plan.trees.push_back(std::move(verdict));
  }
  return plan;
}

/// What the judgement asks of the map, from what is known around each tree.
std::map<Uuid, MapNearby> nearby_of(std::span<const WalkTree> trees,
                                    std::span<const Surroundings> around) {
  std::map<Uuid, MapNearby> nearby;
  for (std::size_t i = 0; i < trees.size(); ++i) {
    MapNearby& near = nearby[trees[i].id.value];
    near.unplaced = around[i].unplaced;
    near.unconfirmed_line = around[i].unconfirmed_line;
    near.way = around[i].way;
    const auto& wire = around[i].power_line;
    if (wire && (!near.way || *wire < *near.way)) near.way = wire;
  }
  return nearby;
}

WorkNotes notes_of(const WorkCase& tree, const PacketTables& tables,
                   std::span<const SeasonWindow> windows, Day day) {
  const WorkAdvice advice = work_advice(tree, tables.release->settings);
  WorkNotes notes{.ways = advice.ways,
                  .how = advice.way_words,
                  .herbicide = advice.herbicide,
                  .herbicide_words = advice.herbicide_words};
  const Way way = advice.ways.front();
  if (way == Way::leave) return notes;
  const DayAdvice season = day_advice(windows, work_kind(tree, way), day);
  notes.held = !season.held_by.empty();
  notes.when = day_words(season, day);
  return notes;
}

Way way_of(Method method) {
  switch (method) {
    case Method::fell:
      return Way::fell;
    case Method::machine_fell:
      return Way::machine_fell;
    case Method::girdle:
      return Way::girdle;
    case Method::none:
      break;
  }
  return Way::leave;
}

}  // namespace

Result<std::vector<std::optional<WorkNotes>>> work_notes_of_walk(
    const TractData& data, std::span<const WalkTree> trees, std::span<const Surroundings> around,
    const PacketTables& tables, const PacketOptions& options) {
  std::vector<std::optional<WorkNotes>> all(trees.size());
  if (tables.release == nullptr) return all;
  const auto marks = latest_marks(data);
  if (!marks) return marks.error();
  std::map<Uuid, std::size_t> place;
  for (std::size_t i = 0; i < trees.size(); ++i) place[trees[i].id.value] = i;
  const auto windows = windows_of(tables.seasons, data.tract.state);
  const Day day = options.work_day.value_or(options.today);
  ReleaseInput input{.knowledge = *tables.release,
                     .graph = {},
                     .stand = {},
                     .nearby = {},
                     .acorns = {},
                     .acorn_years = {}};
  input.nearby = nearby_of(trees, around);
  for (const Stand& stand : data.stands) {
    auto graph = graph_from_cards(data.walk_trees, data.contacts, stand.id,
                                  tables.release->settings.contact);
    if (!graph) return graph.error();
    input.graph = *std::move(graph);
    const ReleasePlan plan = plan_of_marks(input.graph, *marks);
    const auto cases = work_cases({trees, around, data.contacts}, plan, input);
    for (std::size_t i = 0; i < cases.size(); ++i) {
      if (!goes(plan.trees[i].verdict)) continue;
      all[place.at(plan.trees[i].tree)] = notes_of(cases[i], tables, windows, day);
    }
  }
  return all;
}

std::optional<Caution> against_the_rules(const Mark& mark, const std::optional<WorkNotes>& notes) {
  if (!notes || mark.method == Method::none ||
      std::ranges::find(notes->ways, way_of(mark.method)) != notes->ways.end()) {
    return std::nullopt;
  }
  return Caution{"NOT_THIS_WAY", Severity::stop,
                 "The rules leave no such way for this tree. " + notes->how, "rules of the packet"};
}

}  // namespace oaklight
