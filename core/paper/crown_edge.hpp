#pragma once

#include <cstdint>
#include <vector>

#include "core/paper/crown_chart.hpp"

namespace oaklight {

/// How a part of a crop crown's edge stands, now and after.
enum class EdgeState : std::uint8_t { open, opens, shared, closed, unknown };

/// From one bearing clockwise to another, degrees; from < to <= from + 360.
struct EdgePart {
  double from = 0.0, to = 0.0;
  EdgeState state = EdgeState::open;
};

/// The whole edge of the crop crown of a card, by its sides or by arcs.
class EdgeRing {
 public:
  explicit EdgeRing(const CrownCard& card);

  /// The edge in runs of one state, as few as can be.
  [[nodiscard]] std::vector<EdgePart> parts() const;
  [[nodiscard]] bool has(EdgeState state) const;
  /// Percent of the edge that is open: now, or after. By sides: a quarter each; by arcs:
  /// open_share.
  [[nodiscard]] double share_open(bool after) const { return after ? after_ : now_; }

 private:
  std::vector<EdgeState> states_;  ///< equal steps clockwise from the corner north-west
  double now_ = 0.0, after_ = 0.0;
};

}  // namespace oaklight
