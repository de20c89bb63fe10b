// What is opened, what is refused, and that a refused file is left as it was.
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <functional>
#include <map>

#include "core/store/file_header.hpp"
#include "core/store/row_text.hpp"
#include "core/store/sqlite_handle.hpp"
#include "tests/store/store_fixture.hpp"

namespace oaklight::test {
namespace {

namespace fs = std::filesystem;

class Opening : public StoreTest {
 protected:
  Opening() {
    TractStore store = make();
    data_ = sample_records(store.ids(), true);
    EXPECT_TRUE(worked(store.apply(as_action(data_, "import"))));
  }
  /// The file is refused for looking and for writing, and no byte of the folder changes.
  ErrorCode refused_untouched(const std::string& name) {
    const auto folder = [&] {
      std::map<std::string, std::string> files;
      for (const auto& entry : fs::directory_iterator(folder_.path()))
        files[entry.path().filename()] = bytes_of(entry.path());
      return files;
    };
    const auto before = folder();
    const Error looking = refused(name, OpenMode::read_only);
    const Error writing = refused(name, OpenMode::read_write);
    EXPECT_TRUE(folder() == before) << "a refused file was touched";
    EXPECT_EQ(looking.code, writing.code);
    EXPECT_FALSE(writing.fix.empty());
    return writing.code;
  }

