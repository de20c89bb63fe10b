// Copies that keep themselves: how many, which, and that what goes wrong takes none of them away.
#include "core/store/snapshots.hpp"

#include <algorithm>

#include "core/base/today.hpp"
#include "tests/store/store_fixture.hpp"

namespace oaklight::test {
namespace {

namespace fs = std::filesystem;

constexpr std::int64_t kDay = 86'400'000;

std::vector<Snapshot> series(const std::vector<std::string>& days) {
  std::vector<Snapshot> all;
  for (const std::string& day : days)
    all.push_back({day, static_cast<std::int64_t>(all.size() + 1), day});
  return all;
}

std::vector<std::int64_t> kept(const std::vector<Snapshot>& all, const SnapshotRule& rule) {
  std::vector<std::int64_t> numbers;
  const auto old = superseded(all, rule);
  for (const Snapshot& one : all) {
    if (std::none_of(old.begin(), old.end(),
                     [&](const Snapshot& s) { return s.number == one.number; }))
      numbers.push_back(one.number);
  }
  return numbers;
}

TEST(SnapshotRule, KeepsTheNewestAndTheLastOfEachDay) {
  const auto all = series({"2026-05-01", "2026-05-01", "2026-05-02", "2026-05-02", "2026-05-03",
                           "2026-05-03", "2026-05-03"});
  EXPECT_EQ(kept(all, {2, 14}), (std::vector<std::int64_t>{2, 4, 6, 7}));
  EXPECT_EQ(kept(all, {2, 2}), (std::vector<std::int64_t>{4, 6, 7}));
  EXPECT_EQ(kept(all, {0, 0}), std::vector<std::int64_t>{});
  EXPECT_EQ(kept(all, {}), (std::vector<std::int64_t>{2, 3, 4, 5, 6, 7}));
}

TEST(SnapshotRule, IsBoundedHoweverLongTheWork) {
  std::vector<std::string> days;
  for (int day = 1; day <= 28; ++day) {
    for (int plot = 0; plot < 12; ++plot)
      days.push_back("2026-02-" + std::string(day < 10 ? "0" : "") + std::to_string(day));
  }
  const auto numbers = kept(series(days), {});
  EXPECT_EQ(numbers.size(), 5U + 13U) << "the newest of the newest day is one of both";
  EXPECT_EQ(numbers.back(), 28 * 12);
  EXPECT_EQ(numbers.front(), 15 * 12) << "14 days back";
}

// The days are names, no more: a clock that was wrong for a while costs one of the fourteen.
TEST(SnapshotRule, AClockSetBackOrAheadTakesNoneOfTheOthers) {
  for (const std::string wrong : {"1970-01-01", "2099-12-31"}) {
    const auto all = series({"2026-05-01", "2026-05-02", wrong, wrong, wrong, "2026-05-03",
                             "2026-05-03", "2026-05-03"});
    EXPECT_EQ(kept(all, {2, 14}), (std::vector<std::int64_t>{1, 2, 5, 7, 8})) << wrong;
  }
  const auto again = series({"2026-05-02", "2026-05-03", "2026-05-02", "2026-05-02"});
  EXPECT_EQ(kept(again, {1, 14}), (std::vector<std::int64_t>{2, 4})) << "the later of one day";
}

class Snapshots : public StoreTest {
 protected:
  Snapshots() : store_(std::make_unique<TractStore>(make())) {
    data_ = sample_records(store_->ids(), true);
    EXPECT_TRUE(worked(store_->apply(as_action(data_, "import"))));
  }
  Result<Snapshot> take(const SnapshotRule& rule = {}) {
    return take_snapshot(woods(), snapshot_folder(woods()), context(), rule);
  }
  [[nodiscard]] fs::path woods() const { return folder_ / "woods.gpkg"; }
  [[nodiscard]] std::vector<Snapshot> all() const {
    return snapshots_of(woods(), snapshot_folder(woods()));
  }
  void tally() {
    Tree tree = data_.trees[0];
    tree.id = store_->ids().next_id<TreeTag>();
    data_.trees.push_back(tree);
    EXPECT_TRUE(worked(store_->apply({"tally", {tree}})));
  }

