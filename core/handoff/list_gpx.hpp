#pragma once

#include <string>

#include "core/handoff/packet.hpp"

namespace oaklight {

/// The trees of a packet that have a position as GPX 1.1 waypoints for a handheld: named by tag,
/// typed by list, described with the cautions first. The columns of list_table follow as extensions
/// in a namespace of ours. Trees without a position are counted in the file's description; the list
/// itself has them.
/// Source: GPX 1.1 schema (topografix.com/GPX/1/1): wptType, metadataType, extensionsType
/// (retrieved).
[[nodiscard]] std::string list_gpx(const Packet& packet);

/// How many trees of a packet have a position.
[[nodiscard]] std::size_t placed_trees(const Packet& packet);

}  // namespace oaklight
