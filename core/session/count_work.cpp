#include <algorithm>
#include <vector>

#include "core/session/plot_work.hpp"
#include "core/session/records_named.hpp"
#include "core/session/walk.hpp"

namespace oaklight {
namespace {

constexpr int kMostStems = 10'000;  // as the estimate refuses more

std::string path_of(const Plot& plot) { return "plot/" + plot.label; }

/// The plots of a cruise, by stand and label.
std::vector<const Plot*> plots_in_turn(const LiveTract& live, CruiseId cruise) {
  std::vector<const Plot*> plots;
  for (const Plot& plot : live.data().plots) {
    if (plot.cruise == cruise) plots.push_back(&plot);
  }
  std::ranges::sort(plots, [](const Plot* a, const Plot* b) {
    if (a->stand != b->stand) return a->stand < b->stand;
    return natural_less(a->label, b->label);
  });
  return plots;
}

bool is_point(const LiveTract& live, const Plot& plot) {
  const Cruise* cruise = live.find(plot.cruise);
  return cruise != nullptr && std::holds_alternative<PointDesign>(cruise->design);
}

std::optional<Error> cannot_count(const LiveTract& live, const Plot& plot) {
  if (plot.status == PlotStatus::skipped) {
    return Error{ErrorCode::contradiction, "Plot " + plot.label + " was skipped.", path_of(plot),
                 "Plan it again first."};
  }
  if (taken_at(plot).task == PlotTask::count && is_point(live, plot)) return std::nullopt;
  return Error{ErrorCode::contradiction, "Plot " + plot.label + " is no count point.",
               path_of(plot), "Give each tree its size."};
}

}  // namespace

Result<Action> count_tree(const LiveTract& live, const TractKnowledge& knowledge, PlotId id,
                          SpeciesCode species, int step) {
  const Plot* plot = live.find(id);
  if (plot == nullptr) return no_such("plot", to_text(id));
  if (auto fault = cannot_count(live, *plot)) return *std::move(fault);
  if (knowledge.species().find(species) == nullptr) {
    return Error{ErrorCode::unknown_species,
                 "Species " + std::to_string(species.fia) + " is not in the species table.",
                 path_of(*plot) + "/species", "Choose one of the table."};
  }
  PlotTaken taken = taken_at(*plot);
  auto one = std::ranges::find(taken.counted, species, &SpeciesCount::species);
  if (one == taken.counted.end()) one = taken.counted.insert(one, {species, 0});
  one->stems += step;
  if (one->stems < 0 || one->stems > kMostStems) {
    return Error{ErrorCode::out_of_range, "That is no count of trees.", path_of(*plot) + "/count",
                 "Count 0 to 10,000."};
  }
  std::erase_if(taken.counted, [](const SpeciesCount& c) { return c.stems == 0; });
  Plot counted = *plot;
  counted.note = note_of(taken);
  // Without a tree nobody said that none is there: it is to do again.
  const bool any = !taken.counted.empty() || live.tree_records_of(id) > 0;
  counted.status = any ? PlotStatus::measured : PlotStatus::planned;
  return Action{(step < 0 ? "one less " : "count ") + species_name(knowledge, species), {counted}};
}

Result<Action> set_task(const LiveTract& live, PlotId id, PlotTask task) {
  const Plot* plot = live.find(id);
  if (plot == nullptr) return no_such("plot", to_text(id));
  PlotTaken taken = taken_at(*plot);
  const bool count = task == PlotTask::count;
  if (!count && !taken.counted.empty()) {
    return Error{ErrorCode::contradiction,
                 "Trees were counted on plot " + plot->label + " without their sizes.",
                 path_of(*plot), "Take the counts back first, or undo."};
  }
  if (count && !is_point(live, *plot)) {
    return Error{ErrorCode::contradiction, "Plot " + plot->label + " is a fixed plot.",
                 path_of(*plot), "Only points can be counted: each tree is the factor there."};
  }
  if (count && !live.regens_of(id).empty()) {
    return Error{ErrorCode::contradiction, "Seedlings were counted on plot " + plot->label + ".",
                 path_of(*plot), "Seedlings are counted at measure points: leave it one."};
  }
  taken.task = task;
  Plot changed = *plot;
  changed.note = note_of(taken);
  return Action{"plot " + plot->label + (count ? " is a count point" : " is a measure point"),
                {changed}};
}

int measured_every(const LiveTract& live, CruiseId cruise) {
  int longest = 0;
  int run = 0;
  const Plot* last = nullptr;
  for (const Plot* plot : plots_in_turn(live, cruise)) {
    if (last == nullptr || last->stand != plot->stand) run = 0;
    run = taken_at(*plot).task == PlotTask::count ? run + 1 : 0;
    longest = std::max(longest, run);
    last = plot;
  }
  return longest + 1;
}

std::optional<Error> cannot_take_turns(const LiveTract& live, CruiseId id, int every) {
  if (every < 1 || every > kMostEvery) {
    return Error{ErrorCode::out_of_range, "Measuring " + every_text(every) + " is not a design.",
                 "measure_every", "Give a number from 1 to " + std::to_string(kMostEvery) + "."};
  }
  const Cruise* cruise = live.find(id);
  if (cruise == nullptr || every == 1) return std::nullopt;
  if (std::holds_alternative<PointDesign>(cruise->design)) return std::nullopt;
  return Error{ErrorCode::contradiction, "Fixed plots cannot be counted without sizes.",
               "measure_every", "Count at points, or measure every plot."};
}

std::string every_text(int every) {
  if (every == 1) return "every point";
  const int tens = every % 100 / 10;
  const int ones = tens == 1 ? 0 : every % 10;
  const char* ending = ones == 1 ? "st" : ones == 2 ? "nd" : ones == 3 ? "rd" : "th";
  return "every " + std::to_string(every) + ending + " point";
}

Result<Action> measure_in_turn(const LiveTract& live, CruiseId id, int every) {
  if (live.find(id) == nullptr) return no_such("cruise", to_text(id));
  if (auto fault = cannot_take_turns(live, id, every)) return *std::move(fault);
  Action action{"measure " + every_text(every), {}};
  int turn = 0;
  const Plot* last = nullptr;
  for (const Plot* plot : plots_in_turn(live, id)) {
    if (last == nullptr || last->stand != plot->stand) turn = 0;
    last = plot;
    const PlotTask task = turn++ % every == 0 ? PlotTask::measure : PlotTask::count;
    PlotTaken taken = taken_at(*plot);
    if (plot->status != PlotStatus::planned || taken.task == task) continue;
    taken.task = task;
    Plot changed = *plot;
    changed.note = note_of(taken);
    action.changes.emplace_back(std::move(changed));
  }
  if (!action.changes.empty()) return action;
  return Error{ErrorCode::contradiction, "No point that is still to do would change.",
               "measure_every", "Make a point that was visited a count point at that point."};
}

}  // namespace oaklight
