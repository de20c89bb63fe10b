#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/session/knowledge.hpp"
#include "core/session/live_tract.hpp"

namespace oaklight {

/// One side of a crop crown.
enum class SideState {
  free,
  shared,  ///< closed only by another crop tree of its pair
  closed,
  unknown,  ///< nobody looked, or contact is in doubt
};

/// One neighbour on a card.
struct NeighbourView {
  ContactId contact;
  WalkTreeId tree;
  Contact standing;  ///< sides, what was seen, distance, azimuth
  Sides sides;       ///< on which it stands, from the azimuth where no side was told
  std::string tag;
  std::string species;
  TreeFacts facts;
  CrownRadii taped;         ///< radii of its own crown
  std::vector<Arc> closes;  ///< of the crop crown's edge, bearings; of a crop crown with four radii
  std::optional<Verdict> marked;              ///< the mark in the file; nothing: not decided yet
  bool by_hand = false;                       ///< a person decided it
  Verdict recommended = Verdict::look_again;  ///< what the rules say now
  std::string reason;                         ///< of the mark; of the recommendation without one
  std::vector<std::string> rules;             ///< likewise
  std::string what_would_change_it;           ///< the recommendation
  bool goes = false;  ///< marked to be taken or killed standing: its crown is gone in `after`
};

/// A floor or ceiling of the stand, with the trees now marked gone.
struct GuardView {
  GuardState state;
  /// It holds, by a twentieth of its limit or less. Ours: a size to look at, not a rule.
  bool near_limit = false;
};

/// A crop tree card as a screen shows it.
struct CardView {
  WalkTreeId crop;
  StandId stand;
  std::string tag;
  std::string species;
  TreeFacts facts;
  CrownRadii taped;  ///< radii of its crown
  Sides looked;
  Light before;       ///< as the crown stands now
  Light after;        ///< with the trees now marked to be taken or killed standing gone
  Light recommended;  ///< with the trees of the recommendation gone
  std::array<SideState, 4> sides_before{};  ///< in the order of kSides
  std::array<SideState, 4> sides_after{};
  std::vector<NeighbourView> neighbours;  ///< in the order in which they were recorded
  TreeVerdict verdict;                    ///< of the rules on the crop tree itself
  std::optional<Mark> mark;               ///< of the crop tree, in the file
  Advice advice;                          ///< for the stand
  std::vector<GuardView> guards;  ///< empty: the stand is not measured, or its walk has no acres
};

/// All cards of a stand, decided now, in the order in which they were made.
///
/// cost     one recommendation for the stand; some milliseconds for a walk of a hundred trees
/// errors   of stand_facts
Result<std::vector<CardView>> card_views(const LiveTract& live, const TractKnowledge& knowledge,
                                         StandId stand);

}  // namespace oaklight
