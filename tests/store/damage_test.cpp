// A damaged file must say so; it must never give other figures.
#include <set>

#include "tests/store/store_fixture.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

class Damage : public StoreTest {
 protected:
  Damage() {
    TractStore store = make();
    data_ = sample_records(store.ids(), true);
    data_.trees[0].facts.note = "seen from the road";
    EXPECT_TRUE(worked(store.apply(as_action(data_, "import"))));
  }
  [[nodiscard]] std::string bytes() const { return bytes_of(folder_ / "woods.gpkg"); }
  /// What a check finds in a file of these bytes; an error of opening counts as found.
  std::vector<Error> problems_of(const std::string& bytes) {
    write_bytes(folder_ / "damaged.gpkg", bytes);
    auto store = TractStore::open(folder_ / "damaged.gpkg", OpenMode::read_only, context());
    if (!store) return {store.error()};
    auto report = store->check();
    return report ? report->problems : std::vector<Error>{report.error()};
  }

  TractData data_;
};

TEST_F(Damage, ASoundFileHasNoProblems) { EXPECT_TRUE(problems_of(bytes()).empty()); }

TEST_F(Damage, OneChangedByteInARecordIsFoundAndTheRecordNamed) {
  const std::string whole = bytes();
  std::set<std::string> places;
  int taken_wrong = 0;
  for (auto at = whole.find("seen from the road"); at != std::string::npos;
       at = whole.find("seen from the road", at + 1)) {
    std::string damaged = whole;
    damaged[at] = 'S';
    const auto problems = problems_of(damaged);
    ASSERT_FALSE(problems.empty()) << at;
    EXPECT_EQ(problems[0].code, ErrorCode::damaged);
    places.insert(problems[0].where);
    const auto later = TractStore::open(folder_ / "damaged.gpkg", OpenMode::read_only, context(),
                                        DamageCheck::by_caller);
    ASSERT_TRUE(worked(later));
    if (difference(later->load().value(), data_).empty()) continue;  // a line of the history
    ++taken_wrong;
    EXPECT_EQ(later->find_damage().error().where, problems[0].where);
  }
  EXPECT_EQ(taken_wrong, 1) << "loaded before the check, and found by it";
  const std::string record = "tree/" + to_text(data_.trees[0].id);
  EXPECT_EQ(places.count(record), 1U);
  EXPECT_EQ(places.size(), 2U) << "the record, and its line in the history";
}

TEST_F(Damage, LoadRefusesARecordThatAnotherProgramChanged) {
  raw_sql("UPDATE tree SET dbh_tenths = 124");
  const auto loaded = open("woods.gpkg", OpenMode::read_only).load();
  ASSERT_FALSE(loaded);
  EXPECT_EQ(loaded.error().code, ErrorCode::damaged);
  EXPECT_EQ(loaded.error().where, "tree/" + to_text(data_.trees[0].id));
}

TEST_F(Damage, WhoChecksLaterFindsWhatOpeningWouldHaveFound) {
  const auto later = [this] {
    return TractStore::open(folder_ / "woods.gpkg", OpenMode::read_write, context(),
                            DamageCheck::by_caller);
  };
  EXPECT_TRUE(worked(later()->find_damage()));
  raw_sql("UPDATE tree SET dbh_tenths = 124");
  {
    const auto store = later();
    ASSERT_TRUE(worked(store));
    EXPECT_TRUE(worked(store->load())) << "its values are such as can be read";
    EXPECT_EQ(store->find_damage().error().where, "tree/" + to_text(data_.trees[0].id));
  }
  raw_sql("PRAGMA foreign_keys = OFF; DELETE FROM tree; DELETE FROM plot");
  EXPECT_EQ(later()->find_damage().error().code, ErrorCode::damaged);
}

TEST_F(Damage, IsLookedForBesideAWriterAndStopsWhenTold) {
  TractStore writer = open();
  const auto reader = TractStore::open(folder_ / "woods.gpkg", OpenMode::read_only, context(),
                                       DamageCheck::by_caller);
  ASSERT_TRUE(worked(reader));
  data_.trees[0].stems = 7;
  ASSERT_TRUE(worked(writer.apply({"correct", {data_.trees[0]}})));
  EXPECT_TRUE(worked(reader->find_damage()));
  std::stop_source stop;
  stop.request_stop();
  EXPECT_EQ(reader->find_damage(stop.get_token()).error().code, ErrorCode::busy);
}

