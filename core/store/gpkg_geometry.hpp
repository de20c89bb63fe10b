#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"
#include "core/model/place.hpp"

namespace oaklight::store {

// Geometry blobs: an 8-byte GeoPackage header, an envelope unless it is a point, then little-endian
// well-known binary in WGS 84 (4326), x = longitude, y = latitude. Source: OGC 12-128 1.3, clause
// 2.1.3; OGC 06-103r4, clause 8.
//
// Makers return bad_geometry for a latitude outside -90 .. 90, a longitude outside -180 .. 180, a
// line of less than two positions, and a ring of less than four or not closed. Readers return
// bad_geometry for every blob that the makers would not have made.

Result<std::string> point_blob(const Position& place);
Result<std::string> line_blob(const std::vector<Position>& points);
/// Rings go as they are; their direction is not changed.
Result<std::string> polygon_blob(const Polygon& polygon);

Result<Position> point_from_blob(std::string_view blob);
Result<std::vector<Position>> line_from_blob(std::string_view blob);
Result<Polygon> polygon_from_blob(std::string_view blob);

struct Box {
  double min_x = 0.0;
  double min_y = 0.0;
  double max_x = 0.0;
  double max_y = 0.0;
  friend bool operator==(const Box&, const Box&) = default;
};

/// What a geometry of ours covers, whichever of the three kinds it is; nothing for other bytes.
std::optional<Box> box_of(std::string_view blob);

}  // namespace oaklight::store
