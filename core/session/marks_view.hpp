#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/handoff/packet_inputs.hpp"
#include "core/session/knowledge.hpp"

namespace oaklight {

/// One tree of the walk as the list of marks shows it.
struct MarkRow {
  WalkTreeId tree;
  StandId stand;
  std::string tag;
  std::string species;
  TreeFacts facts;
  bool crop = false;
  std::optional<Mark> mark;          ///< nothing: not decided yet
  std::optional<Position> position;  ///< recorded, or told by a card from a tree that has one
  std::vector<Caution> cautions;     ///< at most three, the hardest first
};

/// How many trees of the walk are decided in which way.
struct MarkTotals {
  int trees = 0;
  std::array<int, kWords<Verdict>.size()> by_verdict{};  ///< in the order of kWords<Verdict>
  int undecided = 0;
  int by_hand = 0;
  int stops = 0;  ///< trees to be cut or killed that have a caution which is a stop

  [[nodiscard]] int of(Verdict verdict) const {
    return by_verdict[static_cast<std::size_t>(verdict)];
  }
};

struct MarksView {
  std::vector<MarkRow> rows;  ///< by tag, in natural order
  MarkTotals totals;
};

/// The walk with its marks and cautions. Amounts of wood are told by the packet that a reader is
/// handed (packet_for).
///
/// stand     nothing: every stand
/// work_day  planned; nothing: not known, and bats may roost when it comes
/// cost      the cautions of every tree of the walk
/// errors    of cautions_of_walk
Result<MarksView> marks_view(const TractData& data, const TractKnowledge& knowledge,
                             std::optional<StandId> stand, std::optional<Day> work_day);

}  // namespace oaklight