TEST_F(Damage, ATombstoneIsCheckedToo) {
  {
    TractStore store = open();
    ASSERT_TRUE(worked(store.apply({"remove", {Remove{data_.trees[0].id}}})));
  }
  raw_sql("UPDATE tree SET deleted = 0");
  EXPECT_EQ(open().load().error().code, ErrorCode::damaged);
}

// Nothing silent: whatever one flipped bit does, the records are refused or they are the same.
TEST_F(Damage, NoFlippedBitChangesARecordUnnoticed) {
  const std::string whole = bytes();
  int refusals = 0;
  for (int i = 0; i < 400; ++i) {
    std::string damaged = whole;
    const std::size_t at = chance_() % whole.size();
    const unsigned bit = 1U << (chance_() % 8);
    damaged[at] = static_cast<char>(static_cast<unsigned char>(damaged[at]) ^ bit);
    write_bytes(folder_ / "damaged.gpkg", damaged);
    const auto store = TractStore::open(folder_ / "damaged.gpkg", OpenMode::read_only, context());
    const auto loaded = store ? store->load() : Result<TractData>(store.error());
    if (!loaded) {
      ++refusals;
    } else {
      EXPECT_EQ(difference(*loaded, data_), "") << "byte " << at << " bit " << bit;
    }
  }
  EXPECT_GT(refusals, 0);
}

TEST_F(Damage, AFileWithABrokenPageOpensForLookingOnly) {
  std::string damaged = bytes();
  // Overwrites every page but the first, which holds the header and the list of tables.
  for (std::size_t at = 4096 * 20; at < damaged.size(); ++at) damaged[at] = '\x5a';
  write_bytes(folder_ / "damaged.gpkg", damaged);
  EXPECT_EQ(refused("damaged.gpkg").code, ErrorCode::damaged);
  EXPECT_FALSE(problems_of(damaged).empty());
}

TEST_F(Damage, ALinkToNowhereIsFound) {
  raw_sql("PRAGMA foreign_keys = OFF; UPDATE regen SET plot_uid = '" + to_text(data_.stands[0].id) +
          "'");
  EXPECT_EQ(refused().code, ErrorCode::damaged);
  const auto report = open("woods.gpkg", OpenMode::read_only).check().value();
  std::set<std::string> places;
  for (const Error& problem : report.problems) places.insert(problem.where);
  EXPECT_EQ(places.count("regen"), 1U);
  EXPECT_EQ(places.count("regen/" + to_text(data_.regens[0].id) + "/plot_uid"), 1U);
}

TEST_F(Damage, TheCheckSeesWhatOthersDidToTheTables) {
  raw_sql(
      "DROP INDEX tree_plot; UPDATE gpkg_contents SET last_change = '2026-05-04 10:00:00'"
      " WHERE table_name = 'tree'; UPDATE gpkg_contents SET max_x = -90 WHERE table_name = 'plot';"
      "PRAGMA user_version = 10200;");
  const auto report = open().check().value();
  std::set<std::string> said;
  for (const Error& problem : report.problems) said.insert(problem.what);
  EXPECT_EQ(said, (std::set<std::string>{
                      "The file is not marked as GeoPackage version 1.3.",
                      "The index \"tree_plot\" is not as Oaklight makes it.",
                      "A time of last change is not UTC with three decimals (requirement 15).",
                      "A time of last change is of no action in the file.",
                      "The bounding box of a layer is not that of its shapes."}));
}

TEST_F(Damage, TheCheckCountsRecordsInUseAndRemovedOnes) {
  TractStore store = open();
  ASSERT_TRUE(worked(store.apply({"remove", {Remove{data_.trees[0].id}}})));
  const auto report = store.check().value();
  EXPECT_TRUE(report.problems.empty());
  ASSERT_EQ(report.records.size(), 14U);
  EXPECT_EQ(report.records[0], (TableCount{"tract", 1, 0}));
  EXPECT_EQ(report.records[4], (TableCount{"tree", 0, 1}));
  EXPECT_EQ(report.records[6], (TableCount{"walk_tree", 2, 0}));
  EXPECT_FALSE(report.done.empty());
}

}  // namespace
}  // namespace oaklight::test
