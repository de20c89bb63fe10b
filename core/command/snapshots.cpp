#include "core/store/snapshots.hpp"

#include <iostream>

#include "core/command/json_values.hpp"
#include "core/command/keeping.hpp"
#include "core/command/program.hpp"

namespace oaklight::command {
namespace {

struct Call {
  std::string tract;
  std::string folder;
  bool take = false;
  std::int64_t number = 0;
  std::string target;
  bool json = false;

  [[nodiscard]] std::filesystem::path place() const {
    return folder.empty() ? snapshot_folder(tract) : std::filesystem::path(folder);
  }
};

Json json_of(const Snapshot& snapshot) {
  return {{"number", snapshot.number}, {"day", snapshot.day}, {"path", snapshot.path.string()}};
}

int list(const Call& call) {
  const auto all = snapshots_of(call.tract, call.place());
  Json json{{"folder", call.place().string()}, {"snapshots", Json::array()}};
  for (const Snapshot& one : all) {
    json["snapshots"].push_back(json_of(one));
    if (!call.json) std::cout << one.number << "  " << one.day << "  " << one.path.string() << '\n';
  }
  if (call.json) {
    std::cout << json_text(json) << '\n';
  } else if (all.empty()) {
    std::cout << "There is no copy of this tract in " << call.place().string() << ".\n";
  }
  return all.empty() ? kNothingToDo : kDone;
}

int take(const Call& call) {
  const auto made = take_snapshot(call.tract, call.place(), store_context());
  if (!made) return fail(made.error(), call.json);
  if (call.json) {
    std::cout << json_text(json_of(*made)) << '\n';
  } else {
    std::cout << "Kept as " << made->path.string() << '\n';
  }
  return kDone;
}

int take_one_back(const Call& call) {
  for (const Snapshot& one : snapshots_of(call.tract, call.place())) {
    if (one.number != call.number) continue;
    const Status done = take_back(one.path, call.target, store_context());
    if (!done) return fail(done.error(), call.json);
    if (call.json) {
      std::cout << json_text(Json{{"made", call.target}, {"from", json_of(one)}}) << '\n';
    } else {
      std::cout << call.target << " is the tract as it was in copy " << one.number << ", "
                << one.day << ".\n";
    }
    return kDone;
  }
  return fail(Error{ErrorCode::no_data,
                    "There is no copy " + std::to_string(call.number) + " of this tract.",
                    call.place().string(), "See which there are without --back."},
              call.json);
}

int run(const Call& call) {
  if (call.take) return take(call);
  return call.number > 0 ? take_one_back(call) : list(call);
}

}  // namespace

void add_snapshots(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command = app.add_subcommand(
      "snapshots", "List the copies that were kept of a tract file, keep one, take one back");
  // The tract file itself may be gone.
  add_tract(*command, call->tract);
  command
      ->add_option("--folder", call->folder,
                   "Where they lie (default: the folder \"snapshots\" beside the tract file)")
      ->option_text("FOLDER");
  auto* take = command->add_flag("--take", call->take, "Keep a copy now");
  auto* back = command->add_option("--back", call->number, "Take back the copy of this number")
                   ->check(CLI::PositiveNumber)
                   ->option_text("NUMBER");
  auto* to = command->add_option("--to", call->target, "The new tract file (.gpkg) for --back")
                 ->option_text("NEW");
  back->needs(to);
  to->needs(back);
  take->excludes(back);
  add_json(*command, call->json);
  command->footer(
      "The tablet keeps a copy at the end of each plot and each day: the last 5, and one a day "
      "for\n"
      "14 days. Nothing is ever taken back over a file that is there.\n"
      "Example: oaklight snapshots hollow.gpkg\n"
      "         oaklight snapshots hollow.gpkg --back 12 --to hollow_before_noon.gpkg");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
