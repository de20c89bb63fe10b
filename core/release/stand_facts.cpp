#include "core/release/stand_facts.hpp"
#include "core/place/geodesy.hpp"
#include "core/place/walk_positions.hpp"

#include <algorithm>
#include <array>

#include "core/release/crop_trees.hpp"
#include "core/sample/stand_sample.hpp"
#include "core/stand/stand_stocking.hpp"

namespace oaklight {
namespace {

/// Per-acre sums over the live trees of the plots that a rule asks for.
class PlotTally {
 public:
  PlotTally(const StandSample& sample, const ReleaseKnowledge& knowledge, StandFacts& facts)
      : plots_(static_cast<double>(sample.measure_plots())), know_(knowledge), facts_(facts) {
    const auto all_plots = static_cast<double>(sample.plots.size());
    TreesPerAcre roosts, fruit, crops;
    bool complete = true;  // every tree that might be a crop tree has a crown class
    for (const TalliedTree& tallied : sample.trees) {
      const TreeFacts& tree = tallied.tree->facts;
      const Traits traits = traits_of_one(tree);
      if (tree.status == TreeStatus::dead || traits.species == nullptr) continue;
      facts_.ba_by_species[tree.species] += tallied.ba / all_plots;
      if (!tallied.measured) continue;  // what a rule asks of a tree is seen where it is measured
      if (is_roost(tree)) roosts += tallied.trees / plots_;
      if (is_fruit(traits)) fruit += tallied.trees / plots_;
      const auto faults = crop_faults(tree, traits, facts_.goal, know_.settings);
      if (faults.empty()) crops += tallied.trees / plots_;
      complete = complete && !(faults.size() == 1 && is_gap(faults.front()));
    }
    for (const CountedStems& counted : sample.counted) {
      facts_.ba_by_species[counted.species] += counted.ba / all_plots;
    }
    if (!(plots_ > 0.0)) return;
    facts_.roost_hickories = roosts;
    facts_.fruit_trees = fruit;
    if (complete) facts_.acceptable_crop_trees = crops;
  }

 private:
  [[nodiscard]] Traits traits_of_one(const TreeFacts& tree) const {
    Traits traits;
    traits.species = know_.species.find(tree.species);
    if (traits.species != nullptr) {
      traits.food = know_.food.of(*traits.species, tree.conditions, facts_.grouse);
    }
    return traits;
  }
  [[nodiscard]] bool is_roost(const TreeFacts& tree) const {
    const KeepSettings& keep = know_.settings.keep;
    return listed(keep.roost_hickory_species, tree.species) &&
           tree.dbh.inches() > keep.roost_hickory_above;
  }
  [[nodiscard]] bool is_fruit(const Traits& traits) const {
    return traits.food.kind == FoodKind::soft &&
           traits.food.rank >= know_.settings.keep.food_tree_rank;
  }

  double plots_;
  const ReleaseKnowledge& know_;
  StandFacts& facts_;
};

/// Oaks of 4.5 ft and more an acre; nothing where seedlings were not counted.
std::optional<TreesPerAcre> advance_oak(const StandSample& sample, const SpeciesTable& species) {
  if (!sample.regen_plot || sample.measure_plots() == 0) return std::nullopt;
  double count = 0.0;
  for (const CountedRegen& regen : sample.regens) {
    const Species* s = species.find(regen.regen->species);
    if (s != nullptr && s->is_oak() && regen.regen->height == RegenHeight::over_4_5_ft) {
      count += regen.regen->count;
    }
  }
  const Acres counted = *sample.regen_plot * static_cast<double>(sample.measure_plots());
  return Trees{count} / counted;
}

void keep_nearer(std::optional<Feet>& nearest, std::optional<Feet> distance) {
  if (distance && (!nearest || *distance < *nearest)) nearest = distance;
}

bool is_way(LineKind kind) {
  return kind == LineKind::road || kind == LineKind::trail || kind == LineKind::power_line;
}

std::map<Uuid, MapNearby> nearby_lines(const TractData& data, StandId stand) {
  std::map<Uuid, MapNearby> nearby;
  for (const WalkTree& tree : placed_walk_trees(data)) {
    if (tree.stand != stand || data.lines.empty()) continue;
    MapNearby& near = nearby[tree.id.value];
    near.unplaced = !tree.position;
    if (near.unplaced) continue;
    for (const MapLine& line : data.lines) {
      const auto distance = distance_to_line(*tree.position, line.points);
      if (is_way(line.kind)) keep_nearer(near.way, distance);
      if (line.kind == LineKind::neighbour_line && !line.confirmed) {
        keep_nearer(near.unconfirmed_line, distance);
      }
    }
  }
  return nearby;
}

}  // namespace

Result<StandFacts> stand_facts(const TractData& data, StandId stand,
                               const ReleaseKnowledge& knowledge) {
  const auto record = std::find_if(data.stands.begin(), data.stands.end(),
                                   [&](const Stand& s) { return s.id == stand; });
  if (record == data.stands.end()) {
    return Error{ErrorCode::unknown_reference, "There is no such stand in this tract.",
                 "stand/" + to_text(stand), "Choose one of the tract's stands."};
  }
  StandFacts facts;
  facts.goal = record->goal;
  facts.covered = record->walked;
  facts.age_years = record->age_years;
  facts.site_index = record->site_index;
  facts.unconfirmed_lines = std::any_of(data.lines.begin(), data.lines.end(), [](const MapLine& l) {
    return l.kind == LineKind::neighbour_line && !l.confirmed;
  });
  const auto sample = stand_sample(data, stand);
  if (!sample) {
    if (sample.error().code == ErrorCode::no_data) return facts;
    return sample.error();
  }
  const Inches guard_from = knowledge.settings.guards.counted_from;
  const auto before = stand_density(data, stand, knowledge.species, guard_from);
  if (!before) return before.error();
  facts.before = *before;
  facts.sampled = true;
  const std::array<const StandSample*, 1> one = {&*sample};
  const auto stocking = stand_stocking(one, knowledge.species, {}, guard_from);
  if (!stocking) return stocking.error();
  if (stocking->guard.lo && stocking->guard.hi) {
    facts.stocking_interval = std::pair(*stocking->guard.lo, *stocking->guard.hi);
  }
  facts.within_guide = stocking->fit.fits();
  facts.advance_oak = advance_oak(*sample, knowledge.species);
  PlotTally(*sample, knowledge, facts);
  return facts;
}

Result<ReleaseInput> input_from_cards(const TractData& data, StandId stand,
                                      const ReleaseKnowledge& knowledge) {
  auto facts = stand_facts(data, stand, knowledge);
  if (!facts) return facts.error();
  auto graph = graph_from_cards(data.walk_trees, data.contacts, stand, knowledge.settings.contact);
  if (!graph) return graph.error();
  return ReleaseInput{knowledge,         std::move(*graph),
                      std::move(*facts), nearby_lines(data, stand),
                      data.acorn_counts, data.acorn_years};
}

}  // namespace oaklight
