#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/place/geodesy.hpp"
#include "core/session/live_tract.hpp"

namespace oaklight {

/// How a person paces: paces in 100 ft, or in 100 m, counted on ground like this.
struct PaceCount {
  double paces = 0.0;
  UnitSystem system = UnitSystem::us;
};
/// Whole paces for a distance, nearest. Errors: out_of_range for a count that no walker has (under
/// 10 or over 100 in 100 ft; 30 to 330 in 100 m).
Result<int> paces_for(Feet distance, const PaceCount& count);

/// Where the way to the next plot begins.
struct WalkFrom {
  std::optional<Position> here;     ///< the device's position
  std::optional<PlotId> last_plot;  ///< the plot worked last; asked where there is no position
};

/// One plot still to be done.
struct WalkStop {
  PlotId plot;
  StandId stand;
  std::string label;
  /// The way there; nothing when either end has no position. Azimuth from TRUE north.
  std::optional<Leg> leg;
};

/// The planned plots, nearest first; ties by label in natural order (2 before 10). Plots without a
/// position, or all of them when the start has none, come last in natural order of stand and label.
///
/// stand    nothing: the whole tract
[[nodiscard]] std::vector<WalkStop> walk_order(const LiveTract& live, std::optional<StandId> stand,
                                               const WalkFrom& from);
/// The first of walk_order; nothing when all plots are done.
[[nodiscard]] std::optional<WalkStop> next_stop(const LiveTract& live, std::optional<StandId> stand,
                                                const WalkFrom& from);
/// The way to one plot. Errors: unknown_reference.
Result<WalkStop> way_to(const LiveTract& live, PlotId plot, const WalkFrom& from);

/// How far a cruise has come.
struct WalkProgress {
  int measured = 0;
  int empty = 0;
  int skipped = 0;  ///< given up; neither done nor to do
  int planned = 0;
  [[nodiscard]] int done() const { return measured + empty; }
  [[nodiscard]] int all() const { return done() + skipped + planned; }
  /// Done of those done or planned; nothing when there are none.
  std::optional<Percent> share;
};
[[nodiscard]] WalkProgress walk_progress(const LiveTract& live, std::optional<StandId> stand);

/// "N", "NNE" ...: the nearest of sixteen points of a compass.
[[nodiscard]] std::string compass_point(Degrees azimuth);

/// Whether label a comes before b when runs of digits are read as numbers: "2" before "10".
[[nodiscard]] bool natural_less(std::string_view a, std::string_view b);

}  // namespace oaklight
