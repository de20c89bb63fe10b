// A tract file made to do harm: opened safely, or refused, and nothing else on the disk changes.
#include <algorithm>
#include <functional>

#include "core/store/rescue.hpp"
#include "core/store/row_text.hpp"
#include "core/store/sqlite_handle.hpp"
#include "tests/store/store_fixture.hpp"

namespace oaklight::test {
namespace {

namespace fs = std::filesystem;

class Hostile : public StoreTest {
 protected:
  Hostile() {
    {
      TractStore store = make();
      data_ = sample_records(store.ids(), true);
      EXPECT_TRUE(worked(store.apply(as_action(data_, "import"))));
    }
    write_bytes(victim(), kPrecious);
  }
  [[nodiscard]] fs::path victim() const { return folder_ / "precious.txt"; }
  [[nodiscard]] fs::path woods() const { return folder_ / "woods.gpkg"; }
  void expect_victim_unharmed() { EXPECT_EQ(bytes_of(victim()), kPrecious); }
  /// Opens the file for writing and works on it, as far as it lets itself.
  void work_on_it() {
    auto store = TractStore::open(woods(), OpenMode::read_write, context());
    if (!store) return;
    Tree tree = data_.trees[0];
    tree.id = store->ids().next_id<TreeTag>();
    (void)store->apply({"tally", {tree}});
    (void)store->copy_to(folder_ / "copy.gpkg");
  }
  /// Gives a table another text than the schema did, its rows as they are.
  void rewrite(const std::string& table, const std::string& from, const std::string& to) {
    raw_sql("PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace(sql, '" + from +
            "', '" + to + "') WHERE name = '" + table + "'; PRAGMA writable_schema = RESET;");
  }
  /// Refused for looking and for writing, without a change; its records can still be rescued.
  void expect_refused_and_rescued() {
    const std::string before = bytes_of(woods());
    EXPECT_EQ(refused("woods.gpkg", OpenMode::read_only).code, ErrorCode::damaged);
    const Error writing = refused();
    EXPECT_EQ(writing.code, ErrorCode::damaged);
    EXPECT_NE(writing.fix.find("rescue"), std::string::npos) << writing.fix;
    EXPECT_EQ(bytes_of(woods()), before);
    fs::remove(folder_ / "new.gpkg");
    EXPECT_TRUE(worked(rescue_tract(woods(), folder_ / "new.gpkg", context())));
    EXPECT_EQ(difference(open("new.gpkg").load().value(), data_), "");
  }

