// The disk fills up, a write fails, a read fails, a sync fails: at every point where it can. What
// was acknowledged is there, what failed is told and left no trace, and works when done again.
//   OAKLIGHT_EVERY=1  every point of every work; else every point of a tally, and some of the
//   larger works
#include <gtest/gtest.h>
#include <sqlite3.h>

#include <iostream>

#include "tests/crash/work.hpp"
#include "tests/support/faults/fault_vfs.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {
namespace {

constexpr int kUsualPoints = 6;  // of one kind of fault in one work, where not every one is met

struct Kind {
  const char* name;
  fault_vfs::Fault fault;
};
const std::vector<Kind> kKinds = {
    {"full_once", {0, SQLITE_FULL, "write", false, false}},
    {"full_for_good", {0, SQLITE_FULL, "write", true, true}},
    {"short_write", {0, SQLITE_FULL, "write", false, true}},
    {"write_fails", {0, SQLITE_IOERR_WRITE, "write", false, false}},
    {"writes_fail_for_good", {0, SQLITE_IOERR_WRITE, "write", true, true}},
    {"read_fails", {0, SQLITE_IOERR_READ, "read", false, false}},
    {"reads_fail_for_good", {0, SQLITE_IOERR_READ, "read", true, false}},
    {"sync_fails", {0, SQLITE_IOERR_FSYNC, "sync", false, false}},
    {"syncs_fail_for_good", {0, SQLITE_IOERR_FSYNC, "sync", true, false}},
    {"truncate_fails", {0, SQLITE_IOERR_TRUNCATE, "truncate", false, false}},
    {"create_fails", {0, SQLITE_FULL, "create", false, false}},
    {"delete_fails", {0, SQLITE_IOERR_DELETE, "delete", false, false}},
    {"rename_fails", {0, SQLITE_IOERR, "rename", false, false}},
    {"folder_fails", {0, SQLITE_FULL, "folder", false, false}},
    {"all_fails_for_good", {0, SQLITE_IOERR, "", true, false}},
};

class Fault : public testing::TestWithParam<std::string> {
 protected:
  /// Does the work with that fault; operations met.
  int meet(Work& work, const Kind& kind, int at) {
    const TempDir folder;
    work.lay_out(folder.path());
    fault_vfs::Fault fault = kind.fault;
    fault.at = at;
    fault_vfs::fail(fault);
    const Came came = do_work(work, folder.path(), AfterFailure::again);
    const int met = fault_vfs::operations();
    fault_vfs::recover(chance_);
    told_ += came.told.empty() ? 0 : 1;
    const std::string point = std::string(kind.name) + " at operation " + std::to_string(at);
    EXPECT_EQ(work.judge(folder.path(), came.started, came.done), "") << point;
    if (at == 0 || met < at || !fault.lasts) {
      EXPECT_EQ(came.done, work.steps()) << point << ": not done although the disk was well again";
    }
    if (fault.sqlite_code == SQLITE_FULL && fault.only == "write") {
      for (const ErrorCode code : came.told) EXPECT_EQ(name_of(code), "disk_full") << point;
    }
    // Works that make a file of their own say that it cannot be written; these have one open.
    const bool in_open_file =
        GetParam() == "tally" || GetParam() == "undo" || GetParam() == "import";
    if (in_open_file &&
        (kind.name == std::string("write_fails") || kind.name == std::string("sync_fails"))) {
      for (const ErrorCode code : came.told) EXPECT_EQ(name_of(code), "io_failed") << point;
    }
    return met;
  }

  std::mt19937 chance_{20260504};
  int told_ = 0;
};

TEST_P(Fault, IsToldAndLosesNothing) {
  const auto work = make_work(GetParam());
  const bool every = GetParam() == "tally" || count_wanted("OAKLIGHT_EVERY", 0) > 0;
  int points = 0;
  for (const Kind& kind : kKinds) {
    const int whole = meet(*work, kind, 0);
    const int stride = every ? 1 : 1 + whole / kUsualPoints;
    for (int at =
             1 + (stride > 1 ? static_cast<int>(chance_() % static_cast<unsigned>(stride)) : 0);
         at <= whole; at += stride) {
      meet(*work, kind, at);
      ++points;
      ASSERT_FALSE(HasFailure());
    }
  }
  EXPECT_GT(told_, static_cast<int>(work->steps())) << "the faults missed the work";
  std::cout << GetParam() << ": " << points << " points, " << told_ << " of them told\n";
}

INSTANTIATE_TEST_SUITE_P(Over, Fault, testing::ValuesIn(work_names()),
                         [](const auto& work) { return work.param; });

}  // namespace
}  // namespace oaklight::test
