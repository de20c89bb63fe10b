#pragma once

#include "core/units/units.hpp"

namespace oaklight {

/// The three sums over an acre from which every stocking figure follows.
/// Add trees with add(); subtract what is cut with add() of a negative density.
struct StockingSums {
  double trees = 0.0;              ///< trees per acre
  double diameters = 0.0;          ///< sum of DBH, inches per acre
  double squared_diameters = 0.0;  ///< sum of DBH squared, square inches per acre

  /// dbh of a tree that stands for this many trees an acre.
  void add(Inches dbh, TreesPerAcre each) {
    trees += each.value;
    diameters += each.value * dbh.value;
    squared_diameters += each.value * dbh.value * dbh.value;
  }
};

/// The sums of a stand of which only basal area and number of trees are known. The mean diameter
/// that they leave open comes from the relation behind the printed chart, AMD = -0.259 + 0.973 QMD.
/// With a tally, add up its trees instead: taking the QMD for the mean gives 1.5 to 2 points too
/// much. All 0 when there are no trees. Source: chart relation, from memory.
[[nodiscard]] StockingSums chart_sums(SquareFeetPerAcre ba, TreesPerAcre trees);

/// Percent stocking of upland oak-hickory on the A-line basis: 100 is average full stocking.
/// source   Gingrich 1967, Forest Science 13(1):38-53; coefficients from memory, checked against
///          three published chart readings (tests/published/mensuration.tsv)
/// accuracy within 1 point of the chart readings; printed guide covers mean diameters 3 .. 15 in
[[nodiscard]] Percent upland_oak_stocking(const StockingSums& sums);

/// Crown competition factor: crown area the trees would have in the open, percent of the ground.
/// 100 is the B line. Source: Krajicek, Brinkman and Gingrich 1961, Forest Science 7(1):35-42, from
/// memory.
[[nodiscard]] Percent crown_competition(const StockingSums& sums);

/// Basal area of the A line (stocking 100) and of the B line (crown competition 100) for a stand of
/// one quadratic mean diameter, with the arithmetic mean of chart_sums.
/// assumes  qmd > 0; outside kStockingGuideMin .. kStockingGuideMax the figure must be shown as
///          outside the guide
struct StockingLine {
  SquareFeetPerAcre ba;
  TreesPerAcre trees;
};
[[nodiscard]] StockingLine a_line(Inches qmd);
[[nodiscard]] StockingLine b_line(Inches qmd);

/// Mean diameters over which the printed guide was drawn, and over which its equations are commonly
/// run.
inline constexpr Inches kStockingGuideMin{3.0};
inline constexpr Inches kStockingGuidePrintedMax{15.0};
inline constexpr Inches kStockingGuideMax{22.0};

}  // namespace oaklight
