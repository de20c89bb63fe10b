#include "core/release/crown_contact.hpp"

#include <algorithm>
#include <cmath>

#include "core/measure/crown_width.hpp"

namespace oaklight {
namespace {

constexpr double kFullTurn = 360.0;
constexpr double kHalfTurn = kFullTurn / 2.0;
constexpr double kQuarterTurn = kFullTurn / 4.0;

/// The bearing as 0 <= x < 360.
double turned(double degrees) {
  const double rest = std::fmod(degrees, kFullTurn);
  return rest < 0.0 ? rest + kFullTurn : rest;
}

/// The angle between two bearings, 0 .. 180.
double angle_between(double a, double b) {
  const double d = turned(a - b);
  return d > kHalfTurn ? kFullTurn - d : d;
}

double degrees_of(double angle) { return angle * kHalfTurn / std::numbers::pi; }

}  // namespace

ContactLimits contact_limits(Inches a, Inches b, const ContactSettings& settings) {
  return {crowded_crown_radius(a) + crowded_crown_radius(b),
          conflict_distance(a, b) + settings.look_up_extra};
}

Closeness closeness_by_distance(Inches a, Inches b, Feet distance,
                                const ContactSettings& settings) {
  const ContactLimits limits = contact_limits(a, b, settings);
  if (distance <= limits.expected) return Closeness::touching;
  return distance <= limits.look_up ? Closeness::doubtful : Closeness::clear;
}

Feet conflict_distance(Inches a, Inches b) { return open_crown_radius(a) + open_crown_radius(b); }

Sides sides_at(Degrees bearing, Degrees blur) {
  Sides sides;
  double middle = 0.0;  // of the north side; kSides goes round with the sun
  for (const Side side : kSides) {
    if (angle_between(bearing.value, middle) <= kQuarterTurn / 2.0 + blur.value) sides.add(side);
    middle += kQuarterTurn;
  }
  return sides;
}

Sides opposite(Sides sides) {
  Sides result;
  if (sides.has(Side::north)) result.add(Side::south);
  if (sides.has(Side::east)) result.add(Side::west);
  if (sides.has(Side::south)) result.add(Side::north);
  if (sides.has(Side::west)) result.add(Side::east);
  return result;
}

Arc closed_arc(Feet crop, Feet other, Feet distance, Degrees bearing, Feet gap) {
  const double r = crop.value;
  const double d = distance.value;
  const double reach = other.value + gap.value;
  if (d + r < reach) return {bearing, Degrees{kHalfTurn}};  // the whole edge lies within reach
  // A point of the edge at angle t from the bearing is sqrt(r^2 + d^2 - 2 r d cos t) from the other
  // stem; it is closed where that is less than the reach.
  const double edge = 2.0 * r * d;
  if (edge <= 0.0) return {bearing, Degrees{}};
  const double cosine = (r * r + d * d - reach * reach) / edge;
  if (cosine >= 1.0) return {bearing, Degrees{}};
  return {bearing, Degrees{degrees_of(std::acos(std::max(cosine, -1.0)))}};
}

void add_quarters(Sides sides, std::vector<Arc>& arcs) {
  constexpr Degrees kHalfQuarter{45.0};
  double middle = 0.0;
  for (const Side side : kSides) {
    if (sides.has(side)) arcs.push_back({Degrees{middle}, kHalfQuarter});
    middle += 2.0 * kHalfQuarter.value;
  }
}

Percent open_share(std::span<const Arc> closed) {
  struct Span {
    double from, to;
  };
  std::vector<Span> spans;  // within 0 .. 360; an arc across north becomes two
  for (const Arc& arc : closed) {
    if (arc.half.value <= 0.0) continue;
    if (arc.half.value >= kHalfTurn) return Percent{0.0};
    const double from = turned(arc.middle.value - arc.half.value);
    const double to = from + 2.0 * arc.half.value;
    spans.push_back({from, std::min(to, kFullTurn)});
    if (to > kFullTurn) spans.push_back({0.0, to - kFullTurn});
  }
  std::sort(spans.begin(), spans.end(), [](const Span& a, const Span& b) {
    return a.from < b.from || (a.from <= b.from && a.to < b.to);
  });
  double covered = 0.0;
  double reached = 0.0;
  for (const Span& span : spans) {
    covered += std::max(0.0, span.to - std::max(span.from, reached));
    reached = std::max(reached, span.to);
  }
  return Percent{100.0 * (1.0 - covered / kFullTurn)};
}

}  // namespace oaklight
