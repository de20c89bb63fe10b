// Whatever happened to a file, each record that its bytes still hold comes out of it, and what does
// not is told.
#include "core/store/rescue.hpp"

#include <algorithm>

#include "core/store/page_reader.hpp"
#include "tests/store/store_fixture.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

namespace fs = std::filesystem;
using store::PageReader;

constexpr std::size_t kPage = PageReader::kPageBytes;

class Rescue : public StoreTest {
 protected:
  /// A file with a record of each kind and many trees, so that tables have pages that lead to
  /// others; some of them corrected and some removed.
  Rescue() {
    fill();
    whole_ = bytes_of(folder_ / "woods.gpkg");
  }
  void fill() {
    TractStore store = make();
    data_ = sample_records(store.ids(), true);
    Tree tree = data_.trees[0];
    for (int i = 0; i < 400; ++i) {
      tree.id = store.ids().next_id<TreeTag>();
      tree.facts.note = "tree " + std::to_string(i);
      data_.trees.push_back(tree);
    }
    EXPECT_TRUE(worked(store.apply(as_action(data_, "import"))));
    for (int i = 0; i < 20; ++i) {
      data_.trees[static_cast<std::size_t>(10 * i)].stems = 2 + i;
      EXPECT_TRUE(
          worked(store.apply({"correct", {data_.trees[static_cast<std::size_t>(10 * i)]}})));
    }
    EXPECT_TRUE(worked(store.apply({"remove", {Remove{data_.trees.back().id}}})));
    data_.trees.pop_back();
  }

  /// Rescues a file of these bytes.
  Result<RescueReport> rescue(const std::string& bytes) {
    write_bytes(folder_ / "damaged.gpkg", bytes);
    fs::remove(folder_ / "new.gpkg");
    auto report = rescue_tract(folder_ / "damaged.gpkg", folder_ / "new.gpkg", context());
    EXPECT_EQ(bytes_of(folder_ / "damaged.gpkg"), bytes) << "the old file was touched";
    EXPECT_FALSE(fs::exists(folder_ / "new.gpkg.rescue"));
    EXPECT_FALSE(fs::exists(folder_ / "new.gpkg.new"));
    return report;
  }
  /// Nothing of the records is lost, and the new file can be worked on.
  void expect_all(const Result<RescueReport>& report) {
    ASSERT_TRUE(worked(report));
    TractStore store = open("new.gpkg");
    EXPECT_EQ(difference(store.load().value(), data_), "");
    EXPECT_TRUE(store.check().value().problems.empty());
    Tree tree = data_.trees[0];
    tree.id = store.ids().next_id<TreeTag>();
    EXPECT_TRUE(worked(store.apply({"tally", {tree}})));
  }
  /// Each tree of the new file is one of ours, and as it last was unless it is told that it may not
  /// be; gives how many there are.
  std::size_t expect_some(const Result<RescueReport>& report) {
    if (!report) return 0;
    const auto trees = open("new.gpkg").load().value().trees;
    for (const Tree& tree : trees) {
      TractData now;
      now.trees = {tree};
      TractData last;
      for (const Tree& t : data_.trees) {
        if (t.id == tree.id) last.trees = {t};
      }
      const std::string where = "tree/" + to_text(tree.id);
      const bool told = std::any_of(report->lost.begin(), report->lost.end(),
                                    [&](const Error& e) { return e.where == where; });
      EXPECT_TRUE(told || difference(now, last).empty()) << where;
    }
    return trees.size();
  }
  /// Pages of a table that lead to others, or that hold its rows.
  std::vector<std::size_t> pages_of(const std::string& table, bool leaves) {
    const PageReader pages(folder_ / "woods.gpkg");
    for (const auto& root : pages.roots()) {
      if (root.table != table) continue;
      const auto tree = pages.tree(root.page);
      if (!leaves) return {root.page};
      return {tree.leaves.begin(), tree.leaves.end()};
    }
    ADD_FAILURE() << table;
    return {};
  }
  static void spoil(std::string& bytes, std::size_t page, char with = '\x5a') {
    std::fill_n(bytes.begin() + static_cast<std::ptrdiff_t>((page - 1) * kPage), kPage, with);
  }
  static std::int64_t kept(const RescueReport& report, const std::string& table) {
    for (const RescuedTable& t : report.tables) {
      if (t.table == table) return t.kept;
    }
    return -1;
  }

  TractData data_;
  std::string whole_;
};

TEST_F(Rescue, OfASoundFileLosesNothing) {
  const auto report = rescue(whole_);
  expect_all(report);
  EXPECT_TRUE(report->lost.empty());
  EXPECT_TRUE(report->notes.empty());
  EXPECT_EQ(kept(*report, "tree"), 401) << "removed ones too";
  EXPECT_EQ(kept(*report, "user_action"), 21);
  const auto before = open().history(100).value();
  fs::remove(folder_ / "new.gpkg");
  ASSERT_TRUE(worked(rescue(whole_)));
  const auto after = open("new.gpkg").history(100).value();
  ASSERT_EQ(after.size(), before.size());
  for (std::size_t i = 0; i < after.size(); ++i) {
    EXPECT_EQ(after[i].id, before[i].id);
    EXPECT_EQ(after[i].rows, before[i].rows);
  }
}

