#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "core/base/result.hpp"
#include "core/store/value.hpp"

struct sqlite3;
struct sqlite3_stmt;

namespace oaklight::store {

/// What a connection is for; it decides how much the file is trusted to do.
enum class Use {
  make,       ///< build a new file
  bring_up,   ///< run schema steps: no foreign keys, rollback journal as the file has it
  write,      ///< the work: WAL, synchronous FULL, foreign keys, all read back
  read_only,  ///< looking: never writes, also on read-only media
  glance,     ///< one short look that leaves no trace beside the file
};

/// One SQLite connection, opened as if the file came from an enemy: defensive mode, nothing in the
/// schema trusted, views off, triggers only as far as a spatial index needs them, lower limits.
/// Every SQLite failure becomes an Error here; statements are kept compiled.
class SqliteHandle {
 public:
  /// As a path: a database in memory that nobody else sees.
  static constexpr const char* kMemory = ":memory:";

  /// Errors: cannot_open, busy, io_failed, not_a_tract_file (not SQLite at all).
  static Result<SqliteHandle> open(const std::filesystem::path& path, Use use);

  SqliteHandle(SqliteHandle&& other) noexcept;
  SqliteHandle& operator=(SqliteHandle&& other) noexcept;
  ~SqliteHandle();

  /// Several statements that return nothing.
  Status script(std::string_view sql);
  /// One statement, its result passed over.
  Status run(std::string_view sql, std::span<const Value> arguments = {});
  Status run(std::string_view sql, std::initializer_list<Value> arguments);
  /// A statement that must write exactly one row. Errors: not_a_tract_file when it wrote none.
  Status write_one(std::string_view sql, std::span<const Value> arguments);
  /// The first row, or nothing.
  Result<std::optional<Row>> first(std::string_view sql,
                                   std::initializer_list<Value> arguments = {});
  /// Calls the function with each row; its first error ends the walk and is returned.
  using EachRow = std::function<Status(const Row&)>;
  Status each(std::string_view sql, std::initializer_list<Value> arguments, const EachRow& use_row);

  /// Runs the work inside BEGIN IMMEDIATE .. COMMIT; any error, also of the commit, rolls all back.
  Status transaction(const std::function<Status()>& work);
  /// Runs reads that all see the file at one moment.
  Status snapshot(const std::function<Status()>& reads);

  /// Reads the settings back. Errors: cannot_open, naming the setting that is not in force.
  Status verify_settings();

  /// A copy through SQLite's own backup, which sees what is still in the write-ahead log.
  Status backup_to(const std::filesystem::path& target);

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  SqliteHandle(sqlite3* db, std::filesystem::path path, Use use)
      : db_(db), path_(std::move(path)), use_(use) {}
  Status connect(bool immutable);
  Status harden();
  Status apply_settings();
  Result<sqlite3_stmt*> prepared(std::string_view sql, sqlite3_stmt* kept,
                                 std::span<const Value> arguments);
  Status bracket(const char* begin, const std::function<Status()>& work);
  Status walk(std::string_view sql, std::span<const Value> arguments, const EachRow& use_row);
  [[nodiscard]] Error failure(int code) const;
  void close();

  sqlite3* db_ = nullptr;
  std::filesystem::path path_;
  Use use_ = Use::read_only;
  bool tidies_ = false;  ///< nothing lay beside the file when it was opened for looking
  std::map<std::string, sqlite3_stmt*, std::less<>> statements_;  ///< null while one is in use
};

/// An identifier as SQL writes it, for names that came from a file.
std::string quoted_name(std::string_view name);

}  // namespace oaklight::store
