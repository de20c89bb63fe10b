#include "core/sample/cruise_estimate.hpp"

#include <algorithm>
#include <map>

namespace oaklight {
namespace {

using Stands = std::span<const StandSample* const>;
using Tallies = std::vector<GroupTally>;  // one a stand

/// All groups that are reported, tallied in one pass over the trees.
struct Groups {
  Tallies live, dead;  ///< live: with the trees that were counted without a size
  std::map<SpeciesCode, Tallies> by_species;
  std::map<DbhClass, Tallies> by_class;
  std::map<std::pair<SpeciesCode, DbhClass>, Tallies> by_species_class;
};

template <class Key>
GroupTally& tally_in(std::map<Key, Tallies>& groups, const Key& key, std::size_t stand,
                     std::size_t stands) {
  return groups.try_emplace(key, stands).first->second[stand];
}

Result<Groups> groups_of(Stands stands, const SpeciesTable& table, const EstimateOptions& options) {
  Groups g{.live = Tallies(stands.size()), .dead = Tallies(stands.size())};
  for (std::size_t h = 0; h < stands.size(); ++h) {
    for (const TalliedTree& t : stands[h]->trees) {
      const TreeFacts& facts = t.tree->facts;
      const auto species = known_species(table, facts.species, *stands[h]);
      if (!species) return species.error();
      if (facts.status == TreeStatus::dead) {
        g.dead[h].add(t);
        continue;
      }
      const TreeVolumes volumes = volumes_of(facts, **species, options);
      const DbhClass size = dbh_class(facts.dbh, options.class_width);
      g.live[h].add(t, volumes);
      tally_in(g.by_species, facts.species, h, stands.size()).add(t, volumes);
      tally_in(g.by_class, size, h, stands.size()).add(t, volumes);
      tally_in(g.by_species_class, {facts.species, size}, h, stands.size()).add(t, volumes);
    }
    for (const CountedStems& counted : stands[h]->counted) {
      if (const auto species = known_species(table, counted.species, *stands[h]); !species) {
        return species.error();
      }
      g.live[h].add(counted);
      tally_in(g.by_species, counted.species, h, stands.size()).add(counted);
    }
  }
  return g;
}

/// What is estimated of an area, and its groups.
struct Area {
  Stands stands;
  const Groups& groups;
  const EstimateOptions& options;

