#pragma once

namespace oaklight {

/// Feet, less than the shortest degree on the WGS 84 ellipsoid: of latitude at the equator 362,776
/// ft, of longitude 365,221 ft times the cosine of the latitude or more. What lies so many degrees
/// off is at least this far away.
inline constexpr double kShortestDegreeFeet = 362'000.0;

}  // namespace oaklight
