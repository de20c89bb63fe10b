#include "core/place/walk_ground.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

namespace oaklight {
namespace {

constexpr double kNoWay = std::numeric_limits<double>::infinity();
constexpr std::size_t kNowhere = std::numeric_limits<std::size_t>::max();
/// How far off a barrier's corner a way turns: a step.
constexpr double kOff = 3.0;

struct Vector {
  double x = 0.0;
  double y = 0.0;
};
Vector between(const LocalFeet& a, const LocalFeet& b) {
  return {(b.east - a.east).value, (b.north - a.north).value};
}
double cross(Vector a, Vector b) { return a.x * b.y - a.y * b.x; }
double length(Vector v) { return std::hypot(v.x, v.y); }
Vector unit(Vector v) {
  const double l = length(v);
  return l > 0.0 ? Vector{v.x / l, v.y / l} : Vector{};
}
LocalFeet moved(const LocalFeet& place, Vector v, double feet) {
  return {place.east + Feet{v.x * feet}, place.north + Feet{v.y * feet}};
}

bool left_of(const LocalFeet& a, const LocalFeet& b, const LocalFeet& place) {
  return cross(between(a, b), between(a, place)) >= 0.0;
}
/// Whether a walk from a to b crosses a wall from c to d. A place exactly on the other line counts
/// as left of it, so that a walk through the joint of two walls crosses exactly one of them.
bool crosses(const LocalFeet& a, const LocalFeet& b, const LocalFeet& c, const LocalFeet& d) {
  return left_of(a, b, c) != left_of(a, b, d) && left_of(c, d, a) != left_of(c, d, b);
}

/// How far along the wall c, d, as a share, the line a, b meets it.
double share_along(const LocalFeet& a, const LocalFeet& b, const LocalFeet& c, const LocalFeet& d) {
  return cross(between(a, b), between(c, a)) / cross(between(a, b), between(c, d));
}

double distance_off(const LocalFeet& a, const LocalFeet& b, const LocalFeet& place) {
  const Vector along = between(a, b);
  const double l = length(along);
  if (l == 0.0) return length(between(a, place));
  const Vector to = between(a, place);
  const double share = std::clamp((to.x * along.x + to.y * along.y) / (l * l), 0.0, 1.0);
  return length(between(moved(a, along, share), place));
}

}  // namespace

WalkGround::WalkGround(std::span<const LocalFeet> stops, std::span<const FlatLine> barriers)
    : stops_(stops.size()), nodes_(stops.begin(), stops.end()), costs_(stops.size()) {
  for (const FlatLine& line : barriers) {
    for (std::size_t i = 0; i + 1 < line.size(); ++i) walls_.push_back({line[i], line[i + 1]});
  }
  add_corners(barriers);
  join();
  for (std::size_t stop = 0; stop < stops_; ++stop) walk_from(stop);
}

/// A taut way turns only round the end of a barrier or round the outer side of a bend.
void WalkGround::add_corners(std::span<const FlatLine> barriers) {
  for (const FlatLine& line : barriers) {
    const std::size_t n = line.size();
    if (n < 2) continue;
    const bool ring = line.front() == line.back();
    for (std::size_t i = 0; i < n; ++i) {
      const bool end = i == 0 || i + 1 == n;
      if (end && ring && i != 0) continue;
      if (end && !ring) {
        const LocalFeet& inner = i == 0 ? line[1] : line[n - 2];
        const Vector out = unit(between(inner, line[i]));
        nodes_.push_back(moved(line[i], out, kOff));
        // Beside the end too, so that a way can turn sharply round it.
        nodes_.push_back(moved(line[i], {-out.y, out.x}, kOff));
        nodes_.push_back(moved(line[i], {out.y, -out.x}, kOff));
        continue;
      }
      const LocalFeet& from = end ? line[n - 2] : line[i - 1];
      const Vector a = unit(between(from, line[i]));
      const Vector b = unit(between(line[i], line[i + 1]));
      const Vector outward = unit({a.x - b.x, a.y - b.y});
      if (length(outward) > 0.0) nodes_.push_back(moved(line[i], outward, kOff));
    }
  }
}

bool WalkGround::sees(std::size_t a, std::size_t b) const {
  return std::ranges::none_of(
      walls_, [&](const Wall& wall) { return crosses(nodes_[a], nodes_[b], wall.from, wall.to); });
}

void WalkGround::join() {
  steps_.resize(nodes_.size());
  for (std::size_t a = 0; a < nodes_.size(); ++a) {
    for (std::size_t b = a + 1; b < nodes_.size(); ++b) {
      if (!sees(a, b)) continue;
      const double feet = length(between(nodes_[a], nodes_[b]));
      steps_[a].push_back({b, feet});
      steps_[b].push_back({a, feet});
    }
  }
}

/// Dijkstra 1959, over a list, as nearly every node sees many others.
void WalkGround::walk_from(std::size_t stop) {
  std::vector<double> feet(nodes_.size(), kNoWay);
  std::vector<std::size_t>& before = before_.emplace_back(nodes_.size(), kNowhere);
  std::vector<bool> done(nodes_.size(), false);
  feet[stop] = 0.0;
  while (true) {
    std::size_t at = kNowhere;
    for (std::size_t i = 0; i < nodes_.size(); ++i) {
      if (!done[i] && feet[i] < kNoWay && (at == kNowhere || feet[i] < feet[at])) at = i;
    }
    if (at == kNowhere) break;
    done[at] = true;
    for (const Step& step : steps_[at]) {
      if (feet[at] + step.feet >= feet[step.to]) continue;
      feet[step.to] = feet[at] + step.feet;
      before[step.to] = at;
    }
  }
  // From lower to higher only: added in another order, a sum may differ in its last bit.
  for (std::size_t other = stop + 1; other < stops_; ++other) costs_.set(stop, other, feet[other]);
}

std::vector<LocalFeet> WalkGround::way(std::size_t a, std::size_t b) const {
  std::vector<LocalFeet> places;
  if (a != b && before_[a][b] == kNowhere) return places;
  for (std::size_t at = b; at != a; at = before_[a][at]) places.push_back(nodes_[at]);
  places.push_back(nodes_[a]);
  std::ranges::reverse(places);
  return places;
}

FlatLine simplified(const FlatLine& line, Feet tolerance) {
  if (line.size() < 3) return line;
  std::vector<bool> kept(line.size(), false);
  kept.front() = kept.back() = true;
  std::vector<std::pair<std::size_t, std::size_t>> runs = {{0, line.size() - 1}};
  while (!runs.empty()) {
    const auto [first, last] = runs.back();
    runs.pop_back();
    double most = tolerance.value;
    std::optional<std::size_t> furthest;
    for (std::size_t i = first + 1; i < last; ++i) {
      const double off = distance_off(line[first], line[last], line[i]);
      if (off <= most) continue;
      most = off;
      furthest = i;
    }
    if (!furthest) continue;
    kept[*furthest] = true;
    runs.emplace_back(first, *furthest);
    runs.emplace_back(*furthest, last);
  }
  FlatLine out;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (kept[i]) out.push_back(line[i]);
  }
  return out;
}

