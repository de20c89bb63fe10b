#include <algorithm>

#include <charconv>
#include "core/model/plot_task.hpp"

#include "core/session/form_check.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/records_named.hpp"

namespace oaklight {
namespace {

UnitSystem system_of(const Cruise* cruise) {
  if (cruise == nullptr) return UnitSystem::us;
  return std::visit([](const auto& design) { return design.system; }, cruise->design);
}

/// Why a plot cannot be called unvisited, or without trees; nothing when it can.
std::optional<Error> held_by_records(const LiveTract& live, const Plot& plot, bool seedlings_too) {
  const std::size_t trees = live.tree_records_of(plot.id) + taken_at(plot).counted.size();
  const std::size_t counts = seedlings_too ? live.regens_of(plot.id).size() : 0;
  if (trees + counts == 0) return std::nullopt;
  const std::string what =
      trees > 0 ? std::to_string(trees) + (trees == 1 ? " tree" : " trees") : "seedling counts";
  return Error{ErrorCode::contradiction, plot_title(plot) + " has " + what + ".",
               plot_path(plot) + "/status", "Remove them first, or undo."};
}

Action with_status(const Plot& plot, PlotStatus status, std::string label) {
  Plot changed = plot;
  changed.status = status;
  if (status != PlotStatus::skipped) changed.skip_reason.clear();
  return {std::move(label), {changed}};
}

std::optional<Error> fault_of(const TractKnowledge& knowledge, const Plot& plot,
                              const Cruise* cruise) {
  FormCheck check(knowledge.form, "plots", plot_path(plot), system_of(cruise));
  check.text("plot", plot.label)
      .text("skip_reason", plot.skip_reason)
      .text("note", plot.note)
      .quantity("slope_pct", plot.slope)
      .quantity("accuracy_m", plot.accuracy);
  if (plot.position) {
    check.number("lat", plot.position->latitude.value)
        .number("lon", plot.position->longitude.value);
  }
  return check.fault();
}

/// Adds a crew and a day: every crew once, the first day.
void note_crew(Cruise& cruise, const PlotVisit& visit) {
  const std::string all = "; " + cruise.crew + ";";
  if (!visit.crew.empty() && all.find("; " + visit.crew + ";") == std::string::npos) {
    cruise.crew += (cruise.crew.empty() ? "" : "; ") + visit.crew;
  }
  if (!visit.day) return;
  const std::string day = to_text(*visit.day);
  if (cruise.date.empty() || day < cruise.date) cruise.date = day;
}

}  // namespace

Result<Action> start_plot(const LiveTract& live, const TractKnowledge& knowledge, PlotId id,
                          const PlotVisit& visit) {
  const Plot* plot = live.find(id);
  if (plot == nullptr) return no_such("plot", to_text(id));
  if (plot->status == PlotStatus::skipped) {
    return Error{ErrorCode::contradiction,
                 plot_title(*plot) + " was skipped: " + plot->skip_reason + ".",
                 plot_path(*plot) + "/status", "Plan it again first."};
  }
  Plot started = *plot;
  if (visit.position) {
    started.position = visit.position;
    started.accuracy = visit.accuracy;
  }
  if (visit.slope) started.slope = visit.slope;
  if (visit.note) {
    PlotTaken taken = taken_at(started);
    started.note = *visit.note;
    // What was taken stays, unless the new note tells it itself.
    if (taken_at(started).task == PlotTask::measure) {
      taken.note = *visit.note;
      started.note = note_of(taken);
    }
  }
  const Cruise* cruise = live.find(plot->cruise);
  if (auto fault = fault_of(knowledge, started, cruise)) return *std::move(fault);
  Action action{"start " + plot_name(*plot), {started}};
  if (cruise != nullptr) {
    Cruise noted = *cruise;
    note_crew(noted, visit);
    FormCheck check(knowledge.form, "plots", "cruise/" + cruise->name, system_of(cruise));
    if (auto fault = check.text("crew", noted.crew).text("date", noted.date).fault()) return *fault;
    action.changes.emplace_back(std::move(noted));
  }
  return action;
}

Result<Action> call_empty(const LiveTract& live, PlotId id) {
  const Plot* plot = live.find(id);
  if (plot == nullptr) return no_such("plot", to_text(id));
  if (auto held = held_by_records(live, *plot, false)) return *std::move(held);
  return with_status(*plot, PlotStatus::empty, plot_name(*plot) + " is empty");
}

Result<Action> plan_again(const LiveTract& live, PlotId id) {
  const Plot* plot = live.find(id);
  if (plot == nullptr) return no_such("plot", to_text(id));
  if (auto held = held_by_records(live, *plot, true)) return *std::move(held);
  return with_status(*plot, PlotStatus::planned, "plan " + plot_name(*plot) + " again");
}

Result<Action> skip_plot(const LiveTract& live, const TractKnowledge& knowledge, PlotId id,
                         std::string_view reason) {
  const Plot* plot = live.find(id);
  if (plot == nullptr) return no_such("plot", to_text(id));
  if (auto held = held_by_records(live, *plot, true)) return *std::move(held);
  if (reason.find_first_not_of(" \t\n") == std::string_view::npos) {
    return Error{ErrorCode::missing_value, "A plot is skipped for a reason.",
                 plot_path(*plot) + "/skip_reason", "Say what kept you out."};
  }
  Action action = with_status(*plot, PlotStatus::skipped, "skip " + plot_name(*plot));
  auto& skipped = std::get<Plot>(action.changes.front());
  skipped.skip_reason = reason;
  if (auto fault = fault_of(knowledge, skipped, live.find(plot->cruise))) return *std::move(fault);
  return action;
}

namespace {

/// One more than the highest number that labels a plot of the stand.
int next_plot_number(const LiveTract& live, StandId stand) {
  constexpr int kMost = 1'000'000;
  int highest = 0;
  for (const Plot* plot : live.plots_of(stand)) {
    const std::string& label = plot->label;
    int number = 0;
    const auto read = std::from_chars(label.data(), label.data() + label.size(), number);
    const bool whole = read.ec == std::errc{} && read.ptr == label.data() + label.size();
    if (whole && number < kMost) highest = std::max(highest, number);
  }
  return highest + 1;
}

}  // namespace

std::string next_plot_label(const LiveTract& live, StandId stand) {
  return std::to_string(next_plot_number(live, stand));
}

Result<Action> add_plot(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                        Plot plot) {
  if (live.find(plot.stand) == nullptr) return no_such("stand", to_text(plot.stand));
  const Cruise* cruise = live.find(plot.cruise);
  if (cruise == nullptr) return no_such("cruise", to_text(plot.cruise));
  if (plot.label.empty()) plot.label = next_plot_label(live, plot.stand);
  plot.status = PlotStatus::planned;
  plot.skip_reason.clear();
  for (const Plot* other : live.plots_of(plot.stand)) {
    if (other->label != plot.label) continue;
    return Error{ErrorCode::duplicate, "The stand has a plot " + plot.label + " already.",
                 plot_path(plot) + "/plot", "Give this one another label."};
  }
  if (auto fault = fault_of(knowledge, plot, cruise)) return *std::move(fault);
  plot.id = ids.next_id<PlotTag>();
  std::string label = "add " + plot_name(plot);
  return Action{std::move(label), {std::move(plot)}};
}

Result<Action> add_plots(const LiveTract& live, const TractKnowledge& knowledge, IdSource& ids,
                         StandId stand_id, CruiseId cruise, int count, std::optional<int> asked) {
  constexpr int kMostAtOnce = 500;  // a day's slip of the finger, not a cruise
  const Stand* stand = live.find(stand_id);
  if (stand == nullptr) return no_such("stand", to_text(stand_id));
  if (count < 1 || count > kMostAtOnce) {
    return Error{ErrorCode::out_of_range, std::to_string(count) + " plots cannot be added at once.",
                 "stand/" + stand->name + "/plots", "Give a number from 1 to 500."};
  }
  Action all{
      "add " + std::to_string(count) + (count == 1 ? " plot to " : " plots to ") + stand->name, {}};
  const int first = next_plot_number(live, stand_id);
  const int every = asked.value_or(measured_every(live, cruise));
  if (auto fault = cannot_take_turns(live, cruise, every)) return *std::move(fault);
  for (int number = first; number < first + count; ++number) {
    Plot plot;
    plot.stand = stand_id;
    plot.cruise = cruise;
    plot.label = std::to_string(number);
    const bool turn = (number - 1) % every == 0;
    plot.note = note_of({.task = turn ? PlotTask::measure : PlotTask::count});
    auto one = add_plot(live, knowledge, ids, std::move(plot));
    if (!one) return one.error();
    all.changes.push_back(std::move(one->changes.front()));
  }
  return all;
}

}  // namespace oaklight
