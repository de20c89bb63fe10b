#include <iostream>

#include "core/command/json_values.hpp"
#include "core/command/program.hpp"
#include "core/session/packet_check.hpp"

namespace oaklight::command {
namespace {

struct Call {
  std::string tract;
  bool json = false;
};

void print_json(const CheckReport& report) {
  Json json{{"sound", report.problems.empty()},
            {"done", report.done},
            {"problems", Json::array()},
            {"records", Json::array()}};
  for (const Error& p : report.problems) {
    json["problems"].push_back({{"code", name_of(p.code)}, {"what", p.what}, {"where", p.where}});
  }
  for (const TableCount& c : report.records) {
    json["records"].push_back({{"table", c.table}, {"live", c.live}, {"removed", c.removed}});
  }
  std::cout << json_text(json) << '\n';
}

void print(const CheckReport& report) {
  for (const std::string& line : report.done) std::cout << line << '\n';
  for (const TableCount& c : report.records) {
    std::cout << "  " << c.table << ": " << c.live << " records";
    if (c.removed > 0) std::cout << ", " << c.removed << " removed";
    std::cout << '\n';
  }
  for (const Error& problem : report.problems) std::cout << "PROBLEM " << to_text(problem) << '\n';
  std::cout << (report.problems.empty() ? "The file is sound.\n" : "The file has problems.\n");
}

int run_packet(const Call& call) {
  const auto check = check_packet(call.tract);
  if (!check) return fail(check.error(), call.json);
  if (call.json) {
    Json json{{"sound", check->problems.empty()},
              {"files", check->sound},
              {"problems", Json::array()},
              {"unlisted", check->unlisted},
              {"list_hashes", check->list_hashes}};
    for (const Error& p : check->problems)
      json["problems"].push_back({{"code", name_of(p.code)}, {"what", p.what}, {"where", p.where}});
    std::cout << json_text(json) << '\n';
  } else {
    for (const std::string& name : check->sound) std::cout << "as handed over: " << name << '\n';
    for (const std::string& name : check->unlisted)
      std::cout << "not part of the packet: " << name << '\n';
    for (const Error& problem : check->problems)
      std::cout << "PROBLEM " << to_text(problem) << '\n';
    for (const std::string& hash : check->list_hashes)
      std::cout << "The list's hash, as each page shows it: " << hash << '\n';
    std::cout << (check->problems.empty() ? "The packet is as it was handed over.\n"
                                          : "The packet is not as it was handed over.\n");
  }
  return check->problems.empty() ? kDone : kRefused;
}

int run(const Call& call) {
  std::error_code none;
  if (std::filesystem::is_directory(call.tract, none)) return run_packet(call);
  const auto store = open_store(call.tract);
  if (!store) return fail(store.error(), call.json);
  progress("reading every record");
  const auto report = store->check();
  if (!report) return fail(report.error(), call.json);
  call.json ? print_json(*report) : print(*report);
  return report->problems.empty() ? kDone : kRefused;
}

}  // namespace

void add_check(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command =
      app.add_subcommand("check", "Read a tract file or a packet against its rules and checksums");
  command->add_option("tract", call->tract, "The tract file (.gpkg), or the folder of a packet")
      ->required();
  add_json(*command, call->json);
  command->footer(
      "Example: oaklight check hollow.gpkg\n"
      "         oaklight check packet/    (whether a file of it was changed afterwards)");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
