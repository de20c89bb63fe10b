#include "core/handoff/tree_cautions.hpp"

#include <algorithm>

#include "core/handoff/surroundings.hpp"
#include "core/place/walk_positions.hpp"

namespace oaklight {
namespace {

Error unknown_species(const WalkTree& tree) {
  return {ErrorCode::unknown_species,
          "The species " + std::to_string(tree.facts.species.fia) + " is not in the table.",
          "walk_tree/" + tree.tag + "/species", "Add the species, or mend the code."};
}

bool bats_may_roost(const TractData& data, const PacketTables& tables,
                    const PacketOptions& options) {
  return !options.work_day ||
         in_season(windows_of(tables.seasons, data.tract.state, data.tract.county), "bat_",
                   *options.work_day);
}

}  // namespace

Result<std::map<WalkTreeId, const Mark*>> latest_marks(const TractData& data) {
  std::map<WalkTreeId, const Mark*> marks;
  for (const WalkTree& tree : data.walk_trees) marks.emplace(tree.id, nullptr);
  for (const Mark& mark : data.marks) {
    const auto at = marks.find(mark.tree);
    if (at == marks.end()) {
      return Error{ErrorCode::unknown_reference, "A mark is for a tree that is not in the tract.",
                   "mark/" + to_text(mark.id) + "/tree", "Recommend again, then mark again."};
    }
    if (at->second == nullptr || at->second->id < mark.id) at->second = &mark;
  }
  std::erase_if(marks, [](const auto& entry) { return entry.second == nullptr; });
  return marks;
}

Result<std::vector<std::vector<Caution>>> cautions_of_walk(const TractData& data,
                                                           const PacketTables& tables,
                                                           const PacketOptions& options) {
  const auto trees = placed_walk_trees(data);
  const auto around = surroundings_of(data, trees, tables.species, options.limits);
  return cautions_of_walk(data, trees, around, tables, options);
}

Result<std::vector<std::vector<Caution>>> cautions_of_walk(const TractData& data,
                                                           std::span<const WalkTree> trees,
                                                           std::span<const Surroundings> around,
                                                           const PacketTables& tables,
                                                           const PacketOptions& options) {
  const auto marks = latest_marks(data);
  if (!marks) return marks.error();
  const bool bats = bats_may_roost(data, tables, options);
  std::vector<std::vector<Caution>> cautions;
  for (std::size_t i = 0; i < trees.size(); ++i) {
    const Species* species = tables.species.find(trees[i].facts.species);
    if (species == nullptr) return unknown_species(trees[i]);
    const auto mark = marks->find(trees[i].id);
    const TreePlan plan{mark == marks->end() ? Method::none : mark->second->method, bats};
    cautions.push_back(
        cautions_for({trees[i].facts, *species, around[i], plan, options.limits}, tables.cautions));
  }
  return cautions;
}

bool may_work_from_list(PacketReader reader, Method method, std::span<const Caution> cautions) {
  const Severity worst = cautions.empty() ? Severity::note : cautions.front().severity;
  if (reader != PacketReader::firewood) return worst != Severity::stop;
  return worst == Severity::note && method == Method::fell;
}

bool in_season(std::span<const SeasonWindow> of_state, std::string_view issue, Day day) {
  return std::any_of(of_state.begin(), of_state.end(), [&](const SeasonWindow& window) {
    return window.use == SeasonUse::hold && window.issue.starts_with(issue) &&
           holds_on(window, day);
  });
}

bool may_fall_in_season(std::span<const SeasonWindow> of_state, std::string_view issue,
                        std::optional<Day> day) {
  if (day) return in_season(of_state, issue, *day);
  return std::any_of(of_state.begin(), of_state.end(), [&](const SeasonWindow& window) {
    return window.use == SeasonUse::hold && window.issue.starts_with(issue);
  });
}

Result<std::vector<Mark>> with_destinations(const TractData& data, const PacketTables& tables,
                                            const PacketOptions& options) {
  const auto cautions = cautions_of_walk(data, tables, options);
  if (!cautions) return cautions.error();
  std::map<WalkTreeId, std::size_t> place;
  for (std::size_t i = 0; i < data.walk_trees.size(); ++i) place[data.walk_trees[i].id] = i;

  std::vector<Mark> marks = data.marks;
  for (Mark& mark : marks) {
    const bool felled = mark.verdict == Verdict::take && mark.method != Method::girdle;
    if (!felled || mark.destination) continue;
    const bool easy =
        may_work_from_list(PacketReader::firewood, mark.method, (*cautions)[place.at(mark.tree)]);
    mark.destination =
        mark.product == Product::firewood && easy ? Reader::firewood : Reader::logger;
  }
  return marks;
}

}  // namespace oaklight
