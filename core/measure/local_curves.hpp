#pragma once

#include <span>
#include <string_view>

#include "core/base/result.hpp"
#include "core/measure/log_rule.hpp"
#include "core/model/local.hpp"
#include "core/model/mark.hpp"

namespace oaklight {

/// Fewest trees for a curve of two coefficients: ten a coefficient (common practice in regression),
/// so that one odd tree does not bend it.
inline constexpr int kCurveTrees = 20;
/// Least span of their DBH: over a narrower one the slope is chance. Judgement.
inline constexpr Inches kCurveSpan{6.0};

/// A tree with its DBH and one measured length.
struct SizedTree {
  Inches dbh;
  Feet length;
};

/// The least-squares curve through measured trees.
///
/// trees    any order; of one species or pooled
/// returns  crown width: the straight line of ordinary least squares. Height: the curve of
///          nonlinear least squares in feet, so that no bias comes from logarithms
/// errors   too_few_plots: fewer than kCurveTrees, or over less than kCurveSpan; not_a_number;
///          out_of_range: a length not above 0 (height: 4.5 ft), or a fit that falls with DBH
/// accuracy equal to R's lm and nls to 6 digits (tests/golden/curves)
/// source   crown width on DBH: Krajicek, Brinkman and Gingrich 1961; height curve: Wykoff,
///          Crookston and Stage 1982, USDA General Technical Report INT-133 (both from memory)
Result<LocalCurve> fit_curve(CurveKind kind, std::span<const SizedTree> trees);

/// Curves of crown width from the live trees of a stand's walk whose four radii were taped: north
/// and south, and east and west, each added and the two widths averaged. One for every species with
/// enough trees, and one for all together; of one stand, since crowns follow its density.
[[nodiscard]] std::vector<LocalCurve> crown_curves(std::span<const WalkTree> walk, StandId stand);

/// Curves of total height, likewise, from the live trees of the tract without a broken top, of
/// plots and walk, a tagged tree once.
[[nodiscard]] std::vector<LocalCurve> height_curves(const TractData& data);

/// The curve for a tree: that of its species, else that of all; nullptr when neither is there or
/// the DBH lies outside the trees it was fitted to.
[[nodiscard]] const LocalCurve* curve_for(std::span<const LocalCurve> curves, CurveKind kind,
                                          int fia, Inches dbh);

/// The curve's length at a DBH, ft. Only for a DBH between from and to.
[[nodiscard]] Feet length_on(const LocalCurve& curve, Inches dbh);

/// Half the width on the crown curve for a tree; nothing without one, or where it falls to 0.
[[nodiscard]] std::optional<Feet> fitted_crown_radius(std::span<const LocalCurve> curves, int fia,
                                                      Inches dbh);

/// "local fit, white oak, n = 31, residual SD 3.2 ft, DBH 6.1 to 24.0 in".
[[nodiscard]] std::string fit_words(const LocalCurve& curve, const SpeciesTable& species);

/// What a local volume table gives for one tree; it runs straight between the DBHs of its lines.
struct LocalVolume {
  std::optional<BoardFeet> board_feet;
  std::optional<Cords> cords;
};
/// Nothing outside the DBHs of the lines for the tree's species (or for any), and no board feet
/// where the table is by another log rule than is asked.
[[nodiscard]] LocalVolume local_volume(const LocalVolumes& table, int fia, Inches dbh,
                                       LogRule rule);

}  // namespace oaklight
