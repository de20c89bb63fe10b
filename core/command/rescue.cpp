#include "core/store/rescue.hpp"

#include <iostream>

#include "core/command/json_values.hpp"
#include "core/command/keeping.hpp"
#include "core/command/program.hpp"

namespace oaklight::command {
namespace {

struct Call {
  std::string damaged;
  std::string target;
  bool json = false;
};

void print_json(const RescueReport& report, const std::string& target) {
  Json json{{"made", target},
            {"notes", report.notes},
            {"records", Json::array()},
            {"lost", Json::array()}};
  for (const RescuedTable& t : report.tables) {
    json["records"].push_back({{"table", t.table},
                               {"kept", t.kept},
                               {"from_history", t.from_history},
                               {"from_strays", t.from_strays}});
  }
  for (const Error& lost : report.lost) json["lost"].push_back(error_json(lost));
  std::cout << json.dump(2, ' ', false, Json::error_handler_t::replace) << '\n';
}

void print(const RescueReport& report, const std::string& target) {
  for (const std::string& note : report.notes) std::cout << note << '\n';
  for (const RescuedTable& t : report.tables) {
    std::cout << "  " << t.table << ": " << t.kept << " kept";
    if (t.from_history > 0) std::cout << ", " << t.from_history << " of them from the history";
    if (t.from_strays > 0) std::cout << ", " << t.from_strays << " of them from stray pages";
    std::cout << '\n';
  }
  for (const Error& lost : report.lost) std::cout << "LOST " << to_text(lost) << '\n';
  std::cout << target << " is made"
            << (report.lost.empty() ? "; nothing was lost.\n" : "; what is lost stands above.\n")
            << "Keep the damaged file until you have compared the two.\n";
}

int run(const Call& call) {
  progress("reading every page");
  const auto report = rescue_tract(call.damaged, call.target, store_context());
  if (!report) return fail(report.error(), call.json);
  call.json ? print_json(*report, call.target) : print(*report, call.target);
  return report->lost.empty() ? kDone : kRefused;
}

}  // namespace

void add_rescue(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command = app.add_subcommand(
      "rescue", "Copy every record that can still be read out of a damaged tract file");
  command->add_option("damaged", call->damaged, "The damaged tract file; it is only read")
      ->required();
  command->add_option("new", call->target, "The new tract file (.gpkg)")->required();
  add_json(*command, call->json);
  command->footer(
      "The new file is made in any case; exit code 1 says that something was lost, and each loss\n"
      "is named. A log beside the damaged file (-wal) belongs to it: keep them together.\n"
      "Example: oaklight rescue hollow.gpkg hollow_rescued.gpkg");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
