#include "core/stand/stand_change.hpp"

#include <algorithm>

#include "core/measure/cords.hpp"
#include "core/stand/stand_stocking.hpp"

namespace oaklight {
namespace {

/// The trees of one visit to one stand, on plots that have a pair.
struct VisitTally {
  GroupTally live;
  GroupTally guide;  ///< those that the stocking guide counts
  int without_cords = 0;
};

Result<VisitTally> tally_of(const StandSample& sample, const std::vector<bool>& paired,
                            const SpeciesTable& table, const EstimateOptions& options) {
  VisitTally tally;
  for (const TalliedTree& t : sample.trees) {
    const TreeFacts& facts = t.tree->facts;
    if (facts.status == TreeStatus::dead || !paired[static_cast<std::size_t>(t.plot)]) continue;
    const auto species = known_species(table, facts.species, sample);
    if (!species) return species.error();
    const TreeVolumes volumes = volumes_of(facts, **species, options);
    tally.live.add(t, volumes);
    const bool unknown = !volumes.cords && !too_thin_for_firewood(facts.dbh);
    tally.without_cords += unknown ? t.tree->stems : 0;
    if (facts.dbh.inches() >= kStockingMinDbh) tally.guide.add(t);
  }
  return tally;
}

std::vector<bool> paired_plots(const PairedStand& stand, bool second) {
  std::vector<bool> paired((second ? stand.second : stand.first)->plots.size(), false);
  for (const auto& [a, b] : stand.plots) paired[static_cast<std::size_t>(second ? b : a)] = true;
  return paired;
}

/// Both visits to all stands, and what is asked of them.
class Visits {
 public:
  explicit Visits(const EstimateOptions& options) : options_(options) {}

  Status add(const PairedStand& stand, const SpeciesTable& table) {
    auto first = tally_of(*stand.first, paired_plots(stand, false), table, options_);
    if (!first) return first.error();
    auto second = tally_of(*stand.second, paired_plots(stand, true), table, options_);
    if (!second) return second.error();
    stands_.push_back(&stand);
    sizes_.push_back(stand.second->stand->acres.value);
    first_.push_back(*std::move(first));
    second_.push_back(*std::move(second));
    return Done{};
  }

  template <class Figure>
  [[nodiscard]] std::vector<PairedValues> values(GroupTally VisitTally::*group,
                                                 Figure figure) const {
    std::vector<PairedValues> pairs;
    for (std::size_t h = 0; h < stands_.size(); ++h) {
      pairs.push_back(
          paired_values({stands_[h], &(first_[h].*group), &(second_[h].*group)}, figure));
    }
    return pairs;
  }

  template <class Q, class Figure>
  Status change(PairedChange<Q>& into, GroupTally VisitTally::*group, Figure figure) const {
    const auto c = paired_change(sizes_, values(group, figure), options_.confidence, options_.df);
    if (!c) return c.error();
    into = with_unit<Q>(*c);
    return Done{};
  }

  Status diameter(std::optional<PairedChange<Inches>>& into) const {
    const auto trees = values(&VisitTally::live, [](const PlotSums& p) { return p.sums.trees; });
    const auto ba = values(&VisitTally::live, [](const PlotSums& p) { return p.ba; });
    const auto c = paired_diameter(sizes_, trees, ba, options_.confidence, options_.df);
    if (!c) return c.error();
    into = *c;
    return Done{};
  }

  /// Stems of both visits without a volume.
  void count_missing(AreaChange& area) const {
    for (const auto* visit : {&first_, &second_}) {
      for (const VisitTally& tally : *visit) {
        area.without_board_feet += tally.live.without_board_feet();
        area.without_cords += tally.without_cords;
      }
    }
  }

 private:
  const EstimateOptions& options_;
  std::vector<const PairedStand*> stands_;
  std::vector<double> sizes_;
  std::vector<VisitTally> first_, second_;
};

Status fill_volumes(AreaChange& area, const Visits& visits) {
  visits.count_missing(area);
  if (area.without_board_feet == 0) {
    PairedChange<BoardFeetPerAcre> c;
    const auto done =
        visits.change(c, &VisitTally::live, [](const PlotSums& p) { return p.board_feet; });
    if (!done) return done.error();
    area.board_feet = c;
  }
  if (area.without_cords == 0) {
    PairedChange<CordsPerAcre> c;
    const auto done =
        visits.change(c, &VisitTally::live, [](const PlotSums& p) { return p.cords; });
    if (!done) return done.error();
    area.cords = c;
  }
  return Done{};
}

Status fill(AreaChange& area, const Visits& visits) {
  auto done = visits.change(area.ba, &VisitTally::live, [](const PlotSums& p) { return p.ba; });
  if (!done) return done.error();
  done =
      visits.change(area.trees, &VisitTally::live, [](const PlotSums& p) { return p.sums.trees; });
  if (!done) return done.error();
  done = visits.change(area.stocking, &VisitTally::guide,
                       [](const PlotSums& p) { return upland_oak_stocking(p.sums).value; });
  if (!done) return done.error();
  done = visits.diameter(area.qmd);
  if (!done) return done.error();
  return fill_volumes(area, visits);
}

}  // namespace

Result<AreaChange> area_change(std::span<const PairedStand* const> stands,
                               const SpeciesTable& species, const EstimateOptions& options) {
  AreaChange area;
  Visits visits(options);
  for (const PairedStand* stand : stands) {
    if (const auto added = visits.add(*stand, species); !added) return added.error();
    area.acres += stand->second->stand->acres;
    area.pairs += static_cast<int>(stand->plots.size());
    area.only_first += static_cast<int>(stand->only_first.size());
    area.only_second += static_cast<int>(stand->only_second.size());
  }
  if (const auto filled = fill(area, visits); !filled) return filled.error();
  return area;
}

}  // namespace oaklight
