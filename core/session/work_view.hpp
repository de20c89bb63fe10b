#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/day.hpp"
#include "core/release/work.hpp"
#include "core/session/decide.hpp"

namespace oaklight {

/// How and when one tree of a plan is dealt with.
struct TreeWork {
  WorkAdvice advice;
  std::optional<DayAdvice> day;   ///< nothing for a tree that is left
  std::string wilt;               ///< oak wilt in words; "" where no oak stands beside it
  std::vector<Caution> cautions;  ///< as for whoever stands before it: stops first
};

/// Method, herbicide, open dangers, season and cautions of each tree of one stand's plan, in the
/// order of the plan's trees. A stop among the cautions goes before every way that is advised.
///
/// day      of the work
/// errors   of input_from_cards
/// assumes  the plan was made from the same data and knowledge
Result<std::vector<TreeWork>> work_of_stand(const TractData& data, const TractKnowledge& knowledge,
                                            StandId stand, const ReleasePlan& plan, Day day);

}  // namespace oaklight
