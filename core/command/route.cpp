#include <filesystem>
#include <iostream>
#include <map>

#include "core/base/number_text.hpp"
#include "core/command/json_values.hpp"
#include "core/command/program.hpp"
#include "core/session/files.hpp"
#include "core/session/walk_sheet.hpp"
#ifdef OAKLIGHT_PAPER
#include "core/paper/plan_sheet_pdf.hpp"
#endif

namespace oaklight::command {
namespace {

struct Call {
  std::string tract;
  RouteRequest route;
  std::optional<double> start_lat, start_lon, paces_100_ft, paces_100_m;
  WalkUnit unit = WalkUnit::feet;
  std::string day;
  std::string folder;
  std::string paper = "letter";
  bool json = false;
};

Result<SheetRequest> sheet_request(const Call& call) {
  SheetRequest request;
  request.unit = call.unit;
  const auto day = day_or_today(call.day);
  if (!day) return day.error();
  request.day = *day;
  if (call.paces_100_ft) request.pace = PaceCount{*call.paces_100_ft, UnitSystem::us};
  if (call.paces_100_m) request.pace = PaceCount{*call.paces_100_m, UnitSystem::metric};
  return request;
}

Result<std::vector<std::string>> write_files(const Call& call, const TractData& data,
                                             const WalkRoute& route, const PlanSheet& sheet) {
  std::vector<std::string> files;
  if (call.folder.empty()) return files;
  if (const Status made = make_folder(call.folder); !made) return made.error();
  const auto write = [&](const char* name, const std::string& bytes) {
    const auto path = std::filesystem::path(call.folder) / name;
    files.push_back(path.string());
    return write_whole_file(path, bytes);
  };
  const Status gpx = write("plots.gpx", gpx_text(sheet.tract, waypoints_of(route)));
  if (!gpx) return gpx.error();
#ifdef OAKLIGHT_PAPER
  progress("drawing the plan sheet");
  const auto pdf =
      plan_sheet_pdf(data, route_line(route), sheet, *from_word<PaperSize>(call.paper));
  if (!pdf) return pdf.error();
  const Status page = write("plan.pdf", *pdf);
  if (!page) return page.error();
#else
  (void)data;
#endif
  return files;
}

Json json_of(const WalkRoute& route, const PlanSheet& sheet) {
  Json stops = Json::array();
  for (std::size_t i = 0; i < sheet.stops.size(); ++i) {
    Json legs = Json::array();
    for (const PlanLeg& leg : sheet.stops[i].legs) {
      legs.push_back({{"true", leg.true_bearing},
                      {"magnetic", leg.magnetic_bearing},
                      {"distance", leg.distance},
                      {"paces", leg.paces}});
    }
    Json stop{{"to", sheet.stops[i].name}, {"legs", legs}};
    if (i < route.stops.size()) stop["walk_ft"] = route.stops[i].walk.value;
    stops.push_back(std::move(stop));
  }
  return {{"plots", route.stops.size()},
          {"length_ft", route.length.value},
          {"bound_ft", route.bound.value},
          {"shortest", route.exact},
          {"gap", route.gap()},
          {"head", sheet.head},
          {"stops", stops},
          {"left_out", route.left_out},
          {"notes", route.notes}};
}

void print(const WalkRoute& route, const PlanSheet& sheet, const std::vector<std::string>& files,
           bool as_json) {
  if (as_json) {
    Json json = json_of(route, sheet);
    json["files"] = files;
    std::cout << json_text(json) << '\n';
    return;
  }
  for (const std::string& caution : sheet.cautions) std::cout << "Caution: " << caution << '\n';
  for (const std::string& words : sheet.head) std::cout << words << '\n';
  for (const PlanStop& stop : sheet.stops) {
    std::cout << "  " << stop.name << ": ";
    for (std::size_t i = 0; i < stop.legs.size(); ++i) {
      const PlanLeg& leg = stop.legs[i];
      std::cout << (i == 0 ? "" : ", then ") << leg.true_bearing << " true";
      if (!leg.magnetic_bearing.empty()) std::cout << " (" << leg.magnetic_bearing << " magnetic)";
      std::cout << ' ' << leg.distance;
      if (!leg.paces.empty()) std::cout << ", " << leg.paces << " paces";
    }
    std::cout << '\n';
  }
  for (const std::string& note : sheet.notes) std::cout << "Note: " << note << '\n';
  for (const std::string& file : files) std::cout << "Wrote " << file << '\n';
}

int run(const Call& call) {
  RouteRequest request = call.route;
  if (call.start_lat) {  // --start-lat and --start-lon need each other
    request.start = Position{Degrees{*call.start_lat}, Degrees{*call.start_lon}};
  }
  const auto session = open_to_read(call.tract);
  if (!session) return fail(session.error(), call.json);
  auto data = session->data();
  if (!data) return fail(data.error(), call.json);
  const LiveTract live(*std::move(data));
  const auto route = plan_walk(live, request);
  if (!route) return fail(route.error(), call.json);
  const auto asked = sheet_request(call);
  if (!asked) return fail(asked.error(), call.json);
  const auto sheet = sheet_of(live.data().tract, *route, *asked);
  if (!sheet) return fail(sheet.error(), call.json);
  const auto files = write_files(call, live.data(), *route, *sheet);
  if (!files) return fail(files.error(), call.json);
  print(*route, *sheet, *files, call.json);
  return kDone;
}

}  // namespace

void add_route(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command = app.add_subcommand(
      "route", "The shortest walk by the planned plots, with bearings and distances");
  add_tract(*command, call->tract);
  command->add_option("--stand", call->route.stand, "Only this stand's plots");
  command->add_option("--cruise", call->route.cruise, "Only this cruise's plots");
  auto* lat = command->add_option("--start-lat", call->start_lat,
                                  "Access point, degrees north (default: the tract's landing)");
  auto* lon = command->add_option("--start-lon", call->start_lon, "Access point, degrees east");
  lat->check(between(-90.0, 90.0))->needs(lon);
  lon->check(between(-180.0, 180.0))->needs(lat);
  std::map<std::string, WalkUnit> words;
  for (const auto& entry : kWords<WalkUnit>) words.emplace(entry.word, entry.value);
  command->add_option("--unit", call->unit, "Unit of distances (default: feet)")
      ->transform(CLI::CheckedTransformer(words))
      ->option_text("feet|chains|metres");
  auto* feet = command->add_option("--paces-100-ft", call->paces_100_ft, "Your paces in 100 ft");
  command->add_option("--paces-100-m", call->paces_100_m, "Your paces in 100 m")->excludes(feet);
  command->add_flag("--cross", call->route.cross, "Go straight, over streams and neighbour lines");
  command->add_option("--day", call->day, "Day of the walk, for the compass (default: today)");
  command->add_option("--out", call->folder, "Folder for plots.gpx and the plan sheet, plan.pdf");
  command->add_option("--paper", call->paper, "letter or a4 (default: letter)")
      ->check(CLI::IsMember({"letter", "a4"}));
  add_json(*command, call->json);
  command->footer(
      "Example: oaklight route hollow.gpkg --unit chains --paces-100-ft 40 --out plan\n"
      "Streams and neighbour lines of the map are walked round; a stream is crossed where a road\n"
      "or trail crosses it. Every bearing says true or magnetic.");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
