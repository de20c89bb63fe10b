#include "core/sample/group_tally.hpp"

#include <algorithm>

#include "core/measure/cords.hpp"
#include "core/measure/local_curves.hpp"

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

/// Basal area over trees, plot by plot, for the mean diameter; on measured plots only where sizes
/// were not taken on all.
Result<MeanDiameter> diameter_over(std::span<const StandGroup> stands) {
  const bool all_sized =
      std::ranges::all_of(stands, [](const StandGroup& s) { return s.sample->all_sized(); });
  std::vector<std::vector<double>> trees(stands.size()), ba(stands.size());
  std::vector<PairedStratum> pairs;
  for (std::size_t h = 0; h < stands.size(); ++h) {
    const StandSample& sample = *stands[h].sample;
    if (stands[h].tally != nullptr) {
      for (const PlotSums& p : stands[h].tally->plots()) {
        if (!p.measured && !all_sized) continue;
        trees[h].push_back(p.sums.trees);
        ba[h].push_back(p.ba);
      }
    }
    pairs.push_back(
        {.size = sample.stand->acres.value,
         .plots = all_sized ? static_cast<int>(sample.plots.size()) : sample.measure_plots(),
         .x = trees[h],
         .y = ba[h]});
  }
  return mean_diameter(pairs);
}

/// Puts a figure in its place with its unit.
template <class Q, class Into>
Status put(Into& into, const Result<Estimate<double>>& figure) {
  if (!figure) return figure.error();
  into = with_unit<Q>(*figure);
  return Done{};
}

/// What was measured here goes before the book.
void add_local(const TreeFacts& facts, const EstimateOptions& options, TreeVolumes& volumes,
               std::optional<Feet>& height) {
  const int fia = facts.species.fia;
  const Inches dbh = facts.dbh.inches();
  const LocalVolume local = local_volume(options.local->volumes, fia, dbh, options.log_rule);
  volumes.local_cords = local.cords.has_value();
  // A tree on which no log was seen holds none, whatever its size.
  const bool no_log = facts.half_logs == 0;
  volumes.local_board_feet = local.board_feet && !no_log;
  if (volumes.local_board_feet) volumes.board_feet = local.board_feet;
  if (local.cords) volumes.cords = local.cords;
  if (height) return;
  const LocalCurve* curve = curve_for(options.local->curves, CurveKind::height, fia, dbh);
  volumes.curve_height = curve != nullptr;
  if (curve != nullptr) height = length_on(*curve, dbh);
}

}  // namespace

TreeVolumes volumes_of(const TreeFacts& facts, const Species& species,
                       const EstimateOptions& options) {
  if (facts.status == TreeStatus::dead) return {};
  const auto cords = firewood_cords(facts.dbh);
  TreeVolumes volumes{.board_feet = board_feet_of(facts, species, options),
                      .cords = cords ? std::optional(*cords) : std::nullopt,
                      .stem = {}};
  std::optional<Feet> height;
  if (facts.height) height = facts.height->feet();
  if (options.local) add_local(facts, options, volumes, height);
  if (height) volumes.stem = stem_cubic_feet(facts.dbh, *height);
  return volumes;
}

void GroupTally::add(const TalliedTree& tree, const TreeVolumes& volumes) {
  if (plots_.empty() || plots_.back().plot != tree.plot) plots_.push_back({.plot = tree.plot});
  PlotSums& p = plots_.back();
  p.measured = p.measured && tree.measured;
  p.sums.add(tree.tree->facts.dbh.inches(), tree.trees);
  p.ba += tree.ba.value;
  if (volumes.board_feet) p.board_feet += tree.trees.value * volumes.board_feet->value;
  if (volumes.cords) p.cords += tree.trees.value * volumes.cords->value;
  if (volumes.stem) p.stem += tree.trees.value * volumes.stem->value;
  stems_ += tree.tree->stems;
  on_small_plot_ = on_small_plot_ || tree.on_small_plot;
  if (!tree.measured) return;
  measured_stems_ += tree.tree->stems;
  if (!volumes.board_feet) without_board_feet_ += tree.tree->stems;
  if (!volumes.cords) without_cords_ += tree.tree->stems;
  if (!volumes.stem) without_stem_ += tree.tree->stems;
  if (volumes.local_board_feet) local_board_feet_ += tree.tree->stems;
  if (volumes.local_cords) local_cords_ += tree.tree->stems;
  if (volumes.curve_height) curve_heights_ += tree.tree->stems;
}

void GroupTally::add(const CountedStems& counted) {
  auto p = std::ranges::find(plots_, counted.plot, &PlotSums::plot);
  if (p == plots_.end()) p = plots_.insert(p, {.plot = counted.plot});
  p->measured = false;
  p->ba += counted.ba.value;
  stems_ += counted.stems;
}

Result<GroupFigures> group_figures(std::span<const StandGroup> stands,
                                   const EstimateOptions& options, AtCountPoints at) {
  GroupFigures f;
  int measured = 0;
  for (const StandGroup& s : stands) {
    if (s.tally == nullptr) continue;
    f.stems += s.tally->stems();
    measured += s.tally->measured_stems();
    f.without_board_feet += s.tally->without_board_feet();
    f.without_cords += s.tally->without_cords();
    f.without_stem += s.tally->without_stem();
    f.local_board_feet += s.tally->local_board_feet();
    f.local_cords += s.tally->local_cords();
    f.curve_heights += s.tally->curve_heights();
  }
  const auto over = [&](PlotFigure figure, bool sizes, bool logs, FigureBasis* basis) {
    return estimate_over(stands, options, figure, at, sizes, logs, basis);
  };
  if (const auto done = put<TreesPerAcre>(
          f.trees, over([](const PlotSums& p) { return p.sums.trees; }, true, false, &f.sized));
      !done) {
    return done.error();
  }
  if (const auto done = put<SquareFeetPerAcre>(
          f.ba, over([](const PlotSums& p) { return p.ba; }, false, false, nullptr));
      !done) {
    return done.error();
  }
  if (f.stems > 0 && (measured > 0 || f.trees.mean.value > 0.0)) {
    if (const auto diameter = diameter_over(stands)) {
      f.qmd = *diameter;
    } else if (diameter.error().code != ErrorCode::no_data) {
      return diameter.error();
    }
  }
  if (f.stems == 0 || measured == 0 || f.without_board_feet < measured) {
    f.board_feet.emplace();
    if (const auto done = put<BoardFeetPerAcre>(
            *f.board_feet,
            over([](const PlotSums& p) { return p.board_feet; }, true, true, &f.logged));
        !done) {
      return done.error();
    }
  }
  if (f.stems == 0 || measured == 0 || f.without_cords < measured) {
    f.cords.emplace();
    if (const auto done = put<CordsPerAcre>(
            *f.cords, over([](const PlotSums& p) { return p.cords; }, true, false, nullptr));
        !done) {
      return done.error();
    }
  }
  if (f.without_stem < measured) {
    f.stem_wood.emplace();
    if (const auto done = put<CubicFeetPerAcre>(
            *f.stem_wood, over([](const PlotSums& p) { return p.stem; }, true, true, nullptr));
        !done) {
      return done.error();
    }
  }
  return f;
}

}  // namespace oaklight
