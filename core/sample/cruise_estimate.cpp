#include "core/sample/cruise_estimate.hpp"

#include <algorithm>
#include <cstdint>
#include <map>
#include <type_traits>

#include "core/sample/volumes_once.hpp"

namespace oaklight {
namespace {

using Stands = std::span<const StandSample* const>;
using ByStand = std::vector<GroupTally>;  // one group, one tally a stand

/// Places of trees among those of one stand.
using Places = std::vector<std::uint32_t>;

/// On how many plots a group was found; nothing where plots of different kinds would be counted
/// together.
Result<std::optional<ShareEstimate>> occupied(std::span<const StandGroup> stands,
                                              const EstimateOptions& options) {
  std::vector<OccupiedStratum> strata;
  for (const StandGroup& group : stands) {
    const StandSample& s = *group.sample;
    if (s.design != stands.front().sample->design || s.thin_design) {
      return std::optional<ShareEstimate>();
    }
    strata.push_back({s.stand->acres.value, static_cast<int>(group.tally->plots().size()),
                      static_cast<int>(s.plots.size())});
  }
  const auto share = share_over(strata, options.confidence, options.df);
  if (!share) return share.error();
  return std::optional(*share);
}

int plots_without_trees(const StandSample& sample) {
  std::vector<bool> with(sample.plots.size(), false);
  for (const TalliedTree& t : Tallies(sample)) with[static_cast<std::size_t>(t.plot)] = true;
  for (const CountedStems& c : sample.counted) with[static_cast<std::size_t>(c.plot)] = true;
  return static_cast<int>(std::ranges::count(with, false));
}

Result<PlotNeed> need_over(Stands stands, const ByStand& live, const EstimateOptions& options) {
  std::vector<PlannedStand> plans;
  for (std::size_t h = 0; h < stands.size(); ++h) {
    const std::vector<StandGroup> one{{stands[h], &live[h]}};
    const auto ba = estimate_over(one, options, [](const PlotSums& p) { return p.ba; });
    if (!ba) return ba.error();
    if (ba->trust == Trust::one_plot || ba->plots < 2) {
      return Error{ErrorCode::too_few_plots, "A stand has a single plot.",
                   "stand/" + stands[h]->stand->name, "Measure another one there."};
    }
    plans.push_back({stands[h]->stand->acres, ba->mean, ba->sd.value_or(0.0)});
  }
  const auto plan = plan_plots(plans, {options.goal, options.confidence});
  if (!plan) return plan.error();
  PlotNeed need{.plan = *plan};
  for (std::size_t h = 0; h < stands.size(); ++h) {
    need.more += std::max(0, plan->by_stand[h] - static_cast<int>(stands[h]->plots.size()));
  }
  return need;
}

Result<PlotNeed> need_of(Stands stands, const AreaEstimate& area, const ByStand& live,
                         const EstimateOptions& options) {
  if (stands.size() > 1) return need_over(stands, live, options);
  const auto population =
      options.finite_population ? plots_to_tile(*stands[0], live[0].on_small_plot()) : std::nullopt;
  return need_of_one(*stands[0]->stand, area.live.ba, population, options);
}

Error nothing_cruised() {
  return {ErrorCode::no_data, "No stand has a plot.", "plots", "Lay out a cruise first."};
}

/// Over stands only figures of the same trees can be averaged, and only by acres.
Status comparable(Stands stands) {
  for (const StandSample* s : stands) {
    if (stands.size() > 1 && !(s->stand->acres.value > 0.0)) {
      return Error{ErrorCode::out_of_range, "Stand " + s->stand->name + " has no acres.",
                   "stand/" + s->stand->name + "/acres",
                   "Give its area; it weighs the stand against the others."};
    }
    if (s->min_dbh == stands.front()->min_dbh) continue;
    return Error{ErrorCode::mixed_designs,
                 "Stands " + stands.front()->stand->name + " and " + s->stand->name +
                     " differ in the smallest tree tallied.",
                 "stand/" + s->stand->name, "Read the stands one by one, or cruise them alike."};
  }
  return Done{};
}

/// One area whose figures are asked for. The first fault found is the one told.
struct Area {
  std::vector<std::size_t> stands;  ///< places among the stands of the sweep
  AreaEstimate estimate;
  std::optional<Error> fault{};

