#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/place/geodesy.hpp"
#include "core/session/live_tract.hpp"

namespace oaklight {

struct RouteRequest {
  std::optional<Position> start;     ///< the access point; nothing: the tract's landing
  std::optional<std::string> stand;  ///< only its plots
  std::optional<std::string> cruise;
  bool cross = false;  ///< go straight, whatever lies between
};

/// A plot to visit and the way to it from the place before, in straight legs.
struct RouteStop {
  PlotId plot;
  StandId stand;
  std::string stand_name;
  std::string label;
  Position at;
  std::vector<Leg> legs;        ///< azimuths from TRUE north
  std::vector<Position> turns;  ///< between the legs
  Feet walk;                    ///< all legs
};

/// A walk from the access point by the planned plots and back.
struct WalkRoute {
  Position start;
  std::vector<RouteStop> stops;
  std::vector<Leg> back;  ///< from the last plot to the start
  std::vector<Position> back_turns;
  Feet length;
  Feet bound;                         ///< no such walk is shorter
  bool exact = false;                 ///< the shortest there is
  std::vector<std::string> left_out;  ///< plots without a position or without a way to them
  std::vector<std::string> notes;
  [[nodiscard]] double gap() const {
    return exact || length.value <= 0.0 ? 0.0 : 1.0 - bound / length;
  }
};

/// The shortest walk by all planned plots that have a position: exact for at most 12, within the
/// stated gap above that. Streams and neighbour lines of the map are not crossed, but for a stream
/// where a road or trail crosses it; the way goes round their ends, 3 ft off.
///
/// errors   no_data: no planned plot with a position; missing_value: no start and no landing;
///          unknown_reference: no such stand or cruise; out_of_range: more than 500 plots
/// assumes  lines are drawn as far as they go; they are thinned where they have more than
///          250 corners, which is said
Result<WalkRoute> plan_walk(const LiveTract& live, const RouteRequest& request);

/// The walk as a line, from the start by all turns and plots back to it, for a map.
[[nodiscard]] std::vector<Position> route_line(const WalkRoute& route);

}  // namespace oaklight
