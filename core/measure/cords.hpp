#pragma once

#include <optional>

#include "core/model/species.hpp"
#include "core/units/reading.hpp"

namespace oaklight {

/// A standard cord is a stack of 4 x 4 x 8 ft, wood, bark and air. Source: University of Minnesota
/// Extension, Woodland Stewardship, chapter 2.
inline constexpr CubicFeet kStackedCord{4.0 * 4.0 * 8.0};

/// Wood without bark and air in a standard cord, Lake States average; it ranges from 65 to 95.
/// Source: as kStackedCord.
inline constexpr CubicFeet kSolidCord{79.0};

/// Room that a stack takes: height, length, and length of the pieces. A face cord of 16-in pieces
/// is 4 ft by 8 ft by 16 in. Source: geometry.
[[nodiscard]] constexpr CubicFeet stacked(Feet height, Feet length, Inches pieces) {
  return CubicFeet{height.value * length.value * to_feet(pieces).value};
}

/// Standard cords that a stack, or solid wood, comes to.
[[nodiscard]] constexpr Cords cords_of_stacked(CubicFeet room) {
  return Cords{room / kStackedCord};
}
[[nodiscard]] constexpr Cords cords_of_solid(CubicFeet wood) { return Cords{wood / kSolidCord}; }

/// Peeled wood of a whole hardwood stem: 0.42 x basal area x total height. A rule of thumb.
///
/// source   composite tables of Gevorkiantz and Olsen 1955, USDA Technical Bulletin 1104, from
/// memory
[[nodiscard]] CubicFeet stem_cubic_feet(Dbh dbh, Feet total_height);

/// Firewood in a whole standing tree to a 4-in top. Between the printed diameters it runs straight.
/// A tree whose butt goes for a saw log leaves only its top as firewood: do not add the two.
///
/// errors   outside_table: DBH outside 5.0 .. 22.0 in
/// source   Patmos 2005, University of New Hampshire Cooperative Extension, after Gevorkiantz and
///          Olsen 1955
[[nodiscard]] Result<Cords> firewood_cords(Dbh dbh);

/// Whether a tree is thinner than any of that table: no firewood yet, so that its cords are 0 and
/// not unknown.
[[nodiscard]] bool too_thin_for_firewood(Dbh dbh);

/// Such trees to a cord. Errors and source as firewood_cords.
[[nodiscard]] Result<double> trees_per_cord(Dbh dbh);

/// Solid rough wood of a pulpwood tree by the shortcut 4 (D - 6). A rough check only: it comes from
/// a page on pine and is 20 to 33 % below firewood_cords at 8 to 12 in. 0 at 6 in and below.
///
/// source   Service Forester's Handbook (Southern Regional Extension Forestry), weight and volume
[[nodiscard]] CubicFeet pulpwood_shortcut(Dbh dbh);

/// Kinds of wood whose weight by the cord is published.
enum class CordKind {
  aspen,
  paper_birch,
  yellow_birch,
  basswood,
  red_oak,
  white_oak,
  mixed_hardwood,
  hemlock,
  white_pine,
  red_pine,
  jack_pine,
  balsam_fir,
  spruce,
  tamarack,
  cedar,
};
template <>
inline constexpr auto kWords<CordKind> =
    std::to_array<Word<CordKind>>({{CordKind::aspen, "aspen"},
                                   {CordKind::paper_birch, "paper_birch"},
                                   {CordKind::yellow_birch, "yellow_birch"},
                                   {CordKind::basswood, "basswood"},
                                   {CordKind::red_oak, "red_oak"},
                                   {CordKind::white_oak, "white_oak"},
                                   {CordKind::mixed_hardwood, "mixed_hardwood"},
                                   {CordKind::hemlock, "hemlock"},
                                   {CordKind::white_pine, "white_pine"},
                                   {CordKind::red_pine, "red_pine"},
                                   {CordKind::jack_pine, "jack_pine"},
                                   {CordKind::balsam_fir, "balsam_fir"},
                                   {CordKind::spruce, "spruce"},
                                   {CordKind::tamarack, "tamarack"},
                                   {CordKind::cedar, "cedar"}});

/// The kind that a species weighs as; any hardwood without a row of its own is mixed hardwood.
/// Nothing for a softwood without one.
[[nodiscard]] std::optional<CordKind> cord_kind(const Species& species);

/// How long the wood has lain.
enum class Dryness {
  green,
  seasoned,  ///< cut for two or more of the months April to October
};

/// Weight of one rough cord, bark included. Firewood cords, stacked loosely, are lighter.
/// Source: Wisconsin Administrative Code NR 46.30(1)(g)1.
[[nodiscard]] Pounds cord_weight(CordKind kind, Dryness dryness);

}  // namespace oaklight