TEST_F(Rescue, UndoGoesOnInTheNewFile) {
  ASSERT_TRUE(worked(rescue(whole_)));
  TractStore old = open();
  TractStore store = open("new.gpkg");
  for (int i = 0; i < 21; ++i) {
    ASSERT_TRUE(worked(old.undo()));
    ASSERT_TRUE(worked(store.undo()));
    ASSERT_EQ(difference(store.load().value(), old.load().value()), "") << i;
  }
  EXPECT_TRUE(store.load().value().trees.empty());
}

TEST_F(Rescue, WithoutTheHeader) {
  for (const std::size_t bytes : {16U, 100U}) {
    std::string damaged = whole_;
    std::fill_n(damaged.begin(), bytes, '\0');
    const auto report = rescue(damaged);
    expect_all(report);
    EXPECT_TRUE(report->lost.empty());
    EXPECT_FALSE(report->notes.empty());
  }
}

TEST_F(Rescue, WithoutTheListOfTables) {
  std::string damaged = whole_;
  spoil(damaged, 1);
  const auto report = rescue(damaged);
  expect_all(report);
  EXPECT_EQ(kept(*report, "tree"), 401);
}

TEST_F(Rescue, WithoutThePagesThatLeadToOthers) {
  for (const std::string table : {"tree", "change"}) {
    std::string damaged = whole_;
    for (const std::size_t page : pages_of(table, false)) spoil(damaged, page);
    EXPECT_FALSE(TractStore::open(folder_ / "woods.gpkg", OpenMode::read_only, context())
                     ->check()
                     .value()
                     .problems.size() > 0);
    const auto report = rescue(damaged);
    expect_all(report);
    ASSERT_EQ(report->lost.size(), 1U);
    EXPECT_EQ(report->lost[0].where, table);
  }
}

// What is lost with the rows themselves is still in the history.
TEST_F(Rescue, WithoutATablesRowsTakesThemFromTheHistory) {
  for (const std::string table : {"tree", "plot", "walk_tree"}) {
    std::string damaged = whole_;
    for (const std::size_t page : pages_of(table, true)) spoil(damaged, page, '\0');
    const auto report = rescue(damaged);
    expect_all(report);
    std::int64_t from_history = 0;
    for (const RescuedTable& t : report->tables) from_history += t.from_history;
    EXPECT_GT(from_history, 0) << table;
  }
}

TEST_F(Rescue, WithoutTheHistoryKeepsTheRecordsAndSaysWhatCannotBeUndone) {
  std::string damaged = whole_;
  for (const char* table : {"change", "user_action"}) {
    for (const std::size_t page : pages_of(table, true)) spoil(damaged, page);
  }
  const auto report = rescue(damaged);
  expect_all(report);
  std::vector<std::string> places;
  for (const Error& lost : report->lost) places.push_back(lost.where);
  EXPECT_NE(std::find(places.begin(), places.end(), "user_action"), places.end());
  EXPECT_NE(std::find(places.begin(), places.end(), "change"), places.end());
}

// An action whose changes are known in part would be undone in part.
TEST_F(Rescue, AnActionThatLostAChangeIsNotUndoneByHalf) {
  std::string damaged = whole_;
  spoil(damaged, pages_of("change", true)[3]);
  ASSERT_TRUE(worked(rescue(damaged)));
  TractStore store = open("new.gpkg");
  while (store.undo()) {
    const std::size_t trees = store.load().value().trees.size();
    EXPECT_TRUE(trees == 400 || trees == 401) << trees;
  }
}

TEST_F(Rescue, ARowWithAWrongChecksumIsToldByNameAndTakenFromTheHistory) {
  std::string damaged = whole_;
  const auto at = damaged.find("tree 123");
  ASSERT_NE(at, std::string::npos);
  for (auto i = at; i != std::string::npos; i = damaged.find("tree 123", i + 1)) damaged[i] = 'T';
  const auto report = rescue(damaged);
  ASSERT_TRUE(worked(report));
  const std::string uid = to_text(data_.trees[124].id);
  EXPECT_TRUE(std::any_of(report->lost.begin(), report->lost.end(),
                          [&](const Error& e) { return e.where == "tree/" + uid; }));
  EXPECT_EQ(kept(*report, "tree"), 400) << "its line in the history is spoiled too";
  EXPECT_EQ(expect_some(report), data_.trees.size() - 1);
}

