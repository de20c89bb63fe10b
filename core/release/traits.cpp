#include "core/release/traits.hpp"

#include <algorithm>
#include <map>

#include "core/stand/stand_stocking.hpp"

namespace oaklight {

bool listed(const std::vector<SpeciesCode>& codes, SpeciesCode code) {
  return std::find(codes.begin(), codes.end(), code) != codes.end();
}

namespace {

using CountsByTree = std::map<Uuid, std::vector<AcornCount>>;

/// Means of the timed counts over the counted trees of this stand.
TimedMeans means_of(const ReleaseInput& input, const CountsByTree& counts) {
  std::vector<CountedOak> oaks;
  for (const ReleaseTree& tree : input.graph.trees()) {
    if (counts.count(tree.id) > 0) oaks.push_back({tree.id, tree.facts.species});
  }
  return timed_means(oaks, input.acorns, input.knowledge.settings.acorns);
}

}  // namespace

std::vector<Traits> traits_of(const ReleaseInput& input) {
  const ReleaseKnowledge& know = input.knowledge;
  std::map<SpeciesCode, const Species*> species;
  for (const Species& s : know.species.rows()) species.emplace(s.code, &s);
  // Counts by tree, so that a wood of many trees is not walked once for each count.
  CountsByTree counts;
  for (const AcornCount& count : input.acorns) counts[count.tree.value].push_back(count);
  const TimedMeans means = means_of(input, counts);

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
      t.acorns = acorn_record({tree.id, tree.facts.species}, t.group(), own->second,
                              input.acorn_years, means, know.settings.acorns);
    }
    t.counted = counts_for_guard(tree.facts, know.settings.guards.counted_from);
    traits.push_back(t);
  }
  return traits;
}

}  // namespace oaklight
