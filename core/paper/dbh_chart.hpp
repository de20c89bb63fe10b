#pragma once

#include <optional>
#include <vector>

#include "core/paper/food_group.hpp"
#include "core/paper/picture.hpp"
#include "core/sample/cruise_estimate.hpp"

namespace oaklight {

/// What the bars of a diameter chart count.
enum class ChartAmount { trees, basal_area };

/// One diameter class: trees per acre, or ft2 per acre, as the chart says.
struct ClassAmount {
  DbhClass dbh_class;
  double oak = 0.0;
  double mast = 0.0;
  double rest = 0.0;
  std::optional<double> se;  ///< of the three together; nothing: not known

  [[nodiscard]] double all() const { return oak + mast + rest; }
};

/// How many trees there are of which size.
struct DbhChart {
  ChartAmount amount = ChartAmount::trees;
  ClassWidth width = ClassWidth::two_inches;
  std::vector<ClassAmount> now;    ///< any order; classes left out have nothing tallied
  std::vector<ClassAmount> after;  ///< after release; empty: not shown
  std::optional<double> se;        ///< of `now`, all classes together
};

/// The chart of an estimate, whose classes are `width` wide. `after` is left empty.
DbhChart dbh_chart_of(const AreaEstimate& area, const SpeciesTable& species, ClassWidth width,
                      ChartAmount amount);

/// Bars by class: oaks, other mast and the rest on top of one another, told apart by pattern;
/// whiskers of one standard error; where `after` is given a second, narrower bar beside each. In
/// metric units the axis is in centimetres; the bars are still the classes in inches.
/// Without a tree it says what is missing.
/// assumes  a PaperApplication lives
Drawing draw_dbh_chart(const DbhChart& chart, const PictureFrame& frame);

}  // namespace oaklight
