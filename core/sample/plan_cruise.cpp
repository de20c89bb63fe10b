#include "core/sample/plan_cruise.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "core/measure/plot_geometry.hpp"
#include "core/sample/allocation.hpp"
#include "core/sample/plot_spacing.hpp"

namespace oaklight {
namespace {

constexpr int kMostPlots = 5'000;
constexpr double kSame = 1e-9;  // rounding of a share's last bits is no plot

/// What is known of the stands, as lists.
struct Lists {
  std::vector<double> acres, sds;
  double total = 0.0;  ///< of what is measured, over all acres
};
Lists lists_of(std::span<const PlannedStand> stands) {
  Lists lists;
  for (const PlannedStand& stand : stands) {
    lists.acres.push_back(stand.acres.value);
    lists.sds.push_back(stand.sd);
    lists.total += stand.acres.value * stand.mean;
  }
  return lists;
}

Error nothing_known() {
  return {ErrorCode::no_data, "Nothing is known on which a plan could rest.", "stands",
          "Give the kind of stand, or measure a few plots first."};
}

ExpectedCruise expected_of(const Lists& lists, std::vector<int> by_stand, Confidence confidence) {
  ExpectedCruise cruise;
  cruise.by_stand = std::move(by_stand);
  for (const int plots : cruise.by_stand) cruise.plots += plots;
  const std::vector<double> whole(cruise.by_stand.begin(), cruise.by_stand.end());
  double acres = 0.0;
  for (const double a : lists.acres) acres += a;
  const double mean = lists.total / acres;
  const double df = cruise.plots - static_cast<double>(lists.acres.size());
  cruise.half_width =
      percent(student_t(confidence, df) * allocation_se(lists.acres, lists.sds, whole) / mean);
  return cruise;
}

ExpectedCruise shared_out(const Lists& lists, double plots, Confidence confidence,
                          Allocation allocation) {
  const auto shares = allocation == Allocation::neyman
                          ? neyman_shares(plots, lists.acres, lists.sds)
                          : proportional_shares(plots, lists.acres);
  std::vector<int> by_stand;
  for (const double share : shares) {
    by_stand.push_back(std::max(2, static_cast<int>(std::ceil(share - kSame))));
  }
  return expected_of(lists, std::move(by_stand), confidence);
}

template <class Score>
double best_of(std::span<const double> choices, Score score) {
  return *std::ranges::min_element(choices, {}, score);
}

/// How far a number is from another, as a ratio: 3 is as far from 6 as 12 is.
double off(double x, double from) { return std::fabs(std::log(x / from)); }

}  // namespace

UsualSpread usual_spread(StandKind kind) {
  switch (kind) {
    case StandKind::even:
      return {Percent{20.0}, Percent{30.0}};
    case StandKind::patchy:
      return {Percent{60.0}, Percent{100.0}};
    case StandKind::mixed:
      break;
  }
  return {Percent{30.0}, Percent{60.0}};
}

Result<ExpectedCruise> plan_for_error(std::span<const PlannedStand> stands, const ErrorGoal& goal,
                                      Allocation allocation) {
  const auto neyman = plan_plots(stands, goal);
  if (!neyman) return neyman.error();
  const Lists lists = lists_of(stands);
  if (allocation == Allocation::neyman)
    return expected_of(lists, neyman->by_stand, goal.confidence);
  for (int n = 2 * static_cast<int>(stands.size()); n <= 20 * kMostPlots; ++n) {
    ExpectedCruise cruise = shared_out(lists, n, goal.confidence, allocation);
    if (cruise.half_width.value <= goal.half_width.value + kSame) return cruise;
  }
  return Error{ErrorCode::out_of_range, "The error allowed would take more than 100,000 plots.",
               "goal", "Allow a larger error, or a lower confidence."};
}

Result<ExpectedCruise> plan_for_count(std::span<const PlannedStand> stands, int plots,
                                      Confidence confidence, Allocation allocation) {
  if (plots < 1 || plots > kMostPlots) {
    return Error{ErrorCode::out_of_range, "The count of plots is not between 1 and 5,000.", "plots",
                 "Give another goal."};
  }
  const Lists lists = lists_of(stands);
  if (!(lists.total > 0.0)) return nothing_known();
  return shared_out(lists, plots, confidence, allocation);
}

double expected_hours(int plots, Acres acres, const CrewPace& pace) {
  if (plots < 1) return 0.0;
  const double walk = plots * square_spacing(acres, plots).value / pace.feet_a_minute;
  return (plots * pace.minutes_a_plot + walk) / 60.0;
}

int plots_in_hours(double hours, Acres acres, const CrewPace& pace) {
  // n m + sqrt(n) w = H, with w = sqrt(A) / v: a square in sqrt(n).
  const double m = pace.minutes_a_plot;
  const double w = std::sqrt(to_square_feet(acres).value) / pace.feet_a_minute;
  const double root = (std::sqrt(w * w + 4.0 * m * 60.0 * hours) - w) / (2.0 * m);
  return static_cast<int>(std::floor(root * root + kSame));
}

FactorAdvice advise_factor(SquareFeetPerAcre ba, Inches mean_dbh) {
  constexpr std::array<double, 6> kUsual = {5.0, 10.0, 15.0, 20.0, 30.0, 40.0};
  constexpr double kTrees = 6.0;
  constexpr double kSeen = 50.0;
  const auto limit = [&](double factor) {
    return plot_radius_factor(SquareFeetPerAcre{factor}, TapedTo::centre).value * mean_dbh.value;
  };
  FactorAdvice advice;
  advice.factor = best_of(kUsual, [&](double factor) {
    const double too_far = limit(factor) > kSeen ? 100.0 : 0.0;
    return too_far + off(ba.value / factor, kTrees);
  });
  advice.trees_a_point = ba.value / advice.factor;
  advice.limit = Feet{limit(advice.factor)};
  return advice;
}

PlotAdvice advise_plot(SquareFeetPerAcre ba, Inches mean_dbh) {
  constexpr std::array<double, 4> kUsual = {0.02, 0.05, 0.1, 0.2};
  constexpr double kTrees = 10.0;
  // Basal area of one stem of the mean diameter: pi / 4 d^2, d in feet.
  const double d = to_feet(mean_dbh).value;
  const double trees_an_acre = ba.value / (std::numbers::pi / 4.0 * d * d);
  PlotAdvice advice;
  advice.area =
      Acres{best_of(kUsual, [&](double area) { return off(area * trees_an_acre, kTrees); })};
  advice.trees_a_plot = advice.area.value * trees_an_acre;
  advice.radius = plot_radius(advice.area);
  return advice;
}

}  // namespace oaklight
