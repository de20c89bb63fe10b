#include <iostream>
#include <nlohmann/json.hpp>

#include "core/command/program.hpp"

namespace oaklight::command {
namespace {

struct Call {
  std::string tract;
  bool json = false;
};

void print_json(const CheckReport& report) {
  using Json = nlohmann::ordered_json;
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
  std::cout << json.dump(2) << '\n';
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

int run(const Call& call) {
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
      app.add_subcommand("check", "Read the whole tract file against its rules and checksums");
  add_tract(*command, call->tract);
  add_json(*command, call->json);
  command->footer("Example: oaklight check hollow.gpkg");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
