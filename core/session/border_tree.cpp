#include "core/session/border_tree.hpp"

#include <cmath>

#include "core/base/number_text.hpp"
#include "core/session/records_named.hpp"

namespace oaklight {
namespace {

constexpr double kSteepest = 200.0;  // percent; as the form allows for a plot

std::string shown(Feet length, UnitSystem system) {
  return system == UnitSystem::us ? number_text(length.value, 2) + " ft"
                                  : number_text(to_metres(length).value, 2) + " m";
}

/// By how much the readings leave the answer open: half of the last place of each.
Feet unsure_of(const Design& design, const BorderlineTree& tree) {
  const bool metric_tape = tree.taped.system() == UnitSystem::metric;
  const Feet tape = metric_tape ? to_feet(Metres{0.005}) : Feet{0.05};
  const Inches half_tenth =
      tree.dbh.system() == UnitSystem::us ? Inches{0.05} : to_inches(Centimetres{0.05});
  double by_dbh = 0.0;
  if (const auto* point = std::get_if<PointDesign>(&design)) {
    by_dbh = plot_radius_factor(point->baf(), tree.to).value * half_tenth.value;
  } else if (tree.to == TapedTo::face) {
    by_dbh = to_feet(half_tenth).value / 2.0;
  }
  return Feet{by_dbh} + level_distance(tape, tree.slope);
}

bool by_small_plot(const Design& design, Dbh dbh) {
  const auto* fixed = std::get_if<FixedDesign>(&design);
  return fixed != nullptr && fixed->small_area && fixed->small_below &&
         dbh.hundredth_mm() < fixed->small_below->hundredth_mm();
}

std::string note_of(const BorderlineTree& tree, const BorderlineCall& call, bool small_plot) {
  const UnitSystem system = tree.taped.system();
  std::string note = "Limit " + shown(call.limit, system) + " level to the ";
  note += tree.to == TapedTo::face ? "face of the stem" : "centre of the stem";
  if (small_plot) note += ", on the small plot";
  if (tree.slope.rise.value != 0.0) {
    note += "; " + shown(call.limit_taped, system) + " taped along a slope of " +
            number_text(tree.slope.rise.value, 0) + " %";
  }
  return note + ".";
}

}  // namespace

Result<BorderCheck> border_check(const Design& design, const BorderlineTree& tree) {
  if (const Status sound = check_design(design); !sound) return sound.error();
  if (!(std::fabs(tree.slope.rise.value) <= kSteepest)) {
    return Error{ErrorCode::out_of_range,
                 "A slope of " + number_text(tree.slope.rise.value, 0) + " % is no line to tape.",
                 "border/slope_pct", "Rise over run: 45 degrees is 100 %."};
  }
  const BorderlineCall call = check_borderline(design, tree);
  BorderCheck check;
  check.counts = call.in;
  check.limit = call.limit;
  check.limit_taped = call.limit_taped;
  check.level = call.limit - call.margin;
  check.by = Feet{std::fabs(call.margin.value)};
  check.unsure = unsure_of(design, tree);
  check.small_plot = by_small_plot(design, tree.dbh);
  const std::string by = " by " + shown(check.by, tree.taped.system());
  if (check.by <= check.unsure) {
    check.answer = BorderAnswer::on_the_line;
    check.words = "ON THE LINE";
    check.note = "Measure diameter and distance again; exactly at the limit counts as in. ";
  } else {
    check.answer = call.in ? BorderAnswer::in : BorderAnswer::out;
    check.words = (call.in ? "IN" : "OUT") + by;
  }
  check.note += note_of(tree, call, check.small_plot);
  return check;
}

Result<BorderCheck> border_check(const LiveTract& live, PlotId id, const BorderlineTree& tree) {
  const Plot* plot = live.find(id);
  if (plot == nullptr) return no_such("plot", to_text(id));
  const Cruise* cruise = live.find(plot->cruise);
  if (cruise == nullptr) return no_such("cruise", to_text(plot->cruise));
  return border_check(cruise->design, tree);
}

}  // namespace oaklight
