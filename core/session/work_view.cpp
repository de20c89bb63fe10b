#include "core/session/work_view.hpp"

#include "core/handoff/surroundings.hpp"
#include "core/place/walk_positions.hpp"
#include "core/release/marks.hpp"
#include "core/release/stand_facts.hpp"
#include "core/release/work_site.hpp"

namespace oaklight {

Result<std::vector<TreeWork>> work_of_stand(const TractData& data, const TractKnowledge& knowledge,
                                            StandId stand, const ReleasePlan& plan, Day day) {
  const auto input = input_from_cards(data, stand, knowledge.release);
  if (!input) return input.error();
  const ReleaseSettings& settings = knowledge.release.settings;
  const std::vector<WalkTree> trees = placed_walk_trees(data);
  const auto around = surroundings_of(data, trees, knowledge.species(), settings.cautions);
  const auto windows = windows_of(knowledge.seasons, data.tract.state, data.tract.county);
  std::vector<TreeWork> list;
  for (const WorkCase& tree : work_cases({trees, around, data.contacts}, plan, *input)) {
    TreeWork work{work_advice(tree, settings), std::nullopt, "", {}};
    const Way way = work.advice.ways.front();
    if (way != Way::leave) {
      work.day = day_advice(windows, work_kind(tree, way), day);
      if (tree.beside_oak) work.wilt = oak_wilt_words(input->stand.before, settings.work);
    }
    if (tree.species != nullptr) {
      const Method method =
          default_method(tree.facts, tree.species, tree.verdict, settings.removal);
      const TreePlan planned{method, true};
      work.cautions = cautions_for(
          {tree.facts, *tree.species, tree.around, planned, settings.cautions}, knowledge.cautions);
    }
    list.push_back(std::move(work));
  }
  return list;
}

}  // namespace oaklight
