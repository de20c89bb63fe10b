#pragma once

#include <array>
#include <functional>

#include "core/model/tract.hpp"
#include "core/place/seeded_draw.hpp"
#include "core/sample/estimate.hpp"
#include "tests/population/stem_map.hpp"

namespace oaklight::test {

/// What becomes of a plot that reaches over the edge of the map.
enum class Edge {
  torus,        ///< the map goes on at its other side: no edge at all
  mirage,       ///< the plot is laid again from its reflections over the edges
  walkthrough,  ///< a tree counts twice when the walk through it ends outside
  ignored,      ///< the wrong way
};

/// What one plot says of an acre.
struct PlotValue {
  double ba = 0.0;
  double trees = 0.0;
  double volume = 0.0;  ///< of the test function, cubic feet
  int tallied = 0;      ///< trees, each as often as it counts
  double vbar = 0.0;    ///< sum over tallied trees of volume over basal area, and of its square
  double vbar2 = 0.0;
};

/// Cubic feet of a tree for tests of double sampling: a curve through the 31 felled black cherries,
/// exp(-2.35332) d^2.19997 (least squares on logarithms in R). It is no table of anybody's.
double test_cubic_feet(Inches dbh);

/// Lays plots of one design on a map. Which trees are in, how far and for how many they stand comes
/// from the product's own functions.
class PlotMaker {
 public:
  PlotMaker(const StemMap& map, const Design& design, Edge edge, const PickStem& pick);

  [[nodiscard]] PlotValue at(double east, double north) const;
  [[nodiscard]] PlotValue anywhere(SeededDraw& draw) const;
  /// The trees tallied there, with their edge counts, as a crew writes them down.
  [[nodiscard]] std::vector<Tree> trees_at(double east, double north) const;

 private:
  struct Reach {
    double east, north, limit2;
    std::array<double, 5> trees;  ///< for an edge count of 0 .. 4
    double ba, volume;            ///< of one tree
    Tree tree;
  };
  [[nodiscard]] int count(const Reach& tree, double east, double north) const;

  double width_, height_;
  Edge edge_;
  std::vector<Reach> stems_;
};

/// Basal area or trees an acre.
enum class Figure { ba, trees };

/// How far the mean of plots is off the census, percent, without any chance: from the ground around
/// each tree on which a plot tallies it. The walkthrough gives back what lies outside unless the
/// spot opposite the tree is outside too, as in a corner (Ducey, Gove and Valentine 2004: it
/// removes most of the bias); the mirage gives back all.
double edge_bias_pct(const StemMap& map, const Design& design, Edge edge, const PickStem& pick,
                     Figure figure);

/// What many cruises came to.
struct Outcome {
  int repeats = 0;
  double mean = 0.0;
  double mean_se = 0.0;      ///< of that mean
  double true_se = 0.0;      ///< spread of the estimates
  double reported_se = 0.0;  ///< root mean square of what the estimates said
  double covered = 0.0;      ///< share of intervals that held the truth
};
Outcome repeat(int repeats, double truth, const std::function<Estimate<double>()>& cruise);

/// How often a cruise is repeated; more by OAKLIGHT_REPEATS, by hand.
inline constexpr int kUsualRepeats = 2'000;
int repeats_asked();

/// 4.5 standard errors of the difference of two simulated shares: a false alarm 7 in a million.
/// `elsewhere`: repeats of the other simulation, 0 for a share that is known.
double share_band(double share, int repeats, int elsewhere);

}  // namespace oaklight::test
