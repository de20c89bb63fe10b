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

/// A crown width that was worked out, and what had to be guessed for it.
struct CrownWidth {
  Feet width;
  SpeciesCode equation;        ///< whose equation gave it; the tree's own, or its group's
  Percent live_crown;          ///< used; recorded, or assumed from the crown class
  bool crown_assumed = false;  ///< no live crown ratio was recorded
};

/// Crown width of a tree that grew among others. A measured or observed crown always comes first.
///
/// returns  the equation's width; below 5 in DBH its 5-in width in proportion; beyond the diameter
///          at which a curve would turn down its largest; never wider than an open-grown tree,
///          which is also the answer for an open-grown tree
/// assumes  a species without an equation is like its group's lead species; an unrecorded live
/// crown
///          is 50 % for dominant, 30 % for intermediate, 20 % for overtopped trees and 40 % for
///          others (all ours); mid-range climate: the equations' climate term, under 1 ft for most
///          species, is left out
/// accuracy coefficients from memory; the author reports a scatter of 18 to 35 %
/// source   Bechtold 2003, Southern Journal of Applied Forestry 27(4):269-278
[[nodiscard]] CrownWidth stand_grown_crown_width(const Species& species, const TreeFacts& tree);

}  // namespace oaklight
