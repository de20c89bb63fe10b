#include "core/forms/ring.hpp"

#include <algorithm>
#include <vector>

namespace oaklight {
namespace {

// Edges are tried in pairs; an outline of a stand has some hundreds of them.
constexpr std::size_t kMostPositions = 5'000;

/// Twice the area of the triangle a, b, c; positive when it turns left.
double turn(const Position& a, const Position& b, const Position& c) {
  return (b.longitude.value - a.longitude.value) * (c.latitude.value - a.latitude.value) -
         (b.latitude.value - a.latitude.value) * (c.longitude.value - a.longitude.value);
}

/// Whether the ends of each edge lie on two sides of the other.
bool cross(const Position& a, const Position& b, const Position& c, const Position& d) {
  const auto parted = [](double x, double y) { return (x < 0 && y > 0) || (x > 0 && y < 0); };
  return parted(turn(a, b, c), turn(a, b, d)) && parted(turn(c, d, a), turn(c, d, b));
}

struct Edge {
  std::size_t start;
  double west;
  double east;
};

std::vector<Edge> edges_of(const Ring& ring) {
  std::vector<Edge> edges;
  for (std::size_t i = 0; i + 1 < ring.size(); ++i) {
    const auto [west, east] = std::minmax(ring[i].longitude.value, ring[i + 1].longitude.value);
    edges.push_back({i, west, east});
  }
  return edges;
}

bool crosses_itself(const Ring& ring) {
  std::vector<Edge> edges = edges_of(ring);
  // From west to east, an edge can only cross those that begin before it ends.
  std::sort(edges.begin(), edges.end(),
            [](const Edge& a, const Edge& b) { return a.west < b.west; });
  for (std::size_t i = 0; i < edges.size(); ++i) {
    for (std::size_t j = i + 1; j < edges.size() && edges[j].west <= edges[i].east; ++j) {
      const std::size_t a = edges[i].start;
      const std::size_t b = edges[j].start;
      if (cross(ring[a], ring[a + 1], ring[b], ring[b + 1])) return true;
    }
  }
  return false;
}

}  // namespace

double doubled_area(const Ring& ring) {
  double sum = 0.0;
  for (std::size_t i = 0; i + 1 < ring.size(); ++i) sum += turn(ring[0], ring[i], ring[i + 1]);
  return sum;
}

std::optional<std::string> ring_fault(const Ring& ring) {
  constexpr std::size_t kTriangle = 4;  // the first position is repeated at the end
  if (ring.size() < kTriangle) return "The outline has fewer than four positions.";
  if (ring.size() > kMostPositions) return "The outline has more than 5,000 positions.";
  if (ring.front() != ring.back()) return "The outline does not end where it begins.";
  // Asked first: the two halves of an even bow-tie take each other's area away.
  if (crosses_itself(ring)) return "The outline crosses itself.";
  const bool flat = doubled_area(ring) == 0.0;
  if (flat) return "The outline goes round no ground.";
  return std::nullopt;
}

std::size_t positions_to_try(const std::vector<Polygon>& parts) {
  std::size_t positions = 0;
  const auto add = [&](const Ring& ring) {
    if (ring.size() <= kMostPositions) positions += ring.size();
  };
  for (const Polygon& part : parts) {
    add(part.outer);
    for (const Ring& hole : part.holes) add(hole);
  }
  return positions;
}

bool goes_round(const Ring& ring, const Position& position) {
  bool inside = false;
  for (std::size_t i = 0; i + 1 < ring.size(); ++i) {
    const Position& a = ring[i];
    const Position& b = ring[i + 1];
    if ((a.latitude > position.latitude) == (b.latitude > position.latitude)) continue;
    // East of the edge where the line of this latitude meets it?
    const double along = (position.latitude - a.latitude) / (b.latitude - a.latitude);
    const Degrees meets = a.longitude + along * (b.longitude - a.longitude);
    if (position.longitude < meets) inside = !inside;
  }
  return inside;
}

bool rings_cross(const Ring& a, const Ring& b) {
  const std::vector<Edge> edges = edges_of(b);
  for (const Edge& one : edges_of(a)) {
    for (const Edge& other : edges) {
      if (one.east < other.west || other.east < one.west) continue;
      if (cross(a[one.start], a[one.start + 1], b[other.start], b[other.start + 1])) return true;
    }
  }
  return false;
}

}  // namespace oaklight
