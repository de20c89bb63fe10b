#include "core/sample/cruise_estimate.hpp"

#include <algorithm>
#include <map>

namespace oaklight {
namespace {

using Stands = std::span<const StandSample* const>;
using Tallies = std::vector<GroupTally>;  // one a stand

/// All groups that are reported, tallied in one pass over the trees.
struct Groups {
  Tallies live, dead;
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
  }
  return g;
}

Result<GroupFigures> figures_of(Stands stands, const Tallies& tallies,
                                const EstimateOptions& options) {
  std::vector<StandGroup> parts;
  for (std::size_t h = 0; h < stands.size(); ++h) parts.push_back({stands[h], &tallies[h]});
  return group_figures(parts, options);
}

/// The same for each group of a table; row turns a key and its figures into a row.
template <class Key, class Rows, class Row>
Status fill(Rows& rows, const std::map<Key, Tallies>& groups, Stands stands,
            const EstimateOptions& options, Row row) {
  for (const auto& [key, tallies] : groups) {
    const auto figures = figures_of(stands, tallies, options);
    if (!figures) return figures.error();
    rows.push_back(row(key, *figures));
  }
  return Done{};
}

int plots_without_trees(const StandSample& sample) {
  int with = 0;
  int last = -1;
  for (const TalliedTree& t : sample.trees) {
    with += t.plot != last ? 1 : 0;
    last = t.plot;
  }
  return static_cast<int>(sample.plots.size()) - with;
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

Status fill_tables(AreaEstimate& area, const Groups& groups, Stands stands,
                   const EstimateOptions& options) {
  if (const auto done = fill(area.by_species, groups.by_species, stands, options,
                             [](SpeciesCode s, const GroupFigures& f) {
                               return SpeciesFigures{s, f};
                             });
      !done) {
    return done.error();
  }
  if (const auto done = fill(area.by_class, groups.by_class, stands, options,
                             [](DbhClass c, const GroupFigures& f) {
                               return ClassFigures{c, f};
                             });
      !done) {
    return done.error();
  }
  return fill(area.by_species_class, groups.by_species_class, stands, options,
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
  const auto live = figures_of(stands, groups->live, options);
  if (!live) return live.error();
  const auto dead = figures_of(stands, groups->dead, options);
  if (!dead) return dead.error();
  AreaEstimate area{.live = *live, .dead = *dead, .need = nothing_cruised()};
  for (const StandSample* s : stands) {
    area.acres += s->stand->acres;
    area.plots += static_cast<int>(s->plots.size());
    area.empty_plots += plots_without_trees(*s);
    area.planned += s->planned;
    area.skipped += s->skipped;
    area.below_min += s->below_min;
  }
  if (const auto done = fill_tables(area, *groups, stands, options); !done) return done.error();
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
