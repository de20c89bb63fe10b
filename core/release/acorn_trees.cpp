#include "core/release/acorn_trees.hpp"

#include <cmath>
#include <map>
#include <set>

namespace oaklight {
namespace {

/// An oak while the counts of both files come together.
struct Gathered {
  const WalkTree* tree = nullptr;
  std::string stand;
  std::map<std::pair<int, std::size_t>, AcornCount> counts;  ///< by year and method
};

void gather(const TractData& data, std::map<std::string, Gathered>& oaks) {
  std::map<StandId, const std::string*> stands;
  for (const Stand& stand : data.stands) stands.emplace(stand.id, &stand.name);
  std::map<WalkTreeId, const WalkTree*> trees;
  for (const WalkTree& tree : data.walk_trees) trees.emplace(tree.id, &tree);
  for (const AcornCount& count : data.acorn_counts) {
    const auto tree = trees.find(count.tree);
    if (tree == trees.end() || tree->second->tag.empty()) continue;
    Gathered& oak = oaks[tree->second->tag];
    oak.tree = tree->second;
    const auto stand = stands.find(tree->second->stand);
    if (stand != stands.end()) oak.stand = *stand->second;
    oak.counts.insert_or_assign({count.year, count.count.index()}, count);
  }
}

AcornTree tree_of(const std::string& tag, const Gathered& oak, OakGroup group,
                  std::span<const AcornYear> years, const AcornSettings& settings) {
  AcornTree tree{.tag = tag,
                 .stand = oak.stand,
                 .species = oak.tree->facts.species,
                 .crop = oak.tree->crop,
                 .autumns = {},
                 .record = {}};
  std::vector<AcornCount> counts;
  for (const auto& [key, count] : oak.counts) {
    counts.push_back(count);
    counts.back().tree = oak.tree->id;  // the other file's tree of this tag has another id
    if (tree.autumns.empty() || tree.autumns.back().year != count.year) {
      tree.autumns.push_back({.year = count.year, .per_tip = {}, .n30 = {}});
    }
    AcornAutumn& autumn = tree.autumns.back();
    if (const auto* tips = std::get_if<BranchTipCount>(&count.count))
      autumn.per_tip = tips->per_tip;
    if (const auto* timed = std::get_if<TimedCount>(&count.count)) autumn.n30 = timed->n30;
  }
  tree.record = acorn_record({oak.tree->id.value, oak.tree->facts.species}, group, counts, years,
                             {}, settings);
  return tree;
}

/// What both files say of the years; the second file's word counts.
std::vector<AcornYear> years_of(const TractData& first, const TractData& second) {
  std::map<std::pair<OakGroup, int>, AcornYear> years;
  for (const auto* data : {&first, &second}) {
    for (const AcornYear& year : data->acorn_years) {
      years.insert_or_assign({year.group, year.year}, year);
    }
  }
  std::vector<AcornYear> list;
  for (const auto& [key, year] : years) list.push_back(year);
  return list;
}

}  // namespace

Result<std::vector<AcornTree>> acorn_trees(const TractData& first, const TractData& second,
                                           const SpeciesTable& species,
                                           const AcornSettings& settings) {
  std::map<std::string, Gathered> oaks;
  gather(first, oaks);
  gather(second, oaks);
  const std::vector<AcornYear> years = years_of(first, second);
  std::vector<AcornTree> trees;
  for (const auto& [tag, oak] : oaks) {
    const Species* row = species.find(oak.tree->facts.species);
    if (row == nullptr) {
      return Error{ErrorCode::unknown_species,
                   "Species " + std::to_string(oak.tree->facts.species.fia) +
                       " is not in the species table.",
                   "walk_tree/" + tag, "Add it to the table, or mend the code of the tree."};
    }
    trees.push_back(tree_of(tag, oak, row->oak_group, years, settings));
  }
  return trees;
}

std::vector<AcornIndex> acorn_indices(std::span<const AcornTree> trees, int trees_wanted,
                                      Confidence confidence) {
  // By stand ("" is the tract), species and year.
  std::map<std::tuple<std::string, SpeciesCode, int>, std::vector<double>> logs;
  std::set<std::string> stands;
  for (const AcornTree& tree : trees) {
    for (const AcornAutumn& autumn : tree.autumns) {
      if (!autumn.n30) continue;
      const double log = std::log(*autumn.n30 + 1.0);  // R3.45
      logs[{tree.stand, tree.species, autumn.year}].push_back(log);
      logs[{std::string(), tree.species, autumn.year}].push_back(log);
      stands.insert(tree.stand);
    }
  }
  std::vector<AcornIndex> indices;
  for (const auto& [key, values] : logs) {
    const auto& [stand, species, year] = key;
    if (stand.empty() && stands.size() < 2) continue;  // the one stand says it all
    const auto mean = group_mean(values, confidence);
    if (!mean) continue;  // never: each list has a finite value
    double bearing = 0.0;
    for (const double log : values) bearing += log > 0.0 ? 1.0 : 0.0;
    indices.push_back({stand, species, year, *mean,
                       percent(bearing / static_cast<double>(values.size())),
                       mean->n >= trees_wanted});
  }
  return indices;
}

}  // namespace oaklight
