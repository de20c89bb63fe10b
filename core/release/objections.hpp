#pragma once

#include <string>
#include <vector>

#include "core/release/plan.hpp"

namespace oaklight {

/// A plan that a person made.
struct HandPlan {
  std::vector<std::string> crop_tags;  ///< to be released
  std::vector<std::string> cut_tags;   ///< to be taken, in whatever way
};

/// What the rules say against one tree of a hand-made plan, or against the whole.
struct Objection {
  std::string tag;  ///< "" when the whole plan is meant
  std::string text;
  std::vector<std::string> rules;
};

/// Everything that the rules say against a plan made by hand; empty when they say nothing. A person
/// may still overrule them: this is what to know before.
///
/// A tag that is not among the trees is an objection of its own.
[[nodiscard]] std::vector<Objection> objections(const ReleaseInput& input, const HandPlan& plan);

}  // namespace oaklight
