#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/session/decide.hpp"
#include "core/stand/figure_range.hpp"
#include "core/units/reading.hpp"

namespace oaklight {

/// All that the stand screen shows of one stand, or of all cruised stands together.
struct StandView {
  AreaEstimate area;
  StandStocking stocking;
  std::optional<Composition> composition;  ///< nothing without live trees
  std::vector<Design> designs;             ///< of its cruises, each once
  int stands = 1;                          ///< cruised stands in it
  LocalNumbersPtr local;                   ///< curves and volume table of the tract
  // Of one stand only:
  std::optional<Advice> advice;
  bool walked = false;  ///< advice, before and after rest on the trees of a marking walk
  std::optional<StandDensity> before, after;  ///< of the recommendation as it is now
};

/// The view of one stand, or of all. The advice of a stand in which no tree was walked says only
/// whether its density leaves room for a release.
/// Errors: as stand_sample, area_estimate and cruised_stands; of stand_facts.
Result<StandView> stand_view(const TractData& data, const TractKnowledge& knowledge,
                             std::optional<StandId> stand, const EstimateOptions& options);

/// What a figure is counted in.
enum class FigureUnit { basal_area, trees, diameter, percent, board_feet, cords, cubic_feet };

/// How a figure is shown: its value times factor, with so many decimals and these words.
struct ShownUnit {
  double factor = 1.0;
  int decimals = 0;
  std::string_view words;
};
/// factor  from the core's unit (ft2/ac, trees/ac, in, %, board feet/ac, cords/ac)
[[nodiscard]] ShownUnit shown_unit(FigureUnit unit, UnitSystem system);

/// One figure of an area with its error, in the core's units.
struct AreaFigure {
  std::string_view key;  ///< of its source_note
  FigureUnit unit = FigureUnit::basal_area;
  std::optional<double> mean;  ///< nothing: cannot be told from what was recorded
  std::optional<double> se;
  std::optional<double> df;          ///< degrees of freedom of the interval
  std::optional<double> multiplier;  ///< Student's t for them
  std::optional<double> half_width;
  std::optional<Percent> half_pct;    ///< of the mean; nothing for what is in percent itself
  std::optional<Percent> on_at_most;  ///< as Estimate::on_at_most
  bool ratio = false;                 ///< its interval is that of a ratio
  std::optional<double> lo, hi;       ///< limits of a share, which lie unevenly about it
  FigureBasis basis;                  ///< how it came about where there are count points
  int by_local = 0;                   ///< stems in it by the local volume table or height curve
  std::string beyond;                 ///< out_of_range in words; "" within its range
  int plots = 0;
  int found = 0;    ///< plots on which something was found
  int without = 0;  ///< tallied stems that are not in it, because nothing tells their amount
  Trust trust = Trust::fair;
};

/// The figures of a view in the order of source_notes(): basal area, trees, mean diameter,
/// stocking, oaks' share, board feet, cords, stem wood where heights are known, standing dead,
/// young oaks and the share of plots with one where they were counted.
///
/// source   intervals of mean diameter and oaks' share: Student's t with plots less stands degrees
///          of freedom, as R package survey counts them
[[nodiscard]] std::vector<AreaFigure> area_figures(const StandView& view,
                                                   const EstimateOptions& options);

}  // namespace oaklight