std::vector<FlatLine> opened_where_crossed(const FlatLine& line, std::span<const FlatLine> ways,
                                           Feet reach) {
  std::vector<FlatLine> parts;
  FlatLine part;
  const auto close = [&] {
    if (part.size() > 1) parts.push_back(part);
    part.clear();
  };
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const LocalFeet& a = line[i];
    const LocalFeet& b = line[i + 1];
    const Vector along = between(a, b);
    const double reach_share = length(along) > 0.0 ? reach.value / length(along) : 1.0;
    std::vector<double> gaps;
    for (const FlatLine& way : ways) {
      for (std::size_t k = 0; k + 1 < way.size(); ++k) {
        if (crosses(way[k], way[k + 1], a, b)) {
          gaps.push_back(share_along(way[k], way[k + 1], a, b));
        }
      }
    }
    std::ranges::sort(gaps);
    if (part.empty()) part.push_back(a);
    double open_until = 0.0;
    for (const double gap : gaps) {
      const double from = gap - reach_share;
      if (from > open_until) {
        part.push_back(moved(a, along, from));
      } else if (open_until > 0.0) {
        part.clear();
      }
      close();
      open_until = std::min(1.0, gap + reach_share);
      part = {moved(a, along, open_until)};
    }
    part.push_back(b);
  }
  close();
  return parts;
}

}  // namespace oaklight
