#include "core/forms/import_job.hpp"
#include "core/forms/nearness.hpp"

namespace oaklight {

void check_positions(ImportJob& job) {
  std::vector<Position> positions;
  for (const PlacedPoint& point : job.points) positions.push_back(point.position);
  if (job.existing.tract.landing) positions.push_back(*job.existing.tract.landing);
  for (const Plot& plot : job.existing.plots) {
    if (plot.position) positions.push_back(*plot.position);
  }
  const auto centre = middle_of(positions);
  if (!centre) return;
  for (const PlacedPoint& point : job.points) {
    if (is_near(point.position, *centre)) continue;
    job.faults.add(point.file, point.line,
                   {ErrorCode::contradiction,
                    "The position lies more than 30 miles from the middle of all positions.",
                    point.where, stray_advice(point.position, *centre)});
  }
}

}  // namespace oaklight
