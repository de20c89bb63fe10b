#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/day.hpp"
#include "core/handoff/plan_sheet.hpp"
#include "core/place/gpx_text.hpp"
#include "core/session/walk.hpp"
#include "core/session/walk_route.hpp"

namespace oaklight {

/// Units of distances walked.
enum class WalkUnit { feet, chains, metres };
template <>
inline constexpr auto kWords<WalkUnit> = std::to_array<Word<WalkUnit>>(
    {{WalkUnit::feet, "feet"}, {WalkUnit::chains, "chains"}, {WalkUnit::metres, "metres"}});

/// "312 ft", "4.73 ch", "95 m".
[[nodiscard]] std::string distance_text(Feet distance, WalkUnit unit);

/// How a walk is told.
struct SheetRequest {
  WalkUnit unit = WalkUnit::feet;
  std::optional<PaceCount> pace;
  Day day;  ///< of the walk: declination is that of this day
};

/// The walk in words: bearings true and magnetic, distances, paces. Errors: of paces_for.
Result<PlanSheet> sheet_of(const Tract& tract, const WalkRoute& route, const SheetRequest& request);

/// The plots in the order of the walk, for a GNSS receiver: "Cove 4".
[[nodiscard]] std::vector<Waypoint> waypoints_of(const WalkRoute& route);

}  // namespace oaklight
