#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "core/sample/plan_cruise.hpp"
#include "core/session/knowledge.hpp"
#include "core/session/live_tract.hpp"

namespace oaklight {

// What a cruise is to reach, one of four.
struct PlotsInAll {
  int plots = 0;
};
struct PlotsAnAcre {
  double plots = 0.0;
};
struct HoursInAll {
  double hours = 0.0;
};
using CruiseGoal = std::variant<ErrorGoal, PlotsInAll, PlotsAnAcre, HoursInAll>;

/// How plots come to lie in a stand.
enum class PlotPattern { grid, random };
template <>
inline constexpr auto kWords<PlotPattern> = std::to_array<Word<PlotPattern>>(
    {{PlotPattern::grid, "grid"}, {PlotPattern::random, "random"}});

/// What is asked of a design.
struct DesignRequest {
  std::string cruise;            ///< its name; one that the tract has keeps its own design
  std::optional<Design> design;  ///< of a new cruise; nothing: a point of the advised factor
  CruiseGoal goal = ErrorGoal{};
  Confidence confidence;              ///< of the expected error
  StandKind kind = StandKind::mixed;  ///< where no plots tell the spread
  std::optional<Percent> cv;          ///< told by the person, for all stands
  SquareFeetPerAcre usual_ba{90.0};   ///< where no plots tell it; upland hardwoods (from memory)
  std::optional<Inches> mean_dbh;     ///< for the advice; nothing: measured, or 11 in
  std::vector<std::string> stands;    ///< by name; none: all
  Allocation allocation = Allocation::proportional;
  int measure_every =
      1;  ///< the first point of a stand and every k-th after it; others are counted
  PlotPattern pattern = PlotPattern::grid;
  Degrees azimuth{0.0};  ///< of the grid's lines, from true north
  std::uint64_t seed = 1;
  CrewPace pace;
};

/// What is laid out in one stand.
struct StandLayout {
  StandId stand;
  std::string name;
  Acres acres;
  Percent cv;
  std::string cv_source;  ///< "from 12 plots", "usual for mixed stands (from memory)", "as told"
  int wanted = 0;
  std::optional<Feet> spacing;  ///< of the grid; nothing for random points and without an outline
  std::vector<Plot> plots;      ///< in walking order along the lines
};

struct CruiseLayout {
  Action action;  ///< for TractStore::apply: the cruise if it is new, and its planned plots
  std::string cruise;
  Design design;
  std::vector<StandLayout> stands;
  int plots = 0;       ///< laid out
  Percent half_width;  ///< expected for basal area over all, with the plots laid out
  double hours = 0.0;
  FactorAdvice factor;
  PlotAdvice plot;
  std::vector<std::string> notes;  ///< what a person must know of it
};

/// Lays out a cruise: how many plots, shared out among stands, and where each lies. Plots of a
/// stand without an outline are planned without a position. Each plot's note keeps the pattern,
/// the azimuth and the seed, with which the same plots come again.
///
/// errors   missing_value: no name; unknown_reference: no such stand; contradiction: the cruise has
///          plots in these stands that are still to be visited; no_data: no stands; of
///          plan_for_error, plan_for_count, add_cruise, add_plot, grid_positions
Result<CruiseLayout> lay_out_cruise(const LiveTract& live, const TractKnowledge& knowledge,
                                    IdSource& ids, const DesignRequest& request);

/// What must be said beside every error of a grid.
inline constexpr const char* kAsIfRandom =
    "Errors are computed as if the plots lay at random; for a grid that mostly overstates them.";

}  // namespace oaklight