  TractData data_;
};

TEST_F(Opening, RefusesWhatIsNotThereOrNoFile) {
  EXPECT_EQ(refused_untouched("nowhere.gpkg"), ErrorCode::cannot_open);
  fs::create_directory(folder_ / "folder.gpkg");
  EXPECT_EQ(refused_untouched("folder.gpkg"), ErrorCode::cannot_open);
}

TEST_F(Opening, RefusesWhatIsNotSqlite) {
  write_bytes(folder_ / "empty.gpkg", "");
  EXPECT_EQ(refused_untouched("empty.gpkg"), ErrorCode::not_a_tract_file);
  write_bytes(folder_ / "text.gpkg", std::string(5000, 'x'));
  EXPECT_EQ(refused_untouched("text.gpkg"), ErrorCode::not_a_tract_file);
  write_bytes(folder_ / "short.gpkg", bytes_of(folder_ / "woods.gpkg").substr(0, 99));
  EXPECT_EQ(refused_untouched("short.gpkg"), ErrorCode::not_a_tract_file);
}

TEST_F(Opening, RefusesADatabaseThatIsNoGeoPackage) {
  raw_sql(
      "CREATE TABLE meta (key TEXT, value TEXT); INSERT INTO meta VALUES ('format', "
      "'oaklight tract file')",
      "other.gpkg");
  EXPECT_EQ(refused_untouched("other.gpkg"), ErrorCode::not_a_tract_file);
}

TEST_F(Opening, RefusesAGeoPackageOfAnotherProgram) {
  raw_sql(
      "PRAGMA application_id = 1196444487; PRAGMA user_version = 10300;"
      "CREATE TABLE roads (fid INTEGER PRIMARY KEY)",
      "roads.gpkg");
  EXPECT_EQ(refused_untouched("roads.gpkg"), ErrorCode::not_a_tract_file);
  raw_sql("CREATE TABLE meta (key TEXT, value TEXT); INSERT INTO meta VALUES ('format', 'roads')",
          "roads.gpkg");
  EXPECT_EQ(refused_untouched("roads.gpkg"), ErrorCode::not_a_tract_file);
}

TEST_F(Opening, RefusesAFileThatNeedsANewerProgram) {
  raw_sql("UPDATE meta SET value = '99' WHERE key IN ('step', 'min_reader')");
  EXPECT_EQ(refused_untouched("woods.gpkg"), ErrorCode::file_too_new);
}

TEST_F(Opening, RefusesAFileThatDoesNotSayItsStep) {
  for (const std::string value : {"x", "", "0", "-1", "99999999999999999999", "1.5"}) {
    raw_sql("UPDATE meta SET value = '" + value + "' WHERE key = 'step'");
    EXPECT_EQ(refused_untouched("woods.gpkg"), ErrorCode::damaged) << value;
  }
}

TEST_F(Opening, TakesAFileOfANewerStepThatLetsUsAndKeepsItsNewColumns) {
  raw_sql(
      "UPDATE meta SET value = '99' WHERE key = 'step';"
      "ALTER TABLE tree ADD COLUMN newer TEXT; UPDATE tree SET newer = 'kept'");
  // As the newer program would have written it: its column is part of the checksum.
  const auto columns = raw_sql("SELECT name FROM pragma_table_info('tree') WHERE name <> 'fid'");
  auto db = store::SqliteHandle::open(folder_ / "woods.gpkg", store::Use::read_only);
  ASSERT_TRUE(worked(db));
  std::string list = columns[0];
  for (std::size_t i = 1; i < columns.size(); ++i) list += ", " + columns[i];
  const auto row = db->first("SELECT " + list + " FROM tree");
  raw_sql("UPDATE tree SET row_crc = " + std::to_string(store::row_crc("tree", columns, **row)));

  TractStore store = open();
  EXPECT_EQ(difference(store.load().value(), data_), "");
  data_.trees[0].stems = 9;
  ASSERT_TRUE(worked(store.apply({"correct", {data_.trees[0]}})));
  EXPECT_EQ(difference(store.load().value(), data_), "");
  EXPECT_EQ(raw_sql("SELECT newer FROM tree"), std::vector<std::string>{"kept"});
  EXPECT_TRUE(store.check().value().problems.empty());
}

TEST_F(Opening, RefusesATableThatIsAView) {
  raw_sql(
      "PRAGMA foreign_keys = OFF; DROP VIEW tree_point; ALTER TABLE tree RENAME TO old;"
      "CREATE VIEW tree AS SELECT * FROM old");
  EXPECT_EQ(refused().code, ErrorCode::not_a_tract_file);
  EXPECT_EQ(refused("woods.gpkg", OpenMode::read_only).code, ErrorCode::not_a_tract_file);
}

TEST_F(Opening, RefusesToWriteWhereATriggerWouldDoMoreThanIndex) {
  for (const std::string trigger :
       {"AFTER INSERT ON tree BEGIN DELETE FROM change; END",
        "AFTER UPDATE ON tree BEGIN UPDATE tree SET stems = 9; END",
        "BEFORE UPDATE ON tree BEGIN SELECT randomblob(1000000000); END",
        "BEFORE INSERT ON tree BEGIN SELECT raise(IGNORE); END"}) {
    raw_sql("CREATE TRIGGER rtree_tree_geom_insert " + trigger);
    EXPECT_EQ(refused().code, ErrorCode::not_a_tract_file) << trigger;
    EXPECT_EQ(difference(open("woods.gpkg", OpenMode::read_only).load().value(), data_), "");
    raw_sql("DROP TRIGGER rtree_tree_geom_insert");
  }
  EXPECT_EQ(difference(open().load().value(), data_), "");
}

// GDAL may count its features in a trigger, so such a one is let in; it must not swallow a tree.
TEST_F(Opening, ATriggerThatSwallowsARecordIsTold) {
  raw_sql(
      "CREATE TABLE gpkg_ogr_contents (table_name TEXT, feature_count INTEGER);"
      "INSERT INTO gpkg_ogr_contents VALUES ('tree', 1);"
      "CREATE TRIGGER counts BEFORE INSERT ON tree BEGIN"
      " UPDATE gpkg_ogr_contents SET feature_count = raise(IGNORE); END");
  TractStore store = open();
  Tree tree = data_.trees[0];
  tree.id = store.ids().next_id<TreeTag>();
  const auto applied = store.apply({"tally", {tree}});
  ASSERT_FALSE(applied);
  EXPECT_EQ(applied.error().code, ErrorCode::not_a_tract_file);
  EXPECT_EQ(difference(store.load().value(), data_), "");
}

TEST_F(Opening, ANewFileIsMarkedAsAGeoPackageInItsFirstBytes) {
  const auto header = store::read_file_header(folder_ / "woods.gpkg");
  ASSERT_TRUE(worked(header));
  EXPECT_EQ(header->application_id, 0x47504B47U);
  const std::string bytes = bytes_of(folder_ / "woods.gpkg");
  EXPECT_EQ(bytes.substr(16, 2), std::string("\x10\x00", 2)) << "pages of 4,096 bytes";
  EXPECT_EQ(bytes.substr(60, 4), std::string("\x00\x00\x28\x3C", 4));
  EXPECT_EQ(bytes.substr(68, 4), "GPKG");
}

TEST_F(Opening, ClosingLeavesOneFile) {
  const auto names = [&] {
    std::vector<std::string> found;
    for (const auto& entry : fs::directory_iterator(folder_.path()))
      found.push_back(entry.path().filename());
    return found;
  };
  EXPECT_EQ(names(), std::vector<std::string>{"woods.gpkg"});
  const std::string before = bytes_of(folder_ / "woods.gpkg");
  ASSERT_TRUE(worked(open("woods.gpkg", OpenMode::read_only).load()));
  EXPECT_EQ(names(), std::vector<std::string>{"woods.gpkg"});
  EXPECT_EQ(bytes_of(folder_ / "woods.gpkg"), before);
}

TEST_F(Opening, ALookerThatLeavesDoesNotDisturbAWriter) {
  auto looker = std::make_unique<TractStore>(open("woods.gpkg", OpenMode::read_only));
  ASSERT_TRUE(worked(looker->load()));
  {
    TractStore writer = open();
    data_.trees[0].stems = 8;
    ASSERT_TRUE(worked(writer.apply({"correct", {data_.trees[0]}})));
    EXPECT_EQ(difference(looker->load().value(), data_), "");
    raw_sql("PRAGMA wal_checkpoint(TRUNCATE)");  // the log is empty when the looker leaves
    looker.reset();
    data_.trees[0].stems = 9;
    ASSERT_TRUE(worked(writer.apply({"correct", {data_.trees[0]}})));
  }
  EXPECT_EQ(difference(open().load().value(), data_), "");
}

// Found by a simulated power cut (seed 1436589625, operation 145): the copying of the log into the
// file stopped inside the first page, and the tablet called its own tract "not a tract file".
TEST_F(Opening, ATornFirstPageIsMendedFromTheLog) {
  TractStore store = open();
  // A form that grows makes the file longer, so that the log holds the first page too.
  ASSERT_TRUE(worked(store.set_form_text("tally.form.json", std::string(20'000, 'x'))));
  std::string torn = bytes_of(folder_ / "woods.gpkg");
  std::fill_n(torn.begin(), 512, '\0');
  write_bytes(folder_ / "torn.gpkg", torn);
  write_bytes(folder_ / "torn.gpkg-wal", bytes_of(folder_ / "woods.gpkg-wal"));
  const TractStore mended = open("torn.gpkg");
  EXPECT_EQ(mended.form_text("tally.form.json")->size(), 20'000U);
  EXPECT_EQ(mended.load()->trees.size(), data_.trees.size());
  EXPECT_EQ(bytes_of(folder_ / "torn.gpkg").substr(0, 16), std::string(16, '\0')) << "still torn";
  EXPECT_TRUE(mended.check().value().problems.empty()) << "the check sees what the log holds";

  write_bytes(folder_ / "alone.gpkg", torn);
  EXPECT_EQ(refused("alone.gpkg").code, ErrorCode::not_a_tract_file)
      << "no log, nothing to mend from";
}

TEST_F(Opening, AFileNameThatLooksLikeAnAddressIsAFileName) {
  const std::string odd = "file:woods?mode=memory&x=%41.gpkg";
  {
    TractStore store = make(odd);
    ASSERT_TRUE(worked(store.apply({"name it", {data_.tract}})));
  }
  EXPECT_TRUE(fs::exists(folder_ / odd));
  EXPECT_EQ(open(odd, OpenMode::read_only).load().value().tract.name, data_.tract.name);
}

/// Runs the work as a user without rights in a child and gives its exit code.
int as_nobody(const std::function<int()>& work) {
  const pid_t child = ::fork();
  if (child == 0) {
    if (::geteuid() == 0 && ::seteuid(65534) != 0) ::_exit(99);
    ::_exit(work());
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

class ReadOnlyFolder : public Opening {
 protected:
  void lock() {
    for (const auto& entry : fs::directory_iterator(folder_.path()))
      fs::permissions(entry.path(), fs::perms(0444));
    fs::permissions(folder_.path(), fs::perms(0555));
  }
  ~ReadOnlyFolder() override { fs::permissions(folder_.path(), fs::perms(0700)); }
};

TEST_F(ReadOnlyFolder, IsOpenedForLookingAndNotForWriting) {
  lock();
  EXPECT_EQ(as_nobody([&] {
              const auto store =
                  TractStore::open(folder_ / "woods.gpkg", OpenMode::read_only, context());
              if (!store) return 1;
              const auto loaded = store->load();
              if (!loaded) return 2;
              return difference(*loaded, data_).empty() ? 0 : 3;
            }),
            0);
  EXPECT_EQ(as_nobody([&] {
              const auto error = refused("woods.gpkg", OpenMode::read_write);
              return error.code == ErrorCode::cannot_open ? 0 : 1;
            }),
            0);
}

// Read without its log, such a file would show yesterday's trees and say nothing.
TEST_F(ReadOnlyFolder, AFileWithALogBesideItIsNotReadWithoutTheLog) {
  {
    TractStore store = open();
    data_.trees[0].stems = 9;
    ASSERT_TRUE(worked(store.apply({"correct", {data_.trees[0]}})));
    fs::copy_file(folder_ / "woods.gpkg", folder_ / "copy.gpkg");
    fs::copy_file(folder_ / "woods.gpkg-wal", folder_ / "copy.gpkg-wal");
  }
  lock();
  EXPECT_EQ(as_nobody([&] {
              const auto store =
                  TractStore::open(folder_ / "copy.gpkg", OpenMode::read_only, context());
              if (!store) return store.error().code == ErrorCode::cannot_open ? 0 : 1;
              const auto loaded = store->load();
              return loaded && difference(*loaded, data_).empty() ? 0 : 2;
            }),
            0);
}

}  // namespace
}  // namespace oaklight::test
