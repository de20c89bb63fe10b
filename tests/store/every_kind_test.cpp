// One record of each kind that is not as it should be: named wherever it is met, and nothing is
// made of it.
#include <array>
#include <set>

#include "core/store/history_lines.hpp"
#include "core/store/record_table.hpp"
#include "core/store/tree_stream.hpp"
#include "tests/store/store_fixture.hpp"

namespace oaklight::test {
namespace {

/// A table and a cell of it that holds one of a list of words.
struct Kind {
  const char* table;
  const char* column;
};
constexpr std::array kKinds = {
    Kind{"stand", "goal"},    Kind{"cruise", "design"},      Kind{"plot", "status"},
    Kind{"tree", "status"},   Kind{"regen", "height_class"}, Kind{"walk_tree", "crown_class"},
    Kind{"contact", "seen"},  Kind{"mark", "verdict"},       Kind{"map_line", "kind"},
    Kind{"stump", "finding"}, Kind{"acorn_count", "method"}, Kind{"acorn_year", "crop"}};

class EveryKind : public StoreTest {
 protected:
  EveryKind() {
    TractStore store = make();
    EXPECT_TRUE(worked(store.apply(as_action(sample_records(store.ids(), true), "import"))));
  }
  void SetUp() override { whole_ = bytes_of(folder_ / "woods.gpkg"); }
  /// Changes the first row of a table as a program does that knows the checksum and no rule.
  void spoil(const std::string& table_name, const std::string& column, const store::Value& value) {
    auto db = store::SqliteHandle::open(folder_ / "woods.gpkg", store::Use::write);
    ASSERT_TRUE(worked(db));
    ASSERT_TRUE(worked(db->script("PRAGMA ignore_check_constraints = ON")));
    const auto table = store::RecordTable::read(*db, table_name);
    ASSERT_TRUE(worked(table));
    std::vector<store::Row> rows;
    ASSERT_TRUE(worked(table->each(*db, [&](const store::Row& row) {
      rows.push_back(row);
      return Status(Done{});
    })));
    store::Row row = rows.front();
    uid_ = table->uid_of(row);
    table->at(row, column) = value;
    ASSERT_TRUE(worked(table->update(*db, row)));
  }
  void heal() { write_bytes(folder_ / "woods.gpkg", whole_); }

  /// Each way of reading the tract says so, at that place.
  void expect_found(const std::string& where) {
    for (const DamageCheck check : {DamageCheck::on_opening, DamageCheck::by_caller}) {
      const auto store =
          TractStore::open(folder_ / "woods.gpkg", OpenMode::read_only, context(), check);
      ASSERT_TRUE(worked(store));
      const auto loaded = store->load();
      ASSERT_FALSE(loaded);
      EXPECT_EQ(loaded.error().code, ErrorCode::damaged);
      EXPECT_EQ(loaded.error().where, where);
      EXPECT_FALSE(loaded.error().fix.empty());
      const auto streamed = store->load({[](const TractData&) { return Status(Done{}); },
                                         [](const Tree&) { return Status(Done{}); }});
      ASSERT_FALSE(streamed);
      EXPECT_EQ(streamed.error().where, where);
    }
    EXPECT_TRUE(places().contains(where)) << where;
  }
  std::set<std::string> places() {
    std::set<std::string> found;
    const auto report = open("woods.gpkg", OpenMode::read_only).check().value();
    for (const Error& problem : report.problems) found.insert(problem.where);
    return found;
  }

