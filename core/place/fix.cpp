#include "core/place/fix.hpp"

#include <algorithm>
#include <cmath>

#include "core/place/geodesy.hpp"

namespace oaklight {
namespace {

// Judgement: a fix is some metres off, so that a shorter way has no direction to be trusted; a
// course is that of a walker, who turns, and is soon over.
constexpr Metres kTrustedWay{8.0};
constexpr std::int64_t kCourseLastsMs = 5'000;
constexpr std::int64_t kWayLastsMs = 15'000;

MeanFix mean_of(const std::vector<Fix>& fixes, Metres limit, bool count_poor) {
  const Position& origin = fixes.front().at;
  const auto counts = [&](const Fix& fix) { return poor(fix, limit) == count_poor; };
  MeanFix mean;
  LocalFeet sum;
  Metres stated;
  int told = 0;
  for (const Fix& fix : fixes) {
    if (poor(fix, limit)) ++mean.poor_fixes;
    if (!counts(fix)) continue;
    const LocalFeet place = local_feet(origin, fix.at);
    sum.east += place.east;
    sum.north += place.north;
    ++mean.fixes;
    if (!fix.accuracy) continue;
    stated += *fix.accuracy;
    ++told;
  }
  const double n = mean.fixes;
  const LocalFeet middle{sum.east / n, sum.north / n};
  double squares = 0.0;
  for (const Fix& fix : fixes) {
    if (!counts(fix)) continue;
    const LocalFeet place = local_feet(origin, fix.at);
    squares += std::pow((place.east - middle.east).value, 2) +
               std::pow((place.north - middle.north).value, 2);
  }
  mean.at = position_from_local(origin, middle);
  mean.spread = to_metres(Feet{std::sqrt(squares / n)});
  mean.poor = count_poor;
  if (told > 0) mean.accuracy = std::max(stated / static_cast<double>(told), mean.spread);
  return mean;
}

}  // namespace

bool poor(const Fix& fix, Metres limit) { return !fix.accuracy || *fix.accuracy > limit; }

std::optional<MeanFix> mean_fix(const std::vector<Fix>& fixes, Metres limit) {
  if (fixes.empty()) return std::nullopt;
  const bool all_poor = std::ranges::all_of(fixes, [&](const Fix& f) { return poor(f, limit); });
  return mean_of(fixes, limit, all_poor);
}

void Heading::add(const Fix& fix) {
  if (fix.course && fix.speed) {
    from_.reset();
    way_.reset();
    if (*fix.speed < kSlowWalk) return;
    way_ = Degrees{std::fmod(fix.course->value, 360.0)};
    told_ms_ = fix.ms + kCourseLastsMs;
    return;
  }
  if (!from_ || fix.ms - from_->ms > kWayLastsMs) {
    from_ = fix;
    return;
  }
  const Leg leg = leg_between(from_->at, fix.at);
  if (to_metres(leg.distance) < kTrustedWay) return;
  way_ = leg.azimuth;
  told_ms_ = fix.ms + kWayLastsMs;
  from_ = fix;
}

std::optional<Degrees> Heading::at(std::int64_t ms) const {
  return way_ && ms <= told_ms_ ? way_ : std::nullopt;
}

}  // namespace oaklight
