#include "core/store/sqlite_handle.hpp"

#include <gtest/gtest.h>
#include <sqlite3.h>

#include "core/store/sqlite_error.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::store {
namespace {

class Sqlite : public testing::Test {
 protected:
  SqliteHandle open(Use use) { return std::move(*SqliteHandle::open(folder_ / "x.db", use)); }

  test::TempDir folder_;
};

TEST_F(Sqlite, WritesOnlyWithEverySafetySettingInForce) {
  { open(Use::make).script("CREATE TABLE t (x INTEGER)").value(); }
  SqliteHandle db = open(Use::write);
  EXPECT_TRUE(db.verify_settings());
  for (const std::string setting :
       {"synchronous = NORMAL", "foreign_keys = OFF", "cell_size_check = OFF", "mmap_size = 65536",
        "trusted_schema = ON", "journal_mode = DELETE"}) {
    SqliteHandle other = open(Use::write);
    ASSERT_TRUE(other.verify_settings());
    db = SqliteHandle::open(SqliteHandle::kMemory, Use::make).value();  // lets go of the file
    ASSERT_TRUE(other.run("PRAGMA " + setting));
    const auto verified = other.verify_settings();
    ASSERT_FALSE(verified) << setting;
    EXPECT_EQ(verified.error().code, ErrorCode::cannot_open);
    EXPECT_NE(verified.error().what.find(setting.substr(0, setting.find(' '))), std::string::npos);
  }
}

TEST_F(Sqlite, RefusesToWriteWhereNoLogCanBeKept) {
  const auto memory = SqliteHandle::open(SqliteHandle::kMemory, Use::write);
  ASSERT_FALSE(memory);
  EXPECT_NE(memory.error().what.find("journal_mode"), std::string::npos) << memory.error().what;
}

TEST_F(Sqlite, ATransactionThatFailsLeavesNothing) {
  SqliteHandle db = open(Use::make);
  ASSERT_TRUE(db.script("CREATE TABLE t (x INTEGER)"));
  const auto failed = db.transaction([&]() -> Status {
    if (const auto ran = db.run("INSERT INTO t VALUES (?1)", {std::int64_t{1}}); !ran) return ran;
    return Error{ErrorCode::no_data, "stop", "", ""};
  });
  ASSERT_FALSE(failed);
  EXPECT_EQ(failed.error().code, ErrorCode::no_data);
  EXPECT_EQ(db.first("SELECT count(*) FROM t").value()->front(), Value{std::int64_t{0}});
}

TEST_F(Sqlite, ACallbackMayRunTheStatementThatCalledIt) {
  SqliteHandle db = open(Use::make);
  ASSERT_TRUE(db.script("CREATE TABLE t (x INTEGER); INSERT INTO t VALUES (1), (2)"));
  int rows = 0;
  const auto walked = db.each("SELECT x FROM t", {}, [&](const Row&) -> Status {
    return db.each("SELECT x FROM t", {}, [&](const Row&) -> Status {
      ++rows;
      return Done{};
    });
  });
  EXPECT_TRUE(walked);
  EXPECT_EQ(rows, 4);
}

TEST_F(Sqlite, LoadsNoExtensionAndAttachesNothing) {
  { open(Use::make).script("CREATE TABLE t (x INTEGER)").value(); }
  SqliteHandle db = open(Use::write);
  EXPECT_FALSE(db.run("SELECT load_extension('x')"));
  EXPECT_FALSE(db.script("PRAGMA writable_schema = ON; DELETE FROM sqlite_schema"));
}

TEST_F(Sqlite, NamesAreQuoted) {
  EXPECT_EQ(quoted_name("tree"), "\"tree\"");
  EXPECT_EQ(quoted_name("a\"b"), "\"a\"\"b\"");
}

// Codes as SQLite documents them (Result and Error Codes).
TEST(SqliteError, TellsEachCodeInItsOwnWay) {
  const std::pair<int, ErrorCode> wanted[] = {
      {SQLITE_FULL, ErrorCode::disk_full},
      {SQLITE_IOERR_WRITE, ErrorCode::io_failed},
      {SQLITE_IOERR_FSYNC, ErrorCode::io_failed},
      {SQLITE_BUSY, ErrorCode::busy},
      {SQLITE_BUSY_SNAPSHOT, ErrorCode::busy},
      {SQLITE_LOCKED, ErrorCode::busy},
      {SQLITE_CORRUPT, ErrorCode::damaged},
      {SQLITE_NOTADB, ErrorCode::not_a_tract_file},
      {SQLITE_READONLY, ErrorCode::read_only},
      {SQLITE_CANTOPEN, ErrorCode::cannot_open},
      {SQLITE_AUTH, ErrorCode::not_a_tract_file},
      {SQLITE_TOOBIG, ErrorCode::out_of_range},
      {SQLITE_CONSTRAINT_UNIQUE, ErrorCode::duplicate},
      {SQLITE_CONSTRAINT_FOREIGNKEY, ErrorCode::unknown_reference},
      {SQLITE_CONSTRAINT_NOTNULL, ErrorCode::missing_value},
      {SQLITE_CONSTRAINT_CHECK, ErrorCode::out_of_range},
      {SQLITE_NOMEM, ErrorCode::io_failed}};
  for (const auto& [code, name] : wanted) {
    const Error error = sqlite_error(code, "detail", "place");
    EXPECT_EQ(error.code, name) << code;
    EXPECT_EQ(error.where, "place");
    EXPECT_FALSE(error.what.empty());
    EXPECT_FALSE(error.fix.empty());
  }
}

}  // namespace
}  // namespace oaklight::store
