#pragma once

#include <string>

#include "core/model/place.hpp"

namespace oaklight {

/// "38.12345, -82.54321": WGS 84 decimal degrees, latitude first, five places (about 1 m north to
/// south).
[[nodiscard]] std::string decimal_degrees_text(Position position);

/// "38° 07.407' N, 82° 32.593' W": degrees and decimal minutes, as air crews use them (format from
/// memory). Three places of a minute are about 2 m north to south.
[[nodiscard]] std::string degrees_minutes_text(Position position);

}  // namespace oaklight
