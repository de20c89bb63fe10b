#pragma once

#include <compare>

#include "core/units/reading.hpp"

namespace oaklight {

/// Width of the diameter classes of a report.
enum class ClassWidth { one_inch = 1, two_inches = 2 };

/// A diameter class, named by its middle in inches. The class of 0 holds the stems below the first
/// class of half a width or more.
struct DbhClass {
  int inches = 0;
  friend constexpr auto operator<=>(DbhClass, DbhClass) = default;
};

/// The class of a tree, by a one-sided rule: the lower edge belongs to the class, the upper edge to
/// the next. So 9.5 in goes up to 10 in the 1-inch classes, and 9.0 .. 10.9 in is 10 in the 2-inch
/// classes. Metric readings fall exactly: 12.7 cm is 5 in.
///
/// source   standard cruise practice (from memory); the one rule of tally, import and report
[[nodiscard]] constexpr DbhClass dbh_class(Dbh dbh, ClassWidth width) {
  const int step = static_cast<int>(width);
  const int step_size = step * 2540;  // hundredths of a millimetre; 1 in is 25.4 mm
  return DbhClass{step * ((dbh.hundredth_mm() + step_size / 2) / step_size)};
}

/// The edges of a class: lower edge inside, upper edge outside.
struct ClassEdges {
  Inches from, below;
};
[[nodiscard]] constexpr ClassEdges edges_of(DbhClass c, ClassWidth width) {
  const double half = static_cast<int>(width) / 2.0;
  return {Inches{c.inches - half}, Inches{c.inches + half}};
}

}  // namespace oaklight
