#include "core/place/declination.hpp"

#include <GeographicLib/Geocentric.hpp>
#include <GeographicLib/SphericalHarmonic.hpp>
#include <cmath>
#include <numbers>
#include <vector>

#include "core/base/number_text.hpp"
#include "core/place/wmm2025.hpp"

// GeographicLib's own class for magnetic models reads two files from a folder, which a tablet does
// not have; its spherical harmonics and its rotation to the local frame take numbers, so the
// coefficients are built in and nothing is computed here that the library has.

namespace oaklight {
namespace {

using GeographicLib::SphericalHarmonic;

/// Coefficients in the library's order: a column for each order, C with order 0 and S without.
struct Coefficients {
  std::vector<double> c, s;
};

Coefficients coefficients_in(double year) {
  Coefficients all;
  const double years = year - kWmmEpoch;
  for (int order = 0; order <= kWmmDegree; ++order) {
    if (order == 0) all.c.push_back(0.0);  // degree 0: there is no magnetic monopole
    for (const GaussPair& pair : kWmm2025) {
      if (pair.order != order) continue;
      all.c.push_back(pair.g + years * pair.g_rate);
      if (order > 0) all.s.push_back(pair.h + years * pair.h_rate);
    }
  }
  return all;
}

Degrees turned(double degrees) {
  const double turn = std::fmod(degrees, 360.0);
  return Degrees{turn < 0.0 ? turn + 360.0 : turn};
}

std::string whole_bearing(Degrees bearing) {
  const long whole = std::lround(turned(bearing.value).value) % 360;
  std::string digits = std::to_string(whole);
  return std::string(3 - digits.size(), '0') + digits;
}

}  // namespace

double decimal_year(Day day) {
  using std::chrono::January;
  using std::chrono::sys_days;
  const auto start = [](std::chrono::year year) { return sys_days{year / January / 1}; };
  const auto begun = sys_days{day} - start(day.year());
  const auto whole = start(day.year() + std::chrono::years{1}) - start(day.year());
  return static_cast<int>(day.year()) +
         static_cast<double>(begun.count()) / static_cast<double>(whole.count());
}

MagneticField magnetic_field(Position at, Metres height, double year) {
  const Coefficients all = coefficients_in(year);
  const SphericalHarmonic potential(all.c, all.s, kWmmDegree, kWmmRadiusMetres,
                                    SphericalHarmonic::SCHMIDT);
  double x = 0.0, y = 0.0, z = 0.0;
  std::vector<double> frame(9);  // columns: the unit vectors east, north and up
  GeographicLib::Geocentric::WGS84().Forward(at.latitude.value, at.longitude.value, height.value, x,
                                             y, z, frame);
  double gradient[3] = {};
  potential(x, y, z, gradient[0], gradient[1], gradient[2]);
  // The field is minus the gradient of the potential, which is the radius times this sum.
  const auto along = [&](std::size_t axis) {
    double sum = 0.0;
    for (std::size_t i = 0; i < 3; ++i) sum += frame[3 * i + axis] * gradient[i];
    return -kWmmRadiusMetres * sum;
  };
  return {along(1), along(0), -along(2)};
}

Result<Declination> declination_at(Position at, Day day) {
  constexpr double kNoCompass = 2'000.0;
  constexpr double kWeakCompass = 6'000.0;
  const bool on_globe =
      std::fabs(at.latitude.value) <= 90.0 && std::fabs(at.longitude.value) <= 360.0;
  if (!on_globe) {
    return Error{ErrorCode::out_of_range, "There is no declination without a place on the globe.",
                 "position", "Give latitude and longitude in degrees."};
  }
  const double year = decimal_year(day);
  const MagneticField field = magnetic_field(at, Metres{0.0}, year);
  const double level = std::hypot(field.north, field.east);
  if (level < kNoCompass) {
    return Error{ErrorCode::out_of_range, "So near a magnetic pole a compass shows nothing.",
                 "position", "Use true bearings."};
  }
  Declination d;
  d.east = Degrees{std::atan2(field.east, field.north) * 180.0 / std::numbers::pi};
  d.uncertainty = Degrees{std::hypot(0.26, 5417.0 / level)};
  d.year = year;
  d.expired = year < kWmmEpoch || year >= kWmmEnd;
  d.weak = level < kWeakCompass;
  return d;
}

Degrees magnetic_from_true(Degrees bearing, Degrees declination_east) {
  return turned(bearing.value - declination_east.value);
}

std::string declination_words(const Declination& declination) {
  const double east = declination.east.value;
  std::string words = number_text(std::fabs(east), 1) +
                      (east < 0.0 ? " degrees west" : " degrees east") + " in " +
                      number_text(declination.year, 1) + " (WMM2025, give or take " +
                      number_text(declination.uncertainty.value, 1) + ")";
  if (declination.expired) {
    words += "; OUT OF DATE: the model holds from 2025.0 to 2030.0, check with a current map";
  }
  if (declination.weak) words += "; the compass is weak here, do not trust it";
  return words;
}

std::string true_words(Degrees bearing) { return whole_bearing(bearing) + " true"; }

std::string magnetic_words(Degrees true_bearing, const Declination& declination) {
  return whole_bearing(magnetic_from_true(true_bearing, declination.east)) + " magnetic";
}

}  // namespace oaklight
