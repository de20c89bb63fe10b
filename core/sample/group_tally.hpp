#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/measure/dbh_class.hpp"
#include "core/measure/stocking.hpp"
#include "core/measure/tree_volume.hpp"
#include "core/sample/ratio.hpp"
#include "core/sample/stand_sample.hpp"
#include "core/sample/stratified.hpp"

namespace oaklight {

/// What is asked of an estimate.
struct EstimateOptions {
  Confidence confidence;
  DegreesOfFreedom df = DegreesOfFreedom::satterthwaite;
  /// Correct the error of fixed plots for sampling without return. Right only where the plots are a
  /// draw from a tiling of the stand; a report must say that it was used.
  bool finite_population = false;
  ClassWidth class_width = ClassWidth::two_inches;
  LogRule log_rule = LogRule::international;
  FormClass form_class;
  Percent goal{20.0};  ///< error allowed for basal area, half width in percent of the mean
};

/// Wood in one tree. Nothing is "can't be told", never 0.
struct TreeVolumes {
  std::optional<BoardFeet> board_feet;
  std::optional<Cords> cords;  ///< as firewood, whole tree: do not add to its board feet
};

/// Board feet: 0 for a species that is not sawn, below its smallest sawlog diameter and for a tree
/// on which no log was seen; nothing when logs were not recorded or lie outside the table. Cords:
/// nothing outside the table. A dead tree has neither.
[[nodiscard]] TreeVolumes volumes_of(const TreeFacts& facts, const Species& species,
                                     const EstimateOptions& options);

/// What the trees of one group add up to on one plot, for an acre.
struct PlotSums {
  int plot = 0;
  StockingSums sums;  ///< trees, diameters, squared diameters
  double ba = 0.0;    ///< ft2
  double board_feet = 0.0;
  double cords = 0.0;
};

/// The trees of one group of one stand (a species, a class, all live trees), summed by plot. Only
/// plots on which the group was found take room. Any group can be told: add the trees that belong.
class GroupTally {
 public:
  /// Trees must come plot by plot, as StandSample holds them.
  void add(const TalliedTree& tree, const TreeVolumes& volumes = {});

  [[nodiscard]] std::span<const PlotSums> plots() const { return plots_; }
  [[nodiscard]] int stems() const { return stems_; }  ///< tallied, each edge tree once
  [[nodiscard]] int without_board_feet() const { return without_board_feet_; }
  [[nodiscard]] int without_cords() const { return without_cords_; }
  [[nodiscard]] bool on_small_plot() const { return on_small_plot_; }

 private:
  std::vector<PlotSums> plots_;
  int stems_ = 0;
  int without_board_feet_ = 0;
  int without_cords_ = 0;
  bool on_small_plot_ = false;
};

/// A group in one stand of the area that is estimated.
struct StandGroup {
  const StandSample* sample = nullptr;
  const GroupTally* tally = nullptr;  ///< nullptr: none of the group in this stand
};

/// One group's figures for an average acre.
struct GroupFigures {
  int stems = 0;  ///< tallied
  Estimate<TreesPerAcre> trees;
  Estimate<SquareFeetPerAcre> ba;
  std::optional<MeanDiameter> qmd{};  ///< nothing without trees
  /// Of the stems whose volume can be told; nothing when that is none of them.
  std::optional<Estimate<BoardFeetPerAcre>> board_feet{};
  std::optional<Estimate<CordsPerAcre>> cords{};
  int without_board_feet = 0;  ///< stems that are not in board_feet, so that it is too low
  int without_cords = 0;       ///< stems that are not in cords
};

/// One figure of a group over stands: figure picks it from the sums of a plot.
template <class Figure>
Result<Estimate<double>> estimate_over(std::span<const StandGroup> stands,
                                       const EstimateOptions& options, Figure figure) {
  std::vector<Stratum> strata;
  std::vector<double> values;
  for (const StandGroup& s : stands) {
    values.clear();
    if (s.tally != nullptr) {
      for (const PlotSums& p : s.tally->plots()) values.push_back(figure(p));
    }
    const auto moments = moments_of(values, static_cast<int>(s.sample->plots.size()));
    if (!moments) return moments.error();
    const bool small = s.tally != nullptr && s.tally->on_small_plot();
    strata.push_back({s.sample->stand->acres.value, *moments,
                      options.finite_population ? plots_to_tile(*s.sample, small) : std::nullopt});
  }
  return stratified_mean(strata, options.confidence, options.df);
}

/// All figures of a group, over one stand or over several weighted by acres.
/// Errors: of stratified_mean and moments_of.
Result<GroupFigures> group_figures(std::span<const StandGroup> stands,
                                   const EstimateOptions& options);

}  // namespace oaklight
