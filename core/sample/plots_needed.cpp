#include "core/sample/plots_needed.hpp"

#include <algorithm>
#include <cmath>

#include "core/base/number_text.hpp"
#include "core/sample/allocation.hpp"
#include "core/sample/estimate.hpp"

namespace oaklight {
namespace {

constexpr double kMostPlots = 1e6;

/// Two figures of percent that differ by less are the same figure: rounding of the last bits must
/// not ask for one more plot.
constexpr double kSamePercent = 1e-12;

Error goal_error(std::string what) {
  return {ErrorCode::out_of_range, std::move(what), "goal",
          "Allow a larger error, or a lower confidence."};
}

Status check(Percent cv, const ErrorGoal& goal) {
  if (!(cv.value >= 0.0) || !std::isfinite(cv.value)) {
    return Error{ErrorCode::out_of_range, "The spread between plots is not known.", "cv",
                 "Measure at least two plots, or give a figure from a stand like it."};
  }
  if (!(goal.half_width.value > 0.0)) return goal_error("The error allowed is not above 0.");
  return Done{};
}

/// The smallest n from first on, in steps of 1, for which t(n - used) cv / sqrt(n) is small enough.
Result<int> search(Percent cv, const ErrorGoal& goal, std::optional<double> population, int used,
                   int first) {
  const double start = std::ceil(
      plots_for_multiplier(normal_multiplier(goal.confidence), cv, goal.half_width, population) -
      kSamePercent);
  if (!(start < kMostPlots)) {
    return goal_error("An error of " + number_text(goal.half_width.value, 1) +
                      " % would take more than a million plots.");
  }
  for (int n = std::max(first, static_cast<int>(start)); n < kMostPlots; ++n) {
    const double reached = student_t(goal.confidence, n - used) * cv.value / std::sqrt(n) *
                           std::sqrt(finite_correction(n, population));
    if (reached <= goal.half_width.value + kSamePercent) return n;
  }
  return goal_error("The error allowed would take more than a million plots.");
}

}  // namespace

double plots_for_multiplier(double multiplier, Percent cv, Percent half_width,
                            std::optional<double> population) {
  const double goal_in_cv = half_width / (multiplier * cv);
  return 1.0 / (goal_in_cv * goal_in_cv + (population ? 1.0 / *population : 0.0));
}

Result<int> plots_needed(Percent cv, const ErrorGoal& goal, std::optional<double> population) {
  if (const auto checked = check(cv, goal); !checked) return checked.error();
  return search(cv, goal, population, 1, 2);
}

Result<PlotPlan> plan_plots(std::span<const PlannedStand> stands, const ErrorGoal& goal) {
  std::vector<double> acres, sds;
  double total = 0.0;
  double spread = 0.0;
  for (const PlannedStand& s : stands) {
    acres.push_back(s.acres.value);
    sds.push_back(s.sd);
    total += s.acres.value * s.mean;
    spread += s.acres.value * s.sd;
  }
  if (!(total > 0.0)) {
    return Error{ErrorCode::no_data, "Nothing was found on which a plan could rest.", "stands",
                 "Measure a few plots first, or plan by the acres."};
  }
  const Percent cv = percent(spread / total);  // the sum over stands of share of total times cv
  if (const auto checked = check(cv, goal); !checked) return checked.error();
  const int strata = static_cast<int>(stands.size());
  const auto n = search(cv, goal, std::nullopt, strata, 2 * strata);
  if (!n) return n.error();
  PlotPlan plan;
  for (const double share : neyman_shares(*n, acres, sds)) {
    plan.by_stand.push_back(std::max(2, static_cast<int>(std::ceil(share - kSamePercent))));
    plan.plots += plan.by_stand.back();
  }
  return plan;
}

Result<int> rule_of_thumb_points(Acres acres) {
  const double a = acres.value;
  if (!(a > 0.0)) {
    return Error{ErrorCode::out_of_range, "The stand has no acres.", "acres", "Give its area."};
  }
  if (a <= 10.0) return 10;
  if (a <= 40.0) return static_cast<int>(std::ceil(a));
  if (a <= 80.0) return static_cast<int>(std::ceil(20.0 + a / 2.0));
  if (a <= 200.0) return static_cast<int>(std::ceil(40.0 + a / 4.0));
  return Error{ErrorCode::outside_table, "The rule of thumb ends at 200 acres.", "acres",
               "Divide the tract into stands, or plan from a pilot cruise."};
}

}  // namespace oaklight
