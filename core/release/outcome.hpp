#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/release/competitors.hpp"
#include "core/release/guards.hpp"

namespace oaklight {

/// The choice to be made, with all that it depends on and nothing else. Vectors go by tree or by
/// contact of the graph.
struct ReleaseProblem {
  const ReleaseGraph& graph;
  const std::vector<Traits>& traits;
  const std::vector<Role>& roles;            ///< by contact
  const std::vector<int>& worth;             ///< by tree; 0: no candidate
  const std::vector<std::uint32_t>& ranked;  ///< candidates, best first
  const std::vector<Keep>& keeps;            ///< by tree
  std::vector<std::uint32_t> taken_anyway;   ///< invasive plants
  SideSettings sides;
  std::optional<Guards> guards;  ///< nothing: the stand is not measured
};

/// Where a candidate stands while the choice is made.
enum class Standing : std::uint8_t {
  open,  ///< not decided, or not a candidate
  released,
  waiting,  ///< fit, but dropped for a guard: stays, and nothing is taken for it
  out,      ///< cannot be released
};

struct Selection {
  std::vector<Standing> standing;    ///< by tree
  std::vector<std::uint32_t> group;  ///< by tree; released trees of one unit share a number (R1.65)
  std::vector<bool> held;            ///< by tree: stays for the balance of the oaks (R3.60, R3.62)

  explicit Selection(std::size_t trees)
      : standing(trees, Standing::open), group(trees, 0), held(trees, false) {}
};

/// What releasing one candidate would take and give.
struct Outcome {
  std::vector<std::uint32_t> takes;  ///< trees, each once
  Sides free, shared, unknown;       ///< after
  bool reaches = false;              ///< enough sides (R1.61, R1.64, R1.67)
  bool might_reach = false;          ///< it would, if the unknown sides are free
};

/// What a neighbour is to a candidate under a selection.
enum class Fate : std::uint8_t { nothing, doubt, stays, shares, may_go, goes };
[[nodiscard]] Fate fate_of(const ReleaseProblem& problem, const Selection& selection,
                           std::uint32_t contact);

/// The best that this selection allows one candidate: every neighbour that goes is taken where that
/// frees a side, and of those that may go the fewest that give the sides required.
[[nodiscard]] Outcome outcome_of(const ReleaseProblem& problem, const Selection& selection,
                                 std::uint32_t crop);

/// The sides of one crown; each side is in one set.
struct CrownSides {
  Sides free;
  Sides shared;   ///< closed only by crop trees of its own unit
  Sides unknown;  ///< nobody looked, or contact is in doubt
  Sides closed;
};
/// The sides of one crown once the trees of `gone` (by tree) are gone.
///
/// still_there  one tree that stands although it is among the gone
[[nodiscard]] CrownSides crown_sides(const ReleaseProblem& problem, const Selection& selection,
                                     const std::vector<bool>& gone, std::uint32_t crop,
                                     std::optional<std::uint32_t> still_there = std::nullopt);

/// Steps 7 and 10: the light of one crop tree once the trees of `gone` are gone.
[[nodiscard]] Light light_of(const ReleaseProblem& problem, const Selection& selection,
                             const std::vector<bool>& gone, std::uint32_t crop);

/// The sides of `a` that are also, or not, in `b`.
[[nodiscard]] Sides common(Sides a, Sides b);
[[nodiscard]] Sides without(Sides a, Sides b);

}  // namespace oaklight
