#pragma once

#include <optional>
#include <vector>

#include "core/handoff/stump_check.hpp"
#include "core/place/geodesy.hpp"
#include "core/session/knowledge.hpp"

namespace oaklight {

/// A leave tree of the walk: what a walker may find cut or hurt.
struct LeaveTree {
  WalkTreeId tree;
  std::string tag, stand, species;
  Dbh dbh;
  bool crop = false;
  std::optional<Finding> finding;  ///< latest; nothing: nothing was noted
  std::optional<Wound> wound;
  std::optional<Position> position;
};

/// The walk with the list, as a screen shows it.
struct StumpView {
  StumpCheck check;
  /// Places in check.listed: those nobody looked at come first, nearest first, ties and trees
  /// without a position by tag; then the others by tag.
  std::vector<std::size_t> order;
  std::vector<std::optional<Leg>> legs;  ///< from the walker to each of check.listed, TRUE north
  std::vector<LeaveTree> leave;          ///< by tag
};

/// The stump check of a tract. Errors: of make_stump_check.
Result<StumpCheck> stump_check_for(const TractData& data, const TractKnowledge& knowledge,
                                   PacketOptions options);

/// The same for a walker.
///
/// here     the device's position, or that of the tree seen last
/// cost     the cautions of every tree of the walk
/// errors   of make_stump_check
Result<StumpView> stump_view(const TractData& data, const TractKnowledge& knowledge,
                             const PacketOptions& options, std::optional<Position> here);

}  // namespace oaklight
