#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/sample/cruise_estimate.hpp"
#include "core/session/knowledge.hpp"
#include "core/session/live_tract.hpp"

namespace oaklight {

/// What one plot shows while it is tallied.
struct PlotFigures {
  int records = 0;     ///< tally records
  int stems = 0;       ///< stems that they stand for, each edge tree once
  int live_stems = 0;  ///< of them
  int left_out = 0;    ///< records under the smallest DBH of the cruise: in no figure below
  /// Live trees, for an acre around the plot. Nothing on a plot that is planned or skipped: nobody
  /// knows what stands there. 0 on an empty one.
  std::optional<SquareFeetPerAcre> ba;
  std::optional<TreesPerAcre> trees;
  UnitSystem system = UnitSystem::us;  ///< of the cruise's design
};
/// Cost: the trees of the plot. Errors: unknown_reference; of check_design.
Result<PlotFigures> plot_figures(const LiveTract& live, PlotId plot);

/// The figures of one stand as its plots come in. Cost: the trees of the stand,
/// about a millisecond for a thousand.
/// Errors: unknown_reference; as stand_sample and area_estimate (no_data before the first plot).
Result<AreaEstimate> running_figures(const LiveTract& live, const TractKnowledge& knowledge,
                                     StandId stand, const EstimateOptions& options);

/// The diameter classes of a class field.
enum class TallyClasses { one_inch, two_inches, five_centimetres };

/// One diameter class to touch.
struct TallyClass {
  Dbh middle;         ///< what a tree of the class is recorded with
  Dbh least, most;    ///< smallest and largest reading that belong to it
  std::string label;  ///< "14"
  std::string range;  ///< "13.0 to 14.9 in"
};
/// The classes from the cruise's smallest tree to `most`, in rising order. A class whose middle is
/// under the smallest tree tallied is left out, as it would be in no estimate.
///
/// min_dbh  of the cruise; nothing: from the first class
/// source   the one-sided rule of dbh_class.hpp; for metric classes the same rule in centimetres
[[nodiscard]] std::vector<TallyClass> tally_classes(TallyClasses width, std::optional<Dbh> min_dbh,
                                                    Dbh most);

// Figures as screens show them, in the units that a person chose.
/// "80.0 ft2/ac", "18.4 m2/ha".
[[nodiscard]] std::string ba_text(SquareFeetPerAcre ba, UnitSystem system);
/// "12.5 ac", "5.06 ha".
[[nodiscard]] std::string area_text(Acres area, UnitSystem system);

}  // namespace oaklight
