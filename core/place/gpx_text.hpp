#pragma once

#include <span>
#include <string>

#include "core/model/place.hpp"

namespace oaklight {

/// A place with a name, for a GNSS receiver.
struct Waypoint {
  std::string name;
  Position at;
  std::string note;
};

/// Waypoints, and the route by all of them in their order, as GPX 1.1. Degrees to seven decimals,
/// about a centimetre. Control characters are left out of names.
[[nodiscard]] std::string gpx_text(const std::string& title, std::span<const Waypoint> places);

}  // namespace oaklight
