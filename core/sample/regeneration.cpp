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
    const auto moments = moments_of(values, stands[h]->measure_plots());
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

Result<ShareEstimate> share_of(Stands stands, const Counts& counts,
                               const EstimateOptions& options) {
  std::vector<OccupiedStratum> strata;
  for (std::size_t h = 0; h < stands.size(); ++h) {
    strata.push_back({stands[h]->stand->acres.value, plots_with(counts.by_stand[h]),
                      stands[h]->measure_plots()});
  }
  return share_over(strata, options.confidence, options.df);
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
    f.plots += s->measure_plots();  // nobody counts seedlings at a count point
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
    const auto share = share_of(stands, tables->any_oak, options);
    if (!share) return share.error();
    f.oak_plots = *share;
  }
  return std::optional(f);
}

}  // namespace oaklight
