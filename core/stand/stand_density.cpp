#include "core/stand/stand_density.hpp"

#include "core/sample/stand_sample.hpp"
#include "core/stand/stand_stocking.hpp"

namespace oaklight {
namespace {

/// Sums over plots made into what stands on an average acre.
StockingSums per_plot(StockingSums sums, double plots) {
  return {sums.trees / plots, sums.diameters / plots, sums.squared_diameters / plots};
}

}  // namespace

Result<StandDensity> stand_density(const TractData& data, StandId stand,
                                   const SpeciesTable& species, Inches guard_from) {
  const auto sample = stand_sample(data, stand);
  if (!sample) return sample.error();
  StandDensity d{.plots = static_cast<int>(sample->plots.size())};
  for (const TalliedTree& t : sample->trees) {
    const TreeFacts& facts = t.tree->facts;
    const auto found = known_species(species, facts.species, *sample);
    if (!found) return found.error();
    const Species* s = *found;
    if (facts.status == TreeStatus::dead) continue;
    d.live.add(facts.dbh.inches(), t.trees);
    if (counts_for_guard(facts, guard_from)) d.guard.add(facts.dbh.inches(), t.trees);
    d.ba += t.ba;
    if (s->is_oak()) d.ba_oak += t.ba;
    if (s->is_oak() && s->oak_group == OakGroup::white) d.ba_white_oak += t.ba;
    if (s->is_oak() && s->oak_group == OakGroup::red) d.ba_red_oak += t.ba;
  }
  const double n = d.plots;
  d.live = per_plot(d.live, n);
  d.guard = per_plot(d.guard, n);
  for (SquareFeetPerAcre* ba : {&d.ba, &d.ba_oak, &d.ba_white_oak, &d.ba_red_oak}) *ba = *ba / n;
  return d;
}

}  // namespace oaklight
