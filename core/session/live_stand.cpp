#include "core/session/live_stand.hpp"

#include <utility>

#include "core/sample/group_tally.hpp"

namespace oaklight {
namespace {

/// A plot with what was recorded on it, as a tract of its own; without its trees.
TractData alone(const LiveTract& live, const Plot& plot, const Cruise& cruise) {
  TractData data;
  Stand stand;  // what else the stand has, an outline above all, matters to no plot
  stand.id = plot.stand;
  stand.name = "here";
  stand.acres = Acres{1.0};
  data.stands = {std::move(stand)};
  data.cruises = {cruise};
  data.plots = {plot};
  for (const Regen* regen : live.regens_of(plot.id)) data.regens.push_back(*regen);
  return data;
}

/// Its sample, by the rules of every other. Errors: of stand_sample; no_data where it is only
/// planned or skipped.
Result<StandSample> sample_of(const TractData& alone, const std::vector<const Tree*>& trees) {
  SampleStream stream;
  if (const auto begun = stream.begin(alone); !begun) return begun.error();
  for (const Tree* tree : trees) {
    if (const auto taken = stream.take(*tree); !taken) return taken.error();
  }
  auto cruised = stream.finish(alone);
  if (!cruised) return cruised.error();
  return std::move(cruised->front().sample);
}

/// The live trees of a plot, summed. Errors: unknown_species for anything that was found there.
Result<GroupTally> live_trees(const StandSample& sample, const SpeciesTable& species) {
  GroupTally live;
  for (const TalliedTree& t : Tallies(sample)) {
    if (const auto s = known_species(species, t.tree->facts.species, sample); !s) return s.error();
    if (t.tree->facts.status != TreeStatus::dead) live.add(t);
  }
  for (const CountedStems& c : sample.counted) {
    if (const auto s = known_species(species, c.species, sample); !s) return s.error();
    live.add(c);
  }
  for (const CountedRegen& r : sample.regens) {
    if (const auto s = known_species(species, r.regen->species, sample); !s) return s.error();
  }
  return live;
}

}  // namespace

StandNow stand_now(const AreaEstimate& area) {
  return {.plots = area.plots, .ba = area.live.ba, .trees = area.live.trees, .need = area.need};
}

LiveStand::LiveStand(const LiveTract& live, const SpeciesTable& species, StandId stand)
    : live_(live), species_(species), stand_(stand) {
  begin();
}

void LiveStand::begin() {
  parts_.clear();
  cruises_.clear();
  labels_.clear();
  ba_ = trees_ = {};
  visited_ = faults_ = same_label_ = count_points_ = counted_ = small_plots_ = 0;
  measured_with_trees_ = 0;
  records_ = 0;
  followed_ = live_.followed();
  for (const Plot* plot : live_.plots_of(stand_)) bring_up(plot->id);
}

void LiveStand::follow() {
  const std::uint64_t seen = std::exchange(followed_, live_.followed());
  if (seen == followed_) return;
  if (seen + 1 != followed_ || cruise_changed()) return begin();
  for (const PlotId& plot : live_.touched()) bring_up(plot);
}

bool LiveStand::cruise_changed() const {
  for (const auto& [id, laid] : cruises_) {
    const Cruise* now = live_.find(id);
    if ((now == nullptr) != !laid.cruise) return true;
    if (now != nullptr && !same_design(*now, *laid.cruise)) return true;
  }
  return false;
}

LiveStand::Part LiveStand::part_of(const Plot& plot) const {
  Part part{.cruise = plot.cruise, .label = plot.label, .visited = in_sample(plot)};
  part.records = live_.tree_records_of(plot.id);
  const Cruise* cruise = live_.find(plot.cruise);
  if (cruise == nullptr) {
    part.fault = true;
    return part;
  }
  const TractData data = alone(live_, plot, *cruise);
  const auto sample = sample_of(data, live_.trees_of(plot.id));
  if (!sample) {
    part.fault = part.visited || sample.error().code != ErrorCode::no_data;
    return part;
  }
  const auto live = live_trees(*sample, species_);
  part.fault = !live;
  if (!live) return part;
  part.count_point = sample->double_sampled();
  part.counted = !sample->all_sized();
  part.small_plot = live->on_small_plot();
  if (!live->plots().empty()) {
    part.ba = live->plots().front().ba;
    part.trees = live->plots().front().sums.trees;
  }
  part.fault = !RunningMoments::holds(part.ba) || !RunningMoments::holds(part.trees);
  return part;
}

void LiveStand::bring_up(PlotId id) {
  if (const auto old = parts_.find(id); old != parts_.end()) {
    weigh(old->second, -1);
    parts_.erase(old);
  }
  const Plot* plot = live_.find(id);
  if (plot == nullptr || plot->stand != stand_) return;
  Part part = part_of(*plot);
  weigh(part, 1);
  parts_.emplace(id, std::move(part));
}

void LiveStand::weigh(const Part& part, int by) {
  Laid& laid = cruises_[part.cruise];
  if (laid.plots == 0) {
    if (const Cruise* cruise = live_.find(part.cruise)) laid.cruise = *cruise;
  }
  laid.plots += by;
  if (laid.plots == 0) cruises_.erase(part.cruise);
  records_ = by > 0 ? records_ + part.records : records_ - part.records;
  faults_ += part.fault ? by : 0;
  if (!part.visited) return;
  visited_ += by;
  if (!part.label.empty()) {
    int& same = labels_[part.label];
    same_label_ += by > 0 ? (same > 0 ? 1 : 0) : (same > 1 ? -1 : 0);
    same += by;
    if (same == 0) labels_.erase(part.label);
  }
  if (part.fault) return;
  count_points_ += part.count_point ? by : 0;
  counted_ += part.counted ? by : 0;
  small_plots_ += part.small_plot ? by : 0;
  measured_with_trees_ += !part.count_point && part.ba > 0.0 ? by : 0;
  if (by > 0) {
    ba_.add(part.ba);
    trees_.add(part.trees);
  } else {
    ba_.remove(part.ba);
    trees_.remove(part.trees);
  }
}

bool LiveStand::must_be_full() const {
  if (visited_ == 0 || faults_ > 0 || same_label_ > 0 || cruises_.size() != 1) return true;
  if (count_points_ == 0) return false;
  // What is not told at count points comes from the trees of the others.
  return count_points_ == visited_ || (ba_.found() > 0 && measured_with_trees_ == 0);
}

std::optional<StandNow> LiveStand::now(const EstimateOptions& options) const {
  const Stand* stand = live_.find(stand_);
  if (stand == nullptr || must_be_full()) return std::nullopt;
  const Design& design = cruises_.begin()->second.cruise->design;
  const auto population = options.finite_population
                              ? plots_to_tile(stand->acres, design, small_plots_ > 0)
                              : std::nullopt;
  const auto estimate = [&](const RunningMoments& moments) {
    return mean_estimate(moments.of(visited_), options.confidence, population);
  };
  StandNow now{.plots = visited_,
               .ba = with_unit<SquareFeetPerAcre>(estimate(ba_)),
               .trees = {},
               .need = PlotNeed{}};
  if (counted_ == 0) now.trees = with_unit<TreesPerAcre>(estimate(trees_));
  now.need = need_of_one(*stand, now.ba, population, options);
  return now;
}

}  // namespace oaklight