  [[nodiscard]] Result<AreaEstimate> result() && {
    if (fault) return *std::move(fault);
    return std::move(estimate);
  }
};

Area area_of(std::vector<std::size_t> stands) {
  return {.stands = std::move(stands), .estimate = {.need = nothing_cruised()}};
}

/// Figures of several areas at once, group by group: of one group at a time every tree is summed,
/// so that memory holds the sums of that group alone, and areas that share a stand share its sums.
class Sweep {
 public:
  Sweep(Stands stands, const SpeciesTable& table, const EstimateOptions& options)
      : stands_(stands),
        table_(table),
        options_(options),
        volumes_(table, options),
        live_(stands.size()),
        dead_(stands.size()),
        faults_(stands.size()) {}

  void run(std::vector<Area>& areas);

 private:
  template <class Key>
  using Groups = std::map<Key, std::vector<Places>>;

  Status sum_up(std::size_t stand);
  /// Live trees by what key_of says of each.
  template <class Key, class KeyOf>
  Groups<Key> grouped(KeyOf key_of) const;
  template <class Key, class KeyOf, class Row>
  void add_table(std::vector<Area>& areas, AtCountPoints at, KeyOf key_of, Row add_row);
  ByStand tallies_of(const std::vector<Places>& places);
  [[nodiscard]] std::vector<StandGroup> groups_in(const Area& area, const ByStand& tallies) const;
  void add_counted(Groups<SpeciesCode>& groups) const;
  void add_counted(SpeciesCode species, ByStand& tallies) const;
  void add_whole(Area& area);
  void add_rest(Area& area);

