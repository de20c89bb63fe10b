// The power goes at any moment of a work: what was acknowledged is there, in order, and whole.
//   OAKLIGHT_CUTS  cuts for each work
//   OAKLIGHT_SEED  of an earlier run, to see it again
#include <gtest/gtest.h>

#include <iostream>
#include <random>

#include "tests/crash/work.hpp"
#include "tests/support/faults/fault_vfs.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {
namespace {

constexpr int kUsualCuts = 100;
constexpr int kUsualCutsOfTally = 600;  // what a day in the woods hangs on

class PowerCut : public testing::TestWithParam<std::string> {};

TEST_P(PowerCut, LosesNothingThatWasAcknowledged) {
  const auto seed = static_cast<unsigned>(
      count_wanted("OAKLIGHT_SEED", static_cast<int>(std::random_device{}() >> 1U)));
  SCOPED_TRACE("OAKLIGHT_SEED=" + std::to_string(seed));
  std::mt19937 chance(seed);
  const auto work = make_work(GetParam());
  int whole = 0;
  {
    const TempDir folder;
    work->lay_out(folder.path());
    fault_vfs::cut_power_at(0);
    const Came came = do_work(*work, folder.path(), AfterFailure::stop);
    whole = fault_vfs::operations();
    fault_vfs::recover(chance);
    ASSERT_EQ(came.done, work->steps());
    ASSERT_EQ(work->judge(folder.path(), came.started, came.done), "");
  }
  const int cuts =
      count_wanted("OAKLIGHT_CUTS", GetParam() == "tally" ? kUsualCutsOfTally : kUsualCuts);
  int in_work = 0;
  for (int cut = 0; cut < cuts; ++cut) {
    const TempDir folder;
    work->lay_out(folder.path());
    const int at = 1 + static_cast<int>(chance() % static_cast<unsigned>(whole));
    fault_vfs::cut_power_at(at);
    const Came came = do_work(*work, folder.path(), AfterFailure::stop);
    fault_vfs::recover(chance);
    ASSERT_EQ(work->judge(folder.path(), came.started, came.done), "")
        << "cut " << cut << " at operation " << at << " of " << whole << ", " << came.done
        << " steps acknowledged";
    in_work += came.told.empty() ? 0 : 1;
  }
  EXPECT_GT(in_work, cuts / 2) << "too few cuts met the work";
  std::cout << GetParam() << ": " << cuts << " cuts over " << whole << " operations, " << in_work
            << " of them in the work, seed " << seed << '\n';
}

INSTANTIATE_TEST_SUITE_P(Over, PowerCut, testing::ValuesIn(work_names()),
                         [](const auto& work) { return work.param; });

}  // namespace
}  // namespace oaklight::test
