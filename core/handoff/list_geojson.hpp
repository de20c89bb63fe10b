#pragma once

#include <string>

#include "core/handoff/packet.hpp"

namespace oaklight {

/// The list of a packet as GeoJSON: one Feature a tree, a Point in WGS 84 (longitude first, six
/// decimals, about 4 in), its properties the columns of list_table; null is "not known", also for
/// the geometry of a tree without a position.
/// Source: RFC 7946, sections 3.2, 3.3, 4 and 11.2.
[[nodiscard]] std::string list_geojson(const Packet& packet);

}  // namespace oaklight
