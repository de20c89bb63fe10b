#pragma once

#include <optional>
#include <vector>

#include "core/handoff/packet.hpp"
#include "core/handoff/packet_inputs.hpp"

namespace oaklight {

/// The list on which a tree is printed.
enum class ListKind { work, trained, keep, others };

/// A tree with what its place on a list is decided by.
struct PacketRow {
  PacketTree tree;
  ListKind list = ListKind::others;
  std::optional<Percent> slope;
  bool local_volume = false;  ///< its volume is that of the tract's own table
};

/// One row for each tree of the walk, by stand and tag, as one reader is told of it.
/// Errors: as make_packet.
Result<std::vector<PacketRow>> packet_rows(const TractData& data, const PacketTables& tables,
                                           PacketReader reader, const PacketOptions& options);

}  // namespace oaklight
