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
  SquareFeetPerAcre sized;  // basal area of the trees whose sizes are in the sums below
  const auto count_ba = [&](SpeciesCode code, SquareFeetPerAcre ba) -> Status {
    const auto found = known_species(species, code, *sample);
    if (!found) return found.error();
    const Species* s = *found;
    d.ba += ba;
    if (s->is_oak()) d.ba_oak += ba;
    if (s->is_oak() && s->oak_group == OakGroup::white) d.ba_white_oak += ba;
    if (s->is_oak() && s->oak_group == OakGroup::red) d.ba_red_oak += ba;
    return Done{};
  };
  for (const TalliedTree& t : sample->trees) {
    const TreeFacts& facts = t.tree->facts;
    const bool dead = facts.status == TreeStatus::dead;
    const Status counted = count_ba(facts.species, dead ? SquareFeetPerAcre{} : t.ba);
    if (!counted) return counted.error();
    if (dead || !(sample->all_sized() || t.measured)) continue;
    sized += t.ba;
    d.live.add(facts.dbh.inches(), t.trees);
    if (counts_for_guard(facts, guard_from)) d.guard.add(facts.dbh.inches(), t.trees);
  }
  for (const CountedStems& c : sample->counted) {
    if (const Status counted = count_ba(c.species, c.ba); !counted) return counted.error();
  }
  if (d.ba.value > 0.0 && !(sized.value > 0.0)) {
    return Error{ErrorCode::no_data, "Trees were counted, and none was measured.",
                 "stand/" + sample->stand->name,
                 "Measure the trees of at least two of the points."};
  }
  const double n = d.plots;
  if (d.ba.value > 0.0) {
    // Sizes stand for those that were only counted, too, by basal area.
    const double share = sized / d.ba;
    d.live = per_plot(d.live, n * share);
    d.guard = per_plot(d.guard, n * share);
  }
  for (SquareFeetPerAcre* ba : {&d.ba, &d.ba_oak, &d.ba_white_oak, &d.ba_red_oak}) *ba = *ba / n;
  return d;
}

}  // namespace oaklight
