#include "core/release/traits.hpp"

#include <algorithm>
#include <map>

namespace oaklight {

bool listed(const std::vector<SpeciesCode>& codes, SpeciesCode code) {
  return std::find(codes.begin(), codes.end(), code) != codes.end();
}

std::vector<Traits> traits_of(const ReleaseInput& input) {
  const ReleaseKnowledge& know = input.knowledge;
  std::map<SpeciesCode, const Species*> species;
  for (const Species& s : know.species.rows()) species.emplace(s.code, &s);
  // Counts by tree, so that a wood of many trees is not walked once for each count.
  std::map<Uuid, std::vector<AcornCount>> counts;
  for (const AcornCount& count : input.acorns) counts[count.tree.value].push_back(count);

  std::vector<Traits> traits;
  traits.reserve(input.graph.trees().size());
  for (const ReleaseTree& tree : input.graph.trees()) {
    Traits t;
    const auto known = species.find(tree.facts.species);
    if (known != species.end()) {
      t.species = known->second;
      t.food = know.food.of(*t.species, tree.facts.conditions, input.stand.grouse);
    }
    const auto own = counts.find(tree.id);
    if (own != counts.end()) {
      t.acorns =
          acorn_record(tree.id, t.group(), own->second, input.acorn_years, know.settings.acorns);
    }
    traits.push_back(t);
  }
  return traits;
}

}  // namespace oaklight
