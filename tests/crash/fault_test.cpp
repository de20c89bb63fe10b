// The disk fills up, a write fails, a sync fails, the power goes: at every point where it can.
#include <gtest/gtest.h>
#include <sqlite3.h>

#include "tests/crash/fault_vfs.hpp"
#include "tests/crash/tally_file.hpp"

namespace oaklight::test {
namespace {

constexpr int kTallies = 6;

class Faults : public testing::Test {
 protected:
  Faults() {
    make_tally_file(folder_ / "base.gpkg");
    base_ = bytes_of(folder_ / "base.gpkg");
  }
  ~Faults() override { fault_vfs::recover(chance_); }

  std::filesystem::path fresh_file() {
    const auto path = folder_ / "woods.gpkg";
    for (const char* ending : {"", "-wal", "-shm", "-journal"})
      std::filesystem::remove(path.string() + ending);
    write_bytes(path, base_);
    return path;
  }
  /// Tallies some trees, whatever the disk does.
  void work(const std::filesystem::path& path) {
    saved_.clear();
    codes_.clear();
    SystemClock clock;
    auto store = TractStore::open(path, OpenMode::read_write, {clock, system_random(), "tablet"});
    if (!store) {
      codes_.insert(store.error().code);
      return;
    }
    for (int i = 0; i < kTallies; ++i) {
      const auto tree = tally_one(*store);
      tree ? void(saved_.insert(to_text(*tree))) : void(codes_.insert(tree.error().code));
    }
  }

  /// Fails each operation in turn until a run meets no fault.
  void fail_everywhere(int sqlite_code, const std::string& only, ErrorCode wanted) {
    int refused = 0;
    for (int at = 1;; ++at) {
      const auto path = fresh_file();
      fault_vfs::fail_at(at, sqlite_code, only);
      work(path);
      const bool met = fault_vfs::operations() >= at;
      fault_vfs::recover(chance_);
      const auto after = trees_in(path);
      ASSERT_EQ(after.problem, "") << "operation " << at;
      ASSERT_EQ(after.trees, saved_) << "operation " << at;
      for (const ErrorCode code : codes_) ASSERT_EQ(code, wanted) << "operation " << at;
      refused += codes_.empty() ? 0 : 1;
      if (!met) {
        ASSERT_EQ(saved_.size(), static_cast<std::size_t>(kTallies));
        ASSERT_GT(at, kTallies) << "the faults missed the work";
        break;
      }
    }
    EXPECT_GE(refused, kTallies) << "a fault in a commit must be told";
  }

  /// Fails each operation of saving one tree in turn; the same action must then work when it is
  /// tried again on the same store.
  void retry_everywhere(int sqlite_code, const std::string& only) {
    int refused = 0;
    for (int at = 1;; ++at) {
      const auto path = fresh_file();
      fault_vfs::fail_at(0, sqlite_code, only);  // the file is opened on the faulty disk, in peace
      SystemClock clock;
      auto store = TractStore::open(path, OpenMode::read_write, {clock, system_random(), "tablet"});
      ASSERT_TRUE(store) << to_text(store.error());
      const Action tally = tally_action(*store);
      fault_vfs::fail_at(at, sqlite_code, only);
      const bool saved = store->apply(tally).has_value();
      const bool met = fault_vfs::operations() >= at;
      fault_vfs::recover(chance_);
      if (!saved) {
        ++refused;
        const auto again = store->apply(tally);
        ASSERT_TRUE(again) << "operation " << at << ": " << to_text(again.error());
      }
      ASSERT_EQ(store->load()->trees.size(), 1U) << "operation " << at;
      ASSERT_TRUE(store->check()->problems.empty()) << "operation " << at;
      if (!met) break;
    }
    EXPECT_GE(refused, 1) << "the faults missed the work";
  }

  TempDir folder_;
  std::string base_;
  std::set<std::string> saved_;
  std::set<ErrorCode> codes_;
  std::mt19937 chance_{20260504};
};

TEST_F(Faults, AFullDiskIsToldAndLosesNothingThatWasSaved) {
  fail_everywhere(SQLITE_FULL, "write", ErrorCode::disk_full);
}

TEST_F(Faults, AFailedWriteIsToldAndLosesNothingThatWasSaved) {
  fail_everywhere(SQLITE_IOERR_WRITE, "write", ErrorCode::io_failed);
}

TEST_F(Faults, AFailedSyncIsToldAndLosesNothingThatWasSaved) {
  fail_everywhere(SQLITE_IOERR_FSYNC, "sync", ErrorCode::io_failed);
}

TEST_F(Faults, ATreeThatWasNotSavedIsSavedWhenItIsTriedAgain) {
  retry_everywhere(SQLITE_FULL, "write");
  retry_everywhere(SQLITE_IOERR_WRITE, "write");
  retry_everywhere(SQLITE_IOERR_FSYNC, "sync");
}

TEST_F(Faults, APowerCutLosesNoTreeThatWasReported) {
  const unsigned seed = std::random_device{}();
  SCOPED_TRACE("seed " + std::to_string(seed));
  chance_.seed(seed);
  fault_vfs::cut_power_at(0);
  work(fresh_file());
  const int whole = fault_vfs::operations();
  fault_vfs::recover(chance_);
  ASSERT_EQ(saved_.size(), static_cast<std::size_t>(kTallies));

  int with_loss = 0;
  for (int cut = 0; cut < 600; ++cut) {
    const auto path = fresh_file();
    const int at = 1 + static_cast<int>(chance_() % static_cast<unsigned>(whole));
    fault_vfs::cut_power_at(at);
    work(path);
    fault_vfs::recover(chance_);
    const auto after = trees_in(path);
    ASSERT_EQ(after.problem, "") << "cut " << cut << " at operation " << at;
    for (const std::string& tree : saved_)
      ASSERT_EQ(after.trees.count(tree), 1U) << "cut " << cut << " at operation " << at;
    ASSERT_LE(after.trees.size(), saved_.size() + 1);
    with_loss += codes_.empty() ? 0 : 1;
  }
  EXPECT_GT(with_loss, 300) << "too few cuts met the work";
}

}  // namespace
}  // namespace oaklight::test
