#include "core/stand/stand_stocking.hpp"

#include "core/measure/basal_area.hpp"

namespace oaklight {
namespace {

struct Counted {
  std::vector<GroupTally> live, guide, guard, oak_hickory;
};

Result<Counted> count(std::span<const StandSample* const> stands, const SpeciesTable& table,
                      Inches guard_from) {
  const std::vector<GroupTally> none(stands.size());
  Counted c{none, none, none, none};
  for (std::size_t h = 0; h < stands.size(); ++h) {
    for (const TalliedTree& t : Tallies(*stands[h])) {
      const TreeFacts& facts = t.tree->facts;
      if (facts.status == TreeStatus::dead) continue;
      c.live[h].add(t);
      if (counts_for_guard(facts, guard_from)) c.guard[h].add(t);
      if (facts.dbh.inches() < kStockingMinDbh) continue;
      c.guide[h].add(t);
      const auto found = known_species(table, facts.species, *stands[h]);
      if (!found) return found.error();
      const Species* s = *found;
      if (s->is_oak() || s->genus() == "Carya") c.oak_hickory[h].add(t);
    }
    for (const CountedStems& counted : stands[h]->counted) c.live[h].add(counted);
  }
  return c;
}

/// One figure of a group, by name of what it is computed from.
class Over {
 public:
  Over(std::span<const StandSample* const> stands, const std::vector<GroupTally>& live,
       const EstimateOptions& options)
      : stands_(stands), live_(live), options_(options) {}

  /// Which trees the guide counts is a matter of their size, so count points do not tell it.
  Result<Estimate<double>> operator()(const std::vector<GroupTally>& group,
                                      PlotFigure figure) const {
    std::vector<StandGroup> parts;
    for (std::size_t h = 0; h < stands_.size(); ++h) {
      parts.push_back({stands_[h], &group[h], &live_[h]});
    }
    return estimate_over(parts, options_, figure, AtCountPoints::sized, true);
  }

 private:
  std::span<const StandSample* const> stands_;
  const std::vector<GroupTally>& live_;
  const EstimateOptions& options_;
};

double stocking_of(const PlotSums& p) { return upland_oak_stocking(p.sums).value; }
double competition_of(const PlotSums& p) { return crown_competition(p.sums).value; }
double trees_of(const PlotSums& p) { return p.sums.trees; }
double ba_of(const PlotSums& p) { return p.ba; }

/// Mean diameter, lines at it, and whether the guide reaches there.
void add_lines(StandStocking& s, SquareFeetPerAcre oak_hickory) {
  if (!(s.trees.value > 0.0)) return;
  s.qmd = quadratic_mean_diameter(s.ba, s.trees);
  s.a = a_line(*s.qmd);
  s.b = b_line(*s.qmd);
  s.fit.diameters = *s.qmd >= kStockingGuideMin && *s.qmd <= kStockingGuideMax;
  s.fit.printed = s.fit.diameters && *s.qmd <= kStockingGuidePrintedMax;
  s.fit.oak_hickory_share = percent(oak_hickory / s.ba);
  s.fit.oak_hickory = 2.0 * oak_hickory >= s.ba;
}

}  // namespace

bool counts_for_guard(const TreeFacts& facts, Inches from) {
  if (facts.status == TreeStatus::dead) return false;
  if (facts.dbh.inches() >= from) return true;
  return facts.crown_class && *facts.crown_class != CrownClass::overtopped;
}

Result<StandStocking> stand_stocking(std::span<const StandSample* const> stands,
                                     const SpeciesTable& species, const EstimateOptions& options,
                                     Inches guard_from) {
  const auto counted = count(stands, species, guard_from);
  if (!counted) return counted.error();
  const Over over(stands, counted->live, options);
  const auto stocking = over(counted->guide, stocking_of);
  if (!stocking) return stocking.error();
  const auto competition = over(counted->guide, competition_of);
  if (!competition) return competition.error();
  const auto guard = over(counted->guard, stocking_of);
  if (!guard) return guard.error();
  const auto ba = over(counted->guide, ba_of);
  if (!ba) return ba.error();
  const auto trees = over(counted->guide, trees_of);
  if (!trees) return trees.error();
  const auto oak_hickory = over(counted->oak_hickory, ba_of);
  if (!oak_hickory) return oak_hickory.error();

  StandStocking s;
  s.stocking = with_unit<Percent>(*stocking);
  s.crown_competition = with_unit<Percent>(*competition);
  s.guard = with_unit<Percent>(*guard);
  s.ba = SquareFeetPerAcre{ba->mean};
  s.trees = TreesPerAcre{trees->mean};
  add_lines(s, SquareFeetPerAcre{oak_hickory->mean});
  return s;
}

}  // namespace oaklight
