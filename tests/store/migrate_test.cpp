// An older file becomes one of today, whole or not at all.
#include "core/store/migrate.hpp"

#include <algorithm>

#include "core/base/embedded.hpp"
#include "core/store/new_file.hpp"
#include "core/store/records.hpp"
#include "tests/store/store_fixture.hpp"

namespace oaklight::test {
namespace {

namespace fs = std::filesystem;
using store::SchemaStep;

class Migration : public StoreTest {
 protected:
  /// A file as a program that knew only the first `count` steps would have made it.
  void make_old_file(std::size_t count) {
    auto db = store::SqliteHandle::open(folder_ / "woods.gpkg", store::Use::make);
    ASSERT_TRUE(worked(db));
    const std::span<const SchemaStep> old(steps_.data(), count);
    ASSERT_TRUE(worked(db->transaction([&]() -> Status {
      const auto made = store::make_tables(*db, old, "2022-02-22T19:22:22.000Z");
      if (!made) return made;
      const auto table = store::RecordTable::read(*db, "tract");
      auto row = store::row_of(*table, store::Row(table->columns().size()), tract_);
      table->at(*row, "uid") = std::string("017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
      table->at(*row, "changed_at") = std::string("2022-02-22T19:22:22.000Z");
      return table->insert(*db, *row);
    })));
  }
  store::FileState state_of(const std::string& name) {
    auto db = store::SqliteHandle::open(folder_ / name, store::Use::read_only);
    return store::read_state(*db).value();
  }
  std::vector<SchemaStep> with_step(const std::string& sql, int min_reader = 1) {
    auto steps = steps_;
    steps.push_back({static_cast<int>(steps.size()) + 1, "invented", min_reader, "nothing", sql});
    return steps;
  }
  Status bring_up(const std::vector<SchemaStep>& steps) {
    return store::bring_up_to_date(folder_ / "woods.gpkg", steps, state_of("woods.gpkg"));
  }
  [[nodiscard]] std::string schema(const std::string& name) {
    std::string all;
    for (const auto& sql : raw_sql("SELECT sql FROM sqlite_schema ORDER BY name", name)) all += sql;
    return all;
  }

  std::vector<SchemaStep> steps_ = store::read_steps(embedded_schema()).value();
  Tract tract_{"Cold Hollow", "WV", "", "", "", "", "", {}, false};
};

TEST_F(Migration, AnOlderFileIsBroughtUpToDateWhenItIsOpened) {
  make_old_file(2);
  {
    TractStore store = open();
    EXPECT_EQ(store.load().value().tract.name, "Cold Hollow");
    Tract renamed = tract_;
    renamed.name = "Warm Hollow";
    EXPECT_TRUE(worked(store.apply({"rename", {renamed}})));
    EXPECT_TRUE(worked(store.undo()));
    EXPECT_TRUE(store.check().value().problems.empty());
  }
  make("fresh.gpkg");
  EXPECT_EQ(schema("woods.gpkg"), schema("fresh.gpkg"));
  EXPECT_EQ(state_of("woods.gpkg").step, steps_.back().number);
}

TEST_F(Migration, ACopyOfTheOlderFileIsKept) {
  make_old_file(2);
  open();
  EXPECT_EQ(state_of("woods.before-step-3.gpkg").step, 2);
  EXPECT_EQ(raw_sql("SELECT name FROM tract", "woods.before-step-3.gpkg"),
            std::vector<std::string>{"Cold Hollow"});
}

// A plain copy of the file would lose what is still in the write-ahead log.
TEST_F(Migration, TheCopyHoldsWhatIsStillInTheLog) {
  make_old_file(2);
  {
    auto writer = store::SqliteHandle::open(folder_ / "woods.gpkg", store::Use::write);
    ASSERT_TRUE(worked(writer->run("INSERT INTO meta (key, value) VALUES ('late', 'yes')")));
    fs::copy_file(folder_ / "woods.gpkg", folder_ / "crashed.gpkg");
    fs::copy_file(folder_ / "woods.gpkg-wal", folder_ / "crashed.gpkg-wal");
  }
  open("crashed.gpkg");
  for (const std::string name : {"crashed.gpkg", "crashed.before-step-3.gpkg"}) {
    EXPECT_EQ(raw_sql("SELECT value FROM meta WHERE key = 'late'", name),
              std::vector<std::string>{"yes"});
  }
}

// A log is checked whole when it is played back, a rollback journal is not
// (core/store/migrate.cpp).
TEST_F(Migration, TheStepsGoThroughALog) {
  make_old_file(2);
  ASSERT_TRUE(worked(bring_up(steps_)));
  // SQLite file format, database header, offsets 18 and 19: 1 a rollback journal, 2 a log.
  EXPECT_EQ(bytes_of(folder_ / "woods.gpkg").substr(18, 2), "\x02\x02");
}

TEST_F(Migration, OpenedForLookingAnOlderFileIsLeftAlone) {
  make_old_file(2);
  const std::string before = bytes_of(folder_ / "woods.gpkg");
  EXPECT_EQ(refused("woods.gpkg", OpenMode::read_only).code, ErrorCode::read_only);
  EXPECT_EQ(bytes_of(folder_ / "woods.gpkg"), before);
}

TEST_F(Migration, AStepThatFailsLeavesTheFileAsItWas) {
  make();
  const std::string before = schema("woods.gpkg");
  const auto steps = with_step("ALTER TABLE tree ADD COLUMN acorns INTEGER; SELECT nonsense;");
  const auto done = bring_up(steps);
  ASSERT_FALSE(done);
  EXPECT_NE(done.error().what.find("Step " + std::to_string(steps.back().number)),
            std::string::npos)
      << done.error().what;
  EXPECT_EQ(schema("woods.gpkg"), before);
  EXPECT_EQ(state_of("woods.gpkg").step, steps_.back().number);
  EXPECT_TRUE(open().check().value().problems.empty());
}

TEST_F(Migration, AStepThatBreaksAReferenceLeavesTheFileAsItWas) {
  {
    TractStore store = make();
    ASSERT_TRUE(worked(store.apply(as_action(sample_records(store.ids(), true), "import"))));
  }
  const auto done = bring_up(with_step("UPDATE tree SET plot_uid = uid;"));
  ASSERT_FALSE(done);
  EXPECT_EQ(done.error().code, ErrorCode::damaged);
  EXPECT_TRUE(open().check().value().problems.empty());
}

TEST_F(Migration, AStepMayRebuildATableThatOthersPointAt) {
  TractData data;
  {
    TractStore store = make();
    data = sample_records(store.ids(), true);
    ASSERT_TRUE(worked(store.apply(as_action(data, "import"))));
  }
  const std::string cruise = raw_sql("SELECT sql FROM sqlite_schema WHERE name = 'cruise'").front();
  const auto done =
      bring_up(with_step("CREATE TABLE kept AS SELECT * FROM cruise; DROP VIEW tree_point;"
                         "DROP TABLE cruise; " +
                         cruise + "; INSERT INTO cruise SELECT * FROM kept; DROP TABLE kept;"));
  ASSERT_TRUE(worked(done));
  EXPECT_EQ(difference(open().load().value(), data), "");
}

TEST_F(Migration, WhoMayReadIsDecidedByEveryStepAndNotTheLastOne) {
  make();
  const int before = state_of("woods.gpkg").min_reader;
  ASSERT_GT(before, 1);
  ASSERT_TRUE(worked(bring_up(with_step("CREATE TABLE more (x INTEGER) STRICT;", 1))));
  EXPECT_EQ(state_of("woods.gpkg").step, steps_.back().number + 1);
  EXPECT_EQ(state_of("woods.gpkg").min_reader, before);
  EXPECT_TRUE(worked(open().load()));  // the step is newer than ours, and lets us
}

TEST_F(Migration, ANewColumnLeavesEveryChecksumAndUndoAsItWas) {
  TractData data;
  {
    TractStore store = make();
    data = sample_records(store.ids(), true);
    ASSERT_TRUE(worked(store.apply(as_action(data, "import"))));
  }
  ASSERT_TRUE(worked(bring_up(with_step("ALTER TABLE tree ADD COLUMN acorns INTEGER;"))));
  TractStore store = open();
  EXPECT_EQ(difference(store.load().value(), data), "");
  ASSERT_TRUE(worked(store.undo()));
  ASSERT_TRUE(worked(store.redo()));
  EXPECT_EQ(difference(store.load().value(), data), "");
}

}  // namespace
}  // namespace oaklight::test
