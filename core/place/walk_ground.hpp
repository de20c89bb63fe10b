#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "core/place/geodesy.hpp"
#include "core/place/route.hpp"

namespace oaklight {

/// A line on flat ground.
using FlatLine = std::vector<LocalFeet>;

/// Ground that is walked in straight lines which never cross a barrier: round the ends of barriers
/// and along their bends, a few feet off. Found over the places that see each other (a visibility
/// graph), so a way is the shortest there is but for those few feet.
///
/// cost     for 200 stops and barriers of 250 corners in all, under a second
/// assumes  barriers of at most some hundreds of corners (simplified); what lies beyond the end of
///          a barrier is open
class WalkGround {
 public:
  /// stops     the places to walk between
  /// barriers  lines of at least two places
  WalkGround(std::span<const LocalFeet> stops, std::span<const FlatLine> barriers);

  /// Feet between any two stops; infinite where every way crosses a barrier.
  [[nodiscard]] const WalkCosts& costs() const { return costs_; }
  /// The way from stop a to stop b, both ends in it. Empty where there is none.
  [[nodiscard]] std::vector<LocalFeet> way(std::size_t a, std::size_t b) const;

 private:
  void add_corners(std::span<const FlatLine> barriers);
  [[nodiscard]] bool sees(std::size_t a, std::size_t b) const;
  void join();
  void walk_from(std::size_t stop);

  struct Step {
    std::size_t to;
    double feet;
  };
  struct Wall {
    LocalFeet from, to;
  };
  std::size_t stops_;
  std::vector<LocalFeet> nodes_;  ///< the stops, then the corners to turn at
  std::vector<Wall> walls_;
  std::vector<std::vector<Step>> steps_;         ///< of each node
  std::vector<std::vector<std::size_t>> before_; /**< of each stop: by node, the node before it on
                                                    the way from the stop */
  WalkCosts costs_;
};

/// The line with fewer corners: none of those left out lies further from it than the tolerance.
/// Its ends stay. Source: Douglas and Peucker 1973 (from memory).
[[nodiscard]] FlatLine simplified(const FlatLine& line, Feet tolerance);

/// The line without the parts that lie within `reach` of a place where another line crosses it: the
/// ways over a stream that a road or a trail makes.
[[nodiscard]] std::vector<FlatLine> opened_where_crossed(const FlatLine& line,
                                                         std::span<const FlatLine> ways,
                                                         Feet reach);

}  // namespace oaklight
