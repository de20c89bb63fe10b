#pragma once

#include <string>

#include "core/base/result.hpp"
#include "core/handoff/packet.hpp"

namespace oaklight {

/// The list of a packet as a GeoPackage of its own, as bytes: layer listed_tree with the columns of
/// list_table, and the stands and lines that its map shows. Nothing else of the tract is in it.
///
/// folder   where it is put together, under a name that ends in ".making"
/// errors   as write_layers
Result<std::string> list_geopackage(const Packet& packet, const std::string& folder);

}  // namespace oaklight