  Stands stands_;
  const SpeciesTable& table_;
  const EstimateOptions& options_;
  VolumesOnce volumes_;
  ByStand live_, dead_;  ///< live: with the trees that were counted without a size
  std::vector<std::optional<Error>> faults_;
};

Status Sweep::sum_up(std::size_t h) {
  const StandSample& sample = *stands_[h];
  for (const TalliedTree& t : Tallies(sample)) {
    const auto volumes = volumes_.of(t.tree->facts, sample);
    if (!volumes) return volumes.error();
    const bool dead = t.tree->facts.status == TreeStatus::dead;
    dead ? dead_[h].add(t) : live_[h].add(t, **volumes);
  }
  for (const CountedStems& counted : sample.counted) {
    if (const auto species = known_species(table_, counted.species, sample); !species) {
      return species.error();
    }
    live_[h].add(counted);
  }
  return Done{};
}

template <class Key, class KeyOf>
Sweep::Groups<Key> Sweep::grouped(KeyOf key_of) const {
  Groups<Key> groups;
  for (std::size_t h = 0; h < stands_.size(); ++h) {
    if (faults_[h]) continue;
    const Tallies trees(*stands_[h]);
    for (auto t = trees.begin(); t != trees.end(); ++t) {
      const TreeFacts& facts = t.facts();
      if (facts.status == TreeStatus::dead) continue;
      groups.try_emplace(key_of(facts), stands_.size()).first->second[h].push_back(t.place());
    }
  }
  if constexpr (std::is_same_v<Key, SpeciesCode>) add_counted(groups);
  return groups;
}

/// A species that was only ever counted is a group, too.
void Sweep::add_counted(Groups<SpeciesCode>& groups) const {
  for (const StandSample* sample : stands_) {
    for (const CountedStems& c : sample->counted) groups.try_emplace(c.species, stands_.size());
  }
}

void Sweep::add_counted(SpeciesCode species, ByStand& tallies) const {
  for (std::size_t h = 0; h < stands_.size(); ++h) {
    for (const CountedStems& c : stands_[h]->counted) {
      if (c.species == species) tallies[h].add(c);
    }
  }
}

ByStand Sweep::tallies_of(const std::vector<Places>& places) {
  ByStand tallies(stands_.size());
  for (std::size_t h = 0; h < stands_.size(); ++h) {
    for (const TalliedTree& t : Tallies(*stands_[h], places[h])) {
      // Each was looked up before, when all were summed.
      if (const auto volumes = volumes_.of(t.tree->facts, *stands_[h])) {
        tallies[h].add(t, **volumes);
      }
    }
  }
  return tallies;
}

std::vector<StandGroup> Sweep::groups_in(const Area& area, const ByStand& tallies) const {
  std::vector<StandGroup> groups;
  for (const std::size_t h : area.stands) groups.push_back({stands_[h], &tallies[h], &live_[h]});
  return groups;
}

template <class Key, class KeyOf, class Row>
void Sweep::add_table(std::vector<Area>& areas, AtCountPoints at, KeyOf key_of, Row add_row) {
  for (const auto& [key, places] : grouped<Key>(key_of)) {
    ByStand tallies = tallies_of(places);
    if constexpr (std::is_same_v<Key, SpeciesCode>) add_counted(key, tallies);
    for (Area& area : areas) {
      const auto groups = groups_in(area, tallies);
      const auto there = [](const StandGroup& g) { return !g.tally->plots().empty(); };
      if (area.fault || std::ranges::none_of(groups, there)) continue;
      const auto figures = group_figures(groups, options_, at);
      if (!figures) {
        area.fault = figures.error();
      } else if (const Status added = add_row(area.estimate, key, *figures, groups); !added) {
        area.fault = added.error();
      }
    }
  }
}

/// All live and all dead trees, and what is counted of plots.
void Sweep::add_whole(Area& area) {
  const auto live = group_figures(groups_in(area, live_), options_, AtCountPoints::counted);
  if (!live) return void(area.fault = live.error());
  const auto dead = group_figures(groups_in(area, dead_), options_, AtCountPoints::not_counted);
  if (!dead) return void(area.fault = dead.error());
  AreaEstimate& e = area.estimate;
  e.live = *live;
  e.dead = *dead;
  for (const std::size_t h : area.stands) {
    const StandSample& s = *stands_[h];
    e.acres += s.stand->acres;
    e.plots += static_cast<int>(s.plots.size());
    e.empty_plots += plots_without_trees(s);
    e.planned += s.planned;
    e.skipped += s.skipped;
    e.below_min += s.below_min;
    e.measure_plots += s.measure_plots();
  }
}

void Sweep::add_rest(Area& area) {
  std::vector<const StandSample*> samples;
  ByStand live;
  for (const std::size_t h : area.stands) {
    samples.push_back(stands_[h]);
    live.push_back(live_[h]);
  }
  const auto regen = regen_figures(samples, table_, options_);
  if (!regen) return void(area.fault = regen.error());
  area.estimate.regen = *regen;
  area.estimate.need = need_of(samples, area.estimate, live, options_);
}

void Sweep::run(std::vector<Area>& areas) {
  for (std::size_t h = 0; h < stands_.size(); ++h) {
    if (const auto summed = sum_up(h); !summed) faults_[h] = summed.error();
  }
  for (Area& area : areas) {
    for (const std::size_t h : area.stands) {
      if (!area.fault && faults_[h]) area.fault = faults_[h];
    }
    if (!area.fault) add_whole(area);
  }
  add_table<SpeciesCode>(
      areas, AtCountPoints::counted, [](const TreeFacts& f) { return f.species; },
      [&](AreaEstimate& e, SpeciesCode s, const GroupFigures& f, const auto& groups) -> Status {
        const auto share = occupied(groups, options_);
        if (!share) return share.error();
        e.by_species.push_back({s, f, *share});
        return Done{};
      });
  const auto class_of = [&](const TreeFacts& f) { return dbh_class(f.dbh, options_.class_width); };
  add_table<DbhClass>(
      areas, AtCountPoints::sized, class_of,
      [](AreaEstimate& e, DbhClass c, const GroupFigures& f, const auto&) -> Status {
        e.by_class.push_back({c, f});
        return Done{};
      });
  add_table<std::pair<SpeciesCode, DbhClass>>(
      areas, AtCountPoints::sized,
      [&](const TreeFacts& f) { return std::pair(f.species, class_of(f)); },
      [](AreaEstimate& e, const auto& key, const GroupFigures& f, const auto&) -> Status {
        e.by_species_class.push_back({key.first, key.second, f});
        return Done{};
      });
  for (Area& area : areas) {
    if (!area.fault) add_rest(area);
  }
}

/// The figures of all stands that were cruised, where each has its sample and they go together.
Area all_of(const std::vector<CruisedStand>& cruised, Stands samples) {
  Area all = area_of({});
  for (const CruisedStand& c : cruised) {
    if (!c.sample && !all.fault) all.fault = c.sample.error();
  }
  if (cruised.empty()) all.fault = nothing_cruised();
  if (all.fault) return all;
  if (const auto fit = comparable(samples); !fit) all.fault = fit.error();
  for (std::size_t h = 0; h < samples.size(); ++h) all.stands.push_back(h);
  return all;
}

}  // namespace

Result<PlotNeed> need_of_one(const Stand& stand, const Estimate<SquareFeetPerAcre>& ba,
                             std::optional<double> population, const EstimateOptions& options) {
  if (!ba.cv) {
    return Error{ErrorCode::too_few_plots, "The spread between plots is not known yet.",
                 "stand/" + stand.name, "Measure at least two plots with trees."};
  }
  const auto n = plots_needed(*ba.cv, {options.goal, options.confidence}, population);
  if (!n) return n.error();
  return PlotNeed{.plan = {*n, {*n}}, .more = std::max(0, *n - ba.plots)};
}

Result<AreaEstimate> area_estimate(Stands stands, const SpeciesTable& species,
                                   const EstimateOptions& options) {
  if (stands.empty()) return nothing_cruised();
  if (const auto fit = comparable(stands); !fit) return fit.error();
  std::vector<Area> areas{area_of({})};
  for (std::size_t h = 0; h < stands.size(); ++h) areas.front().stands.push_back(h);
  Sweep(stands, species, options).run(areas);
  return std::move(areas.front()).result();
}

Result<CruiseEstimate> cruise_estimate(const TractData& data, const SpeciesTable& species,
                                       const EstimateOptions& options) {
  const auto cruised = cruised_stands(data);
  if (!cruised) return cruised.error();
  return cruise_estimate(data, *cruised, species, options);
}

CruiseEstimate cruise_estimate(const TractData& data, const std::vector<CruisedStand>& cruised,
                               const SpeciesTable& species, const EstimateOptions& options) {
  std::vector<const StandSample*> samples;
  std::vector<Area> areas;
  for (const CruisedStand& c : cruised) {
    if (!c.sample) continue;
    areas.push_back(area_of({samples.size()}));
    samples.push_back(&*c.sample);
  }
  areas.push_back(all_of(cruised, samples));
  Sweep(samples, species, options).run(areas);
  CruiseEstimate estimate{.stands = {}, .not_cruised = {}, .all = std::move(areas.back()).result()};
  auto next = cruised.begin();
  auto area = areas.begin();
  for (const Stand& stand : data.stands) {
    if (next == cruised.end() || next->stand != &stand) {
      estimate.not_cruised.push_back(stand.id);
      continue;
    }
    if (next->sample) {
      estimate.stands.push_back({stand.id, std::move(*area++).result()});
    } else {
      estimate.stands.push_back({stand.id, next->sample.error()});
    }
    ++next;
  }
  return estimate;
}

}  // namespace oaklight
