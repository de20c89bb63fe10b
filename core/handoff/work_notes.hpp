#pragma once

#include <optional>
#include <span>
#include <vector>

#include "core/handoff/packet.hpp"
#include "core/handoff/packet_inputs.hpp"

namespace oaklight {

/// How and when each tree of the walk that goes by its mark may be dealt with (work_advice), judged
/// among the marks as they are and not among a recommendation.
///
/// trees    those of data.walk_trees, with positions as far as they are known
/// around   one for each of `trees`
/// returns  one for each of `trees`; nothing for a tree that stays, and for all of them where
///          tables.release is not given
/// errors   unknown_reference as graph_from_cards and latest_marks
Result<std::vector<std::optional<WorkNotes>>> work_notes_of_walk(
    const TractData& data, std::span<const WalkTree> trees, std::span<const Surroundings> around,
    const PacketTables& tables, const PacketOptions& options);

/// The stop beside a tree whose mark names a way that the rules do not leave; nothing where they
/// do, or where nothing was judged.
[[nodiscard]] std::optional<Caution> against_the_rules(const Mark& mark,
                                                       const std::optional<WorkNotes>& notes);

}  // namespace oaklight
