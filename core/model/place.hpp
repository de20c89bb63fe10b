#pragma once

#include <cstdint>
#include <initializer_list>
#include <string>
#include <vector>

#include "core/model/ids.hpp"
#include "core/model/words.hpp"
#include "core/units/units.hpp"

namespace oaklight {

/// A place on the WGS 84 ellipsoid; north and east are positive.
struct Position {
  Degrees latitude;
  Degrees longitude;
  friend bool operator==(const Position&, const Position&) = default;
};

/// A closed ring: the first position is repeated at the end.
using Ring = std::vector<Position>;

/// Outer ring (counter-clockwise) and holes (clockwise).
struct Polygon {
  Ring outer;
  std::vector<Ring> holes;
  friend bool operator==(const Polygon&, const Polygon&) = default;
};

/// The four sides of a crop tree's crown.
enum class Side : std::uint8_t { north, east, south, west };
inline constexpr auto kSides = {Side::north, Side::east, Side::south, Side::west};
template <>
inline constexpr auto kWords<Side> = std::to_array<Word<Side>>(
    {{Side::north, "N"}, {Side::east, "E"}, {Side::south, "S"}, {Side::west, "W"}});

/// A set of sides.
class Sides {
 public:
  constexpr Sides() = default;
  constexpr Sides(std::initializer_list<Side> list) {
    for (const Side s : list) add(s);
  }
  static constexpr Sides all() { return {Side::north, Side::east, Side::south, Side::west}; }
  constexpr void add(Side s) { bits_ = static_cast<std::uint8_t>(bits_ | bit(s)); }
  constexpr void add(Sides other) { bits_ = static_cast<std::uint8_t>(bits_ | other.bits_); }
  [[nodiscard]] constexpr bool has(Side s) const { return (bits_ & bit(s)) != 0; }
  [[nodiscard]] constexpr bool empty() const { return bits_ == 0; }
  [[nodiscard]] constexpr int count() const {
    int n = 0;
    for (const Side s : kSides) n += has(s) ? 1 : 0;
    return n;
  }
  friend constexpr bool operator==(Sides, Sides) = default;

 private:
  static constexpr std::uint8_t bit(Side s) {
    return static_cast<std::uint8_t>(1U << static_cast<unsigned>(s));
  }
  std::uint8_t bits_ = 0;
};

/// A line on the tract's map that a person must know about.
enum class LineKind { stream, neighbour_line, road, trail, power_line };
template <>
inline constexpr auto kWords<LineKind> =
    std::to_array<Word<LineKind>>({{LineKind::stream, "stream"},
                                   {LineKind::neighbour_line, "neighbour_line"},
                                   {LineKind::road, "road"},
                                   {LineKind::trail, "trail"},
                                   {LineKind::power_line, "power_line"}});

struct MapLine {
  MapLineId id;
  LineKind kind = LineKind::trail;
  std::string name;
  bool confirmed = false;  ///< neighbour lines: surveyed or agreed with the neighbour
  std::vector<Position> points;
};

}  // namespace oaklight