  std::string whole_, uid_;
};

TEST_F(EveryKind, WithAWordThatIsNoneOfItsListIsNotTakenForAnother) {
  for (const Kind& kind : kKinds) {
    SCOPED_TRACE(kind.table);
    spoil(kind.table, kind.column, std::string("blue"));
    // A cruise's design and a count's method are told by several columns together.
    expect_found(std::string(kind.table) + "/" + uid_ + "/" + kind.column);
    heal();
  }
}

TEST_F(EveryKind, WithAnotherChecksumIsNamedAndNotWrittenOver) {
  for (const Kind& kind : kKinds) {
    SCOPED_TRACE(kind.table);
    raw_sql("UPDATE " + std::string(kind.table) + " SET row_crc = row_crc + 1");
    const std::string uid =
        raw_sql("SELECT uid FROM " + std::string(kind.table) + " ORDER BY uid").front();
    const std::string where = std::string(kind.table) + "/" + uid;
    const auto store = TractStore::open(folder_ / "woods.gpkg", OpenMode::read_only, context());
    ASSERT_TRUE(worked(store));
    EXPECT_EQ(store->load().error().where, where);
    EXPECT_EQ(store->find_damage().error().where, where);
    EXPECT_TRUE(places().contains(where));
    heal();
  }
}

TEST_F(EveryKind, AtMostTwentyProblemsOfOneKindAreListed) {
  {
    TractStore store = open();
    Action action{"tally", {}};
    Tree tree = store.load()->trees.front();
    for (int i = 0; i < 30; ++i) {
      tree.id = store.ids().next_id<TreeTag>();
      tree.tag.clear();
      action.changes.emplace_back(tree);
    }
    ASSERT_TRUE(worked(store.apply(action)));
  }
  raw_sql("UPDATE tree SET row_crc = row_crc + 1");
  const auto report = open("woods.gpkg", OpenMode::read_only).check().value();
  EXPECT_EQ(report.problems.size(), 20U);
  EXPECT_EQ(report.records[4], (TableCount{"tree", 31, 0}));
}

TEST_F(EveryKind, WithoutTheTractThereIsNothingToWorkOn) {
  spoil("tract", "deleted", std::int64_t{1});
  TractStore store = open();
  const auto loaded = store.load();
  ASSERT_FALSE(loaded);
  EXPECT_EQ(loaded.error().what, "The file holds no tract.");
  const auto applied = store.apply({"name it", {Tract{}}});
  ASSERT_FALSE(applied);
  EXPECT_EQ(applied.error().what, "The file holds no tract.");
  EXPECT_EQ(store.history(10)->size(), 1U);
}

/// What a file says of itself, changed by others.
class FalseFacts : public EveryKind {
 protected:
  void expect_said(const std::string& sql, const std::string& what, const std::string& where) {
    SCOPED_TRACE(sql);
    raw_sql(sql);
    const auto report = open("woods.gpkg", OpenMode::read_only).check();
    ASSERT_TRUE(worked(report));
    bool said = false;
    for (const Error& problem : report->problems)
      said = said || (problem.what == what && problem.where == where);
    EXPECT_TRUE(said) << report->problems.size() << " problems, and not: " << what;
    heal();
  }
};

TEST_F(FalseFacts, OfAFileAreFound) {
  expect_said("UPDATE gpkg_contents SET identifier = 'x' WHERE table_name = 'tree'",
              "A row of the GeoPackage's own tables is not as Oaklight makes it.",
              "gpkg_contents/tree");
  expect_said("UPDATE gpkg_spatial_ref_sys SET description = 'x' WHERE srs_id = 4326",
              "A row of the GeoPackage's own tables is not as Oaklight makes it.",
              "gpkg_spatial_ref_sys/4326");
  expect_said("UPDATE meta SET value = '2020-01-01T00:00:00.000Z' WHERE key = 'created_at'",
              "The moment when the file was made is not that of its forms.", "meta/created_at");
  expect_said("INSERT INTO meta (key, value) VALUES ('colour', 'red')",
              "The file says something of itself that no Oaklight writes.", "meta/colour");
  expect_said("UPDATE meta SET value = '1' WHERE key = 'min_reader'",
              "The file says that another program may read it than may.", "meta/min_reader");
  expect_said("UPDATE sqlite_sequence SET seq = seq + 5 WHERE name = 'tree'",
              "The highest number of a table's rows is not the one that was given.",
              "sqlite_sequence/tree");
  expect_said("UPDATE meta SET value = '99' WHERE key = 'step'",
              "The file says that it is of a newer step, and its tables are not.", "meta/step");
}

constexpr const char* kNobody = "7fffffff-0000-7000-8000-000000000002";  // no record has this id

/// A line of the history that another program wrote, its checksum right.
class ForeignHistory : public EveryKind {
 protected:
  void add(const std::string& kind, const std::string& table, const std::string& after) {
    auto db = store::SqliteHandle::open(folder_ / "woods.gpkg", store::Use::write);
    ASSERT_TRUE(worked(db));
    const std::string action = "7fffffff-0000-7000-8000-000000000001";
    ASSERT_TRUE(worked(
        store::add_action_line(*db, store::action_line({action,
                                                        std::string("2026-05-04T13:07:00.000Z"),
                                                        std::string("tablet A"),
                                                        std::string("plant"),
                                                        kind,
                                                        {}}))));
    ASSERT_TRUE(
        worked(store::add_change_line(*db, store::change_line({action, table, uid_, {}, after}))));
  }
};

TEST_F(ForeignHistory, OfAnUnknownKindIsNotUndone) {
  uid_ = kNobody;
  add("do", "seedbed", "{}");
  TractStore store = open();
  const TractData before = store.load().value();
  for (int i = 0; i < 2; ++i) {  // and again: the refusal left nothing behind
    const auto undone = store.undo();
    ASSERT_FALSE(undone);
    EXPECT_EQ(undone.error().code, ErrorCode::file_too_new);
    EXPECT_EQ(undone.error().where, "seedbed/" + uid_);
  }
  EXPECT_EQ(difference(store.load().value(), before), "");
  EXPECT_EQ(store.history(10)->size(), 2U);
}

TEST_F(ForeignHistory, OfARecordThatIsNotThereOrNotSoIsNotUndone) {
  uid_ = kNobody;
  add("do", "tree", "{}");
  EXPECT_EQ(open().undo().error().code, ErrorCode::contradiction);
  heal();
  uid_ = raw_sql("SELECT uid FROM tree").front();
  add("do", "tree", R"({"stems": 9})");
  EXPECT_EQ(open().undo().error().code, ErrorCode::contradiction);
  heal();
  add("do", "tree", "no JSON");
  EXPECT_EQ(open().undo().error().code, ErrorCode::damaged);
}

TEST_F(ForeignHistory, AboutAnotherRecordIsNotJoined) {
  write_bytes(folder_ / "theirs.gpkg", whole_);
  uid_ = kNobody;
  for (const auto& [table, after, code] :
       {std::tuple("seedbed", "{}", ErrorCode::file_too_new),
        std::tuple("tree", "no JSON", ErrorCode::damaged),
        std::tuple("tree", R"({"uid": "x"})", ErrorCode::damaged)}) {
    SCOPED_TRACE(after);
    add("do", table, after);
    TractStore ours = open("theirs.gpkg");
    const auto joined = ours.join({folder_ / "woods.gpkg"});
    ASSERT_FALSE(joined);
    EXPECT_EQ(joined.error().code, code);
    EXPECT_NE(joined.error().where.find("woods.gpkg"), std::string::npos) << joined.error().where;
    EXPECT_EQ(ours.history(10)->size(), 1U);
    heal();
  }
}

}  // namespace
}  // namespace oaklight::test
