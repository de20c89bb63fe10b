#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "core/base/day.hpp"
#include "core/model/plot_task.hpp"
#include "core/session/knowledge.hpp"
#include "core/session/live_tract.hpp"

// What a person does at a plot, as actions for TractStore::apply. Every function is pure: it reads
// the tract in memory and the tract's own form, and changes nothing.
//
// errors of every function: unknown_reference when a record that it names is not in use;
// out_of_range, missing_value or not_a_choice for a value that the tract's form does not allow,
// with the field as the last part of `where` ("plot/7/tree/dbh"). Others are told at the function.

namespace oaklight {

/// What is recorded of one tree of a plot.
struct TreeDraft {
  TreeFacts facts;     ///< a tree tallied by class has the middle of its class as its DBH
  int stems = 1;       ///< like stems
  int edge_count = 1;  ///< 1, 2 or 4
  std::optional<Degrees> azimuth;       ///< from plot centre, true north
  std::optional<TapedLength> distance;  ///< level, plot centre to tree centre
  std::string tag;
};
[[nodiscard]] TreeDraft draft_of(const Tree& tree);

/// What a keypad without a decimal key holds: "123" is 12.3 in or cm. Leading zeros do not matter.
/// Errors: missing_value without digits, not_a_number, out_of_range.
Result<Dbh> dbh_from_digits(std::string_view digits, UnitSystem system);

/// "12.3 in", "31.2 cm".
[[nodiscard]] std::string dbh_text(Dbh dbh);
/// The common name; "species 999" for one that the table does not have.
[[nodiscard]] std::string species_name(const TractKnowledge& knowledge, SpeciesCode code);

/// Adds one tree: "tally white oak 14.0 in". The first tree of a planned or empty plot makes it
/// measured in the same action.
///
/// errors   contradiction: the plot was skipped; the tree is under the smallest DBH of the cruise;
///          dead with a live crown; logs longer than the tree; a tag for several stems; azimuth
///          without distance or the reverse; farther out than its fixed plot reaches.
///          unknown_species; duplicate for a tag in use
Result<Action> tally_tree(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                          PlotId plot, const TreeDraft& draft);

/// Replaces what is recorded of a tree. Errors: as tally_tree.
Result<Action> correct_tree(const LiveTract& live, const TractKnowledge& knowledge, TreeId tree,
                            const TreeDraft& draft);

/// Takes a tree out of use. With its last tree a plot is planned again, since nobody said that it
/// is empty; where seedlings were counted it was visited, and is empty. The label says so.
Result<Action> remove_tree(const LiveTract& live, const TractKnowledge& knowledge, TreeId tree);

/// A note of doubt about a size that is allowed and seldom seen: "large for white oak: 44.0 in?";
/// nothing for a usual one. Never a reason to refuse.
///
/// source   greatest usual sizes by group of species, from memory (kUsualSizes, usual_dbh.cpp)
[[nodiscard]] std::optional<std::string> unusual(const TractKnowledge& knowledge,
                                                 SpeciesCode species, Dbh dbh);

/// Counts one more live tree of a species at a count point, without its size (step 1), or one less
/// (step -1): "count white oak". The first makes a planned or empty point measured.
///
/// errors   contradiction: the plot was skipped, is no count point, or is no point at all;
///          out_of_range below 0 or above 10,000; unknown_species
Result<Action> count_tree(const LiveTract& live, const TractKnowledge& knowledge, PlotId plot,
                          SpeciesCode species, int step);
/// Makes a plot one that is measured, or a count point: "plot 3 is a count point". Errors:
/// contradiction: trees were counted without a size at it; a fixed plot that is to be counted.
Result<Action> set_task(const LiveTract& live, PlotId plot, PlotTask task);
/// Every how many plots of a cruise are measured, as its plots have it: 1 where all are. Source:
/// one more than the longest run of count points, by label.
[[nodiscard]] int measured_every(const LiveTract& live, CruiseId cruise);
/// Gives the points of a cruise their turns: of each stand the first by label and every k-th after
/// it is measured. Only those still to do change; what was visited stays as it is. "measure every
/// 3rd point".
///
/// errors   out_of_range for a k below 1 or above kMostEvery; contradiction: a cruise of fixed
///          plots, or no point to do would change
Result<Action> measure_in_turn(const LiveTract& live, CruiseId cruise, int every);
inline constexpr int kMostEvery = 50;
/// Why the points of a cruise cannot be measured so; nothing when they can. An unknown cruise is
/// told where it is asked for.
[[nodiscard]] std::optional<Error> cannot_take_turns(const LiveTract& live, CruiseId cruise,
                                                     int every);
/// "every point", "every 2nd point", "every 3rd point".
[[nodiscard]] std::string every_text(int every);

/// What is recorded on arrival at a plot; nothing changes where nothing is given.
struct PlotVisit {
  std::optional<Position> position;  ///< of the centre, as it was laid out
  std::optional<Metres> accuracy;    ///< of that position
  std::optional<Percent> slope;
  std::optional<std::string> note;
  std::string crew;        ///< added to the cruise's crews unless it is there already
  std::optional<Day> day;  ///< kept when the cruise has no earlier day
};
/// Records an arrival; "start plot 7". The plot stays planned until its first tree, or until it is
/// called empty. Errors: contradiction for a plot that was skipped (plan it again first).
Result<Action> start_plot(const LiveTract& live, const TractKnowledge& knowledge, PlotId plot,
                          const PlotVisit& visit);

/// Visited, and nothing to tally: it counts as zero. Errors: contradiction when it has trees.
Result<Action> call_empty(const LiveTract& live, PlotId plot);
/// Not visited yet after all. Errors: contradiction when it has trees or seedling counts.
Result<Action> plan_again(const LiveTract& live, PlotId plot);
/// Given up, for a reason: not in the sample. Errors: contradiction when it has trees or seedling
/// counts; missing_value without a reason.
Result<Action> skip_plot(const LiveTract& live, const TractKnowledge& knowledge, PlotId plot,
                         std::string_view reason);

/// A label that no plot of the stand has: one more than its highest number.
[[nodiscard]] std::string next_plot_label(const LiveTract& live, StandId stand);
/// Adds a planned plot. plot.id is not read; without a label it gets the next one. Errors:
/// duplicate for a label of the stand.
Result<Action> add_plot(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                        Plot plot);
/// Adds planned plots in one step, labelled on from the stand's next one: "add 10 plots to Cove".
///
/// every    which of them are measured; nothing: as the cruise has it already
/// errors   as add_plot; out_of_range for fewer than 1 or more than 500, and for a k as above;
///          contradiction for count points of a cruise of fixed plots
Result<Action> add_plots(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                         StandId stand, CruiseId cruise, int count,
                         std::optional<int> every = std::nullopt);

/// One cell of the seedling count.
struct SeedlingCell {
  PlotId plot;
  SpeciesCode species;
  RegenHeight height = RegenHeight::under_1_ft;
};
/// What was counted; nothing is "not counted", which is not 0.
[[nodiscard]] std::optional<int> regen_count(const LiveTract& live, const SeedlingCell& cell);
/// Counts one more (step 1) or one less (step -1). From nothing, one more is 1.
///
/// errors   contradiction: the plot is planned or skipped; missing_value: the cruise tells no size
///          of its seedling plot; out_of_range below 0 or above the form's most; unknown_species
Result<Action> count_regen(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                           const SeedlingCell& cell, int step);
/// Sets a count; 0 means looked and found none, nothing takes the record out of use. Errors: as
/// count_regen.
Result<Action> set_regen(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                         const SeedlingCell& cell, std::optional<int> count);

}  // namespace oaklight
