#include "core/release/groundwork.hpp"

namespace oaklight {
namespace {

std::vector<std::uint32_t> invasive_trees(const ReleaseGraph& graph,
                                          const std::vector<Traits>& traits,
                                          const std::vector<Keep>& keeps) {
  std::vector<std::uint32_t> list;
  for (std::uint32_t i = 0; i < traits.size(); ++i) {
    const bool live = graph.trees()[i].facts.status == TreeStatus::live;
    if (live && traits[i].invasive() && keeps[i] == Keep::no) list.push_back(i);
  }
  return list;
}

std::optional<Guards> guards_of(const ReleaseInput& input) {
  const StandFacts& stand = input.stand;
  if (!stand.before || !stand.covered || stand.covered->value <= 0.0) return std::nullopt;
  return Guards{*stand.before, *stand.covered, stand.goal, input.knowledge.settings.guards,
                input.knowledge.settings.count};
}

}  // namespace

Groundwork::Groundwork(const ReleaseInput& input)
    : traits(traits_of(input)),
      keeps(keep_list(input, traits)),
      crops(crop_trees(input, traits)),
      roles(roles_of(input, traits, keeps, crops)),
      problem{input.graph,
              traits,
              roles,
              crops.worth,
              crops.ranked,
              keeps,
              invasive_trees(input.graph, traits, keeps),
              input.knowledge.settings.sides,
              guards_of(input)} {}

}  // namespace oaklight
