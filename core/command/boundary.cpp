#include <filesystem>
#include <iostream>

#include "core/base/number_text.hpp"
#include "core/command/json_values.hpp"
#include "core/command/outline_files.hpp"
#include "core/command/program.hpp"
#include "core/session/boundary_work.hpp"
#include "core/session/files.hpp"

namespace oaklight::command {
namespace {

struct Call {
  std::string tract;
  std::string file;
  std::string layer;
  BoundaryOptions options;
  bool dry_run = false;
  bool json = false;
};

bool is_map_file(const std::string& path) {
  const std::string name = lower_case(path);
  return name.ends_with(".gpkg") || name.ends_with(".shp");
}

Result<DrawnOutlines> read_drawn(const Call& call) {
  if (is_map_file(call.file)) return read_map_file(call.file, call.layer);
  auto text = read_whole_file(call.file);
  if (!text) return text.error();
  return read_outlines({std::filesystem::path(call.file).filename().string(), *std::move(text)});
}

void print(const BoundaryPlan& plan, const Call& call) {
  if (call.json) {
    Json rows = Json::array();
    for (const BoundaryRow& row : plan.rows) {
      Json stated = nullptr;
      if (row.stated) stated = row.stated->value;
      rows.push_back({{"stand", row.stand},
                      {"added", row.added},
                      {"drawn_acres", row.drawn.value},
                      {"stated_acres", stated},
                      {"doubtful", row.doubtful},
                      {"notes", row.notes}});
    }
    std::cout << json_text({{"written", !call.dry_run}, {"outlines", rows}}) << '\n';
    return;
  }
  for (const BoundaryRow& row : plan.rows) {
    std::cout << row.stand << ": " << number_text(row.drawn.value, 1) << " acres drawn";
    if (row.stated) std::cout << ", " << number_text(row.stated->value, 1) << " acres stated";
    if (row.added) std::cout << ", a new stand";
    std::cout << '\n';
    for (const std::string& note : row.notes) {
      std::cout << (row.doubtful ? "  CHECK: " : "  ") << note << '\n';
    }
  }
  if (call.dry_run) std::cout << "Nothing was written.\n";
}

int run(const Call& call) {
  auto session = call.dry_run ? open_to_read(call.tract) : open_to_write(call.tract);
  if (!session) return fail(session.error(), call.json);
  auto data = session->data();
  if (!data) return fail(data.error(), call.json);
  const auto drawn = read_drawn(call);
  if (!drawn) return fail(drawn.error(), call.json);
  const LiveTract live(*std::move(data));
  const BoundaryPlan plan =
      plan_boundaries(live, session->knowledge(), session->store().ids(), *drawn, call.options);
  if (!plan.faults.empty()) {
    const int code = fail(plan.faults, call.json);
    if (!call.json) std::cerr << "Nothing was written.\n";
    return code;
  }
  if (!call.dry_run) {
    if (const Status written = session->store().apply(plan.action); !written) {
      return fail(written.error(), call.json);
    }
  }
  print(plan, call);
  return kDone;
}

}  // namespace

void add_boundary(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command = app.add_subcommand(
      "boundary", "Give stands their outlines from a map file, and compare the acres");
  add_tract(*command, call->tract);
  command
      ->add_option("file", call->file,
                   "Outlines: .geojson, .kml, .gpx (a walk round), .gpkg or .shp")
      ->required()
      ->check(CLI::ExistingFile);
  command->add_option("--stand", call->options.stand,
                      "Whose outline it is, when the file draws one");
  command->add_option("--layer", call->layer, "Layer of a .gpkg");
  command->add_flag("--take-acres", call->options.take_acres,
                    "Write the drawn acres over those stated");
  command->add_flag("--dry-run", call->dry_run, "Say what would be written, and write nothing");
  add_json(*command, call->json);
  command->footer(
      "Example: oaklight boundary hollow.gpkg stands.kml\n"
      "A stand is found by its name (stand or name in the file); one that the tract does not have\n"
      "is added. Acres are those of the ellipsoid, holes left out. Faults are listed with their\n"
      "place; when there is one, nothing is written (exit code 1).");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
