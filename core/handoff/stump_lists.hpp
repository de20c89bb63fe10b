#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/handoff/stump_check.hpp"

namespace oaklight {

// The parts of make_stump_check: what was cut without a mark, and what was hurt.

/// Whether the latest mark of a tree has it felled or killed standing.
[[nodiscard]] bool is_listed(const std::map<WalkTreeId, const Mark*>& marks, WalkTreeId tree);

/// The walk, its marks and its findings, looked up once.
class StumpWalk {
 public:
  /// The arguments are kept by reference and must outlive this.
  StumpWalk(const TractData& data, const SpeciesTable& species,
            const std::map<WalkTreeId, const Mark*>& marks);

  [[nodiscard]] const std::vector<const Stump*>& findings_of(WalkTreeId tree) const;
  [[nodiscard]] const WalkTree* find(WalkTreeId tree) const;  ///< nullptr: not in the tract
  [[nodiscard]] std::string stand_name(StandId stand) const;
  [[nodiscard]] std::string species_name(SpeciesCode code) const;

  const TractData& data;
  const SpeciesTable& species;
  const std::map<WalkTreeId, const Mark*>& marks;
  std::vector<WalkTree> trees;  ///< in the order of data.walk_trees, with places from cards

 private:
  std::map<WalkTreeId, std::vector<const Stump*>> findings_;
  std::map<WalkTreeId, std::size_t> places_;
};

/// Trees that were cut and are not on the list, each once: crop trees first, then other leave
/// trees, then those without a tag. Merchantable height of a tree that nobody saw standing is the
/// middle one of the tract's trees of its species within 3 in of its DBH, or of its leaf type
/// (a comparison with trees that stand, as USDA Forest Service Handbook 2409.12b, chapter 20, does
/// it for stumps; the 3 in are ours). Wood by the tract's own volume table where it reaches (local
/// nullptr: there is none), else by the book.
[[nodiscard]] std::vector<UnmarkedTree> unmarked_trees(const StumpWalk& walk, LogRule rule,
                                                       const ProductLimits& products,
                                                       const LocalNumbers* local);
[[nodiscard]] UnmarkedTotals totals_of(const std::vector<UnmarkedTree>& trees);

/// Wounded trees that were to be left, each once with its worst wound, badly hurt ones first.
[[nodiscard]] std::vector<HurtTree> hurt_trees(const StumpWalk& walk);

}  // namespace oaklight
