#pragma once

#include <string>

#include "core/base/day.hpp"
#include "core/base/result.hpp"
#include "core/model/place.hpp"

namespace oaklight {

// The World Magnetic Model 2025 (NOAA/NCEI and the British Geological Survey), which holds from
// 2025.0 up to 2030.0.

/// A day as a year with its fraction, "2026.5" about the start of July. Source: year +
/// (day of the year - 1) / days in that year, as the model's own calculators do.
[[nodiscard]] double decimal_year(Day day);

/// Earth's main field, nanotesla.
struct MagneticField {
  double north = 0.0;
  double east = 0.0;
  double down = 0.0;
};
/// height   above the ellipsoid
/// year     any; the model's yearly change is carried on before and after it holds
/// assumes  a finite position and height
/// accuracy within 0.05 nT and 0.005 degrees of the 112 points that NOAA prints
[[nodiscard]] MagneticField magnetic_field(Position at, Metres height, double year);

/// What a compass shows at a place.
struct Declination {
  Degrees east;         ///< magnetic north less true north, clockwise; west is negative
  Degrees uncertainty;  ///< one standard deviation: the model's own and local rock
  double year = 0.0;
  bool expired = false;  ///< the day lies outside 2025.0 .. 2030.0: say so wherever it is shown
  bool weak = false;     ///< the level field is under 6,000 nT: a compass is not to be trusted
};

/// Declination at sea level; a mile of height changes it by less than 0.01 degrees in our woods.
///
/// errors   out_of_range: no position on the globe, or so near a magnetic pole that the level field
///          is under 2,000 nT
/// source   WMM2025; limits 2,000 and 6,000 nT as the model's report; uncertainty
///          sqrt(0.26^2 + (5417 / level field)^2) degrees (WMM2025 error model, read second hand)
Result<Declination> declination_at(Position at, Day day);

/// A bearing from true north as the compass shows it; 0 <= bearing < 360.
[[nodiscard]] Degrees magnetic_from_true(Degrees bearing, Degrees declination_east);

/// "4.4 degrees west in 2026.3", and why it is to be doubted where it is.
[[nodiscard]] std::string declination_words(const Declination& declination);

/// "123 true" or "127 magnetic": whole degrees, three digits, and always which north.
[[nodiscard]] std::string true_words(Degrees bearing);
[[nodiscard]] std::string magnetic_words(Degrees true_bearing, const Declination& declination);

}  // namespace oaklight
