// Calls about the files that the browser keeps, and the tract as a whole.
#include <algorithm>
#include <array>
#include <filesystem>

#include "core/session/plot_figures.hpp"
#include "core/session/tract_work.hpp"
#include "mobile/desk/unwalked.hpp"
#include "mobile/web/bridge/tract_json.hpp"
#include "mobile/web/bridge/web_desk.hpp"

namespace oaklight::web {
namespace {

namespace fs = std::filesystem;

constexpr const char* kFolder = "/";
constexpr const char* kEnding = ".gpkg";
// Where the worker (files/engine.mjs) lays a file that comes, and finds the one that goes.
constexpr const char* kComing = "/tmp/coming.gpkg";
constexpr const char* kCopy = "/tmp/copy.gpkg";

Error unknown_file(const std::string& file) {
  return {ErrorCode::cannot_open, "There is no such file in this browser.", file,
          "Choose one of the list."};
}

Result<Json> files(WebDesk& desk, const Arguments& /*arguments*/) {
  Json list = Json::array();
  std::error_code problem;
  for (const auto& entry : fs::directory_iterator(kFolder, problem)) {
    if (entry.path().extension() != kEnding) continue;
    std::error_code none;
    list.push_back(
        {{"file", entry.path().filename().string()}, {"bytes", fs::file_size(entry.path(), none)}});
  }
  const OpenTract* tract = desk.tract();
  return Json{{"files", list}, {"open", tract == nullptr ? Json() : Json(tract->file)}};
}

Result<Json> tract_of(WebDesk& desk, const Arguments& arguments) {
  return tract_json(desk, arguments.system());
}

Result<Json> create(WebDesk& desk, const Arguments& arguments) {
  const Status made = desk.create(arguments.text("file").value_or(""), arguments.flag("demo"));
  if (!made) return made.error();
  return tract_json(desk, arguments.system());
}

Result<Json> open(WebDesk& desk, const Arguments& arguments) {
  const Status opened = desk.open(arguments.text("file").value_or(""));
  if (!opened) return opened.error();
  return tract_json(desk, arguments.system());
}

Result<Json> close(WebDesk& desk, const Arguments& /*arguments*/) {
  desk.close();
  return Json::object();
}

Result<Json> remove(WebDesk& desk, const Arguments& arguments) {
  const auto file = arguments.text("file");
  const auto path = path_of(file);
  if (!path) return path.error();
  if (desk.tract() != nullptr && desk.tract()->file == *file) {
    return Error{ErrorCode::busy, "This tract is open.", *file, "Close it first."};
  }
  std::error_code problem;
  if (!fs::exists(*path, problem)) return unknown_file(*file);
  remove_file(*path);
  return files(desk, arguments);
}

/// A file that came from outside lies under a name that nobody takes for a tract. It is read
/// through, and only then called by its own name. What is not sound is not kept.
Result<Json> keep(WebDesk& desk, const Arguments& arguments) {
  const auto to = path_of(arguments.text("file"));
  if (!to) return to.error();
  std::error_code problem;
  if (fs::path(*to).extension() != kEnding) {
    return Error{ErrorCode::not_a_choice, "The name of a tract file ends in .gpkg.", *to,
                 "Choose a file that Oaklight made."};
  }
  if (fs::exists(*to, problem)) {
    return Error{ErrorCode::cannot_write, "There is a file of that name already.", *to,
                 "Choose another name, or take the one that is here out first."};
  }
  {
    // Opened for writing, so that one of an older step is brought up to date here and now.
    auto store = TractStore::open(kComing, OpenMode::read_write, desk.context());
    if (!store) return store.error();
    if (const auto read = store->load(); !read) return read.error();
    if (const auto known = read_knowledge(*store); !known) return known.error();
  }
  fs::rename(kComing, *to, problem);
  if (problem) {
    return Error{ErrorCode::io_failed, "The file could not be given its name.", *to, "Try again."};
  }
  return files(desk, arguments);
}

/// A compact copy of the open tract, checked, for taking out.
Result<Json> copy(WebDesk& desk, const Arguments& /*arguments*/) {
  TractStore& store = desk.tract()->store;
  if (const Status sound = store.find_damage(); !sound) return sound.error();
  if (const Status copied = store.copy_to(kCopy); !copied) return copied.error();
  return Json{{"file", desk.tract()->file}};
}

Result<Json> undo(WebDesk& desk, const Arguments& /*arguments*/) {
  const Json before = desk.undo_json();
  if (const Status done = desk.replay(WebDesk::Replay::undo); !done) return done.error();
  return Json{{"did", before["undo"]}, {"undo", desk.undo_json()}};
}

Result<Json> redo(WebDesk& desk, const Arguments& /*arguments*/) {
  const Json before = desk.undo_json();
  if (const Status done = desk.replay(WebDesk::Replay::redo); !done) return done.error();
  return Json{{"did", before["redo"]}, {"undo", desk.undo_json()}};
}

constexpr std::array kCalls = {NamedCall{"files", files, false},
                               NamedCall{"create", create, false},
                               NamedCall{"open", open, false},
                               NamedCall{"close", close, false},
                               NamedCall{"remove", remove, false},
                               NamedCall{"keep", keep, false},
                               NamedCall{"copy", copy},
                               NamedCall{"tract", tract_of},
                               NamedCall{"undo", undo},
                               NamedCall{"redo", redo}};

Json stand_json(const OpenTract& tract, const Stand& stand, UnitSystem system) {
  std::array<int, kWords<PlotStatus>.size()> by_status{};
  const auto plots = tract.live.plots_of(stand.id);
  for (const Plot* plot : plots) ++by_status[static_cast<std::size_t>(plot->status)];
  Json counts{{"total", plots.size()}};
  for (const auto& [status, word] : kWords<PlotStatus>) {
    counts[std::string(word)] = by_status[static_cast<std::size_t>(status)];
  }
  const auto walk = tract.live.walk_trees_of(stand.id);
  return {{"id", to_text(stand.id)},
          {"name", stand.name},
          {"area", area_text(stand.acres, system)},
          {"plots", counts},
          {"cards", std::ranges::count_if(walk, [](const WalkTree* tree) { return tree->crop; })},
          {"unwalked", is_unwalked(tract.live, stand)}};
}

}  // namespace

std::span<const NamedCall> file_calls() { return kCalls; }

Json tract_json(WebDesk& desk, UnitSystem system) {
  const OpenTract& tract = *desk.tract();
  const TractData& data = tract.live.data();
  Json stands = Json::array();
  for (const Stand& stand : data.stands) stands.push_back(stand_json(tract, stand, system));
  Json cruises = Json::array();
  for (const Cruise& cruise : data.cruises) {
    cruises.push_back({{"id", to_text(cruise.id)},
                       {"name", cruise.name},
                       {"design", raised(design_text(cruise.design))}});
  }
  Json sets = Json::array();
  for (const TallySet& set : tract.knowledge.sets) {
    sets.push_back({{"key", set.key}, {"label", form_words(set.name)}});
  }
  return {{"file", tract.file},
          {"name", data.tract.name},
          {"demo", data.tract.demo},
          {"undo", desk.undo_json()},
          {"stands", stands},
          {"cruises", cruises},
          {"sets", sets}};
}

}  // namespace oaklight::web
