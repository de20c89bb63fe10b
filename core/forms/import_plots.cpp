#include <algorithm>

#include "core/forms/import_job.hpp"
#include "core/forms/near_word.hpp"

namespace oaklight {
namespace {

constexpr const char* kDesignFields[] = {"baf",          "plot_area", "small_plot_area",
                                         "small_below",  "min_dbh",   "regen_plot_area",
                                         "measure_every"};

FieldValue value_of(const FilledRow& row, const char* field) {
  const auto i = row.table().index(field);
  return i ? row.value_at(*i) : FieldValue{};
}

/// Whether the row's design is one whole; what is wrong with it is told.
bool design_is_whole(const FilledRow& row, FaultList& faults) {
  const auto baf = row.get<double>("baf");
  const auto area = row.get<double>("plot_area");
  const auto small = row.get<double>("small_plot_area");
  const auto below = row.get<Dbh>("small_below");
  const auto least = row.get<Dbh>("min_dbh");
  if (row.given("baf") && row.given("plot_area")) {
    row.fault(faults, "baf", ErrorCode::contradiction,
              "The cruise has a basal area factor and a plot area.",
              "Keep the factor for points, or the area for fixed plots.");
    return false;
  }
  if (!row.given("baf") && !row.given("plot_area")) {
    row.fault(faults, "baf", ErrorCode::missing_value,
              "The cruise has neither a basal area factor nor a plot area.",
              "Give the factor for points, or the area for fixed plots.");
    return false;
  }
  if (small && area && *small >= *area) {
    row.fault(faults, "small_plot_area", ErrorCode::contradiction,
              "The small plot is not smaller than the plot.", "Correct one of the two areas.");
    return false;
  }
  if (below && least && !is_thinner(*least, *below)) {
    row.fault(faults, "small_below", ErrorCode::contradiction,
              "No tree can fall on the small plot: it is for trees under " + shown(*below) +
                  ", and the smallest tallied is " + shown(*least) + ".",
              "Correct one of the two diameters.");
    return false;
  }
  return (baf || area) && (small.has_value() == below.has_value());
}

Cruise cruise_of(const FilledRow& row) {
  const UnitSystem system = row.table().system();
  Cruise cruise;
  cruise.name = row.text("cruise");
  if (const auto baf = row.get<double>("baf")) {
    cruise.design = PointDesign{*baf, system};
  } else {
    cruise.design =
        FixedDesign{row.get<double>("plot_area").value_or(0.0), row.get<double>("small_plot_area"),
                    row.get<Dbh>("small_below"), system};
  }
  cruise.min_dbh = row.get<Dbh>("min_dbh");
  cruise.regen_area = row.get<double>("regen_plot_area");
  return cruise;
}

/// Adds the row's crew and day to its cruise: every crew once, the first day.
void add_crew_and_day(const FilledRow& row, CruiseEntry& entry, FaultList& faults) {
  constexpr std::size_t kMostCrews = 200;
  Cruise& cruise = entry.cruise;
  const std::string crew = row.text("crew");
  if (!crew.empty() && entry.crews.insert(crew).second) {
    const std::string all = "; " + cruise.crew + ";";
    // Known from an earlier import, or new.
    if (entry.crews.size() > kMostCrews) {
      row.fault(faults, "crew", ErrorCode::out_of_range, "More than 200 crews share one cruise.",
                "Give each season a cruise of its own, or name fewer.");
    } else if (all.find("; " + crew + ";") == std::string::npos) {
      cruise.crew += (cruise.crew.empty() ? "" : "; ") + crew;
    }
  }
  const std::string date = row.text("date");
  if (!date.empty() && (cruise.date.empty() || date < cruise.date)) cruise.date = date;
}

/// The first row of a cruise decides its design. One that the tract file has must be the same.
void begin_cruise(ImportJob& job, const FilledRow& row) {
  CruiseEntry entry{row, cruise_of(row)};
  entry.sound = design_is_whole(row, job.faults);
  const auto& known = job.existing.cruises;
  const auto found = std::find_if(known.begin(), known.end(), [&](const Cruise& cruise) {
    return cruise.name == entry.cruise.name;
  });
  if (found == known.end()) {
    entry.cruise.id = job.ids.next_id<CruiseTag>();
  } else {
    const bool same = found->design == entry.cruise.design &&
                      found->min_dbh == entry.cruise.min_dbh &&
                      found->regen_area == entry.cruise.regen_area;
    if (entry.sound && !same) {
      row.fault(job.faults, "cruise", ErrorCode::contradiction,
                "Cruise \"" + found->name + "\" is in the tract with another design.",
                "Give this cruise a name of its own, or the same design.");
    }
    entry.cruise = *found;
  }
  job.cruises.emplace(entry.cruise.name, std::move(entry));
}

void compare_design(ImportJob& job, const FilledRow& row, CruiseEntry& entry) {
  for (const char* field : kDesignFields) {
    const bool refused = (row.given(field) && value_of(row, field).index() == 0) ||
                         (entry.row.given(field) && value_of(entry.row, field).index() == 0);
    if (refused || value_of(row, field) == value_of(entry.row, field)) continue;
    row.fault(job.faults, field, ErrorCode::contradiction,
              "Cruise \"" + entry.cruise.name + "\" has another value on line " +
                  std::to_string(entry.row.line()) + ".",
              "Give all plots of a cruise one design, or the cruise another name.");
  }
}

/// What is taken at the plot: as its row says, else by the cruise's rule of every k-th plot of the
/// stand, counted in the order of the file.
PlotTask task_of(const FilledRow& row, CruiseEntry& cruise) {
  int& place = cruise.plots_of[row.text("stand")];
  const std::int64_t every = cruise.row.get<std::int64_t>("measure_every").value_or(1);
  const bool turn = place++ % every == 0;
  return row.word<PlotTask>("task").value_or(turn ? PlotTask::measure : PlotTask::count);
}

void add_plot(ImportJob& job, const FilledRow& row, StandId stand, const CruiseEntry& cruise,
              PlotId id, PlotTask task) {
  Plot plot;
  plot.id = id;
  plot.stand = stand;
  plot.cruise = cruise.cruise.id;
  plot.label = row.text("plot");
  plot.status = row.word<PlotStatus>("status").value_or(PlotStatus::planned);
  plot.skip_reason = row.text("skip_reason");
  plot.position = row.position("lat", "lon");
  plot.accuracy = row.quantity<Metres>("accuracy_m");
  plot.slope = row.quantity<Percent>("slope_pct");
  plot.note = note_of({.task = task, .counted = {}, .note = row.text("note")});
  if (plot.position) job.add_point(row, "lat", *plot.position);
  if (job.known_plots.contains({stand, plot.label, plot.cruise})) {
    row.fault(job.faults, "plot", ErrorCode::duplicate,
              "Plot \"" + plot.label + "\" of this cruise is in the tract already.",
              "Take out the rows of plots that were brought in before.");
  }
  job.data.plots.push_back(std::move(plot));
}

void import_plot(ImportJob& job, const FilledRow& row) {
  const std::string cruise = row.text("cruise");
  if (!cruise.empty()) {
    const auto found = job.cruises.find(cruise);
    if (found == job.cruises.end()) {
      begin_cruise(job, row);
    } else {
      compare_design(job, row, found->second);
    }
    add_crew_and_day(row, job.cruises.find(cruise)->second, job.faults);
  }
  const auto stand = job.find_stand(row);
  const std::string label = row.text("plot");
  const std::string stand_name = row.text("stand");
  if (label.empty() || stand_name.empty()) return;
  const PlotId id = job.ids.next_id<PlotTag>();
  const PlotTask task =
      cruise.empty() ? PlotTask::measure : task_of(row, job.cruises.find(cruise)->second);
  const auto [entry, fresh] =
      job.plots.emplace(std::pair(stand_name, label),
                        PlotEntry{row, id, row.word<PlotStatus>("status"), cruise, task});
  if (!fresh) {
    row.fault(job.faults, "plot", ErrorCode::duplicate,
              "Plot \"" + label + "\" of stand \"" + stand_name + "\" is on line " +
                  std::to_string(entry->second.row.line()) + " already.",
              "Keep one of the rows, or give this plot another label.");
    return;
  }
  if (stand && !cruise.empty()) {
    add_plot(job, row, *stand, job.cruises.find(cruise)->second, id, task);
  }
}

}  // namespace

void import_plots(ImportJob& job) {
  for (const Plot& plot : job.existing.plots)
    job.known_plots.emplace(plot.stand, plot.label, plot.cruise);
  for (const auto& row : job.tables.plots.rows())
    import_plot(job, FilledRow(job.tables.plots, row));
  // In the order of their first rows, so that ids and lists rise alike.
  std::vector<const CruiseEntry*> order;
  for (const auto& [name, entry] : job.cruises) order.push_back(&entry);
  std::sort(order.begin(), order.end(), [](const CruiseEntry* a, const CruiseEntry* b) {
    return a->row.line() < b->row.line();
  });
  for (const CruiseEntry* entry : order) {
    const auto& known = job.existing.cruises;
    const bool unchanged = std::any_of(known.begin(), known.end(), [&](const Cruise& cruise) {
      return cruise.id == entry->cruise.id && cruise.crew == entry->cruise.crew &&
             cruise.date == entry->cruise.date;
    });
    if (!unchanged) job.data.cruises.push_back(entry->cruise);
  }
}

}  // namespace oaklight