  [[nodiscard]] Result<GroupFigures> figures_of(const Tallies& tallies, AtCountPoints at) const {
    std::vector<StandGroup> parts;
    for (std::size_t h = 0; h < stands.size(); ++h) {
      parts.push_back({stands[h], &tallies[h], &groups.live[h]});
    }
    return group_figures(parts, options, at);
  }
};

/// The same for each group of a table; row turns a key and its figures into a row.
template <class Key, class Rows, class Row>
Status fill(Rows& rows, const std::map<Key, Tallies>& groups, const Area& area, AtCountPoints at,
            Row row) {
  for (const auto& [key, tallies] : groups) {
    const auto figures = area.figures_of(tallies, at);
    if (!figures) return figures.error();
    rows.push_back(row(key, *figures));
  }
  return Done{};
}

/// On how many plots a group was found; nothing where plots of different kinds would be counted
/// together.
Result<std::optional<ShareEstimate>> occupied(const Area& area, const Tallies& tallies) {
  std::vector<OccupiedStratum> strata;
  for (std::size_t h = 0; h < area.stands.size(); ++h) {
    const StandSample& s = *area.stands[h];
    if (s.design != area.stands.front()->design || s.thin_design) {
      return std::optional<ShareEstimate>();
    }
    strata.push_back({s.stand->acres.value, static_cast<int>(tallies[h].plots().size()),
                      static_cast<int>(s.plots.size())});
  }
  const auto share = share_over(strata, area.options.confidence, area.options.df);
  if (!share) return share.error();
  return std::optional(*share);
}

int plots_without_trees(const StandSample& sample) {
  std::vector<bool> with(sample.plots.size(), false);
  for (const TalliedTree& t : sample.trees) with[static_cast<std::size_t>(t.plot)] = true;
  for (const CountedStems& c : sample.counted) with[static_cast<std::size_t>(c.plot)] = true;
  return static_cast<int>(std::ranges::count(with, false));
}

Result<PlotPlan> plan_for(Stands stands, const AreaEstimate& area, const Tallies& live,
                          const EstimateOptions& options) {
  const ErrorGoal goal{options.goal, options.confidence};
  if (stands.size() == 1) {
    if (!area.live.ba.cv) {
      return Error{ErrorCode::too_few_plots, "The spread between plots is not known yet.",
                   "stand/" + stands[0]->stand->name, "Measure at least two plots with trees."};
    }
    const auto n =
        plots_needed(*area.live.ba.cv, goal,
                     options.finite_population ? plots_to_tile(*stands[0], live[0].on_small_plot())
                                               : std::nullopt);
    if (!n) return n.error();
    return PlotPlan{*n, {*n}};
  }
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
  return plan_plots(plans, goal);
}

Result<PlotNeed> need_of(Stands stands, const AreaEstimate& area, const Tallies& live,
                         const EstimateOptions& options) {
  const auto plan = plan_for(stands, area, live, options);
  if (!plan) return plan.error();
  PlotNeed need{.plan = *plan};
  for (std::size_t h = 0; h < stands.size(); ++h) {
    need.more += std::max(0, plan->by_stand[h] - static_cast<int>(stands[h]->plots.size()));
  }
  return need;
}

Status fill_tables(AreaEstimate& estimate, const Area& area) {
  const Groups& groups = area.groups;
  if (const auto done = fill(estimate.by_species, groups.by_species, area, AtCountPoints::counted,
                             [](SpeciesCode s, const GroupFigures& f) {
                               return SpeciesFigures{s, f, {}};
                             });
      !done) {
    return done.error();
  }
  for (SpeciesFigures& row : estimate.by_species) {
    const auto share = occupied(area, groups.by_species.at(row.species));
    if (!share) return share.error();
    row.on_plots = *share;
  }
  if (const auto done = fill(estimate.by_class, groups.by_class, area, AtCountPoints::sized,
                             [](DbhClass c, const GroupFigures& f) {
                               return ClassFigures{c, f};
                             });
      !done) {
    return done.error();
  }
  return fill(estimate.by_species_class, groups.by_species_class, area, AtCountPoints::sized,
              [](const auto& key, const GroupFigures& f) {
                return SpeciesClassFigures{key.first, key.second, f};
              });
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

Result<AreaEstimate> estimate_all(const std::vector<CruisedStand>& cruised,
                                  const SpeciesTable& species, const EstimateOptions& options) {
  std::vector<const StandSample*> samples;
  for (const CruisedStand& c : cruised) {
    if (!c.sample) return c.sample.error();
    samples.push_back(&*c.sample);
  }
  return area_estimate(samples, species, options);
}

}  // namespace

Result<AreaEstimate> area_estimate(Stands stands, const SpeciesTable& species,
                                   const EstimateOptions& options) {
  if (stands.empty()) return nothing_cruised();
  if (const auto fit = comparable(stands); !fit) return fit.error();
  const auto groups = groups_of(stands, species, options);
  if (!groups) return groups.error();
  const Area parts{stands, *groups, options};
  const auto live = parts.figures_of(groups->live, AtCountPoints::counted);
  if (!live) return live.error();
  const auto dead = parts.figures_of(groups->dead, AtCountPoints::not_counted);
  if (!dead) return dead.error();
  AreaEstimate area{.live = *live, .dead = *dead, .need = nothing_cruised()};
  for (const StandSample* s : stands) {
    area.acres += s->stand->acres;
    area.plots += static_cast<int>(s->plots.size());
    area.empty_plots += plots_without_trees(*s);
    area.planned += s->planned;
    area.skipped += s->skipped;
    area.below_min += s->below_min;
    area.measure_plots += s->measure_plots();
  }
  if (const auto done = fill_tables(area, parts); !done) return done.error();
  const auto regen = regen_figures(stands, species, options);
  if (!regen) return regen.error();
  area.regen = *regen;
  area.need = need_of(stands, area, groups->live, options);
  return area;
}

Result<CruiseEstimate> cruise_estimate(const TractData& data, const SpeciesTable& species,
                                       const EstimateOptions& options) {
  const auto cruised = cruised_stands(data);
  if (!cruised) return cruised.error();
  CruiseEstimate estimate{
      .stands = {}, .not_cruised = {}, .all = estimate_all(*cruised, species, options)};
  auto next = cruised->begin();
  for (const Stand& stand : data.stands) {
    if (next == cruised->end() || next->stand != &stand) {
      estimate.not_cruised.push_back(stand.id);
      continue;
    }
    const auto figures = [&]() -> Result<AreaEstimate> {
      if (!next->sample) return next->sample.error();
      const StandSample* sample = &*next->sample;
      return area_estimate({&sample, 1}, species, options);
    };
    estimate.stands.push_back({stand.id, figures()});
    ++next;
  }
  return estimate;
}

}  // namespace oaklight
