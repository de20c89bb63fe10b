#pragma once

#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "core/model/words.hpp"
#include "core/units/units.hpp"

namespace oaklight {

/// What a local curve tells of a tree from its DBH.
enum class CurveKind {
  crown_width,  ///< ft = a + b D
  height,       ///< ft = 4.5 + exp(a + b / (D + 1))
};
template <>
inline constexpr auto kWords<CurveKind> = std::to_array<Word<CurveKind>>(
    {{CurveKind::crown_width, "crown_width"}, {CurveKind::height, "height"}});

/// A curve fitted to the trees of this tract.
struct LocalCurve {
  CurveKind kind = CurveKind::crown_width;
  std::optional<int> fia;  ///< of one species; nothing: of all trees measured
  double a = 0.0, b = 0.0;
  int trees = 0;     ///< n
  Feet residual_sd;  ///< root of squares over n - 2
  Inches from, to;   ///< DBH of the thinnest and thickest tree measured
  std::vector<std::pair<Inches, Feet>> measured;  ///< the trees, by DBH: to draw the fit
};

/// One line of a local volume table: trees of a species (or of any) and a DBH.
struct LocalVolumeRow {
  std::optional<int> fia;  ///< nothing: any species without lines of its own
  Inches dbh;
  std::optional<double> board_feet;  ///< by the table's log rule
  std::optional<double> cords;
};

/// A volume table of the place, brought by its owner.
struct LocalVolumes {
  std::string log_rule;  ///< word of the rule of its board feet; "" when it has none
  std::string source;    ///< who made it, in the file's own words
  std::vector<LocalVolumeRow> rows;
};

/// What was measured here and stands in place of the book. Never changed after it was made.
struct LocalNumbers {
  std::vector<LocalCurve> curves;
  LocalVolumes volumes;
};
using LocalNumbersPtr = std::shared_ptr<const LocalNumbers>;  ///< null: nothing is local

}  // namespace oaklight
