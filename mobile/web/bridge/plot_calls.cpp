// Calls about plots: which there are, how each stands, and what Tally shows of one.
#include <algorithm>
#include <array>

#include "core/session/plot_figures.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/records_named.hpp"
#include "mobile/desk/species_order.hpp"
#include "mobile/web/bridge/tract_json.hpp"

namespace oaklight::web {
namespace {

// The class field ends at 60 in, or 150 cm, and the keypad goes on.
constexpr std::int32_t kLargestClassTenthInches = 600;
constexpr std::size_t kLastTrees = 3;

Json plot_line(const OpenTract& tract, const Plot& plot) {
  const Stand* stand = tract.live.find(plot.stand);
  const PlotTaken taken = taken_at(plot);
  std::size_t trees = tract.live.tree_records_of(plot.id);
  for (const SpeciesCount& one : taken.counted) trees += static_cast<std::size_t>(one.stems);
  return {{"id", to_text(plot.id)},
          {"label", plot.label},
          {"stand", to_text(plot.stand)},
          {"standName", stand == nullptr ? "" : stand->name},
          {"status", word_of(plot.status)},
          {"task", word_of(taken.task)},
          {"trees", trees},
          {"note", taken.note},
          {"skipReason", plot.skip_reason}};
}

Result<Json> plots(WebDesk& desk, const Arguments& arguments) {
  const OpenTract& tract = *desk.tract();
  std::optional<StandId> only;
  if (arguments.has("stand")) {
    const auto stand = arguments.id<StandId>("stand");
    if (!stand) return stand.error();
    only = *stand;
  }
  Json list = Json::array();
  for (const Plot& plot : tract.live.data().plots) {
    if (!only || plot.stand == *only) list.push_back(plot_line(tract, plot));
  }
  return Json{{"plots", list}};
}

/// Changes one plot, and answers with it.
template <class Make>
Result<Json> change_plot(WebDesk& desk, const Arguments& arguments, const Make& make) {
  const auto plot = arguments.id<PlotId>("plot");
  if (!plot) return plot.error();
  const auto written = desk.submit([&](OpenTract& tract) { return make(tract, *plot); });
  if (!written) return written.error();
  return plot_json(desk, *plot, arguments);
}

Result<Json> start(WebDesk& desk, const Arguments& arguments) {
  PlotVisit visit;
  if (const auto slope = arguments.number("slope")) visit.slope = Percent{*slope};
  visit.note = arguments.text("note");
  visit.crew = arguments.text("crew").value_or("");
  if (const auto day = arguments.text("day")) {
    const auto read = day_from_text(*day);
    if (!read) return read.error();
    visit.day = *read;
  }
  return change_plot(desk, arguments, [&](OpenTract& tract, PlotId plot) {
    return start_plot(tract.live, tract.knowledge, plot, visit);
  });
}

Result<Json> empty(WebDesk& desk, const Arguments& arguments) {
  return change_plot(desk, arguments,
                     [](OpenTract& tract, PlotId plot) { return call_empty(tract.live, plot); });
}

Result<Json> again(WebDesk& desk, const Arguments& arguments) {
  return change_plot(desk, arguments,
                     [](OpenTract& tract, PlotId plot) { return plan_again(tract.live, plot); });
}

Result<Json> skip(WebDesk& desk, const Arguments& arguments) {
  return change_plot(desk, arguments, [&](OpenTract& tract, PlotId plot) {
    return skip_plot(tract.live, tract.knowledge, plot, arguments.text("reason").value_or(""));
  });
}

Result<Json> plot(WebDesk& desk, const Arguments& arguments) {
  const auto id = arguments.id<PlotId>("plot");
  if (!id) return id.error();
  return plot_json(desk, *id, arguments);
}

bool counting(const OpenTract& tract, const Plot& plot) {
  const Cruise* cruise = tract.live.find(plot.cruise);
  return cruise != nullptr && std::holds_alternative<PointDesign>(cruise->design) &&
         taken_at(plot).task == PlotTask::count;
}

Json plot_name_json(const OpenTract& tract, const Plot& plot) {
  const Stand* stand = tract.live.find(plot.stand);
  Json name = phrase("TallyViewModel", "%1, plot %2",
                     {stand == nullptr ? std::string() : stand->name, plot.label});
  if (counting(tract, plot)) return phrase("TallyViewModel", "%1: count point", {name});
  return measured_every(tract.live, plot.cruise) > 1
             ? phrase("TallyViewModel", "%1: measure point", {name})
             : name;
}

Json closed_json(const Plot& plot) {
  if (plot.status != PlotStatus::skipped) return {};
  return phrase("Web", "This plot was skipped. Plan it again under Next plot to tally it.");
}

std::vector<TallyClass> classes_of(const OpenTract& tract, const Plot& plot, UnitSystem system,
                                   std::size_t room) {
  const Cruise* cruise = tract.live.find(plot.cruise);
  const bool us = system == UnitSystem::us;
  const auto largest =
      Dbh::from_tenths(us ? kLargestClassTenthInches : kLargestClassTenthInches * 5 / 2, system);
  auto classes = tally_classes(us ? TallyClasses::two_inches : TallyClasses::five_centimetres,
                               cruise == nullptr ? std::nullopt : cruise->min_dbh, *largest);
  if (classes.size() > room)
    classes.erase(classes.begin() + static_cast<long>(room), classes.end());
  return classes;
}

std::size_t room_of(const Arguments& arguments, const char* name, std::size_t usual) {
  const auto given = arguments.inside("room").whole(name);
  return given && *given > 0 ? static_cast<std::size_t>(*given) : usual;
}

Json figures_json(const OpenTract& tract, const Plot& plot, UnitSystem system) {
  const auto figures = plot_figures(tract.live, plot.id);
  if (!figures) return {{"stems", "0"}, {"ba", "-"}};
  return {{"stems", std::to_string(figures->stems)},
          {"ba", figures->ba ? raised(ba_text(*figures->ba, system)) : "-"}};
}

constexpr std::array kCalls = {NamedCall{"plots", plots},     NamedCall{"startPlot", start},
                               NamedCall{"callEmpty", empty}, NamedCall{"planAgain", again},
                               NamedCall{"skipPlot", skip},   NamedCall{"plot", plot}};

}  // namespace

std::span<const NamedCall> plot_calls() { return kCalls; }

Json species_cell(const Species& species) {
  return {{"code", species.code.fia},
          {"name", phrase("Species", species.common_name)},
          {"scientific", species.scientific_name}};
}

Json moving_json(WebDesk& desk, const Plot& plot, UnitSystem system) {
  OpenTract& tract = *desk.tract();
  const auto trees = tract.live.trees_of(plot.id);
  Json last = Json::array();
  for (std::size_t back = 1; back <= std::min(kLastTrees, trees.size()); ++back) {
    last.push_back(tree_line(tract, *trees[trees.size() - back]));
  }
  std::size_t count = trees.size();
  for (const SpeciesCount& one : taken_at(plot).counted)
    count += static_cast<std::size_t>(one.stems);
  return {{"last", last},
          {"count", count},
          {"figures", figures_json(tract, plot, system)},
          {"stand", stand_now_json(tract, plot.stand, system)},
          {"undo", desk.undo_json()}};
}

Result<Json> plot_json(WebDesk& desk, PlotId id, const Arguments& arguments) {
  OpenTract& tract = *desk.tract();
  const Plot* plot = tract.live.find(id);
  if (plot == nullptr) return no_such("plot", to_text(id));
  const UnitSystem system = arguments.system();
  Json answer = moving_json(desk, *plot, system);
  answer["plot"] = to_text(id);
  answer["standId"] = to_text(plot->stand);
  answer["name"] = plot_name_json(tract, *plot);
  answer["closed"] = closed_json(*plot);
  answer["counting"] = counting(tract, *plot);
  Json& species = answer["species"] = Json::array();
  for (const Species* one :
       tally_order(tract.live, tract.knowledge, plot->stand, arguments.text("set").value_or(""),
                   room_of(arguments, "species", 14))) {
    species.push_back(species_cell(*one));
  }
  Json& classes = answer["classes"] = Json::array();
  const auto all = classes_of(tract, *plot, system, room_of(arguments, "classes", 20));
  for (const TallyClass& one : all) {
    classes.push_back({{"tenths", one.middle.tenths()},
                       {"label", one.label},
                       {"range", one.range},
                       {"reading", dbh_text(one.middle)}});
  }
  answer["beyond"] =
      all.empty() ? Json()
                  : phrase("TallyViewModel", system == UnitSystem::us ? "over %1 in" : "over %1 cm",
                           {all.back().label});
  return answer;
}

}  // namespace oaklight::web
