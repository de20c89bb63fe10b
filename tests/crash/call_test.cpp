// Whatever core asks of SQLite, the disk may fail while it does: nothing that is asked gives a
// wrong answer, writes half of something or leaves something lying about, and it works when done
// again.
//   OAKLIGHT_STATEMENTS=1  each statement that a call runs, once; else some of them
#include <gtest/gtest.h>
#include <sqlite3.h>

#include <iostream>
#include <memory>
#include <regex>
#include <set>

#include "tests/crash/call.hpp"
#include "tests/crash/work.hpp"
#include "tests/support/difference.hpp"
#include "tests/support/faults/fault_vfs.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {

namespace fs = std::filesystem;

Files files_in(const fs::path& folder) {
  Files files;
  for (const auto& entry : fs::recursive_directory_iterator(folder)) {
    // The name of a snapshot tells its tract's folder by a checksum.
    static const std::regex kOfFolder("-[0-9a-f]{8}\\.");
    const std::string name =
        std::regex_replace(fs::relative(entry.path(), folder).string(), kOfFolder, "-#.");
    if (entry.is_regular_file()) files[name] = bytes_of(entry.path());
  }
  return files;
}

void lay_out(const Files& files, const fs::path& folder) {
  for (const auto& [name, bytes] : files) write_bytes(folder / name, bytes);
}

namespace {

constexpr int kUsualStatements = 3;  // of one call, where not every one is met

/// What nobody takes for a product; whoever does it again takes it away.
bool is_unfinished(const std::string& name) {
  return name.ends_with(".new") || name.ends_with(".new-journal");
}

using History = std::vector<std::tuple<HistoryKind, std::string, int>>;

/// What a tract file says, and the first thing that is wrong with it.
struct Said {
  std::string problem;
  TractData data;
  std::vector<std::string> forms;
  History history;
};

class Calls : public testing::Test {
 protected:
  void meet_each(const std::vector<Call>& calls) {
    int told = 0;
    for (const Call& call : calls) {
      SCOPED_TRACE(call.name);
      call_ = &call;
      known_.clear();
      told_ = 0;
      rehearse();
      if (!HasFatalFailure()) meet_some();
      told += told_;
    }
    EXPECT_GT(told, 0) << "no failure reached a caller";
  }

 private:
  /// On a sound disk, to know what comes out.
  void rehearse() {
    fault_vfs::fail({});  // from here on it lies between SQLite and the disk
    const TempDir folder;
    place(folder);
    open(folder);
    fault_vfs::fail({.only = "statement"});
    const auto given = ask();
    statements_ = fault_vfs::statements();
    recover();
    ASSERT_TRUE(given) << to_text(given.error());
    wanted_ = *given;
    close();
    after_ = files_in(folder.path());
    remember(folder, after_);
    remember(folder, call_->files);
  }

  StoreContext context() { return {clock_, std::mt19937_64{20260504}, "tablet"}; }
  void place(const TempDir& folder) {
    lay_out(call_->files, folder.path());
    place_ = std::make_unique<Place>(Place{folder.path(), context()});
  }
  void open(const TempDir& folder) {
    if (!call_->opened) return;
    auto session = TractSession::open(folder / "woods.gpkg", OpenMode::read_write, context());
    if (!session) throw std::runtime_error(to_text(session.error()));
    session_ = std::make_unique<TractSession>(*std::move(session));
    place_->session = session_.get();
  }
  void close() { session_.reset(); }
  Result<std::string> ask() { return call_->ask(*place_); }
  void recover() { fault_vfs::recover(chance_); }

