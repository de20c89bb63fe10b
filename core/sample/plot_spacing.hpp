#pragma once

#include <cmath>

#include "core/units/units.hpp"

namespace oaklight {

/// Gunter's chain: 66 ft; 10 square chains are an acre.
inline constexpr Feet kChain{66.0};

/// Distance between plots on a square grid, and between lines: sqrt(43,560 acres / plots). Not
/// rounded; round down, so that the count is not missed. acres > 0, plots > 0. Source: geometry.
[[nodiscard]] inline Feet square_spacing(Acres acres, int plots) {
  return Feet{std::sqrt(to_square_feet(acres).value / plots)};
}

/// Distance between plots along lines that lie so far apart. Source: geometry.
[[nodiscard]] inline Feet spacing_on_lines(Acres acres, int plots, Feet between_lines) {
  return Feet{to_square_feet(acres).value / plots / between_lines.value};
}

}  // namespace oaklight
