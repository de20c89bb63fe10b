#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/sample/confidence.hpp"
#include "core/units/units.hpp"

namespace oaklight {

/// What a sample is to reach: half the width of its interval at most this much of the mean.
struct ErrorGoal {
  Percent half_width{20.0};
  Confidence confidence;
};

/// The smallest number of plots, 2 or more, whose own interval meets the goal:
/// t(n - 1) cv / sqrt(n) sqrt(1 - n / N) <= goal. Searched upward from the normal answer, because
/// putting n back into t can go round for ever (5, 6, 5, 6 ...).
///
/// cv          between plots, percent of the mean, 0 or more
/// population  N, plots that would tile the stand; nothing for points and as the default
/// errors      out_of_range: cv below 0 or not a number, goal not above 0, more than 1,000,000
/// plots source      Freese 1962; rule of search derived
Result<int> plots_needed(Percent cv, const ErrorGoal& goal,
                         std::optional<double> population = std::nullopt);

/// Plots for a fixed multiplier in place of t, not rounded: 1 / ((goal / (k cv))^2 + 1 / N).
///
/// multiplier  k: 2 is the handbook's short cut; normal_multiplier is right for many plots only
/// source      Freese 1962
[[nodiscard]] double plots_for_multiplier(double multiplier, Percent cv, Percent half_width,
                                          std::optional<double> population = std::nullopt);

/// One stand as the planning of a cruise sees it, from an earlier or pilot cruise.
struct PlannedStand {
  Acres acres;
  double mean = 0.0;  ///< per acre
  double sd = 0.0;    ///< between plots
};

/// Plots for a goal over all stands together, and how they are best spread.
struct PlotPlan {
  int plots = 0;
  std::vector<int> by_stand;  ///< sums to plots; at least 2 each
};

/// Smallest plan that meets the goal for the mean over stands, spread by Neyman's rule, each
/// stand's share rounded up: t(n - L) cv / sqrt(n) <= goal, with cv the weighted_cv of the stands'
/// totals.
///
/// errors   no_data without stands or when the mean is 0; out_of_range as plots_needed
/// source   Cochran 1977, sections 5.5 and 5.9 (from memory)
Result<PlotPlan> plan_plots(std::span<const PlannedStand> stands, const ErrorGoal& goal);

/// Points to plan when nothing is known of the stand: 10 up to 10 acres, one an acre up to 40, then
/// 20 and half the acres up to 80, 40 and a quarter of the acres up to 200; part points count up.
///
/// errors   outside_table above 200 acres; out_of_range when not above 0
/// source   Kentucky forestry class slides on point sampling (common practice)
Result<int> rule_of_thumb_points(Acres acres);

}  // namespace oaklight
