#pragma once

#include <string>
#include <vector>

#include "core/release/keep_list.hpp"

namespace oaklight {

/// Why a tree cannot be a crop tree.
enum class CropFault : std::uint8_t {
  dead,
  species_unknown,
  crown_class_unknown,
  crown_class,    ///< not in the main canopy
  live_crown,     ///< too short
  dieback,        ///< too much
  fork,           ///< tight
  sprout,         ///< joins its old stump high above the ground
  stem,           ///< timber goal: no straight, clean log
  risk,           ///< conk, canker, lean, ...
  too_thin,       ///< for a first release
  too_low,        ///< not tall enough yet
  too_thick,      ///< timber goal: its growth repays no more
  feeds_nothing,  ///< food goal: no mast
  sells_nothing,  ///< timber goal: no timber species
  invasive,
  poor_producer,  ///< food goal: bore little in every surveyed year
};

/// The fault in words that follow "because " ("its live crown is too short"), and its rules.
struct FaultWords {
  std::string text;
  std::vector<std::string> rules;
};
[[nodiscard]] FaultWords words_of(CropFault fault);

/// Whether a crop tree fault is only a gap in the record, so that a second look settles it.
[[nodiscard]] constexpr bool is_gap(CropFault fault) {
  return fault == CropFault::species_unknown || fault == CropFault::crown_class_unknown;
}

/// What keeps a tree from being a crop tree under this goal; empty when nothing does. Facts that
/// were not recorded are not held against it, but for crown class and species (R1.02 - R1.20).
[[nodiscard]] std::vector<CropFault> crop_faults(const TreeFacts& facts, const Traits& traits,
                                                 Goal goal, const ReleaseSettings& settings);

/// What a crop tree is worth under this goal, 1 .. 1000: whole points, so that ties are exact
/// (R1.25, X1.01 - X1.11).
///
/// scarce_group  the acorn group that holds less of the oak basal area; none when not known
[[nodiscard]] int crop_worth(const TreeFacts& facts, const Traits& traits, Goal goal,
                             OakGroup scarce_group, const ReleaseSettings& settings);

/// Step 5: the trees that may be crop trees.
struct CropTrees {
  std::vector<int> worth;                      ///< by tree; 0: no candidate
  std::vector<std::vector<CropFault>> faults;  ///< by tree; of proposed trees
  std::vector<std::uint32_t> ranked;           ///< candidates, best first; equals by tag, then id
};
[[nodiscard]] CropTrees crop_trees(const ReleaseInput& input, const std::vector<Traits>& traits);

}  // namespace oaklight
