#pragma once

#include <span>
#include <vector>

#include "core/release/work.hpp"

namespace oaklight {

/// The ground on which a plan is carried out.
struct WorkSite {
  std::span<const WalkTree> trees;       ///< with positions as far as they are known
  std::span<const Surroundings> around;  ///< one for each of `trees`, in their order
  std::span<const Contact> contacts;
};

/// Each tree of a plan from cards as the work on it is judged, in the order of the plan. Distances
/// to crop trees of its own kind come from positions, else from the cards; where neither tells, the
/// trees count as close.
///
/// assumes  plan was made from input, and each of its trees is in site.trees; all outlive the cases
[[nodiscard]] std::vector<WorkCase> work_cases(const WorkSite& site, const ReleasePlan& plan,
                                               const ReleaseInput& input);

/// The oak wilt risk of a stand in words: its class by oak basal area, and what a wound in the
/// season asks for (R6.75, R6.78, R6.79).
[[nodiscard]] std::string oak_wilt_words(const std::optional<StandDensity>& stand,
                                         const WorkSettings& settings);

}  // namespace oaklight
