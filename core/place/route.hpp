#pragma once

#include <cstddef>
#include <vector>

#include "core/units/units.hpp"

namespace oaklight {

/// Feet to walk between any two places of a tour. The same both ways; infinite where there is no
/// way.
class WalkCosts {
 public:
  explicit WalkCosts(std::size_t places) : places_(places), feet_(places * places, 0.0) {}
  [[nodiscard]] std::size_t places() const { return places_; }
  [[nodiscard]] double feet(std::size_t a, std::size_t b) const { return feet_[a * places_ + b]; }
  void set(std::size_t a, std::size_t b, double feet) {
    feet_[a * places_ + b] = feet;
    feet_[b * places_ + a] = feet;
  }

 private:
  std::size_t places_;
  std::vector<double> feet_;
};

/// A walk that begins at place 0, comes by every other place once and ends at place 0.
struct Tour {
  std::vector<std::size_t> order;  ///< places 1 .. n - 1
  Feet length;
  Feet bound;          ///< no tour is shorter
  bool exact = false;  ///< the shortest there is

  /// At most so much of the length could be saved; 0 for an exact one.
  [[nodiscard]] double gap() const {
    return length.value > 0.0 && !exact ? 1.0 - bound / length : 0.0;
  }
};

/// The shortest tour for at most kExactStops places to visit, a good one with its bound for more.
///
/// assumes  finite costs
/// source   exact: Held and Karp 1962, dynamic programming over sets. Else: nearest neighbour,
///          then 2-opt (Croes 1958) and Or-opt (Or 1976) until neither helps, from several starts.
///          Bound: 1-trees with weights on places raised step by step (Held and Karp 1971). All
///          from memory.
[[nodiscard]] Tour short_tour(const WalkCosts& costs);
inline constexpr std::size_t kExactStops = 12;

// The parts, open to tests.
[[nodiscard]] Tour exact_tour(const WalkCosts& costs);
[[nodiscard]] Tour improved_tour(const WalkCosts& costs);
[[nodiscard]] Feet tour_bound(const WalkCosts& costs, Feet length);

}  // namespace oaklight