// A plot of which nothing is left cannot be made up; its trees are told with all that they say.
TEST_F(Rescue, WhatBelongsToALostRecordIsToldWithItsValues) {
  std::string damaged = whole_;
  for (const char* table : {"plot", "change"}) {
    for (const std::size_t page : pages_of(table, true)) spoil(damaged, page);
  }
  const auto report = rescue(damaged);
  ASSERT_TRUE(worked(report));
  EXPECT_EQ(kept(*report, "plot"), 0);
  EXPECT_EQ(kept(*report, "tree"), 0);
  const auto told = std::count_if(report->lost.begin(), report->lost.end(), [](const Error& e) {
    return e.where.starts_with("tree/") && e.what.find("its plot is lost") != std::string::npos &&
           e.what.find("\"dbh_tenths\":123") != std::string::npos;
  });
  EXPECT_EQ(told, 401);
  EXPECT_EQ(kept(*report, "stand"), 1);
}

TEST_F(Rescue, OfATornEndKeepsWhatIsThere) {
  std::size_t most = 0;
  for (const double share : {0.95, 0.7, 0.4, 0.2}) {
    const auto size = static_cast<std::size_t>(share * static_cast<double>(whole_.size()));
    const auto report = rescue(whole_.substr(0, size));
    if (share > 0.9) {
      ASSERT_TRUE(worked(report));
    }
    most = std::max(most, expect_some(report));
  }
  EXPECT_GT(most, 300U);
}

TEST_F(Rescue, OfAnyPageOverwrittenGivesNoOtherRecords) {
  const std::size_t pages = whole_.size() / kPage;
  for (int i = 0; i < 25; ++i) {
    std::string damaged = whole_;
    for (int n = 0; n < 4; ++n) {
      const std::size_t page = chance_() % pages;
      for (std::size_t at = page * kPage; at < (page + 1) * kPage; ++at)
        damaged[at] = static_cast<char>(chance_());
    }
    const auto report = rescue(damaged);
    ASSERT_TRUE(worked(report));
    const std::size_t trees = expect_some(report);
    EXPECT_TRUE(trees == data_.trees.size() || !report->lost.empty()) << "lost and not told";
  }
}

TEST_F(Rescue, TakesInWhatIsStillInTheLog) {
  std::string log;
  std::string main;
  {
    TractStore store = open();
    data_.trees[5].stems = 77;
    ASSERT_TRUE(worked(store.apply({"correct", {data_.trees[5]}})));
    main = bytes_of(folder_ / "woods.gpkg");
    log = bytes_of(folder_ / "woods.gpkg-wal");
  }
  for (const bool header : {true, false}) {
    if (!header) std::fill_n(main.begin(), 16, '\0');
    write_bytes(folder_ / "damaged.gpkg-wal", log);
    const auto report = rescue(main);
    expect_all(report);
    EXPECT_TRUE(report->lost.empty());
    EXPECT_EQ(bytes_of(folder_ / "damaged.gpkg-wal"), log);
    EXPECT_FALSE(fs::exists(folder_ / "damaged.gpkg-shm"));
  }
}

TEST_F(Rescue, RefusesWhatItCannotOrMustNotDo) {
  const auto code = [&](const fs::path& from, const fs::path& to) {
    const auto report = rescue_tract(from, to, context());
    return report ? ErrorCode::no_data : report.error().code;
  };
  const fs::path woods = folder_ / "woods.gpkg";
  EXPECT_EQ(code(folder_ / "nowhere.gpkg", folder_ / "new.gpkg"), ErrorCode::cannot_open);
  EXPECT_EQ(code(woods, folder_ / "new.db"), ErrorCode::cannot_write);
  EXPECT_EQ(code(woods, woods), ErrorCode::cannot_write);
  EXPECT_EQ(code(woods, folder_ / "no" / "new.gpkg"), ErrorCode::cannot_write);
  EXPECT_EQ(bytes_of(woods), whole_);
  write_bytes(folder_ / "text.gpkg", std::string(50'000, 'x'));
  EXPECT_EQ(code(folder_ / "text.gpkg", folder_ / "new.gpkg"), ErrorCode::not_a_tract_file);
  write_bytes(folder_ / "empty.gpkg", "");
  EXPECT_EQ(code(folder_ / "empty.gpkg", folder_ / "new.gpkg"), ErrorCode::not_a_tract_file);
  raw_sql("UPDATE meta SET value = '99' WHERE key IN ('step', 'min_reader')");
  EXPECT_EQ(code(woods, folder_ / "new.gpkg"), ErrorCode::file_too_new);
  raw_sql("UPDATE meta SET value = '5' WHERE key IN ('step', 'min_reader')");
  {
    const TractStore writer = open();
    EXPECT_EQ(code(woods, folder_ / "new.gpkg"), ErrorCode::busy);
  }
  EXPECT_FALSE(fs::exists(folder_ / "new.gpkg"));
  EXPECT_FALSE(fs::exists(folder_ / "new.gpkg.rescue"));
}

}  // namespace
}  // namespace oaklight::test
