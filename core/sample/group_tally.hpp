#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/measure/dbh_class.hpp"
#include "core/measure/stocking.hpp"
#include "core/measure/tree_volume.hpp"
#include "core/model/local.hpp"
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
  /// The plots were laid out over the whole tract and sorted into stands afterwards, so that their
  /// number in a stand is chance: errors over stands are those of post-stratification.
  bool placed_over_tract = false;
  LogRule log_rule = LogRule::international;
  FormClass form_class;
  LocalNumbersPtr local = {};  ///< curves and volume table of the place; null: the book's alone
  Percent goal{20.0};          ///< error allowed for basal area, half width in percent of the mean
};

/// Wood in one tree. Nothing is "can't be told", never 0.
struct TreeVolumes {
  std::optional<BoardFeet> board_feet;
  std::optional<Cords> cords;     ///< as firewood, whole tree: do not add to its board feet
  std::optional<CubicFeet> stem;  ///< peeled wood of the whole stem; nothing without a height
  bool local_board_feet = false;  ///< from the local volume table
  bool local_cords = false;
  bool curve_height = false;  ///< stem by a height from the local curve, not a measured one
};

/// Board feet: 0 for a species that is not sawn, below its smallest sawlog diameter and for a tree
/// on which no log was seen; nothing when logs were not recorded or lie outside the table. Cords:
/// nothing outside the table. A dead tree has neither. A line of the local
/// volume table goes before both. Stem: by its measured height, else by the local height curve.
[[nodiscard]] TreeVolumes volumes_of(const TreeFacts& facts, const Species& species,
                                     const EstimateOptions& options);

/// What the trees of one group add up to on one plot, for an acre.
struct PlotSums {
  int plot = 0;
  StockingSums sums;  ///< trees, diameters, squared diameters
  double ba = 0.0;    ///< ft2
  double board_feet = 0.0;
  double cords = 0.0;
  double stem = 0.0;     ///< ft3
  bool measured = true;  ///< not a count point
};

/// The trees of one group of one stand (a species, a class, all live trees), summed by plot. Only
/// plots on which the group was found take room. Any group can be told: add the trees that belong.
class GroupTally {
 public:
  /// Trees must come plot by plot, as StandSample holds them.
  void add(const TalliedTree& tree, const TreeVolumes& volumes = {});
  /// Trees without a size; after the trees with one.
  void add(const CountedStems& counted);

  [[nodiscard]] std::span<const PlotSums> plots() const { return plots_; }
  [[nodiscard]] int stems() const { return stems_; }  ///< tallied, each edge tree once
  [[nodiscard]] int measured_stems() const { return measured_stems_; }  ///< not at count points
  /// Of the stems that were measured, those whose volume cannot be told.
  [[nodiscard]] int without_board_feet() const { return without_board_feet_; }
  [[nodiscard]] int without_cords() const { return without_cords_; }
  [[nodiscard]] int without_stem() const { return without_stem_; }
  /// Of the stems measured: those with board feet, or cords, by the local table; with a height by
  /// the local curve.
  [[nodiscard]] int local_board_feet() const { return local_board_feet_; }
  [[nodiscard]] int local_cords() const { return local_cords_; }
  [[nodiscard]] int curve_heights() const { return curve_heights_; }
  [[nodiscard]] bool on_small_plot() const { return on_small_plot_; }

 private:
  std::vector<PlotSums> plots_;
  int stems_ = 0;
  int measured_stems_ = 0;
  int without_board_feet_ = 0;
  int without_cords_ = 0;
  int without_stem_ = 0;
  int local_board_feet_ = 0;
  int local_cords_ = 0;
  int curve_heights_ = 0;
  bool on_small_plot_ = false;
};

/// What a count point says of a group.
enum class AtCountPoints {
  counted,      ///< its trees are counted there: their basal area is known
  sized,        ///< which of the trees there belong to it is a matter of their size
  not_counted,  ///< nobody looked for it there: standing dead trees
};

/// A group in one stand of the area that is estimated.
struct StandGroup {
  const StandSample* sample = nullptr;
  const GroupTally* tally = nullptr;  ///< nullptr: none of the group in this stand
  const GroupTally* live = nullptr;   ///< all live trees of the stand; nullptr: the group is those
};

/// How a figure came about where there are count points.
struct FigureBasis {
  bool by_ratio = false;  ///< basal area on all points times a ratio from those measured
  bool pooled = false;    ///< the ratio is that of all live trees: too few of the group's own
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
  std::optional<Estimate<CubicFeetPerAcre>> stem_wood{};  ///< peeled, whole stems; a rule of thumb
  int without_stem = 0;  ///< stems without a height of their own or of the local curve
  int local_board_feet = 0, local_cords = 0, curve_heights = 0;  ///< as GroupTally counts them
  FigureBasis sized{};                                           ///< how trees and cords came about
  FigureBasis logged{};                                          ///< how board feet came about
};

/// One value a plot: which one, of the sums of a group on it.
using PlotFigure = double (*)(const PlotSums&);

/// One figure of a group over stands.
///
/// at      what count points say of the group
/// sizes   the figure needs sizes, and not only which trees are in
/// logs    it needs more than the size: nothing but measured plots tell it
/// returns where count points do not tell it: live basal area (of the group, where it is counted)
///         on all points, times the ratio of the figure to it on the measured ones; errors of the
///         two in quadrature, degrees of freedom by Satterthwaite. For a counted group of fewer
///         than kRatioTrees measured trees, or found on one measured plot, the ratio is that of all
///         live trees.
/// errors  of stratified_mean, moments_of, ratio_of_sums; no_data when trees are counted and none
///         is measured
/// source  Bruce 1961; Gove, Gregoire, Ducey and Lynch 2020 (core/sample/count_measure.hpp); the
///         degrees of freedom of the sum: Satterthwaite 1946, from memory
Result<Estimate<double>> estimate_over(std::span<const StandGroup> stands,
                                       const EstimateOptions& options, PlotFigure figure,
                                       AtCountPoints at = AtCountPoints::counted,
                                       bool sizes = false, bool logs = false,
                                       FigureBasis* basis = nullptr);

/// Trees of a species that must be measured for a ratio of its own. Judgement: about 10.
inline constexpr int kRatioTrees = 10;

/// All figures of a group, over one stand or over several weighted by acres.
/// Errors: of estimate_over.
Result<GroupFigures> group_figures(std::span<const StandGroup> stands,
                                   const EstimateOptions& options,
                                   AtCountPoints at = AtCountPoints::counted);

}  // namespace oaklight
