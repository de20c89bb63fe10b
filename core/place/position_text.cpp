#include "core/place/position_text.hpp"

#include <cmath>

#include "core/base/number_text.hpp"

namespace oaklight {
namespace {

std::string degrees_minutes(Degrees angle, std::string_view positive, std::string_view negative) {
  // Rounding comes first, so that 59.9996 minutes become the next degree and not "60.000".
  constexpr double kThousandthsPerDegree = 60.0 * 1000.0;
  const auto thousandths = std::llround(std::fabs(angle.value) * kThousandthsPerDegree);
  const auto degrees = thousandths / 60'000;
  const std::string minutes = number_text(static_cast<double>(thousandths % 60'000) / 1000.0, 3);
  const std::string pad = minutes.size() < 6 ? "0" : "";
  return std::to_string(degrees) + "\u00b0 " + pad + minutes + "' " +
         std::string(angle.value < 0.0 && thousandths != 0 ? negative : positive);
}

}  // namespace

std::string decimal_degrees_text(Position position) {
  return number_text(position.latitude.value, 5) + ", " + number_text(position.longitude.value, 5);
}

std::string degrees_minutes_text(Position position) {
  return degrees_minutes(position.latitude, "N", "S") + ", " +
         degrees_minutes(position.longitude, "E", "W");
}

}  // namespace oaklight
