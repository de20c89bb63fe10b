#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "core/forms/fault_list.hpp"
#include "core/forms/filled_table.hpp"
#include "core/model/mark.hpp"
#include "core/model/plot_task.hpp"

namespace oaklight {

/// The files of an import as tables.
struct CruiseTables {
  FilledTable tract;
  FilledTable stands;
  FilledTable plots;
  FilledTable trees;
  FilledTable regeneration;
  FilledTable crop_trees;
  FilledTable acorns;
  FilledTable acorn_years;
  FilledTable stumps;
};

/// A plot of plots.csv, for what the other files say about it.
struct PlotEntry {
  FilledRow row;
  PlotId id;
  std::optional<PlotStatus> status;  ///< nothing: the cell was refused
  std::string cruise;
  PlotTask task = PlotTask::measure;
  std::size_t tree_rows = 0;  ///< rows of trees.csv, the refused ones too
};

/// A cruise as the first of its rows tells it.
struct CruiseEntry {
  FilledRow row;
  Cruise cruise;
  bool sound = true;                         ///< its design is whole
  std::set<std::string> crews = {};          ///< told so far
  bool regen_area_missed = false;            ///< told once
  std::map<std::string, int> plots_of = {};  ///< by stand: how many so far
};

/// A position and where it was read.
struct PlacedPoint {
  Position position;
  CruiseFile file;
  int line = 0;
  std::string where;
};

/// What the steps of one import share. Each step adds to data and faults.
struct ImportJob {
  const TractData& existing;
  IdSource& ids;
  const SpeciesTable& species;
  CruiseTables tables = {};
  TractData data = {};
  FaultList faults = {};

  std::map<std::string, StandId, std::less<>>
      stands;  ///< by name, of the tract file and the import
  std::map<std::pair<std::string, std::string>, PlotEntry> plots;         ///< by stand and label
  std::map<std::string, CruiseEntry, std::less<>> cruises;                ///< of the import
  std::set<std::tuple<StandId, std::string, CruiseId>> known_plots = {};  ///< of the tract file
  std::vector<PlacedPoint> points;
  std::set<std::pair<CruiseFile, std::string>> unknown_stands;  ///< told already

  /// The stand that a row names. A name that no stand has is a fault, once a file.
  std::optional<StandId> find_stand(const FilledRow& row);
  /// Notes a position for the check that all lie in one place.
  void add_point(const FilledRow& row, std::string_view field, const Position& position);
};

// The steps, in order.
void import_tract(ImportJob& job);
void import_stands(ImportJob& job);
void import_plots(ImportJob& job);
void import_trees(ImportJob& job);
void import_regeneration(ImportJob& job);
/// After the trees: whether the status of each plot fits what was found on it.
void check_plot_status(ImportJob& job);
void import_cards(ImportJob& job);
/// After the cards: which tree wears which tag.
void import_acorns(ImportJob& job);
void import_acorn_years(ImportJob& job);
void import_map(ImportJob& job, const NamedText& file);
/// After the walk: each row finds its tree by the tag.
void import_stumps(ImportJob& job, const NamedText& file);
/// Last: no position may lie far from the rest.
void check_positions(ImportJob& job);

/// What a row says about one tree; nothing when species or DBH is missing. An empty status is live.
std::optional<TreeFacts> facts_of(const FilledRow& row);
/// Facts of one tree that cannot be true together; told at the row.
void check_facts(const TreeFacts& facts, const FilledRow& row, FaultList& faults);
/// Merchantable height in half logs, and the set of conditions, as a row tells them.
std::optional<int> half_logs_of(const FilledRow& row);
Conditions conditions_of(const FilledRow& row);
/// Whether a is thinner than b, exactly, also across unit systems.
bool is_thinner(Dbh a, Dbh b);
/// "12.3 in"
std::string shown(Dbh dbh);

}  // namespace oaklight
