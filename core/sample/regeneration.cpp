#include "core/sample/regeneration.hpp"

#include <algorithm>
#include <map>

namespace oaklight {
namespace {

constexpr std::array kHeights = {RegenHeight::under_1_ft, RegenHeight::from_1_to_4_5_ft,
                                 RegenHeight::over_4_5_ft};

/// Counts of one kind, by stand and plot; plots without are not listed.
struct Counts {
  std::vector<std::map<int, double>> by_stand;
  int counted = 0;

  void add(std::size_t stand, const CountedRegen& r) {
    by_stand[stand][r.plot] += r.regen->count;
    counted += r.regen->count;
  }
};

using Stands = std::span<const StandSample* const>;

Result<Estimate<TreesPerAcre>> stems_per_acre(Stands stands, const Counts& counts,
                                              const EstimateOptions& options) {
  std::vector<Stratum> strata;
  for (std::size_t h = 0; h < stands.size(); ++h) {
    std::vector<double> values;
    for (const auto& [plot, count] : counts.by_stand[h]) {
      values.push_back(count / stands[h]->regen_plot->value);
    }
    const auto moments = moments_of(values, static_cast<int>(stands[h]->plots.size()));
    if (!moments) return moments.error();
    strata.push_back({stands[h]->stand->acres.value, *moments, std::nullopt});
  }
  const auto e = stratified_mean(strata, options.confidence, options.df);
  if (!e) return e.error();
  return with_unit<TreesPerAcre>(*e);
}

int plots_with(const std::map<int, double>& counts) {
  return static_cast<int>(
      std::ranges::count_if(counts, [](const auto& entry) { return entry.second > 0.0; }));
}

/// The share over stands is the acre-weighted mean of 0 and 1 by plot, held within 0 .. 100 %.
Result<ShareEstimate> share_over(Stands stands, const Counts& counts,
                                 const EstimateOptions& options) {
  std::vector<Stratum> strata;
  for (std::size_t h = 0; h < stands.size(); ++h) {
    const int plots = static_cast<int>(stands[h]->plots.size());
    const int found = plots_with(counts.by_stand[h]);
    if (stands.size() == 1) return share_estimate(found, plots, options.confidence);
    const auto moments =
        moments_of(std::vector<double>(static_cast<std::size_t>(found), 1.0), plots);
    if (!moments) return moments.error();
    strata.push_back({stands[h]->stand->acres.value, *moments, std::nullopt});
  }
  const auto e = stratified_mean(strata, options.confidence, options.df);
  if (!e) return e.error();
  ShareEstimate share{.share = percent(e->mean),
                      .plots = e->plots,
                      .found = e->found,
                      .confidence = options.confidence};
  if (e->se && e->found < e->plots) {
    share.se = percent(*e->se);
    share.lo = percent(*e->lo);
    share.hi = percent(std::min(1.0, *e->hi));
  }
  return share;
}

/// All that is counted of the regeneration, by what it is reported as.
struct Tables {
  std::map<std::pair<SpeciesCode, RegenHeight>, Counts> cells;
  std::array<Counts, kHeights.size()> all, oak;
  Counts any_oak;
};

Result<Tables> tables_of(Stands stands, const SpeciesTable& species) {
  const Counts none{.by_stand = std::vector<std::map<int, double>>(stands.size())};
  Tables t;
  t.all.fill(none);
  t.oak.fill(none);
  t.any_oak = none;
  for (std::size_t h = 0; h < stands.size(); ++h) {
    for (const CountedRegen& r : stands[h]->regens) {
      const auto found = known_species(species, r.regen->species, *stands[h]);
      if (!found) return found.error();
      const Species* s = *found;
      const auto height = static_cast<std::size_t>(r.regen->height);
      t.cells.try_emplace({s->code, r.regen->height}, none).first->second.add(h, r);
      t.all[height].add(h, r);
      if (!s->is_oak()) continue;
      t.oak[height].add(h, r);
      t.any_oak.add(h, r);
    }
  }
  return t;
}

}  // namespace

Result<std::optional<RegenFigures>> regen_figures(Stands stands, const SpeciesTable& species,
                                                  const EstimateOptions& options) {
  RegenFigures f;
  bool same_size = true;
  for (const StandSample* s : stands) {
    if (!s->regen_plot) return std::optional<RegenFigures>();
    f.plots += static_cast<int>(s->plots.size());
    same_size = same_size && s->regen_plot == stands.front()->regen_plot;
  }
  if (same_size) f.plot = *stands.front()->regen_plot;
  const auto tables = tables_of(stands, species);
  if (!tables) return tables.error();
  for (const auto& [key, counts] : tables->cells) {
    const auto stems = stems_per_acre(stands, counts, options);
    if (!stems) return stems.error();
    f.cells.push_back({key.first, key.second, counts.counted, *stems});
  }
  for (std::size_t i = 0; i < kHeights.size(); ++i) {
    const auto all = stems_per_acre(stands, tables->all[i], options);
    if (!all) return all.error();
    f.all[i] = *all;
    const auto oak = stems_per_acre(stands, tables->oak[i], options);
    if (!oak) return oak.error();
    f.oak[i] = *oak;
  }
  if (same_size) {
    const auto share = share_over(stands, tables->any_oak, options);
    if (!share) return share.error();
    f.oak_plots = *share;
  }
  return std::optional(f);
}

}  // namespace oaklight
