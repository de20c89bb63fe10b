#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "core/release/cautions.hpp"
#include "core/release/objections.hpp"
#include "core/release/work_day.hpp"

namespace oaklight {

/// How a tree may be dealt with; a mark keeps the way chosen as its method.
enum class Way {
  leave,
  fell,          ///< by hand
  machine_fell,  ///< only from a machine with a guarded cab
  girdle,        ///< killed standing by two cuts, no herbicide
  frill,         ///< killed standing through cuts in the bark, with herbicide
};
template <>
inline constexpr auto kWords<Way> = std::to_array<Word<Way>>({{Way::leave, "leave"},
                                                              {Way::fell, "fell"},
                                                              {Way::machine_fell, "machine_fell"},
                                                              {Way::girdle, "girdle"},
                                                              {Way::frill, "frill"}});

/// One tree, as the work on it is judged. Nothing is "not known".
struct WorkCase {
  const TreeFacts& facts;
  const Species* species = nullptr;  ///< of the facts; nullptr: not in the table
  Verdict verdict = Verdict::keep;
  const Surroundings& around;
  /// The nearest crop tree of its own species or oak group; 0 when nobody measured how far it is;
  /// nothing: there is none.
  std::optional<Feet> kin;
  bool beside_oak = false;   ///< an oak stands on the same card, or it is one
  bool target_near = false;  ///< a road, trail, wire or building is in reach
};

/// How a tree may be dealt with, and why.
struct WorkAdvice {
  std::vector<Way> ways;        ///< that the rules allow, the advised one first; never empty
  bool herbicide = false;       ///< may be used on it: as the label says, with the licence asked
  std::string way_words;        ///< "Fell it by hand or ..."
  std::string herbicide_words;  ///< why, or why not
  std::vector<std::string>
      open;  ///< dangers in reach: nobody works here by hand until they are gone
  std::vector<std::string> rules;
};

/// The ways that the rules leave for one tree (R4.30, R5.15, R5.39, R6.14 - R6.64). No dose is ever
/// named: the label, the licence and the local code come first.
[[nodiscard]] WorkAdvice work_advice(const WorkCase& tree, const ReleaseSettings& settings);

/// What the season asks about a way to deal with a tree.
[[nodiscard]] WorkKind work_kind(const WorkCase& tree, Way way);

/// What a person means to do to one tree.
struct WorkOrder {
  Way way = Way::fell;
  bool herbicide = false;
  std::optional<Day> day = {};
  std::string written_reason = {};  ///< for work on a day that a season window holds (R6.80)
};

/// Everything that the rules say against an order for one tree; empty when they say nothing.
///
/// tag      of the tree
/// windows  of the state
[[nodiscard]] std::vector<Objection> work_objections(const WorkCase& tree, const std::string& tag,
                                                     const WorkOrder& order,
                                                     std::span<const SeasonWindow> windows,
                                                     const ReleaseSettings& settings);

}  // namespace oaklight
