#include <algorithm>
#include <cmath>
#include <numbers>

#include "core/base/number_text.hpp"
#include "core/forms/import_job.hpp"
#include "core/forms/near_word.hpp"

namespace oaklight {
namespace {

/// Plots that this file named and plots.csv does not have; each is told once.
using Told = std::set<std::pair<std::string, std::string>>;

std::string of_stand(const std::pair<std::string, std::string>& key) {
  return "Plot \"" + key.second + "\" of stand \"" + key.first + "\"";
}

bool in_tract(const ImportJob& job, const std::pair<std::string, std::string>& key) {
  const auto stand = job.stands.find(key.first);
  if (stand == job.stands.end()) return false;
  const auto first = job.known_plots.lower_bound({stand->second, key.second, CruiseId{}});
  return first != job.known_plots.end() && std::get<0>(*first) == stand->second &&
         std::get<1>(*first) == key.second;
}

/// The plot of an id among plots in order of their ids, or their end.
template <class Plots>
auto find_by_id(Plots& plots, PlotId id) {
  const auto found = std::ranges::lower_bound(plots, id, {}, &Plot::id);
  return found != plots.end() && found->id == id ? found : plots.end();
}

/// The plot that a row names; nullptr, and a fault once a file, when plots.csv does not have it.
PlotEntry* find_plot(ImportJob& job, const FilledRow& row, Told& told) {
  const std::pair<std::string, std::string> key{row.text("stand"), row.text("plot")};
  if (key.first.empty() || key.second.empty()) return nullptr;
  if (const auto found = job.plots.find(key); found != job.plots.end()) return &found->second;
  const bool stand_known = job.find_stand(row).has_value();
  if (!stand_known || !job.tables.plots.complete() || !told.insert(key).second) return nullptr;
  std::vector<std::string_view> labels;
  for (const auto& [other, entry] : job.plots) {
    if (other.first == key.first) labels.push_back(other.second);
  }
  if (in_tract(job, key)) {
    row.fault(job.faults, "plot", ErrorCode::unknown_reference,
              of_stand(key) + " is in the tract already, and not in plots.csv.",
              "Trees come in together with their plot; add to a plot of the tract by hand.");
  } else {
    row.fault(job.faults, "plot", ErrorCode::unknown_reference,
              of_stand(key) + " is not in plots.csv.",
              did_you_mean(near_words(key.second, labels), "Add it to plots.csv."));
  }
  return nullptr;
}

void check_against_min_dbh(const FilledRow& row, Dbh dbh, const CruiseEntry& cruise,
                           FaultList& faults) {
  const auto least = cruise.cruise.min_dbh;
  if (!least || !is_thinner(dbh, *least)) return;
  row.fault(faults, "dbh", ErrorCode::contradiction,
            "The tree of " + shown(dbh) + " is under the smallest DBH of its cruise, " +
                shown(*least) + ".",
            "Take the row out, correct the DBH, or lower the smallest DBH of all plots of the "
            "cruise.");
}

/// A tree farther out than the plot reaches was not on it. Fixed plots only: on a point the reach
/// depends on borderline rules, which the measuring part owns.
void check_reach(const FilledRow& row, Dbh dbh, const CruiseEntry& cruise, FaultList& faults) {
  const auto* design = std::get_if<FixedDesign>(&cruise.cruise.design);
  const auto distance = row.get<TapedLength>("distance");
  if (!design || !distance || !cruise.sound) return;
  const bool small = design->small_below && is_thinner(dbh, *design->small_below);
  const Acres area = small ? design->small_acres().value_or(design->acres()) : design->acres();
  // Source: area of a circle.
  const Feet reach{std::sqrt(to_square_feet(area).value / std::numbers::pi)};
  constexpr Feet kTapeRead{0.05};  // a tree on the line is read to a tenth of a foot
  if (distance->feet() <= reach + kTapeRead) return;
  const bool us = row.table().system() == UnitSystem::us;
  const std::string shown_reach =
      us ? number_text(reach.value, 1) + " ft" : number_text(to_metres(reach).value, 2) + " m";
  row.fault(faults, "distance", ErrorCode::contradiction,
            std::string("The tree stands farther out than its ") + (small ? "small " : "") +
                "plot reaches, " + shown_reach + ".",
            small ? "Thin trees count on the small plot only: take the row out, or correct it."
                  : "Take the row out, or correct the distance.");
}

/// Who wears a tag: trees of the tract, and the line of the file that gave it (0: none yet).
struct TagUse {
  std::vector<const Tree*> in_tract;
  int line = 0;
};
using Tags = std::map<std::string, TagUse>;

/// Whether the row is a later visit to the very tree that wears the tag in the tract: the same plot
/// by its label, in another cruise.
bool is_measured_again(const ImportJob& job, const FilledRow& row, const TagUse& use) {
  const auto stand = job.stands.find(row.text("stand"));
  const auto entry = job.plots.find(std::pair(row.text("stand"), row.text("plot")));
  if (stand == job.stands.end() || entry == job.plots.end()) return false;
  const auto cruise = job.cruises.find(entry->second.cruise);
  if (cruise == job.cruises.end()) return false;
  return std::ranges::all_of(use.in_tract, [&](const Tree* tree) {
    const auto& plots = job.existing.plots;
    const auto plot = find_by_id(plots, tree->plot);
    return plot != plots.end() && plot->stand == stand->second && plot->label == row.text("plot") &&
           plot->cruise != cruise->second.cruise.id;
  });
}

void check_tag(ImportJob& job, const FilledRow& row, Tags& tags) {
  const std::string tag = row.text("tag");
  if (tag.empty()) return;
  if (row.get<std::int64_t>("stems").value_or(1) > 1) {
    row.fault(job.faults, "tag", ErrorCode::contradiction, "One tag is given to several stems.",
              "Give each stem a row of its own, or take the tag out.");
  }
  TagUse& use = tags[tag];
  const bool in_file = use.line != 0;
  if (!in_file) use.line = row.line();
  if (!in_file && is_measured_again(job, row, use)) return;
  if (!in_file && use.in_tract.empty()) return;
  const std::string where =
      in_file ? "on line " + std::to_string(use.line) + " already." : "in the tract already.";
  row.fault(job.faults, "tag", ErrorCode::duplicate, "Tag \"" + tag + "\" is " + where,
            "A tag names one tree of the tract; put the plot before the number, like 7-12.");
}

/// Adds a row without a size to the counts of its plot.
void count_trees(ImportJob& job, const FilledRow& row, const PlotEntry& entry) {
  const auto species = row.get<SpeciesCode>("species");
  const auto plot = find_by_id(job.data.plots, entry.id);
  if (!species || plot == job.data.plots.end()) return;
  if (row.word<TreeStatus>("status") == TreeStatus::dead) {
    row.fault(job.faults, "dbh", ErrorCode::missing_value, "Diameter (DBH) is needed here.",
              "Only live trees are counted without a size: give it, or take the row out.");
    return;
  }
  const int stems = static_cast<int>(row.get<std::int64_t>("stems").value_or(1) *
                                     row.get<std::int64_t>("edge_count").value_or(1));
  PlotTaken taken = taken_at(*plot);
  auto one = std::ranges::find(taken.counted, *species, &SpeciesCount::species);
  if (one == taken.counted.end()) one = taken.counted.insert(one, {*species, 0});
  one->stems += stems;
  plot->note = note_of(taken);
}

/// A tree without a size: right at a count point of point sampling, a gap elsewhere.
void import_unsized(ImportJob& job, const FilledRow& row, const PlotEntry& plot) {
  const auto cruise = job.cruises.find(plot.cruise);
  const bool point = cruise != job.cruises.end() &&
                     std::holds_alternative<PointDesign>(cruise->second.cruise.design);
  if (plot.task == PlotTask::count && point) {
    count_trees(job, row, plot);
    return;
  }
  row.fault(job.faults, "dbh", ErrorCode::missing_value, "Diameter (DBH) is needed here.",
            "Outside bark, 4.5 ft above the ground on the uphill side; may be empty at a count "
            "point only.");
}

void import_tree(ImportJob& job, const FilledRow& row, Told& told, Tags& tags) {
  check_tag(job, row, tags);
  PlotEntry* plot = find_plot(job, row, told);
  if (!plot) {
    if (!row.given("dbh")) import_unsized(job, row, {row, {}, {}, {}});
    return;
  }
  ++plot->tree_rows;
  if (!row.given("dbh")) {
    import_unsized(job, row, *plot);
    return;
  }
  auto facts = facts_of(row);
  if (!facts) return;
  check_facts(*facts, row, job.faults);
  if (const auto cruise = job.cruises.find(plot->cruise); cruise != job.cruises.end()) {
    check_against_min_dbh(row, facts->dbh, cruise->second, job.faults);
    check_reach(row, facts->dbh, cruise->second, job.faults);
  }
  Tree tree{job.ids.next_id<TreeTag>(), plot->id, std::move(*facts)};
  tree.stems = static_cast<int>(row.get<std::int64_t>("stems").value_or(1));
  tree.edge_count = static_cast<int>(row.get<std::int64_t>("edge_count").value_or(1));
  tree.azimuth = row.quantity<Degrees>("azimuth_deg");
  tree.distance = row.get<TapedLength>("distance");
  tree.tag = row.text("tag");
  job.data.trees.push_back(std::move(tree));
}

/// Seedlings were counted on the plot, so it was visited, and the size of the count plot is known.
void check_regen_plot(ImportJob& job, const FilledRow& row, const PlotEntry& plot) {
  if (plot.status == PlotStatus::planned || plot.status == PlotStatus::skipped) {
    row.fault(job.faults, "plot", ErrorCode::contradiction,
              "Plot \"" + row.text("plot") + "\" is " + std::string(word_of(*plot.status)) +
                  " in plots.csv, and has a count of seedlings.",
              "Write measured or empty there, or take this row out.");
  }
  const auto cruise = job.cruises.find(plot.cruise);
  if (plot.task == PlotTask::count) {
    row.fault(job.faults, "plot", ErrorCode::contradiction,
              "Plot \"" + row.text("plot") + "\" is a count point, and has a count of seedlings.",
              "Write measure in its column task, or take this row out.");
  }
  if (cruise == job.cruises.end()) return;
  CruiseEntry& entry = cruise->second;
  if (entry.row.given("regen_plot_area") || entry.cruise.regen_area || entry.regen_area_missed) {
    return;
  }
  entry.regen_area_missed = true;
  entry.row.fault(job.faults, "regen_plot_area", ErrorCode::missing_value,
                  "Seedlings were counted in this cruise, and the area of the count is not told.",
                  "Fill it in on every row of the cruise.");
}

void import_regen(ImportJob& job, const FilledRow& row, Told& told,
                  std::map<std::string, int>& counted) {
  PlotEntry* plot = find_plot(job, row, told);
  const auto species = row.get<SpeciesCode>("species");
  const auto height = row.word<RegenHeight>("height_class");
  const auto count = row.get<std::int64_t>("count");
  if (!plot) return;
  check_regen_plot(job, row, *plot);
  if (!species || !height || !count) return;
  const std::string key =
      to_text(plot->id) + "/" + std::to_string(species->fia) + "/" + std::string(word_of(*height));
  const auto [first, fresh] = counted.emplace(key, row.line());
  if (!fresh) {
    row.fault(job.faults, "species", ErrorCode::duplicate,
              "This species and height of this plot is on line " + std::to_string(first->second) +
                  " already.",
              "Add the counts into one row.");
    return;
  }
  job.data.regens.push_back(
      {job.ids.next_id<RegenTag>(), plot->id, *species, *height, static_cast<int>(*count)});
}

}  // namespace

void import_trees(ImportJob& job) {
  Told told;
  Tags tags;
  for (const Tree& tree : job.existing.trees) {
    if (!tree.tag.empty()) tags[tree.tag].in_tract.push_back(&tree);
  }
  job.data.trees.reserve(job.tables.trees.rows().size());
  for (const auto& row : job.tables.trees.rows()) {
    import_tree(job, FilledRow(job.tables.trees, row), told, tags);
  }
}

void import_regeneration(ImportJob& job) {
  Told told;
  std::map<std::string, int> counted;
  for (const auto& row : job.tables.regeneration.rows()) {
    import_regen(job, FilledRow(job.tables.regeneration, row), told, counted);
  }
}

void check_plot_status(ImportJob& job) {
  for (const auto& [key, plot] : job.plots) {
    if (!plot.status) continue;
    if (*plot.status != PlotStatus::measured && plot.tree_rows > 0) {
      plot.row.fault(job.faults, "status", ErrorCode::contradiction,
                     of_stand(key) + " is " + std::string(word_of(*plot.status)) + ", and has " +
                         std::to_string(plot.tree_rows) +
                         (plot.tree_rows == 1 ? " tree." : " trees."),
                     "Write measured, or take its trees out of trees.csv.");
    }
    // A plot without trees is a finding. It must be told, not left to a file that may be short.
    if (*plot.status == PlotStatus::measured && plot.tree_rows == 0 &&
        job.tables.trees.complete()) {
      plot.row.fault(job.faults, "status", ErrorCode::contradiction,
                     of_stand(key) + " is measured, and has no tree.",
                     "Write empty if there was none to tally; it counts as zero. Otherwise add its "
                     "trees.");
    }
  }
}

}  // namespace oaklight
