#pragma once

#include <cstdint>
#include <map>
#include <vector>

#include "core/release/outcome.hpp"

namespace oaklight {

/// What releasing one candidate takes and gives, given which of its fellows are released and which
/// oaks around it are held.
struct LocalOutcome {
  bool reaches = false;
  bool might_reach = false;
  std::int64_t light = 0;            ///< worth x (free sides + shared sides that count)
  std::vector<std::uint32_t> takes;  ///< trees
};

/// The candidates of a problem and how they bear on each other. Candidates are numbered in the
/// order of ReleaseProblem::ranked.
class Candidates {
 public:
  using Trees = std::vector<std::uint32_t>;

  /// holdable  by tree: oaks that may be held
  Candidates(const ReleaseProblem& problem, std::vector<bool> holdable);

  [[nodiscard]] std::size_t size() const { return problem_.ranked.size(); }
  [[nodiscard]] std::uint32_t tree(std::uint32_t c) const { return problem_.ranked[c]; }
  [[nodiscard]] bool thin(std::uint32_t c) const;
  [[nodiscard]] const SideSettings& sides() const { return problem_.sides; }
  [[nodiscard]] const ReleaseProblem& problem() const { return problem_; }
  [[nodiscard]] bool holdable(std::uint32_t tree) const { return holdable_[tree]; }

  /// Candidates whose crowns meet this one's, or will (R1.65, R2.25); in order.
  [[nodiscard]] const Trees& meets(std::uint32_t c) const { return meets_[c]; }
  /// Of these, the ones that can never be released together with it: a unit of the two leaves one
  /// of them too few sides.
  [[nodiscard]] const Trees& rivals(std::uint32_t c) const { return rivals_[c]; }
  /// Whether some holdable oak stands around it.
  [[nodiscard]] bool beside_holdable(std::uint32_t c) const { return !holds_[c].empty(); }

  /// The unit of c among the released: c and all that it is joined to.
  [[nodiscard]] Trees unit_of(std::uint32_t c, const std::vector<bool>& released) const;
  /// Whether these may be one unit (R1.66).
  [[nodiscard]] bool fits(const Trees& unit) const;

  /// released  by candidate
  /// held      by tree; nullptr: none
  [[nodiscard]] const LocalOutcome& outcome(std::uint32_t c, const std::vector<bool>& released,
                                            const std::vector<bool>* held = nullptr);

  /// Whether ways() has all that a choice may come to, so that the least of them is a bound.
  [[nodiscard]] bool ways_are_all(std::uint32_t c) const;
  /// Every outcome that reaches, with each set of fellows that a unit allows and nothing held.
  [[nodiscard]] const std::vector<const LocalOutcome*>& ways(std::uint32_t c) const {
    return ways_[c];
  }
  /// No choice gives it more.
  [[nodiscard]] std::int64_t most_light(std::uint32_t c) const { return most_[c]; }

  /// Sets of candidates that bear on each other in nothing but the stand guards: they neither meet
  /// nor take the same tree. Each in order, sets by their first.
  [[nodiscard]] std::vector<Trees> components() const;

 private:
  void find_meetings();
  void find_ways(std::uint32_t c);
  int largest_unit(std::uint32_t c) const;
  void find_rivals(std::uint32_t c);
  const LocalOutcome& outcome_with(std::uint32_t c, const Trees& key);

  const ReleaseProblem& problem_;
  std::vector<bool> holdable_;
  std::vector<std::uint32_t> number_;  // by tree; size() when it is no candidate
  std::vector<Trees> meets_, fellows_, holds_, rivals_;
  std::vector<std::map<Trees, LocalOutcome>> known_;  // by fellows released and oaks held
  std::vector<std::vector<const LocalOutcome*>> ways_;
  std::vector<std::int64_t> most_;
  Selection scratch_;
  Trees key_;
};

}  // namespace oaklight
