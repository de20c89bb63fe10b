#pragma once

#include <span>
#include <vector>

#include "core/model/words.hpp"
#include "core/sample/plots_needed.hpp"

namespace oaklight {

/// A stand before anybody measured in it.
enum class StandKind {
  even,    ///< even-aged and uniform
  mixed,   ///< natural hardwoods
  patchy,  ///< patchy, or cut over
};
template <>
inline constexpr auto kWords<StandKind> = std::to_array<Word<StandKind>>(
    {{StandKind::even, "even"}, {StandKind::mixed, "mixed"}, {StandKind::patchy, "patchy"}});

/// Spread of basal area between points of factor 10 or 1/5-acre plots, where no pilot cruise tells
/// it. A place to begin: replan when ten plots are measured.
struct UsualSpread {
  Percent low;
  Percent high;
  [[nodiscard]] Percent middle() const { return (low + high) / 2.0; }
};
/// Source: 20-30, 30-60 and 60-100 %, from memory.
[[nodiscard]] UsualSpread usual_spread(StandKind kind);

/// How plots are shared out among stands.
enum class Allocation {
  proportional,  ///< by acres: the same distance between plots everywhere
  neyman,        ///< by acres times spread: the smallest error of the whole
};
template <>
inline constexpr auto kWords<Allocation> = std::to_array<Word<Allocation>>(
    {{Allocation::proportional, "proportional"}, {Allocation::neyman, "neyman"}});

/// A count of plots and what it is likely to reach.
struct ExpectedCruise {
  int plots = 0;
  std::vector<int> by_stand;  ///< at least 2 each
  Percent half_width;         ///< of the mean over the stands, at the confidence asked
};

/// The smallest cruise that meets an error goal for all stands together, computed as if plots lay
/// at random: t(n - L) se <= goal.
///
/// errors   as plan_plots
/// source   Neyman: plan_plots; proportional: searched upward the same way
[[nodiscard]] Result<ExpectedCruise> plan_for_error(std::span<const PlannedStand> stands,
                                                    const ErrorGoal& goal, Allocation allocation);

/// A cruise of so many plots in all, shared out and rounded up, at least 2 a stand: so it may come
/// to a few more. Errors: no_data as plan_plots; out_of_range for fewer than 1 or over 5,000.
[[nodiscard]] Result<ExpectedCruise> plan_for_count(std::span<const PlannedStand> stands, int plots,
                                                    Confidence confidence, Allocation allocation);

/// How fast a crew works.
struct CrewPace {
  double minutes_a_plot = 15.0;  ///< find the centre, tally, write: common practice 10-25
  double feet_a_minute = 100.0;  ///< through woods, with a bearing: 1.1 miles an hour (judgement)
};

/// Hours on the ground for plots on a square grid over these acres: work at the plots, and one
/// spacing walked for each plot. Ways from the truck are not in it. Source: derived.
[[nodiscard]] double expected_hours(int plots, Acres acres, const CrewPace& pace);
/// Most plots that fit into these hours: the reverse. 0 where not even one does. Source: derived;
/// n plots take n m + sqrt(n A) / v.
[[nodiscard]] int plots_in_hours(double hours, Acres acres, const CrewPace& pace);

/// A factor for point sampling.
struct FactorAdvice {
  double factor = 0.0;         ///< ft2/ac, one of the usual ones
  double trees_a_point = 0.0;  ///< expected tally
  Feet limit;                  ///< how far off a tree of the mean diameter still counts
};
/// The usual factor (5, 10, 15, 20, 30, 40) with a tally nearest to 6 trees a point, that counts
/// trees of the mean diameter no further off than 50 ft where one does.
///
/// ba, mean_dbh   of the stand; both above 0
/// source   4 to 8 trees a point: Kentucky forestry class slides; 50 ft: judgement, as trees are
///          missed through brush beyond it
[[nodiscard]] FactorAdvice advise_factor(SquareFeetPerAcre ba, Inches mean_dbh);

/// A size for fixed circular plots.
struct PlotAdvice {
  Acres area;  ///< one of the usual ones
  double trees_a_plot = 0.0;
  Feet radius;
};
/// The usual size (1/50, 1/20, 1/10, 1/5 acre) that holds nearest to 10 trees of the mean diameter.
/// Source: judgement; 6 to 15 trees a plot are common practice.
[[nodiscard]] PlotAdvice advise_plot(SquareFeetPerAcre ba, Inches mean_dbh);

}  // namespace oaklight
