#pragma once

#include "core/model/tract.hpp"

namespace oaklight {

/// Feet of plot radius for each inch of DBH.
using FeetPerInch = Quantity<struct FeetPerInchUnit>;

/// Where on the stem the tape ends, at breast height.
enum class TapedTo {
  centre,  ///< beside the stem, level with its middle
  face,    ///< the bark that faces the plot centre: half a diameter nearer
};

/// Whether a design can be measured by.
///
/// errors   out_of_range: a factor that is not above 0 and below 43,560 ft2/ac (the ground itself),
///          an area that is not above 0, a small plot that is not smaller;
///          missing_value: a small plot without the size below which it holds, or the reverse
/// All functions below assume a design that passed.
[[nodiscard]] Status check_design(const Design& design);

/// Radius of the plot of a 1-inch tree in point sampling, to the tree's centre or face. A tree is
/// in when its level distance is at most this factor times its DBH.
///
/// source   definition of the basal area factor: basal area over plot area equals baf / 43,560
[[nodiscard]] FeetPerInch plot_radius_factor(SquareFeetPerAcre baf, TapedTo to);

/// Radius of a circular plot, level. Source: area of a circle.
[[nodiscard]] Feet plot_radius(Acres area);

/// The greatest level distance from plot centre at which a tree of this size is in: by its basal
/// area at a point, by the plot that holds its size on fixed plots (a tree exactly at the dividing
/// size belongs to the large plot).
///
/// source   as plot_radius_factor; a fixed plot holds a tree when its centre is inside (Alabama
///          Cooperative Extension, Fixed-radius plots, 2020)
[[nodiscard]] Feet limiting_distance(const Design& design, Dbh dbh, TapedTo to);

/// A level distance as it must be taped along a slope, and the reverse. The slope is that of the
/// line taped, not of the hillside; downhill counts like uphill. Source: geometry.
[[nodiscard]] Feet along_slope(Feet level, Slope slope);
[[nodiscard]] Feet level_distance(Feet taped, Slope slope);

/// One radius to lay along the ground in every direction, so that the plot has the right area seen
/// from above, where it is an ellipse: radius / sqrt(cosine). Source: geometry.
[[nodiscard]] Feet radius_on_slope(Feet radius, Slope slope);

/// A tree near the limit, as taped.
struct BorderlineTree {
  Dbh dbh;
  TapedLength taped;  ///< plot centre to the stem
  TapedTo to = TapedTo::centre;
  Slope slope{};  ///< of the taped line; 0 when the tape was held level
};

/// What the tape says about it.
struct BorderlineCall {
  bool in = false;
  Feet limit;        ///< level, to where the tape ended
  Feet limit_taped;  ///< the same along the slope: what the tape may show at most
  Feet margin;       ///< level; how far inside the limit the tree stands, below 0 when it is out
};

/// Whether a tree is in. A tree exactly at the limit is in.
///
/// source   "less than or equal, horizontal distance": USDA Forest Service Region 6, Common Stand
///          Exam field guide, appendix on limiting distances
[[nodiscard]] BorderlineCall check_borderline(const Design& design, const BorderlineTree& tree);

/// Trees an acre that one tallied tree of this size stands for.
///
/// source   1 / plot area; at a point baf / basal area
[[nodiscard]] TreesPerAcre tree_factor(const Design& design, Dbh dbh);

/// Trees an acre that a tally record stands for: the factor of its size, times its like stems,
/// times its edge count.
///
/// source   edge count: walkthrough (Ducey, Gove and Valentine 2004, Forest Science 50(4):427-435)
/// or
///          mirage
[[nodiscard]] TreesPerAcre trees_stood_for(const Design& design, const Tree& tree);

}  // namespace oaklight
