#pragma once

#include <span>
#include <vector>

#include "core/model/place.hpp"
#include "core/release/settings.hpp"

namespace oaklight {

/// What is known of two crowns side by side.
enum class Closeness : std::uint8_t {
  clear,     ///< they do not compete
  doubtful,  ///< somebody has to look up
  touching,  ///< one crowds the other
};

/// Distances between two stems at which their crowns are expected to touch, and up to which they
/// might.
struct ContactLimits {
  Feet expected;  ///< crowded radii added (R2.10)
  Feet look_up;   ///< open radii added, and R2.11 more
};
[[nodiscard]] ContactLimits contact_limits(Inches a, Inches b, const ContactSettings& settings);

/// Contact where nobody looked up (R2.10 - R2.12). distance is level, stem to stem.
[[nodiscard]] Closeness closeness_by_distance(Inches a, Inches b, Feet distance,
                                              const ContactSettings& settings);

/// Stems closer than this will grow into each other: two crop trees must then be paired, or one
/// dropped (R2.25). Open crown radii added.
[[nodiscard]] Feet conflict_distance(Inches a, Inches b);

/// The side or sides on which a neighbour stands, from its bearing seen from the crop tree, true
/// north. A bearing within the blur of a corner lies on both sides (R2.15, R2.16).
[[nodiscard]] Sides sides_at(Degrees bearing, Degrees blur);

/// The opposite sides: what is north of one tree has that tree to its south.
[[nodiscard]] Sides opposite(Sides sides);

/// A part of a crown's edge, as bearings from the stem: middle - half .. middle + half.
struct Arc {
  Degrees middle;
  Degrees half;  ///< 0: nothing, 180: the whole edge
};

/// The part of a crop crown's edge that another crown closes, both drawn as circles. A point of the
/// edge is closed when the other crown covers it or leaves a gap narrower than `gap` (R1.52).
///
/// crop, other  crown radii
/// distance     between the stems, level, >= 0
/// source       law of cosines
[[nodiscard]] Arc closed_arc(Feet crop, Feet other, Feet distance, Degrees bearing, Feet gap);

/// The quarters of a crown's edge that these sides are, added to `arcs`.
void add_quarters(Sides sides, std::vector<Arc>& arcs);

/// Share of the edge that no arc closes, 0 .. 100. The order of the arcs does not matter.
[[nodiscard]] Percent open_share(std::span<const Arc> closed);

}  // namespace oaklight
