#include "core/forms/nearness.hpp"

#include <algorithm>
#include <cmath>

namespace oaklight {
namespace {

/// A tract is no wider than this. One degree of latitude is 69 miles, so half of one is 35.
constexpr double kWidestTract = 0.5;

double median(std::vector<double> values) {
  const auto half = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), half, values.end());
  return *half;
}

}  // namespace

std::optional<Position> middle_of(const std::vector<Position>& positions) {
  if (positions.empty()) return std::nullopt;
  std::vector<double> latitudes;
  std::vector<double> longitudes;
  for (const Position& position : positions) {
    latitudes.push_back(position.latitude.value);
    longitudes.push_back(position.longitude.value);
  }
  return Position{Degrees{median(std::move(latitudes))}, Degrees{median(std::move(longitudes))}};
}

bool is_near(const Position& a, const Position& b) {
  const double east = std::fabs(a.longitude.value - b.longitude.value);
  return std::fabs(a.latitude.value - b.latitude.value) <= kWidestTract &&
         std::min(east, 360.0 - east) * std::cos(radians(b.latitude)) <= kWidestTract;
}

std::string stray_advice(const Position& stray, const Position& middle) {
  if (is_near({stray.longitude, stray.latitude}, middle)) {
    return "Latitude and longitude look swapped.";
  }
  if (is_near({stray.latitude, -stray.longitude}, middle)) {
    return "Longitude looks as if its minus sign is missing: west is negative.";
  }
  return "Check its digits.";
}

}  // namespace oaklight
