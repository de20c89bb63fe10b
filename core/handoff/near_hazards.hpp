#pragma once

#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "core/release/cautions.hpp"

namespace oaklight {

/// A tree of the tract that is a danger to others.
struct Hazard {
  std::string tag;  ///< "" when it wears none
  std::optional<WalkTreeId> walk_tree;
  std::optional<Position> position;
  std::optional<Feet> height;
  std::string name;  ///< to find it by
  Feet unsure{0};    ///< how far from `position` it may stand
};

/// The cards of crop trees, found by any tree that is on them.
class CardIndex {
 public:
  explicit CardIndex(const TractData& data);

  /// The least that two trees of a card can be apart; nothing when no card holds both.
  [[nodiscard]] std::optional<Feet> least_apart(WalkTreeId a, WalkTreeId b) const;
  /// Every other tree on a card with this one; one may come several times.
  [[nodiscard]] std::vector<WalkTreeId> on_cards_with(WalkTreeId tree) const;

 private:
  /// Distances read from the crop tree of a card; the crop tree itself is at 0.
  using Card = std::map<WalkTreeId, std::optional<Feet>>;
  std::vector<Card> cards_;
  std::map<WalkTreeId, std::vector<std::size_t>> of_tree_;
};

/// Hazards by squares of ground, so that a tree of a large walk is held against those about it and
/// not against each of the tract.
class NearHazards {
 public:
  /// trees   of the walk, whose heights set how far they reach
  /// cards   must outlive it
  NearHazards(std::vector<Hazard> hazards, std::span<const WalkTree> trees, const CardIndex& cards,
              const CautionLimits& limits);

  /// The hazards that reach the tree, or that the tree reaches, in the order in which they were
  /// given: those within limits.lengths of the taller one (two_lengths).
  [[nodiscard]] std::vector<NearTree> seen_from(const WalkTree& tree) const;

 private:
  using Square = std::pair<std::int64_t, std::int64_t>;
  void set_sides(std::span<const WalkTree> trees);
  [[nodiscard]] Square square_of(Position place) const;
  [[nodiscard]] std::vector<std::size_t> candidates(const WalkTree& tree) const;
  [[nodiscard]] std::optional<Feet> distance(const WalkTree& tree, const Hazard& hazard) const;

  std::vector<Hazard> hazards_;
  const CardIndex& cards_;
  CautionLimits limits_;
  Degrees middle_{0.0};  ///< longitude from which squares are counted
  double row_degrees_ = 1.0, column_degrees_ = 1.0;
  std::map<Square, std::vector<std::size_t>> squares_;
  std::map<WalkTreeId, std::size_t> by_tree_;
};

}  // namespace oaklight
