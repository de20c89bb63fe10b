#include "mobile/web/bridge/web_desk.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <utility>

#include "core/base/embedded.hpp"
#include "core/forms/read_cruise.hpp"
#include "core/session/tract_session.hpp"

namespace oaklight {
std::span<const EmbeddedFile> embedded_demo();
}

namespace oaklight::web {
namespace {

constexpr std::size_t kMostRequest = std::size_t{1} << 20U;

const NamedCall* find_call(std::string_view name) {
  for (const auto& calls :
       {file_calls(), setup_calls(), plot_calls(), tally_calls(), tree_calls(), reading_calls(),
        stand_calls(), light_calls(), card_calls(), walk_tree_calls(), mark_calls()}) {
    const auto found = std::ranges::find(calls, name, &NamedCall::name);
    if (found != calls.end()) return &*found;
  }
  return nullptr;
}

Error unknown_call(std::string_view name) {
  return {ErrorCode::not_a_choice, "The program has no call \"" + std::string(name) + "\".", "call",
          "Load the page again; it is of another version."};
}

Result<Json> run(WebDesk& desk, std::string_view request) {
  const Error unreadable{ErrorCode::bad_json, "The page asked for something unreadable.", "call",
                         "Load the page again."};
  if (request.size() > kMostRequest) return unreadable;
  const Json asked = Json::parse(request, nullptr, false);
  const Arguments arguments(asked);
  const auto name = arguments.text("call");
  if (!name) return unreadable;
  const NamedCall* call = find_call(*name);
  if (call == nullptr) return unknown_call(*name);
  if (call->needs_tract && desk.tract() == nullptr) {
    return Error{ErrorCode::no_data, "No tract is open.", *name, "Open one, or make a new one."};
  }
  return call->call(desk, arguments);
}

CruiseFiles demo_files() {
  CruiseFiles files;
  for (const EmbeddedFile& file : embedded_demo()) {
    for (const KnownFile& known : kKnownFiles) {
      if (file.path == known.name)
        files.*known.slot = NamedText{std::string(file.path), std::string(file.text)};
    }
  }
  return files;
}

Status make_demo(const std::string& path, const StoreContext& context) {
  auto session = TractSession::create(path, context);
  if (!session) return session.error();
  const auto report = session->import_files(demo_files());
  if (!report) return report.error();
  if (!report->faults.empty()) return report->faults.front();
  return Done{};
}

}  // namespace

std::string WebDesk::answer(std::string_view request) {
  const auto result = run(*this, request);
  const Json answer = result ? Json{{"ok", *result}} : Json{{"error", error_json(result.error())}};
  // Whatever is not text in a file of others is shown as a mark, and breaks nothing.
  return answer.dump(-1, ' ', false, Json::error_handler_t::replace);
}

Status WebDesk::take(Result<TractStore> store, const std::string& file) {
  if (!store) return store.error();
  auto knowledge = read_knowledge(*store);
  if (!knowledge) return knowledge.error();
  auto data = store->load();
  if (!data) return data.error();
  IdSource ids(clock_, system_random());
  ids.resume_after(store->ids().next());
  tract_ = std::make_unique<OpenTract>(file, *std::move(store), LiveTract(*std::move(data)),
                                       *std::move(knowledge), std::move(ids));
  return Done{};
}

Status WebDesk::open(const std::string& file) {
  const auto path = path_of(file);
  if (!path) return path.error();
  if (tract_ && tract_->file == file) return Done{};
  return take(TractStore::open(*path, OpenMode::read_write, context()), file);
}

Status WebDesk::create(const std::string& file, bool demo) {
  const auto path = path_of(file);
  if (!path) return path.error();
  std::error_code problem;
  const bool taken = std::filesystem::exists(*path, problem);
  Status made =
      demo ? make_demo(*path, context()) : take(TractStore::create(*path, context()), file);
  if (made && demo) made = open(file);
  if (!made && !taken) remove_file(*path);  // without room for all of it there is none of it
  return made;
}

void WebDesk::follow(std::span<const Change> changes) {
  tract_->live.follow(changes);
  if (tract_->kept) tract_->kept->follow();
}

Result<std::size_t> WebDesk::submit(const Maker& make) {
  const auto action = make(*tract_);
  if (!action) return action.error();
  const Status written = tract_->store.apply(*action);
  if (!written) return written.error();
  follow(action->changes);
  return action->changes.size();
}

Status WebDesk::replay(Replay way) {
  const auto changes = way == Replay::undo ? tract_->store.undo() : tract_->store.redo();
  if (!changes) return changes.error();
  follow(*changes);
  if (!changes->empty()) return Done{};
  // It was a form, which is no record.
  auto knowledge = read_knowledge(tract_->store);
  if (!knowledge) return knowledge.error();
  tract_->kept.reset();
  tract_->decided.reset();
  tract_->knowledge = *std::move(knowledge);
  return Done{};
}

Json WebDesk::undo_json() {
  const auto state = tract_->store.undo_state();
  const auto label = [](const std::optional<std::string>& text) {
    return text ? Json(*text) : Json();
  };
  if (!state) return {{"undo", nullptr}, {"redo", nullptr}};
  return {{"undo", label(state->undo)}, {"redo", label(state->redo)}};
}

void remove_file(const std::string& path) {
  std::error_code problem;
  for (const char* beside : {"", "-wal", "-journal", ".lock", ".new"}) {
    std::filesystem::remove(path + beside, problem);
  }
}

Result<std::string> path_of(const std::optional<std::string>& file) {
  const bool plain = file && !file->empty() && file->size() <= 100 && !file->starts_with('.') &&
                     std::ranges::none_of(*file, [](char c) {
                       return c == '/' || c == '\\' || static_cast<unsigned char>(c) < 32;
                     });
  if (!plain) {
    return Error{ErrorCode::not_a_choice, "This cannot be the name of a file.", "file",
                 "Use letters and digits, and up to 100 of them."};
  }
  return "/" + *file;
}

}  // namespace oaklight::web
