#pragma once

#include <vector>

#include "core/release/choose.hpp"

namespace oaklight {

/// What the steps before the verdicts found out.
struct Workings {
  const ReleaseInput& input;
  const std::vector<Traits>& traits;
  const std::vector<Keep>& keeps;
  const CropTrees& crops;
  const ReleaseProblem& problem;
  const ReleaseChoice& choice;
  const Advice& advice;
};

/// Step 12 of the order of decisions, first half: each tree's verdict with its reason, the rules
/// behind it and what would change it. In the order of the graph.
[[nodiscard]] std::vector<TreeVerdict> verdicts(const Workings& work);

/// The three kinds of verdict; they fill in reason, what_would_change_it, rules and verdict.
void explain_taken(const Workings& work, std::uint32_t tree, TreeVerdict& verdict);
void explain_kept(const Workings& work, std::uint32_t tree, TreeVerdict& verdict);
/// A candidate, released or not. False: nothing to say about it as a candidate.
bool explain_crop(const Workings& work, std::uint32_t tree, TreeVerdict& verdict);

/// "the white oak 14".
[[nodiscard]] std::string the_tree(const Workings& work, std::uint32_t tree);

/// "crown touches the white oak 14 on the east side", as it was seen or worked out; for several
/// crop trees "crown touches the white oak A on the south side and the red oak B on the north
/// side".
[[nodiscard]] std::string contact_words(const Workings& work,
                                        const std::vector<const CrownContact*>& contacts);

/// Rules that say why a contact counts, or does not.
[[nodiscard]] std::vector<std::string> contact_rules(const ReleaseInput& input,
                                                     const CrownContact& contact);

/// Adds rules that are not in the list yet.
void add_rules(std::vector<std::string>& rules, const std::vector<std::string>& more);

}  // namespace oaklight
