#pragma once

#include <optional>

#include "core/model/tree.hpp"

namespace oaklight {

/// Crown width of an oak or hickory that never had a neighbour; the ceiling for any stand-grown
/// crown.
///
/// source   Krajicek, Brinkman and Gingrich 1961, Forest Science 7(1):35-42, from memory; its
/// square
///          gives back the crown competition coefficients of stocking.hpp within 0.6 %
[[nodiscard]] constexpr Feet open_grown_crown_width(Inches dbh) {
  return Feet{3.12 + 1.829 * dbh.value};
}

/// Half the open-grown width: the largest crown radius a stem of this size carries.
[[nodiscard]] constexpr Feet open_crown_radius(Inches dbh) {
  return open_grown_crown_width(dbh) / 2.0;
}

/// Crown radius in a closed, fully stocked stand: the ground that the stocking guide gives a tree
/// of this size, drawn as a circle. About 0.8 ft for each inch of DBH from 8 to 16 in. 0 for a stem
/// so thin that the guide gives it no ground (below about 0.3 in).
///
/// source   upland_oak_stocking (Gingrich 1967, coefficients from memory) of one tree an acre
[[nodiscard]] Feet crowded_crown_radius(Inches dbh);

}  // namespace oaklight
