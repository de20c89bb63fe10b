#include "core/store/gpkg_geometry.hpp"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <limits>
#include <span>

namespace oaklight::store {
namespace {

constexpr std::string_view kMagic = "GP";
constexpr std::uint32_t kWgs84 = 4326;
constexpr std::uint8_t kLittleEndian = 0x01;
constexpr std::uint8_t kEnvelopeXy =
    0x02;  // bits 1-3 of the flags, value 1: min x, max x, min y, max y
constexpr std::uint32_t kPoint = 1;
constexpr std::uint32_t kLine = 2;
constexpr std::uint32_t kPolygon = 3;
constexpr std::size_t kBytesOfPosition = 16;

Error bad(const std::string& what, const std::string& fix) {
  return {ErrorCode::bad_geometry, what, "geom", fix};
}

Error unreadable() {
  return bad("This geometry is not one that Oaklight writes.",
             "Take the shape from a copy of the file, or draw it again.");
}

// --- writing

template <class T>
void append_bytes(std::string& out, T number) {
  for (std::size_t i = 0; i < sizeof(T); ++i) out += static_cast<char>((number >> (8 * i)) & 0xFFU);
}
void append_number(std::string& out, double x) {
  append_bytes(out, std::bit_cast<std::uint64_t>(x));
}

std::string header(std::uint8_t flags) {
  std::string out(kMagic);
  out += '\0';  // version 1 of the blob format is written as 0
  out += static_cast<char>(flags);
  append_bytes(out, kWgs84);
  return out;
}

void append_box(std::string& out, const Box& box) {
  for (const double x : {box.min_x, box.max_x, box.min_y, box.max_y}) append_number(out, x);
}

void append_type(std::string& out, std::uint32_t type) {
  out += static_cast<char>(kLittleEndian);
  append_bytes(out, type);
}

void append_positions(std::string& out, std::span<const Position> points) {
  for (const Position& p : points) {
    append_number(out, p.longitude.value);
    append_number(out, p.latitude.value);
  }
}

void append_counted(std::string& out, std::span<const Position> points) {
  append_bytes(out, static_cast<std::uint32_t>(points.size()));
  append_positions(out, points);
}

// Written so that NaN is refused too.
bool on_earth(const Position& p) {
  return p.latitude.value >= -90 && p.latitude.value <= 90 && p.longitude.value >= -180 &&
         p.longitude.value <= 180;
}

bool all_on_earth(std::span<const Position> points) {
  return std::all_of(points.begin(), points.end(), on_earth);
}

Error off_earth() {
  return bad("A position lies outside latitude -90 to 90 or longitude -180 to 180.",
             "Check whether latitude and longitude are swapped.");
}

bool is_ring(std::span<const Position> ring) {
  return ring.size() >= 4 && ring.front() == ring.back();
}

Box box_around(std::span<const Position> points) {
  constexpr double kFar = std::numeric_limits<double>::infinity();
  Box box{kFar, kFar, -kFar, -kFar};
  for (const Position& p : points) {
    box.min_x = std::min(box.min_x, p.longitude.value);
    box.max_x = std::max(box.max_x, p.longitude.value);
    box.min_y = std::min(box.min_y, p.latitude.value);
    box.max_y = std::max(box.max_y, p.latitude.value);
  }
  return box;
}

// --- reading

/// Takes numbers off the front of a blob; once it runs short, ok stays false.
struct Cursor {
  std::string_view rest;
  bool ok = true;

