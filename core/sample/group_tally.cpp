#include "core/sample/group_tally.hpp"

#include "core/measure/cords.hpp"

namespace oaklight {
namespace {

std::optional<BoardFeet> board_feet_of(const TreeFacts& facts, const Species& species,
                                       const EstimateOptions& options) {
  const bool sawn = species.min_sawlog_dbh && facts.dbh.inches() >= *species.min_sawlog_dbh;
  if (!sawn) return BoardFeet{0.0};
  if (!facts.half_logs) return std::nullopt;
  if (*facts.half_logs == 0) return BoardFeet{0.0};
  const auto volume =
      tree_board_feet(options.log_rule, facts.dbh, *facts.half_logs, options.form_class);
  return volume ? std::optional(*volume) : std::nullopt;
}

/// Basal area over trees, plot by plot, for the mean diameter.
Result<MeanDiameter> diameter_over(std::span<const StandGroup> stands) {
  std::vector<std::vector<double>> trees(stands.size()), ba(stands.size());
  std::vector<PairedStratum> pairs;
  for (std::size_t h = 0; h < stands.size(); ++h) {
    if (stands[h].tally != nullptr) {
      for (const PlotSums& p : stands[h].tally->plots()) {
        trees[h].push_back(p.sums.trees);
        ba[h].push_back(p.ba);
      }
    }
    pairs.push_back({.size = stands[h].sample->stand->acres.value,
                     .plots = static_cast<int>(stands[h].sample->plots.size()),
                     .x = trees[h],
                     .y = ba[h]});
  }
  return mean_diameter(pairs);
}

}  // namespace

TreeVolumes volumes_of(const TreeFacts& facts, const Species& species,
                       const EstimateOptions& options) {
  if (facts.status == TreeStatus::dead) return {};
  const auto cords = firewood_cords(facts.dbh);
  return {board_feet_of(facts, species, options), cords ? std::optional(*cords) : std::nullopt};
}

void GroupTally::add(const TalliedTree& tree, const TreeVolumes& volumes) {
  if (plots_.empty() || plots_.back().plot != tree.plot) plots_.push_back({.plot = tree.plot});
  PlotSums& p = plots_.back();
  p.sums.add(tree.tree->facts.dbh.inches(), tree.trees);
  p.ba += tree.ba.value;
  if (volumes.board_feet) p.board_feet += tree.trees.value * volumes.board_feet->value;
  if (volumes.cords) p.cords += tree.trees.value * volumes.cords->value;
  stems_ += tree.tree->stems;
  if (!volumes.board_feet) without_board_feet_ += tree.tree->stems;
  if (!volumes.cords) without_cords_ += tree.tree->stems;
  on_small_plot_ = on_small_plot_ || tree.on_small_plot;
}

Result<GroupFigures> group_figures(std::span<const StandGroup> stands,
                                   const EstimateOptions& options) {
  GroupFigures f;
  for (const StandGroup& s : stands) {
    if (s.tally == nullptr) continue;
    f.stems += s.tally->stems();
    f.without_board_feet += s.tally->without_board_feet();
    f.without_cords += s.tally->without_cords();
  }
  const auto trees = estimate_over(stands, options, [](const PlotSums& p) { return p.sums.trees; });
  if (!trees) return trees.error();
  f.trees = with_unit<TreesPerAcre>(*trees);
  const auto ba = estimate_over(stands, options, [](const PlotSums& p) { return p.ba; });
  if (!ba) return ba.error();
  f.ba = with_unit<SquareFeetPerAcre>(*ba);
  if (f.stems > 0) {
    const auto diameter = diameter_over(stands);
    if (!diameter) return diameter.error();
    f.qmd = *diameter;
  }
  if (f.stems == 0 || f.without_board_feet < f.stems) {
    const auto volume =
        estimate_over(stands, options, [](const PlotSums& p) { return p.board_feet; });
    if (!volume) return volume.error();
    f.board_feet = with_unit<BoardFeetPerAcre>(*volume);
  }
  if (f.stems == 0 || f.without_cords < f.stems) {
    const auto volume = estimate_over(stands, options, [](const PlotSums& p) { return p.cords; });
    if (!volume) return volume.error();
    f.cords = with_unit<CordsPerAcre>(*volume);
  }
  return f;
}

}  // namespace oaklight