  /// The tract files among them are sound; what they say, so that others can be held against it.
  void remember(const TempDir& folder, const Files& files) {
    for (const auto& [name, bytes] : files) {
      if (!name.ends_with(".gpkg")) continue;
      known_[bytes] = said_in(folder, bytes);
      EXPECT_EQ(known_[bytes].problem, "") << name;
    }
  }
  Said said_in(const TempDir& folder, const std::string& bytes) {
    const fs::path path = folder.path().string() + "-look.gpkg";
    write_bytes(path, bytes);
    Said said;
    {
      const auto store = TractStore::open(path, OpenMode::read_only, context());
      const auto report = store ? store->check() : Result<CheckReport>(store.error());
      const auto data = report ? store->load() : Result<TractData>(report.error());
      const auto history =
          data ? store->history(1000) : Result<std::vector<HistoryEntry>>(data.error());
      const auto paths =
          history ? store->form_paths() : Result<std::vector<std::string>>(history.error());
      if (!paths) {
        said.problem = to_text(paths.error());
      } else {
        if (!report->problems.empty()) said.problem = to_text(report->problems.front());
        said.data = *data;
        for (const std::string& form : *paths) said.forms.push_back(store->form_text(form).value());
        for (const HistoryEntry& line : *history)
          said.history.emplace_back(line.kind, line.label + " by " + line.device, line.rows);
      }
    }
    fs::remove(path);
    return said;
  }
  /// Without what was done and taken back, for a call that does so.
  [[nodiscard]] History lasting(const History& newest_first) const {
    History lines;
    for (const auto& line : newest_first) {
      const bool taken_back = call_->takes_back && !lines.empty() &&
                              std::get<HistoryKind>(lines.back()) == HistoryKind::undo &&
                              std::get<HistoryKind>(line) == HistoryKind::action;
      if (taken_back) {
        lines.pop_back();
      } else {
        lines.push_back(line);
      }
    }
    return lines;
  }
  /// What of a folder is not as it should be: other files, or files that say something else.
  std::string difference_to(const TempDir& folder, const Files& wanted) {
    const Files found = files_in(folder.path());
    for (const auto& [name, bytes] : wanted) {
      const auto there = found.find(name);
      if (there == found.end()) return name + " is gone";
      if (there->second == bytes) continue;
      if (!name.ends_with(".gpkg")) return name + " is another";
      if (!known_.contains(there->second)) known_[there->second] = said_in(folder, there->second);
      const Said& says = known_[there->second];
      if (!says.problem.empty()) return name + ": " + says.problem;
      const std::string differs = difference(says.data, known_[bytes].data);
      // What was taken back used up ids, so that only the counts are the same.
      const bool other_ids = call_->takes_back && differs.find(':') == std::string::npos;
      if (!differs.empty() && !other_ids) return name + " has another " + differs;
      if (says.forms != known_[bytes].forms) return name + " has other forms";
      if (lasting(says.history) != lasting(known_[bytes].history))
        return name + " has another history";
    }
    for (const auto& [name, bytes] : found) {
      if (!wanted.contains(name) && !is_unfinished(name)) return name + " lies there";
    }
    return "";
  }

  /// One statement fails.
  void meet(int at);
  void meet_some();
  void expect_told(const Error& error) {
    EXPECT_FALSE(error.what.empty());
    EXPECT_FALSE(error.where.empty()) << error.what;
    EXPECT_FALSE(error.fix.empty()) << error.what;
    ++told_;
  }

  const Call* call_ = nullptr;
  SetClock clock_{1'777'986'420'000};  // 2026-05-05T13:07:00Z
  std::mt19937 chance_{20260504};
  std::unique_ptr<Place> place_;
  std::unique_ptr<TractSession> session_;
  std::vector<std::string> statements_;
  std::string wanted_;
  Files after_;
  std::map<std::string, Said> known_;
  int told_ = 0;
};

void Calls::meet(int at) {
  const TempDir folder;
  place(folder);
  open(folder);
  fault_vfs::fail({.at = at, .sqlite_code = SQLITE_IOERR, .only = "statement"});
  auto given = ask();
  const int failed = fault_vfs::failed();
  recover();
  if (given) {
    EXPECT_EQ(*given, wanted_) << failed << " failures, and another answer";
  } else {
    EXPECT_GT(failed, 0) << "refused on a sound disk: " << to_text(given.error());
    expect_told(given.error());
    // By turns it is done again at once, and when the files were looked at and opened once more.
    bool done = false;
    if (call_->fresh_ids || !call_->opened || at % 2 == 0) {
      close();
      const std::string left = difference_to(folder, call_->files);
      done = !left.empty() && difference_to(folder, after_).empty();
      EXPECT_TRUE(done || left.empty()) << left << " after: " << to_text(given.error());
      open(folder);
    }
    if (!done) {
      given = ask();
      ASSERT_TRUE(given) << "done again: " << to_text(given.error());
      EXPECT_EQ(*given, wanted_);
    }
  }
  close();
  EXPECT_EQ(difference_to(folder, after_), "");
  for (const auto& [name, bytes] : files_in(folder.path()))
    EXPECT_FALSE(is_unfinished(name)) << name;
}

void Calls::meet_some() {
  std::vector<int> points;
  std::set<std::string> seen;
  for (std::size_t i = 0; i < statements_.size(); ++i) {
    if (seen.insert(statements_[i]).second || call_->of_each)
      points.push_back(static_cast<int>(i) + 1);
  }
  std::shuffle(points.begin(), points.end(), chance_);
  if (count_wanted("OAKLIGHT_STATEMENTS", 0) == 0 && points.size() > kUsualStatements)
    points.resize(kUsualStatements);
  for (const int at : points) {
    SCOPED_TRACE("statement " + std::to_string(at) + " of " + std::to_string(statements_.size()) +
                 ": " + statements_[static_cast<std::size_t>(at) - 1]);
    meet(at);
    if (HasFatalFailure()) return;
  }
  std::cout << call_->name << ": " << points.size() << " statements of " << seen.size() << ", "
            << told_ << " of them told\n";
}

TEST_F(Calls, OfOpeningAndCopying) { meet_each(calls_of_opening()); }
TEST_F(Calls, OfRecords) { meet_each(calls_of_records()); }
TEST_F(Calls, OfJoining) { meet_each(calls_of_joining()); }
TEST_F(Calls, OfASession) { meet_each(calls_of_session()); }

}  // namespace
}  // namespace oaklight::test
