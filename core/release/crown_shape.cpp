#include "core/release/crown_shape.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace oaklight {
namespace {

constexpr int kSteps = 360;  // one a degree
constexpr double kFullTurn = 360.0;
constexpr double kQuarterTurn = 90.0;

double radians_of(double degrees) { return degrees * std::numbers::pi / 180.0; }

/// How far a point of the crop crown's edge is from being closed, in feet; negative: closed.
class Clearance {
 public:
  Clearance(const CrownShape& crop, const CrownShape& other, Feet distance, Degrees bearing,
            Feet gap)
      : crop_(crop),
        other_(other),
        east_(distance.value * std::sin(radians_of(bearing.value))),
        north_(distance.value * std::cos(radians_of(bearing.value))),
        gap_(gap.value) {}

  double operator()(double bearing) const {
    const double r = crop_.reach(Degrees{bearing}).value;
    const double east = r * std::sin(radians_of(bearing)) - east_;
    const double north = r * std::cos(radians_of(bearing)) - north_;
    const double seen_at = std::atan2(east, north) * 180.0 / std::numbers::pi;
    return std::hypot(east, north) - other_.reach(Degrees{seen_at}).value - gap_;
  }

 private:
  const CrownShape& crop_;
  const CrownShape& other_;
  double east_, north_, gap_;
};

/// Where the sign changes between two bearings that differ in it.
double change_between(const Clearance& at, double a, double b) {
  constexpr int kHalvings = 60;  // a degree halved sixty times is less than a double can tell
  const bool closed = at(a) < 0.0;
  for (int i = 0; i < kHalvings; ++i) {
    const double middle = a + (b - a) / 2.0;
    ((at(middle) < 0.0) == closed ? a : b) = middle;
  }
  return a + (b - a) / 2.0;
}

/// The lowest (sign +1) or highest (-1) point between two bearings, by golden section.
double extreme_between(const Clearance& at, double a, double b, double sign) {
  constexpr int kCuts = 50;
  const double part = (std::sqrt(5.0) - 1.0) / 2.0;
  for (int i = 0; i < kCuts; ++i) {
    const double low = b - part * (b - a);
    const double high = a + part * (b - a);
    if (sign * at(low) < sign * at(high)) {
      b = high;
    } else {
      a = low;
    }
  }
  return a + (b - a) / 2.0;
}

/// Bearings at which the edge goes from open to closed or back, rising, within one turn.
std::vector<double> changes(const Clearance& at) {
  std::array<double, kSteps> value{};
  for (int i = 0; i < kSteps; ++i) value[static_cast<std::size_t>(i)] = at(i);
  const auto of = [&](int i) { return value[static_cast<std::size_t>((i + kSteps) % kSteps)]; };
  std::vector<double> found;
  for (int i = 0; i < kSteps; ++i) {
    const double sign = of(i) < 0.0 ? -1.0 : 1.0;
    const bool same = (of(i - 1) < 0.0) == (of(i) < 0.0) && (of(i + 1) < 0.0) == (of(i) < 0.0);
    // A dip across zero and back between two degrees shows as an extreme that keeps its sign.
    if (same && sign * of(i) <= sign * of(i - 1) && sign * of(i) <= sign * of(i + 1)) {
      const double tip = extreme_between(at, i - 1, i + 1, sign);
      if ((at(tip) < 0.0) != (of(i) < 0.0)) {
        found.push_back(change_between(at, i - 1, tip));
        found.push_back(change_between(at, tip, i + 1));
      }
    }
    if ((of(i) < 0.0) != (of(i + 1) < 0.0)) found.push_back(change_between(at, i, i + 1));
  }
  std::sort(found.begin(), found.end());
  return found;
}

}  // namespace

CrownShape CrownShape::circle(Feet radius) {
  return CrownShape({radius.value, radius.value, radius.value, radius.value});
}

CrownShape CrownShape::measured(Feet north, Feet east, Feet south, Feet west) {
  return CrownShape({north.value, east.value, south.value, west.value});
}

std::optional<CrownShape> CrownShape::of(const CrownRadii& radii) {
  if (!radii.complete()) return std::nullopt;
  return measured(radii.north->feet(), radii.east->feet(), radii.south->feet(), radii.west->feet());
}

Feet CrownShape::reach(Degrees bearing) const {
  double turn = std::fmod(bearing.value, kFullTurn);
  if (turn < 0.0) turn += kFullTurn;
  const auto quarter = static_cast<std::size_t>(turn / kQuarterTurn) % 4;
  const double a = reach_[quarter];
  const double b = reach_[(quarter + 1) % 4];
  const double angle = radians_of(turn - kQuarterTurn * static_cast<double>(quarter));
  // Ellipse with half axes a (at the start of the quarter) and b, as a distance from its centre.
  const double below = std::hypot(b * std::cos(angle), a * std::sin(angle));
  return Feet{below > 0.0 ? a * b / below : a};  // a needle along its own axis
}

Feet CrownShape::widest() const { return Feet{*std::max_element(reach_.begin(), reach_.end())}; }

std::vector<Arc> closed_arcs(const CrownShape& crop, const CrownShape& other, Feet distance,
                             Degrees bearing, Feet gap) {
  const Clearance at(crop, other, distance, bearing, gap);
  const std::vector<double> ends = changes(at);
  if (ends.size() < 2) {
    constexpr Degrees kWholeEdge{180.0};
    return at(bearing.value) < 0.0 ? std::vector<Arc>{{bearing, kWholeEdge}} : std::vector<Arc>{};
  }
  std::vector<Arc> arcs;
  for (std::size_t i = 0; i < ends.size(); ++i) {
    const double from = ends[i];
    const double to = i + 1 < ends.size() ? ends[i + 1] : ends.front() + kFullTurn;
    const double middle = from + (to - from) / 2.0;
    if (at(middle) < 0.0) arcs.push_back({Degrees{middle}, Degrees{(to - from) / 2.0}});
  }
  return arcs;
}

}  // namespace oaklight
