#include <algorithm>
#include <cctype>
#include <filesystem>
#include <iostream>

#include "core/command/json_values.hpp"
#include "core/command/program.hpp"
#include "core/session/files.hpp"

namespace oaklight::command {
namespace {

struct Call {
  std::string tract;
  std::vector<std::string> sources;
  bool json = false;
};

/// A file of a folder that would be passed over although it looks like one of a cruise:
/// "Map.geojson", "trees (1).csv". Other data that people keep beside it is left alone.
std::optional<Error> overlooked_file(const std::filesystem::path& folder) {
  std::error_code no_such;
  for (const auto& entry : std::filesystem::directory_iterator(folder, no_such)) {
    const std::string name = entry.path().filename().string();
    std::string letters;
    for (const char c : name) {
      if (std::isalpha(static_cast<unsigned char>(c)) != 0) {
        letters += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
      }
    }
    for (const KnownFile& known : kKnownFiles) {
      std::string wanted;
      for (const char c : std::string_view(known.name)) {
        if (std::isalpha(static_cast<unsigned char>(c)) != 0) wanted += c;
      }
      if (name != known.name && letters == wanted) {
        return Error{ErrorCode::not_a_choice, "This file would be passed over.",
                     entry.path().string(),
                     "Call it " + std::string(known.name) + ", or take it out of the folder."};
      }
    }
  }
  return std::nullopt;
}

/// Files named, and those of known names in folders named.
std::vector<std::filesystem::path> paths_of(const Call& call) {
  std::vector<std::filesystem::path> paths;
  for (const std::string& source : call.sources) {
    std::error_code no_such;
    if (!std::filesystem::is_directory(source, no_such)) {
      paths.emplace_back(source);
      continue;
    }
    for (const KnownFile& known : kKnownFiles) {
      const auto path = std::filesystem::path(source) / known.name;
      if (std::filesystem::exists(path, no_such)) paths.push_back(path);
    }
  }
  return paths;
}

Result<CruiseFiles> read_files(const Call& call) {
  CruiseFiles files;
  for (const std::string& source : call.sources) {
    if (auto overlooked = overlooked_file(source)) return *overlooked;
  }
  const auto paths = paths_of(call);
  if (paths.empty()) {
    return Error{ErrorCode::cannot_open, "This folder holds none of the files of a cruise.",
                 call.sources.front(),
                 "Name a folder with plots.csv, trees.csv and the like, or the files themselves."};
  }
  for (const auto& path : paths) {
    const auto* known = std::find_if(kKnownFiles.begin(), kKnownFiles.end(),
                                     [&](const KnownFile& k) { return path.filename() == k.name; });
    if (known == kKnownFiles.end()) {
      return Error{ErrorCode::not_a_choice, "What this file holds cannot be told from its name.",
                   path.string(),
                   "Call it tract.csv, stands.csv, plots.csv, trees.csv, regeneration.csv, "
                   "crop_trees.csv, acorns.csv, acorn_years.csv, map.geojson, stumps.csv or "
                   "local_volume.csv."};
    }
    if (files.*(known->slot)) {
      return Error{ErrorCode::duplicate, "This kind of file is named twice.", path.string(),
                   "Import one after the other."};
    }
    progress("reading " + path.string());
    auto text = read_whole_file(path);
    if (!text) return text.error();
    files.*(known->slot) = NamedText{path.string(), *std::move(text)};
  }
  return files;
}

void print(const ImportReport& report, const Call& call) {
  if (call.json) {
    std::cout << json_text({{"tract", call.tract},
                            {"stands", report.stands},
                            {"plots", report.plots},
                            {"trees", report.trees},
                            {"regeneration_counts", report.regens},
                            {"crop_trees", report.crop_trees},
                            {"neighbours", report.neighbours},
                            {"acorn_counts", report.acorn_counts},
                            {"acorn_years", report.acorn_years},
                            {"map_lines", report.lines},
                            {"stumps", report.stumps},
                            {"volume_lines", report.volume_lines}})
              << '\n';
    return;
  }
  std::cout << "Imported into " << call.tract << ": " << report.stands << " stands, "
            << report.plots << " plots, " << report.trees << " tally records, " << report.regens
            << " regeneration counts, " << report.crop_trees << " crop tree cards with "
            << report.neighbours << " other trees, " << report.acorn_counts << " acorn counts, "
            << report.acorn_years << " acorn years, " << report.lines << " map lines, "
            << report.stumps << " findings after the cut.\n";
  if (report.volume_lines > 0) {
    std::cout << "Local volume table of " << report.volume_lines
              << " lines: it goes before the book from now on.\n";
  }
}

int import_into(TractSession& session, const CruiseFiles& files, const Call& call) {
  progress("checking and writing " + call.tract);
  const auto report = session.import_files(files);
  if (!report) return fail(report.error(), call.json);
  if (!report->faults.empty()) {
    const int code = fail(report->faults, call.json);
    if (!call.json) {
      const auto n = report->faults.size();
      std::cerr << n << (n == 1 ? " fault" : " faults") << ". Nothing was imported.\n";
    }
    return code;
  }
  print(*report, call);
  return kDone;
}

/// A new tract file. One that could not be filled is taken away again: it would look like work
/// done.
int import_into_new(const CruiseFiles& files, const Call& call) {
  int code = kDone;
  {
    auto session = create_tract(call.tract);
    if (!session) return fail(session.error(), call.json);
    code = import_into(*session, files, call);
  }
  if (code != kDone) {
    for (const char* end : {"", "-wal", "-shm"}) {
      std::error_code nothing_to_remove;
      std::filesystem::remove(call.tract + end, nothing_to_remove);
    }
  }
  return code;
}

int run(const Call& call) {
  const auto files = read_files(call);
  if (!files) return fail(files.error(), call.json);
  std::error_code no_such;
  if (!std::filesystem::exists(call.tract, no_such)) return import_into_new(*files, call);
  auto session = open_to_write(call.tract);
  if (!session) return fail(session.error(), call.json);
  return import_into(*session, *files, call);
}

}  // namespace

void add_import(CLI::App& app, int& exit_code) {
  auto call = std::make_shared<Call>();
  CLI::App* command = app.add_subcommand(
      "import", "Check the files of a cruise and write them to a tract file, all or nothing");
  add_tract(*command, call->tract);
  command->get_option("tract")->description("The tract file (.gpkg); made if there is none");
  command
      ->add_option("sources", call->sources,
                   "A folder, or files named tract.csv, stands.csv, plots.csv, trees.csv,\n"
                   "regeneration.csv, crop_trees.csv, acorns.csv, acorn_years.csv, map.geojson,\n"
                   "stumps.csv, local_volume.csv")
      ->required()
      ->check(CLI::ExistingPath);
  add_json(*command, call->json);
  command->footer(
      "Example: oaklight import hollow.gpkg demo_plots\n"
      "Columns, units and words of each file: forms/README.md. Faults are listed with file, line "
      "and\n"
      "column; when there is one, nothing is written (exit code 1).");
  command->callback([call, &exit_code] { exit_code = run(*call); });
}

}  // namespace oaklight::command
