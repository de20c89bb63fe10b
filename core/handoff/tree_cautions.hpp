#pragma once

#include <map>
#include <span>
#include <vector>

#include "core/handoff/packet.hpp"
#include "core/handoff/packet_inputs.hpp"

namespace oaklight {

/// The latest mark of each tree that has one: of two marks the one with the higher id.
///
/// errors   unknown_reference when a mark's tree is not in the data
Result<std::map<WalkTreeId, const Mark*>> latest_marks(const TractData& data);

/// The cautions of each tree of the walk, at most three, as its latest mark treats it.
///
/// returns  one list for each of data.walk_trees, in their order
/// errors   unknown_species; as latest_marks
Result<std::vector<std::vector<Caution>>> cautions_of_walk(const TractData& data,
                                                           const PacketTables& tables,
                                                           const PacketOptions& options);

/// The same, where the places of the trees and what is around each are known already.
/// trees, around   one for each of data.walk_trees, in their order
Result<std::vector<std::vector<Caution>>> cautions_of_walk(const TractData& data,
                                                           std::span<const WalkTree> trees,
                                                           std::span<const Surroundings> around,
                                                           const PacketTables& tables,
                                                           const PacketOptions& options);

/// Whether a reader may deal with a tree with these cautions from a list. A firewood cutter: when
/// none is more than a note and the tree is felled whole by hand, so that a careful beginner could
/// do it. All others: when none is a stop.
[[nodiscard]] bool may_work_from_list(PacketReader reader, Method method,
                                      std::span<const Caution> cautions);

/// Whether a day lies in a window that holds cutting back and whose issue begins so ("bat_").
[[nodiscard]] bool in_season(std::span<const SeasonWindow> of_state, std::string_view issue,
                             Day day);
/// The same for work whose day may not be known: then any such window counts.
[[nodiscard]] bool may_fall_in_season(std::span<const SeasonWindow> of_state,
                                      std::string_view issue, std::optional<Day> day);

/// The marks of the tract with a destination for each tree to take that has none: firewood that a
/// firewood cutter may cut from a list goes to him, all else to the logger. Other marks are as they
/// were.
///
/// errors   as cautions_of_walk
Result<std::vector<Mark>> with_destinations(const TractData& data, const PacketTables& tables,
                                            const PacketOptions& options);

}  // namespace oaklight
