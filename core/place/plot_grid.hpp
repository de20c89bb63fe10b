#pragma once

#include <vector>

#include "core/base/result.hpp"
#include "core/place/seeded_draw.hpp"

#include "core/model/place.hpp"

namespace oaklight {

/// Lines of plots across a stand.
struct GridLayout {
  Feet along;       ///< from plot to plot on a line, above 0
  Feet between;     ///< from line to line, above 0
  Degrees azimuth;  ///< of the lines, from true north
};

/// Where a grid begins within one of its cells; both 0 <= x < 1.
struct GridStart {
  double along = 0.0;
  double across = 0.0;
};
/// A start by chance, evenly over the cell: two draws.
[[nodiscard]] GridStart random_start(SeededDraw& draw);

/// The points of a grid that fall inside a stand, up one line and down the next. Nothing is moved
/// in from an edge and nothing is dropped to meet a count, so that with a random start every part
/// of the stand, edges and all, has the same chance to hold a plot; trees near an edge are
/// corrected in the field (walkthrough or mirage). An error computed from such a grid is computed
/// as if the plots lay at random, which mostly overstates it.
///
/// returns  as many as fall inside, which may be none
/// errors   out_of_range: spacings not above 0, or more than kMostGridPlots
/// assumes  a sound outline (forms/outlines.hpp)
[[nodiscard]] Result<std::vector<Position>> grid_positions(const Polygon& stand,
                                                           const GridLayout& layout,
                                                           GridStart start);
inline constexpr int kMostGridPlots = 5'000;

/// Points by chance, each place in the stand alike and each point apart from the others.
/// Errors: out_of_range below 1 or above kMostGridPlots; bad_geometry for a stand of no ground.
[[nodiscard]] Result<std::vector<Position>> random_positions(const Polygon& stand, int count,
                                                             SeededDraw& draw);

}  // namespace oaklight
