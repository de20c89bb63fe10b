// The clock of a tablet is wrong now and then; nothing in a file hangs on it.
#include <stdlib.h>
#include <time.h>

#include <algorithm>

#include "core/store/row_text.hpp"
#include "core/store/sqlite_handle.hpp"

#include "tests/store/store_fixture.hpp"

namespace oaklight::test {
namespace {

constexpr std::int64_t kDay = 86'400'000;
// Days from 1970-01-01, counted by the calendar: 2028-02-29 and the last second of 32 bits.
constexpr std::int64_t kLeapDay = 21'243 * kDay;
constexpr std::int64_t kEndOf32Bits = 2'147'483'647'000;

class WrongClock : public StoreTest {
 protected:
  WrongClock() {
    store_ = std::make_unique<TractStore>(make());
    data_ = sample_records(store_->ids(), false);
    EXPECT_TRUE(worked(store_->apply(as_action(data_, "import"))));
  }
  /// Tallies one more tree; its id.
  TreeId tally(const std::string& label) {
    Tree tree = data_.trees[0];
    tree.id = store_->ids().next_id<TreeTag>();
    EXPECT_TRUE(worked(store_->apply({label, {tree}})));
    return tree.id;
  }
  void reopen() {
    store_.reset();
    store_ = std::make_unique<TractStore>(open());
  }

  std::unique_ptr<TractStore> store_;
  TractData data_;
};

TEST_F(WrongClock, SetBackTreesKeepTheirOrderAndUndoTakesTheNewest) {
  std::vector<TreeId> trees;
  for (const std::int64_t back : {std::int64_t{0}, std::int64_t{1'000}, std::int64_t{3'600'000},
                                  kDay, 20 * 365 * kDay, std::int64_t{0}}) {
    clock_.ms -= back;
    trees.push_back(tally("tree " + std::to_string(trees.size())));
    reopen();
    trees.push_back(tally("tree " + std::to_string(trees.size())));
  }
  EXPECT_TRUE(std::is_sorted(trees.begin(), trees.end()));
  const auto history = store_->history(100).value();
  ASSERT_EQ(history.size(), trees.size() + 1);
  for (std::size_t i = 0; i < trees.size(); ++i)
    EXPECT_EQ(history[trees.size() - 1 - i].label, "tree " + std::to_string(i));
  EXPECT_TRUE(std::is_sorted(history.rbegin(), history.rend(),
                             [](const auto& a, const auto& b) { return a.id < b.id; }));
  for (std::size_t left = trees.size(); left > 0; --left) {
    EXPECT_EQ(store_->undo_state().value().undo, "tree " + std::to_string(left - 1));
    ASSERT_TRUE(worked(store_->undo()));
    EXPECT_EQ(store_->load().value().trees.size(), left);
  }
  EXPECT_TRUE(store_->check().value().problems.empty());
}

TEST_F(WrongClock, SetFarAheadAndRightAgainIdsGoOnRising) {
  clock_.ms += 80 * 365 * kDay;
  const TreeId ahead = tally("ahead");
  clock_.ms -= 80 * 365 * kDay;
  reopen();
  const TreeId right = tally("right");
  EXPECT_LT(ahead, right);
  EXPECT_EQ(store_->history(1).value()[0].label, "right");
  EXPECT_TRUE(store_->check().value().problems.empty());
}

TEST_F(WrongClock, AnyDayIsWrittenAndReadBack) {
  for (const std::int64_t moment :
       {kLeapDay - 1, kLeapDay, kLeapDay + kDay - 1, kLeapDay + kDay, kEndOf32Bits,
        kEndOf32Bits + 1'000, std::int64_t{-kDay}, std::int64_t{0}, 200 * 365 * kDay}) {
    clock_.ms = moment;
    tally("at " + utc_text(moment));
    reopen();
    const auto newest = store_->history(1).value()[0];
    EXPECT_EQ(newest.label, "at " + newest.at);
    EXPECT_EQ(newest.at, utc_text(moment));
  }
  EXPECT_EQ(utc_text(kLeapDay), "2028-02-29T00:00:00.000Z");
  EXPECT_EQ(utc_text(kEndOf32Bits + 1'000), "2038-01-19T03:14:08.000Z");
  EXPECT_TRUE(store_->check().value().problems.empty());
  EXPECT_TRUE(worked(store_->load()));
}

// A program elsewhere may know leap seconds; ours only carries the text.
TEST_F(WrongClock, ALeapSecondInALineOfTheHistoryIsCarried) {
  store_.reset();
  const std::vector<std::string> columns = {"uid",  "at_utc",     "device", "label",
                                            "kind", "target_uid", "row_crc"};
  raw_sql("UPDATE user_action SET at_utc = '2016-12-31T23:59:60.000Z'");
  const auto line = store::SqliteHandle::open(folder_ / "woods.gpkg", store::Use::read_only)
                        ->first(
                            "SELECT uid, at_utc, device, label, kind, target_uid, row_crc"
                            " FROM user_action")
                        .value();
  raw_sql("UPDATE user_action SET row_crc = " +
          std::to_string(store::row_crc("user_action", columns, *line)));
  TractStore store = open();
  EXPECT_EQ(store.history(1).value()[0].at, "2016-12-31T23:59:60.000Z");
  EXPECT_TRUE(worked(store.undo()));
}

TEST_F(WrongClock, InAnotherZoneTheTimesAreTheSame) {
  const char* zone = std::getenv("TZ");
  const std::string before = zone == nullptr ? "" : zone;
  for (const char* other : {"Pacific/Kiritimati", "Pacific/Pago_Pago", "nonsense", ""}) {
    ::setenv("TZ", other, 1);
    ::tzset();
    tally(other);
    EXPECT_EQ(store_->history(1).value()[0].at, "2026-05-04T13:07:00.000Z") << other;
  }
  zone == nullptr ? ::unsetenv("TZ") : ::setenv("TZ", before.c_str(), 1);
  ::tzset();
}

}  // namespace
}  // namespace oaklight::test
