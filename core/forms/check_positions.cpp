#include <algorithm>
#include <cmath>

#include "core/forms/import_job.hpp"

namespace oaklight {
namespace {

/// A tract is no wider than this. One degree of latitude is 69 miles, so half of one is 35.
constexpr double kWidestTract = 0.5;

double middle(std::vector<double> values) {
  const auto half = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), half, values.end());
  return *half;
}

bool is_near(const Position& a, const Position& b) {
  const double east = std::fabs(a.longitude.value - b.longitude.value);
  return std::fabs(a.latitude.value - b.latitude.value) <= kWidestTract &&
         std::min(east, 360.0 - east) * std::cos(radians(b.latitude)) <= kWidestTract;
}

/// What may have gone wrong with a position that should lie near the middle.
std::string guess(const Position& stray, const Position& middle) {
  if (is_near({stray.longitude, stray.latitude}, middle)) {
    return "Latitude and longitude look swapped.";
  }
  if (is_near({stray.latitude, -stray.longitude}, middle)) {
    return "Longitude looks as if its minus sign is missing: west is negative.";
  }
  return "Check its digits.";
}

}  // namespace

void check_positions(ImportJob& job) {
  std::vector<double> latitudes;
  std::vector<double> longitudes;
  const auto count = [&](const Position& position) {
    latitudes.push_back(position.latitude.value);
    longitudes.push_back(position.longitude.value);
  };
  for (const PlacedPoint& point : job.points) count(point.position);
  if (job.existing.tract.landing) count(*job.existing.tract.landing);
  for (const Plot& plot : job.existing.plots) {
    if (plot.position) count(*plot.position);
  }
  if (latitudes.empty()) return;
  // The median: one stray position cannot pull it away from the rest.
  const Position centre{Degrees{middle(latitudes)}, Degrees{middle(longitudes)}};
  for (const PlacedPoint& point : job.points) {
    if (is_near(point.position, centre)) continue;
    job.faults.add(point.file, point.line,
                   {ErrorCode::contradiction,
                    "The position lies more than 30 miles from the middle of all positions.",
                    point.where, guess(point.position, centre)});
  }
}

}  // namespace oaklight
