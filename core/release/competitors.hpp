#pragma once

#include <vector>

#include "core/release/crop_trees.hpp"

namespace oaklight {

/// What a neighbour is to one crop tree.
enum class Role : std::uint8_t {
  clear,      ///< takes no light from it
  doubt,      ///< somebody has to look up, or to say what tree it is
  kept,       ///< crowds it and stays: keep list
  bank,       ///< crowds it, holds a bank: killed standing if the crop tree cannot do without
  sound_oak,  ///< crowds it; an oak that nobody has shown to be the poorer one: stays
  food_tree,  ///< crowds it, feeds animals itself: taken if the crop tree cannot do without
  conifer,    ///< crowds it, gives winter cover: taken if the crop tree cannot do without
  fellow,     ///< crowds it and may be a crop tree itself
  failing,    ///< crowds it, diseased or failing: taken
  plain,      ///< crowds it, feeds little: taken
  poor_oak,   ///< crowds it; an oak with a poor crown or a poor record: taken
  sprout,     ///< crowds it; a stem too many on its own stump: taken
};

/// Taken wherever it frees a side.
[[nodiscard]] constexpr bool goes(Role role) { return role >= Role::failing; }
/// Taken only when the crop tree cannot reach its sides otherwise.
[[nodiscard]] constexpr bool goes_if_needed(Role role) {
  return role == Role::bank || role == Role::food_tree || role == Role::conifer;
}
[[nodiscard]] constexpr bool crowds(Role role) {
  return role != Role::clear && role != Role::doubt;
}

/// Step 7: the role of each contact of the graph (R1.50 - R1.58, R3.39, R5.31, R5.32, R6.01, R6.58
/// - R6.62). Same order as ReleaseGraph::contacts.
[[nodiscard]] std::vector<Role> roles_of(const ReleaseInput& input,
                                         const std::vector<Traits>& traits,
                                         const std::vector<Keep>& keeps, const CropTrees& crops);

/// Why a touching tree counts as failing; "" when it does not: "it is dying back (40 %)".
[[nodiscard]] std::string failing_words(const TreeFacts& facts, const ReleaseSettings& settings);

}  // namespace oaklight