  std::unique_ptr<TractStore> store_;
  TractData data_;
};

TEST_F(Snapshots, AreTakenWhileTheFileIsWrittenAndTakenBack) {
  const auto made = take();
  ASSERT_TRUE(worked(made));
  const TractData then = data_;
  tally();
  ASSERT_TRUE(worked(take_back(made->path, folder_ / "back.gpkg", context())));
  TractStore back = open("back.gpkg");
  EXPECT_EQ(difference(back.load().value(), then), "");
  EXPECT_TRUE(worked(back.undo())) << "its history came with it";
  EXPECT_EQ(difference(store_->load().value(), data_), "") << "the file itself is as it was";
  EXPECT_EQ(take_back(made->path, woods(), context()).error().code, ErrorCode::cannot_write);
}

TEST_F(Snapshots, RollAndKeepTheirNumbersUnderAClockSetBack) {
  for (int i = 0; i < 6; ++i) {
    tally();
    clock_.ms += i < 3 ? kDay : -20 * 365 * kDay / 3;
    const auto made = take({2, 3});
    ASSERT_TRUE(worked(made));
    EXPECT_EQ(made->number, i + 1);
    EXPECT_EQ(made->day, to_text(today(clock_)));
  }
  const auto left = all();
  ASSERT_EQ(left.size(), 3U);
  EXPECT_EQ(left.back().number, 6);
  EXPECT_EQ(
      difference(TractStore::open(left.back().path, OpenMode::read_only, context())->load().value(),
                 data_),
      "");
}

TEST_F(Snapshots, OfADamagedFileAreNotMadeAndTheOlderOnesStay) {
  const SnapshotRule one{1, 0};
  ASSERT_TRUE(worked(take(one)));
  raw_sql("UPDATE tree SET dbh_tenths = 124");
  EXPECT_EQ(take(one).error().code, ErrorCode::damaged);
  ASSERT_EQ(all().size(), 1U);
  EXPECT_EQ(all()[0].number, 1);
  EXPECT_TRUE(worked(take_back(all()[0].path, folder_ / "back.gpkg", context())));
  std::size_t files = 0;
  for (const auto& entry : fs::directory_iterator(snapshot_folder(woods())))
    files += entry.exists();
  EXPECT_EQ(files, 1U) << "nothing unfinished is left";
}

TEST_F(Snapshots, LeaveOtherFilesAndOtherTractsAlone) {
  fs::create_directory(snapshot_folder(woods()));
  const std::vector<std::string> others = {"woods.gpkg", "woods-00000000.000001.2026-05-04.gpkg",
                                           "woods-copy.gpkg", "notes.txt"};
  for (const std::string& name : others) write_bytes(snapshot_folder(woods()) / name, "mine");
  fs::create_directory(folder_ / "other");
  ASSERT_TRUE(worked(store_->copy_to(folder_ / "other" / "woods.gpkg")));
  ASSERT_TRUE(worked(take_snapshot(folder_ / "other" / "woods.gpkg", snapshot_folder(woods()),
                                   context(), {1, 0})));
  for (int i = 0; i < 3; ++i) ASSERT_TRUE(worked(take({1, 0})));
  EXPECT_EQ(all().size(), 1U);
  EXPECT_EQ(snapshots_of(folder_ / "other" / "woods.gpkg", snapshot_folder(woods())).size(), 1U);
  for (const std::string& name : others)
    EXPECT_EQ(bytes_of(snapshot_folder(woods()) / name), "mine") << name;
}

TEST_F(Snapshots, SayWhyThereIsNone) {
  const auto error = [&](const fs::path& folder) {
    return take_snapshot(woods(), folder, context()).error();
  };
  write_bytes(folder_ / "file", "mine");
  EXPECT_EQ(error(folder_ / "file").code, ErrorCode::cannot_write);
  EXPECT_EQ(error(folder_ / "file" / "deeper").code, ErrorCode::cannot_write);
  EXPECT_FALSE(error(folder_ / "file").fix.empty());
  EXPECT_TRUE(snapshots_of(woods(), folder_ / "nowhere").empty());
}

}  // namespace
}  // namespace oaklight::test
