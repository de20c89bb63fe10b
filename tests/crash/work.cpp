#include "tests/crash/work.hpp"

#include <cstdlib>
#include <random>
#include <stdexcept>

#include "tests/support/difference.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {

namespace fs = std::filesystem;

Came do_work(Work& work, const fs::path& folder, AfterFailure after) {
  Came came;
  const auto succeeds = [&](const Status& status) {
    if (!status) came.told.insert(status.error().code);
    return status.has_value();
  };
  const bool again = after == AfterFailure::again;
  const auto start = [&] {
    came.started = succeeds(work.start(folder)) || came.started;
    return came.started;
  };
  const auto step = [&] { return succeeds(work.step(folder, came.done)); };
  const auto reopened = [&] {
    work.stop();
    return succeeds(work.start(folder));
  };
  if (start() || (again && start())) {
    for (; came.done < work.steps(); ++came.done) {
      if (step()) continue;
      if (again && work.same_again() && step()) continue;
      if (again && reopened() && (work.is_done(came.done) || step())) continue;
      break;
    }
  }
  work.stop();
  return came;
}

StoreWork::StoreWork(std::string base, std::vector<Step> steps, std::string log,
                     std::map<std::string, std::string> beside)
    : base_(std::move(base)),
      log_(std::move(log)),
      beside_(std::move(beside)),
      steps_(std::move(steps)) {
  rehearse();
}

/// Does every step on a sound disk once, to know what the file holds after each.
void StoreWork::rehearse() {
  const TempDir folder;
  lay_out(folder.path());
  auto session = open(folder / "woods.gpkg");
  if (!session) throw std::runtime_error(to_text(session.error()));
  states_.push_back(state_of(*session).value());
  for (const Step& step : steps_) {
    const Status done = step(*session, folder.path());
    if (!done) throw std::runtime_error(to_text(done.error()));
    states_.push_back(state_of(*session).value());
  }
}

Result<StoreWork::State> StoreWork::state_of(const TractSession& session) {
  const auto data = session.data();
  if (!data) return data.error();
  const auto history = session.store().history(100);
  if (!history) return history.error();
  State state{*data, {}};
  for (const HistoryEntry& line : *history) {
    state.history.push_back(std::to_string(static_cast<int>(line.kind)) + " " + line.label);
  }
  return state;
}

/// The same ids each time that a file of the same records is opened.
Result<TractSession> StoreWork::open(const fs::path& file) {
  if (base_.empty() && !fs::exists(file)) return TractSession::create(file, context());
  return TractSession::open(file, OpenMode::read_write, context());
}

void StoreWork::lay_out(const fs::path& folder) {
  if (!base_.empty()) write_bytes(folder / "woods.gpkg", base_);
  if (!log_.empty()) write_bytes(folder / "woods.gpkg-wal", log_);
  for (const auto& [name, bytes] : beside_) write_bytes(folder / name, bytes);
}

Status StoreWork::start(const fs::path& folder) {
  auto session = open(folder / "woods.gpkg");
  if (!session) return session.error();
  session_ = std::make_unique<TractSession>(*std::move(session));
  return Done{};
}

Status StoreWork::step(const fs::path& folder, std::size_t number) {
  return steps_[number](*session_, folder);
}

std::string StoreWork::difference_to(std::size_t after, const State& found) const {
  const std::string data = difference(found.data, states_[after].data);
  return data.empty() && found.history != states_[after].history ? "the history" : data;
}

bool StoreWork::is_done(std::size_t number) {
  const auto state = state_of(*session_);
  // A step that leaves the records alone, as a copy does, cannot be told by them.
  return state && !difference_to(number, *state).empty() &&
         difference_to(number + 1, *state).empty();
}

std::string StoreWork::judge(const fs::path& folder, bool started, std::size_t done) {
  const fs::path file = folder / "woods.gpkg";
  for (const auto& [step, name] : copies_) {
    if (done > step && !fs::exists(folder / name)) return name + " was made, and is not there";
  }
  for (const auto& [name, bytes] : beside_) {
    if (bytes_of(folder / name) != bytes) return name + " is not as it was";
  }
  // What has the name of a tract file is a whole one.
  for (const auto& entry : fs::directory_iterator(folder)) {
    if (entry.path().extension() != ".gpkg" || entry.path() == file) continue;
    if (beside_.contains(entry.path().filename().string())) continue;
    if (auto wrong = judge_file(entry.path(), 0, done); !wrong.empty()) return wrong;
  }
  if (!fs::exists(file)) return base_.empty() && !started ? "" : "the tract file is gone";
  return judge_file(file, done, done + 1);
}

std::string StoreWork::judge_file(const fs::path& file, std::size_t from, std::size_t to) {
  const std::string name = file.filename().string() + ": ";
  // By turns whoever comes first after the crash only looks; an older file is not for looking.
  if (++judged_ % 2 == 0) {
    const auto look = TractStore::open(file, OpenMode::read_only, context());
    if (!look && look.error().code != ErrorCode::read_only) return name + to_text(look.error());
    if (look && !look->check()->problems.empty()) return name + "whoever looks finds problems";
  }
  auto session = open(file);
  if (!session) return name + to_text(session.error());
  const auto report = session->store().check();
  if (!report) return name + to_text(report.error());
  if (!report->problems.empty()) return name + to_text(report->problems.front());
  const auto found = state_of(*session);
  if (!found) return name + to_text(found.error());
  std::string wrong;
  for (std::size_t i = from; i <= to && i < states_.size(); ++i) {
    wrong = difference_to(i, *found);
    if (wrong.empty()) return "";
  }
  return name + "not as after a step from " + std::to_string(from) + " to " + std::to_string(to) +
         ": " + wrong;
}

int count_wanted(const char* variable, int usual) {
  const char* text = std::getenv(variable);
  const int wanted = text == nullptr ? 0 : std::atoi(text);
  return wanted > 0 ? wanted : usual;
}

}  // namespace oaklight::test