  static constexpr const char* kPrecious = "precious";
  TractData data_;
};

/// The journal of a rollback that says it belongs together with another one, of that name.
std::string journal_naming(const std::string& other, std::size_t pages) {
  const auto number = [](std::uint32_t x) {
    std::string text;
    for (int shift = 24; shift >= 0; shift -= 8) text += static_cast<char>(x >> shift);
    return text;
  };
  const std::string mark{"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7", 8};
  std::uint32_t sum = 0;
  for (const char c : other) sum += static_cast<std::uint32_t>(c);
  std::string text = mark + number(0) + number(1) + number(static_cast<std::uint32_t>(pages)) +
                     number(512) + number(4096);
  text.resize(512, '\0');
  return text + number(0x40000000 / 4096 + 1) + other +
         number(static_cast<std::uint32_t>(other.size())) + number(sum) + mark;
}

// SQLite takes the other journal away after the rollback, whatever file that is.
TEST_F(Hostile, AJournalThatNamesAnotherFileTakesNothingAway) {
  const std::string before = bytes_of(woods());
  write_bytes(folder_ / "woods.gpkg-journal",
              journal_naming(victim().string(), before.size() / 4096));
  EXPECT_EQ(refused().code, ErrorCode::not_a_tract_file);
  EXPECT_EQ(refused("woods.gpkg", OpenMode::read_only).code, ErrorCode::not_a_tract_file);
  expect_victim_unharmed();
  EXPECT_TRUE(worked(rescue_tract(woods(), folder_ / "new.gpkg", context())));
  expect_victim_unharmed();
  EXPECT_EQ(bytes_of(woods()), before);
  // What would happen without the guard, so that this test cannot pass for nothing.
  ASSERT_EQ(raw_sql("SELECT count(*) > 0 FROM sqlite_schema"), std::vector<std::string>{"1"});
  EXPECT_FALSE(fs::exists(victim()));
}

TEST_F(Hostile, ALinkBesideTheFileWritesNothingElsewhere) {
  for (const char* ending : {"-wal", "-journal", "-shm", ".lock", ".new", ".before-step-6.gpkg"}) {
    const fs::path link = ending[1] == 'b' ? folder_ / "woods.before-step-6.gpkg"
                                           : fs::path(woods().string() + ending);
    fs::create_symlink(victim(), link);
    work_on_it();
    (void)TractStore::open(woods(), OpenMode::read_only, context());
    expect_victim_unharmed();
    fs::remove(link);
    fs::remove(folder_ / "copy.gpkg");
  }
  for (const char* ending : {"copy.gpkg", "copy.gpkg.new", "new.gpkg.rescue", "new.gpkg.new",
                             "new.gpkg.rescue-wal", "new.gpkg.rescue-journal"}) {
    fs::create_symlink(victim(), folder_ / ending);
    work_on_it();
    (void)rescue_tract(woods(), folder_ / "new.gpkg", context());
    (void)TractStore::create(folder_ / "fresh.gpkg", context());
    expect_victim_unharmed();
    for (const char* left : {"copy.gpkg", "copy.gpkg.new", "new.gpkg", "fresh.gpkg"})
      fs::remove(folder_ / left);
    fs::remove(folder_ / ending);
  }
  EXPECT_TRUE(worked(open().load()));
}

// A link to nothing is a place where a new file would be made.
TEST_F(Hostile, ALinkToNothingBesideTheFileMakesNoFileElsewhere) {
  const fs::path elsewhere = folder_ / "elsewhere.txt";
  for (const char* name : {"woods.gpkg-wal", "woods.gpkg-journal", "woods.gpkg-shm",
                           "woods.gpkg.lock", "copy.gpkg.new", "copy.gpkg"}) {
    fs::create_symlink(elsewhere, folder_ / name);
    work_on_it();
    EXPECT_FALSE(fs::exists(elsewhere)) << name;
    fs::remove(folder_ / name);
    fs::remove(folder_ / "copy.gpkg");
  }
}

TEST_F(Hostile, AnotherNameOfTheFileDoesNotGetRoundTheLock) {
  fs::create_symlink(woods(), folder_ / "link.gpkg");
  {
    const TractStore writer = open();
    EXPECT_EQ(refused("link.gpkg").code, ErrorCode::busy);
  }
  const TractStore writer = open("link.gpkg");
  EXPECT_EQ(refused().code, ErrorCode::busy);
}

TEST_F(Hostile, RulesThatRunWhenRowsAreReadAreNotRun) {
  const std::string slow = "hex(zeroblob(30000000)) <> ''''";
  rewrite("tree", "note TEXT NOT NULL", "note TEXT NOT NULL CHECK (" + slow + ")");
  expect_refused_and_rescued();
}

TEST_F(Hostile, AColumnThatIsWorkedOutIsRefused) {
  raw_sql(
      "ALTER TABLE tree ADD COLUMN more TEXT GENERATED ALWAYS AS (hex(zeroblob(30000000))) "
      "VIRTUAL");
  expect_refused_and_rescued();
}

TEST_F(Hostile, ADefaultOrAPlainColumnOfAGisIsLetIn) {
  raw_sql("ALTER TABLE tree ADD COLUMN colour TEXT; ALTER TABLE plot ADD COLUMN seen INTEGER");
  EXPECT_EQ(difference(open().load().value(), data_), "");
  raw_sql("CREATE INDEX by_species ON tree (species_fia, dbh_tenths)");
  EXPECT_EQ(difference(open().load().value(), data_), "");
}

TEST_F(Hostile, AnIndexThatRunsSomethingIsRefused) {
  for (const std::string index :
       {"CREATE INDEX evil ON tree (hex(zeroblob(30000000)))",
        "CREATE INDEX evil ON tree (note) WHERE length(hex(zeroblob(30000000))) > 0"}) {
    raw_sql(index);
    expect_refused_and_rescued();
    raw_sql("DROP INDEX evil");
  }
}

TEST_F(Hostile, ATableWithoutRowNumbersIsRefused) {
  raw_sql(
      "PRAGMA foreign_keys = OFF; DROP VIEW tree_point;"
      "CREATE TABLE other AS SELECT * FROM regen; DROP TABLE regen;"
      "CREATE TABLE regen (uid TEXT PRIMARY KEY, deleted INTEGER, changed_at TEXT, row_crc INTEGER,"
      " plot_uid TEXT, species_fia INTEGER, height_class TEXT, count INTEGER) WITHOUT ROWID;"
      "INSERT INTO regen SELECT uid, deleted, changed_at, row_crc, plot_uid, species_fia,"
      " height_class, count FROM other; DROP TABLE other;");
  EXPECT_EQ(refused("woods.gpkg", OpenMode::read_only).code, ErrorCode::damaged);
  EXPECT_EQ(refused().code, ErrorCode::damaged);
}

TEST_F(Hostile, ATableThatIsVirtualIsRefused) {
  raw_sql(
      "PRAGMA foreign_keys = OFF; DROP VIEW tree_point; DROP TABLE tree;"
      "CREATE VIRTUAL TABLE tree USING rtree(fid, x, y, z, w)");
  EXPECT_EQ(refused("woods.gpkg", OpenMode::read_only).code, ErrorCode::damaged);
  EXPECT_EQ(refused().code, ErrorCode::damaged);
}

TEST_F(Hostile, AViewThatNeverEndsIsNotRead) {
  raw_sql(
      "DROP VIEW tree_point; CREATE VIEW tree_point AS WITH RECURSIVE n(x) AS"
      " (SELECT 1 UNION ALL SELECT x + 1 FROM n) SELECT x AS fid, NULL AS geom FROM n");
  TractStore store = open();
  EXPECT_EQ(difference(store.load().value(), data_), "");
  const auto report = store.check().value();
  EXPECT_FALSE(report.problems.empty()) << "the view is not ours";
  ASSERT_TRUE(worked(store.copy_to(folder_ / "copy.gpkg")));
}

TEST_F(Hostile, ATriggerThatNeverEndsIsRefusedForWritingAndNotRunForLooking) {
  raw_sql(
      "CREATE TABLE gpkg_ogr_contents (table_name TEXT, feature_count INTEGER);"
      "CREATE TRIGGER evil AFTER INSERT ON tree BEGIN INSERT INTO gpkg_ogr_contents"
      " SELECT 'x', value FROM (WITH RECURSIVE n(value) AS (SELECT 1 UNION ALL SELECT value + 1"
      " FROM n) SELECT value FROM n); END");
  EXPECT_EQ(difference(open("woods.gpkg", OpenMode::read_only).load().value(), data_), "");
  EXPECT_EQ(refused().code, ErrorCode::not_a_tract_file);
}

TEST_F(Hostile, AHugeValueIsAnErrorAndNotTheEndOfTheProgram) {
  raw_sql("UPDATE tree SET note = hex(zeroblob(40000000))");
  const auto store = TractStore::open(woods(), OpenMode::read_only, context());
  if (store) {
    EXPECT_FALSE(store->load());
  }
  const auto report = rescue_tract(woods(), folder_ / "new.gpkg", context());
  ASSERT_TRUE(worked(report));
  EXPECT_FALSE(report->lost.empty());
}

TEST_F(Hostile, ValuesOfAnotherTypeAreDamage) {
  for (const std::string change :
       {"UPDATE stand SET name = x'00ff'", "UPDATE stand SET area_ac = 'many'",
        "UPDATE plot SET geom = 'here'", "UPDATE stump SET height_hundredths = 1e300",
        "UPDATE walk_tree SET deleted = 'maybe'", "UPDATE plot SET changed_at = zeroblob(24)"}) {
    raw_sql("PRAGMA ignore_check_constraints = ON; " + change);
    const auto store = TractStore::open(woods(), OpenMode::read_only, context());
    EXPECT_TRUE(!store || !store->load()) << change;
    fs::remove(folder_ / "new.gpkg");
    EXPECT_TRUE(worked(rescue_tract(woods(), folder_ / "new.gpkg", context()))) << change;
    EXPECT_EQ(difference(open("new.gpkg").load().value(), data_), "")
        << change << ": the history still says what it was";
  }
}

TEST_F(Hostile, OddPageSizesAreReadAndTold) {
  for (const std::string size : {"512", "65536"}) {
    raw_sql("PRAGMA journal_mode = DELETE; PRAGMA page_size = " + size + "; VACUUM");
    const auto store = TractStore::open(woods(), OpenMode::read_only, context());
    ASSERT_TRUE(worked(store)) << size;
    EXPECT_EQ(difference(store->load().value(), data_), "");
    EXPECT_FALSE(store->check().value().problems.empty());
  }
}

// Read back by undo; what is nested deeper than any program's stack must not end it.
TEST_F(Hostile, ADeeplyNestedLineOfTheHistoryIsDamage) {
  const std::string deep(300'000, '[');
  const std::vector<std::string> columns = {"action_uid",  "table_name", "row_uid",
                                            "before_json", "after_json", "row_crc"};
  const std::vector<std::string> texts = {deep, R"({"uid":)" + deep, "\xff\xfe{}"};
  for (const std::string& json : texts) {
    raw_sql("UPDATE change SET after_json = CAST(x'' AS TEXT)");
    auto db = store::SqliteHandle::open(woods(), store::Use::write);
    ASSERT_TRUE(worked(db));
    ASSERT_TRUE(worked(db->run("UPDATE change SET after_json = ?1", {json})));
    std::vector<store::Row> lines;
    ASSERT_TRUE(worked(db->each(
        "SELECT action_uid, table_name, row_uid, before_json, after_json, row_crc, seq FROM change",
        {}, [&](const store::Row& row) -> Status {
          lines.push_back(row);
          return Done{};
        })));
    for (store::Row& line : lines) {
      const store::Value seq = line.back();
      line.pop_back();
      ASSERT_TRUE(worked(db->run("UPDATE change SET row_crc = ?1 WHERE seq = ?2",
                                 {store::row_crc("change", columns, line), seq})));
    }
    db = Error{ErrorCode::no_data, "closed", "", ""};
    {
      TractStore store = open();
      EXPECT_EQ(store.undo().error().code, ErrorCode::damaged);
      EXPECT_EQ(difference(store.load().value(), data_), "");
    }
    fs::remove(folder_ / "new.gpkg");
    EXPECT_TRUE(worked(rescue_tract(woods(), folder_ / "new.gpkg", context())));
  }
}

}  // namespace
}  // namespace oaklight::test