  template <class T>
  T bytes() {
    if (rest.size() < sizeof(T)) {
      ok = false;
      return 0;
    }
    T number = 0;
    for (std::size_t i = 0; i < sizeof(T); ++i)
      number =
          static_cast<T>(number | (static_cast<T>(static_cast<std::uint8_t>(rest[i])) << (8 * i)));
    rest.remove_prefix(sizeof(T));
    return number;
  }
  double number() { return std::bit_cast<double>(bytes<std::uint64_t>()); }
  Position position() {
    const double x = number();
    const double y = number();
    return {Degrees{y}, Degrees{x}};
  }
  /// A count and as many positions. The count is believed only as far as there are bytes.
  std::vector<Position> positions() {
    const auto n = bytes<std::uint32_t>();
    if (n > rest.size() / kBytesOfPosition) {
      ok = false;
      return {};
    }
    std::vector<Position> points;
    points.reserve(n);
    for (std::uint32_t i = 0; i < n; ++i) points.push_back(position());
    return points;
  }
  [[nodiscard]] bool ended() const { return ok && rest.empty(); }
};

/// The geometry type, with the cursor behind it; 0 for a blob that is not ours.
std::uint32_t enter(Cursor& in) {
  if (!in.rest.starts_with(kMagic)) return 0;
  in.rest.remove_prefix(kMagic.size());
  if (in.bytes<std::uint8_t>() != 0) return 0;
  const auto flags = in.bytes<std::uint8_t>();
  if (flags != kLittleEndian && flags != (kLittleEndian | kEnvelopeXy)) return 0;
  if (in.bytes<std::uint32_t>() != kWgs84) return 0;
  if ((flags & kEnvelopeXy) != 0) {
    for (int i = 0; i < 4; ++i) in.number();
  }
  if (in.bytes<std::uint8_t>() != kLittleEndian) return 0;
  const auto type = in.bytes<std::uint32_t>();
  return in.ok ? type : 0;
}

}  // namespace

Result<std::string> point_blob(const Position& place) {
  if (!on_earth(place)) return off_earth();
  std::string out = header(kLittleEndian);
  append_type(out, kPoint);
  append_positions(out, {&place, 1});
  return out;
}

Result<std::string> line_blob(const std::vector<Position>& points) {
  if (points.size() < 2) return bad("A line needs two positions or more.", "Draw it again.");
  if (!all_on_earth(points)) return off_earth();
  std::string out = header(kLittleEndian | kEnvelopeXy);
  append_box(out, box_around(points));
  append_type(out, kLine);
  append_counted(out, points);
  return out;
}

Result<std::string> polygon_blob(const Polygon& polygon) {
  std::vector<std::span<const Position>> rings{polygon.outer};
  rings.insert(rings.end(), polygon.holes.begin(), polygon.holes.end());
  for (const auto ring : rings) {
    if (!is_ring(ring)) {
      return bad(
          "A ring of a boundary has less than four positions or does not end where it began.",
          "Repeat the first position at the end.");
    }
    if (!all_on_earth(ring)) return off_earth();
  }
  std::string out = header(kLittleEndian | kEnvelopeXy);
  append_box(out, box_around(polygon.outer));
  append_type(out, kPolygon);
  append_bytes(out, static_cast<std::uint32_t>(rings.size()));
  for (const auto ring : rings) append_counted(out, ring);
  return out;
}

Result<Position> point_from_blob(std::string_view blob) {
  Cursor in{blob};
  if (enter(in) != kPoint) return unreadable();
  const Position place = in.position();
  if (!in.ended() || !on_earth(place)) return unreadable();
  return place;
}

Result<std::vector<Position>> line_from_blob(std::string_view blob) {
  Cursor in{blob};
  if (enter(in) != kLine) return unreadable();
  std::vector<Position> points = in.positions();
  if (!in.ended() || points.size() < 2 || !all_on_earth(points)) return unreadable();
  return points;
}

Result<Polygon> polygon_from_blob(std::string_view blob) {
  Cursor in{blob};
  if (enter(in) != kPolygon) return unreadable();
  const auto rings = in.bytes<std::uint32_t>();
  Polygon polygon;
  for (std::uint32_t i = 0; i < rings && in.ok; ++i) {
    Ring ring = in.positions();
    if (!is_ring(ring) || !all_on_earth(ring)) return unreadable();
    if (i == 0) {
      polygon.outer = std::move(ring);
    } else {
      polygon.holes.push_back(std::move(ring));
    }
  }
  if (rings == 0 || !in.ended()) return unreadable();
  return polygon;
}

std::optional<Box> box_of(std::string_view blob) {
  if (const auto place = point_from_blob(blob)) return box_around({&*place, 1});
  if (const auto line = line_from_blob(blob)) return box_around(*line);
  if (const auto polygon = polygon_from_blob(blob)) return box_around(polygon->outer);
  return std::nullopt;
}

}  // namespace oaklight::store
