#pragma once

#include <optional>
#include <string>

#include "core/session/knowledge.hpp"
#include "core/session/live_tract.hpp"

// The stump check, as actions for TractStore::apply; pure, and with the errors of plot_work.hpp.

namespace oaklight {

/// What is noted of one stump or tree after the cut.
struct StumpDraft {
  std::optional<WalkTreeId> tree;  ///< nothing: it wears no tag
  std::optional<StandId> stand;    ///< of one without a tag
  Finding finding = Finding::as_marked;
  std::optional<SpeciesCode> species;  ///< of one without a tag
  std::optional<StumpDiameter> over_bark;
  std::optional<StumpDiameter> under_bark;
  std::optional<TapedLength> height;  ///< of the cut above the ground
  std::optional<Wound> wound;         ///< of hurt trees only
  std::optional<WoundPlace> wound_place;
  std::optional<Position> position;
  std::string seen_on;  ///< ISO 8601 day; "" not recorded
  std::string note;
};
[[nodiscard]] StumpDraft draft_of(const Stump& stump);

/// Notes a stump, a tree still standing or a hurt tree: "tag 12 found as marked".
///
/// errors   unknown_reference for a tree or stand that is gone; missing_value for a finding that
///          only a tagged tree can have; contradiction: found as marked, standing or hung and not
///          on the list, or cut without a mark or hurt and on the list; a stump thicker without its
///          bark than with it; a wound of a tree that is not hurt; unknown_species; out of the
///          form's limits
Result<Action> add_stump(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                         const StumpDraft& draft);
/// One tap at a tree of the walk: its latest finding is replaced, or it gets its first. A wound
/// that was noted stays when the finding is hurt again. Errors: as add_stump.
Result<Action> note_finding(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                            WalkTreeId tree, Finding finding, std::string seen_on);
/// The worst wound of a hurt tree of the walk, noted as hurt with it. Errors: as add_stump.
Result<Action> note_wound(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                          WalkTreeId tree, Wound wound, std::string seen_on);

/// Whether the mark of a tree has it felled or killed standing.
[[nodiscard]] bool is_listed(const LiveTract& live, WalkTreeId tree);

}  // namespace oaklight
