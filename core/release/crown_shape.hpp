#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/model/tree.hpp"
#include "core/release/crown_contact.hpp"

namespace oaklight {

/// The outline of a crown seen from above, as its reach from the stem in each direction: a circle,
/// or four quarter ellipses between the reaches to north, east, south and west. Reading four
/// measured radii as quarter ellipses is common practice: the outline passes through all four
/// points, has no corner there, and is a circle where the four are equal.
class CrownShape {
 public:
  static CrownShape circle(Feet radius);
  static CrownShape measured(Feet north, Feet east, Feet south, Feet west);
  /// Nothing unless all four sides were taped.
  static std::optional<CrownShape> of(const CrownRadii& radii);

  /// From the stem to the outline, at a bearing from true north.
  [[nodiscard]] Feet reach(Degrees bearing) const;
  /// The longest of its reaches.
  [[nodiscard]] Feet widest() const;
  friend bool operator==(const CrownShape&, const CrownShape&) = default;

 private:
  explicit CrownShape(std::array<double, 4> reach) : reach_(reach) {}
  std::array<double, 4> reach_;  ///< feet, in the order of kSides
};

/// The parts of a crop crown's edge that another crown closes, whatever the shape of the two. A
/// point of the edge is closed when the other crown covers it or leaves a gap narrower than `gap`,
/// measured along the line from the other stem (R1.52). For two circles the same as closed_arc.
///
/// distance  between the stems, level, >= 0
/// bearing   from the crop tree to the other
/// accuracy  ends of arcs to 1e-9 degrees
/// source    numerical: signs at every degree, extremes between them, halving
[[nodiscard]] std::vector<Arc> closed_arcs(const CrownShape& crop, const CrownShape& other,
                                           Feet distance, Degrees bearing, Feet gap);

}  // namespace oaklight
