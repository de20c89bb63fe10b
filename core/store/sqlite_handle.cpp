#include "core/store/sqlite_handle.hpp"

#include <sqlite3.h>

#include <array>
#include <cctype>
#include <system_error>
#include <utility>

#include "core/store/sqlite_error.hpp"
#include "core/store/sqlite_guard.hpp"

namespace oaklight::store {
namespace {

namespace fs = std::filesystem;

// A tally waits this long for another writer before it says so.
constexpr int kBusyMilliseconds = 500;

/// What must be in force, as `PRAGMA name` answers it.
struct Setting {
  const char* name;
  const char* value;
};
constexpr std::array kEverywhere = {Setting{"cell_size_check", "1"}, Setting{"mmap_size", "0"},
                                    Setting{"trusted_schema", "0"}};
constexpr std::array kForWriting = {Setting{"foreign_keys", "1"}, Setting{"synchronous", "2"},
                                    Setting{"journal_mode", "wal"}};

/// A file name as a URI, for the one option that only a URI can give.
std::string immutable_uri(const fs::path& path) {
  constexpr std::string_view kHex = "0123456789abcdef";
  std::string uri = "file:";
  for (const char c : path.string()) {
    if (std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '/' || c == '.' || c == '_' ||
        c == '-') {
      uri += c;
    } else {
      const auto byte = static_cast<unsigned char>(c);
      uri += '%';
      uri += kHex[byte >> 4];
      uri += kHex[byte & 15];
    }
  }
  return uri + "?immutable=1";
}

/// The statement reads the value where it is, until it is given back.
int bind(sqlite3_stmt* statement, int place, const Value& value) {
  struct Binder {
    sqlite3_stmt* statement;
    int place;
    int operator()(std::monostate) const { return sqlite3_bind_null(statement, place); }
    int operator()(std::int64_t x) const { return sqlite3_bind_int64(statement, place, x); }
    int operator()(double x) const { return sqlite3_bind_double(statement, place, x); }
    int operator()(const std::string& x) const {
      return sqlite3_bind_text64(statement, place, x.data(), x.size(), SQLITE_STATIC, SQLITE_UTF8);
    }
    int operator()(const Blob& x) const {
      return sqlite3_bind_blob64(statement, place, x.bytes.data(), x.bytes.size(), SQLITE_STATIC);
    }
  };
  return std::visit(Binder{statement, place}, value);
}

/// Puts bytes into a cell, in the room that the row before it left there.
void put_bytes(std::string& room, const void* bytes, int size) {
  if (size > 0) {
    room.assign(static_cast<const char*>(bytes), static_cast<std::size_t>(size));
  } else {
    room.clear();
  }
}

void read_cell(sqlite3_stmt* statement, int column, Value& out) {
  switch (sqlite3_column_type(statement, column)) {
    case SQLITE_INTEGER:
      out = std::int64_t{sqlite3_column_int64(statement, column)};
      return;
    case SQLITE_FLOAT:
      out = sqlite3_column_double(statement, column);
      return;
    case SQLITE_TEXT: {
      if (!std::holds_alternative<std::string>(out)) out.emplace<std::string>();
      const void* text = sqlite3_column_text(statement, column);
      put_bytes(std::get<std::string>(out), text, sqlite3_column_bytes(statement, column));
      return;
    }
    case SQLITE_BLOB: {
      if (!std::holds_alternative<Blob>(out)) out.emplace<Blob>();
      const void* bytes = sqlite3_column_blob(statement, column);
      put_bytes(std::get<Blob>(out).bytes, bytes, sqlite3_column_bytes(statement, column));
      return;
    }
    default:
      out = std::monostate{};
  }
}

std::string as_text(const Value& value) {
  if (const auto* number = std::get_if<std::int64_t>(&value)) return std::to_string(*number);
  if (const auto* text = std::get_if<std::string>(&value)) return *text;
  return {};
}

int open_flags(Use use) {
  // One thread at a time uses a file, so that no lock is taken for each cell.
  const int common = SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE | SQLITE_OPEN_PRIVATECACHE;
  switch (use) {
    case Use::make:
      return common | SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE;
    case Use::glance:
    case Use::read_only:
      return common | SQLITE_OPEN_READONLY;
    default:
      return common | SQLITE_OPEN_READWRITE;
  }
}

bool exists_beside(const fs::path& path, const char* ending) {
  std::error_code ignored;
  return fs::exists(path.string() + ending, ignored);
}

/// A connection that could write comes and goes. It does what a looker cannot: when it comes it
/// rolls back what a crash broke off, when it leaves as the last one it takes away the log.
/// SQLite's own locks decide whether there is such a thing, and whether it is the last. Errors: of
/// the disk.
Status visit_as_writer(const fs::path& path) {
  sqlite3* db = nullptr;
  int code = sqlite3_open_v2(path.c_str(), &db, open_flags(Use::write), nullptr);
  if (code == SQLITE_OK)
    code = sqlite3_exec(db, "SELECT count(*) FROM sqlite_schema", nullptr, nullptr, nullptr);
  sqlite3_close_v2(db);
  const int kind = code & 0xFF;
  if (kind == SQLITE_FULL || kind == SQLITE_IOERR) return sqlite_error(code, "", path.string());
  return Done{};
}

/// The empty log and its index that SQLite made for a looker.
void take_away_empty_log(const fs::path& path) {
  std::error_code problem;
  const auto size = fs::file_size(path.string() + "-wal", problem);
  if (!problem && size == 0) (void)visit_as_writer(path);
}

/// What SQLite says when it cannot make the index file of a log where the file lies.
bool may_be_read_only_media(ErrorCode code) {
  return code == ErrorCode::cannot_open || code == ErrorCode::read_only;
}

}  // namespace

Result<SqliteHandle> SqliteHandle::open(const fs::path& path, Use use) {
  save_allocations();
  // An absolute path never looks like a URI, which this build of SQLite would obey.
  const fs::path full = path == kMemory ? path : fs::absolute(path);
  if (const auto harmless = guard_journal(full); !harmless) return harmless.error();
  SqliteHandle handle(nullptr, full, use);
  // With nothing beside it the file is complete in itself, and a glance needs no lock.
  const bool alone = !exists_beside(full, "-wal") && !exists_beside(full, "-journal");
  Status opened = handle.connect(use == Use::glance && alone);
  if (!opened && use != Use::write && may_be_read_only_media(opened.error().code)) {
    // Beside a file that is not alone lies the journal of a change that a crash broke off.
    const Status visited = alone ? Status(Done{}) : visit_as_writer(full);
    if (!visited) return visited.error();
    opened = handle.connect(alone);
  }
  if (!opened) return opened.error();
  handle.tidies_ = use == Use::read_only && alone;
  if (const auto set = handle.apply_settings(); !set) return set.error();
  return handle;
}

Status SqliteHandle::connect(bool immutable) {
  close();
  const std::string name = immutable ? immutable_uri(path_) : path_.string();
  const int flags = open_flags(use_) | (immutable ? SQLITE_OPEN_URI : 0);
  if (const int code = sqlite3_open_v2(name.c_str(), &db_, flags, nullptr); code != SQLITE_OK)
    return failure(code);
  if (const auto hardened = harden(); !hardened) return hardened;
  // Opening alone reads nothing; what is wrong with the file shows at the first read.
  const auto readable = first("SELECT count(*) FROM sqlite_schema");
  if (!readable) return readable.error();
  return Done{};
}

Status SqliteHandle::harden() {
  // Making and bringing up run only our own steps, and ALTER TABLE has to look into views.
  const bool steps = use_ == Use::make || use_ == Use::bring_up;
  if (const int code = guard_connection(db_, steps); code != SQLITE_OK) return failure(code);
  sqlite3_busy_timeout(db_, kBusyMilliseconds);
  return script("PRAGMA cell_size_check = ON; PRAGMA mmap_size = 0; PRAGMA temp_store = MEMORY;");
}

Status SqliteHandle::apply_settings() {
  switch (use_) {
    case Use::make:
      return script(
          "PRAGMA page_size = 4096; PRAGMA encoding = 'UTF-8'; PRAGMA foreign_keys = ON;");
    case Use::bring_up:
      return script("PRAGMA foreign_keys = OFF; PRAGMA synchronous = FULL;");
    case Use::write:
      if (const auto set = script("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; "
                                  "PRAGMA foreign_keys = ON;");
          !set)
        return set;
      return verify_settings();
    case Use::glance:
    case Use::read_only:
      break;
  }
  return verify_settings();
}

Status SqliteHandle::verify_settings() {
  std::vector<Setting> settings;
  if (use_ == Use::write) settings.assign(kForWriting.begin(), kForWriting.end());
  settings.insert(settings.end(), kEverywhere.begin(), kEverywhere.end());
  for (const Setting& setting : settings) {
    const auto row = first("PRAGMA " + std::string(setting.name));
    if (!row) return row.error();
    if (!row->has_value() || as_text((**row).front()) != setting.value) {
      return Error{ErrorCode::cannot_open,
                   "The database setting " + std::string(setting.name) + " is not " +
                       setting.value + ", so saved data would not be safe.",
                   path_.string(),
                   "Move the file to a local disk, and close other programs that use it."};
    }
  }
  return Done{};
}

SqliteHandle::SqliteHandle(SqliteHandle&& other) noexcept
    : db_(std::exchange(other.db_, nullptr)),
      path_(std::move(other.path_)),
      use_(other.use_),
      tidies_(std::exchange(other.tidies_, false)),
      statements_(std::exchange(other.statements_, {})) {}

SqliteHandle& SqliteHandle::operator=(SqliteHandle&& other) noexcept {
  if (this != &other) {
    close();
    db_ = std::exchange(other.db_, nullptr);
    path_ = std::move(other.path_);
    use_ = other.use_;
    tidies_ = std::exchange(other.tidies_, false);
    statements_ = std::exchange(other.statements_, {});
  }
  return *this;
}

SqliteHandle::~SqliteHandle() { close(); }

void SqliteHandle::close() {
  for (const auto& [sql, statement] : statements_) sqlite3_finalize(statement);
  statements_.clear();
  sqlite3_close_v2(std::exchange(db_, nullptr));
  if (std::exchange(tidies_, false)) take_away_empty_log(path_);
}

Error SqliteHandle::failure(int code) const {
  const char* message = db_ == nullptr ? "" : sqlite3_errmsg(db_);
  return sqlite_error(code, message, path_.string());
}

Status SqliteHandle::script(std::string_view sql) {
  const int code = sqlite3_exec(db_, std::string(sql).c_str(), nullptr, nullptr, nullptr);
  if (code != SQLITE_OK) return failure(code);
  return Done{};
}

Result<sqlite3_stmt*> SqliteHandle::prepared(std::string_view sql, sqlite3_stmt* kept,
                                             std::span<const Value> arguments) {
  sqlite3_stmt* statement = kept;
  if (kept == nullptr) {
    const int code = sqlite3_prepare_v3(db_, sql.data(), static_cast<int>(sql.size()),
                                        SQLITE_PREPARE_PERSISTENT, &statement, nullptr);
    if (code != SQLITE_OK) return failure(code);
  }
  for (std::size_t i = 0; i < arguments.size(); ++i) {
    if (const int code = bind(statement, static_cast<int>(i) + 1, arguments[i]);
        code != SQLITE_OK) {
      const Error error = failure(code);
      sqlite3_finalize(statement);
      return error;
    }
  }
  return statement;
}

Status SqliteHandle::walk(std::string_view sql, std::span<const Value> arguments,
                          const EachRow& use_row) {
  auto kept = statements_.find(sql);
  if (kept == statements_.end()) kept = statements_.emplace(sql, nullptr).first;
  // Taken out while in use, so that a callback may run the same SQL again.
  const auto statement = prepared(sql, std::exchange(kept->second, nullptr), arguments);
  if (!statement) return statement.error();
  Status outcome = Done{};
  Row row;
  for (;;) {
    const int code = sqlite3_step(*statement);
    if (code == SQLITE_DONE) break;
    if (code != SQLITE_ROW) {
      outcome = failure(code);
      break;
    }
    row.resize(static_cast<std::size_t>(sqlite3_column_count(*statement)));
    for (std::size_t i = 0; i < row.size(); ++i) read_cell(*statement, static_cast<int>(i), row[i]);
    outcome = use_row(row);
    if (!outcome) break;
  }
  sqlite3_reset(*statement);
  sqlite3_clear_bindings(*statement);
  sqlite3_finalize(std::exchange(kept->second, *statement));
  return outcome;
}

Status SqliteHandle::run(std::string_view sql, std::span<const Value> arguments) {
  return walk(sql, arguments, [](const Row&) { return Done{}; });
}

Status SqliteHandle::write_one(std::string_view sql, std::span<const Value> arguments) {
  if (const auto ran = run(sql, arguments); !ran) return ran;
  if (sqlite3_changes(db_) == 1) return Done{};
  return Error{ErrorCode::not_a_tract_file, "Something in the file kept a record from being saved.",
               path_.string(), "Drop the triggers that another program put into it."};
}

Status SqliteHandle::run(std::string_view sql, std::initializer_list<Value> arguments) {
  return run(sql, std::span(arguments.begin(), arguments.size()));
}

Result<std::optional<Row>> SqliteHandle::first(std::string_view sql,
                                               std::initializer_list<Value> arguments) {
  std::optional<Row> found;
  const auto walked =
      walk(sql, std::span(arguments.begin(), arguments.size()), [&](const Row& row) -> Status {
        if (!found) found = row;
        return Done{};
      });
  if (!walked) return walked.error();
  return found;
}

Status SqliteHandle::each(std::string_view sql, std::initializer_list<Value> arguments,
                          const EachRow& use_row) {
  return walk(sql, std::span(arguments.begin(), arguments.size()), use_row);
}

Status SqliteHandle::transaction(const std::function<Status()>& work) {
  return bracket("BEGIN IMMEDIATE", work);
}

Status SqliteHandle::snapshot(const std::function<Status()>& reads) {
  return bracket("BEGIN", reads);
}

Status SqliteHandle::bracket(const char* begin, const std::function<Status()>& work) {
  if (const auto begun = run(begin); !begun) return begun;
  Status outcome = work();
  if (outcome) outcome = run("COMMIT");
  // A full disk may have rolled back by itself; then there is nothing left to roll back.
  if (!outcome && sqlite3_get_autocommit(db_) == 0) (void)run("ROLLBACK");
  return outcome;
}

Status SqliteHandle::backup_to(const fs::path& target) {
  sqlite3* copy = nullptr;
  int code = sqlite3_open_v2(fs::absolute(target).c_str(), &copy, open_flags(Use::make), nullptr);
  if (code == SQLITE_OK) {
    sqlite3_backup* backup = sqlite3_backup_init(copy, "main", db_, "main");
    if (backup == nullptr) {
      code = sqlite3_extended_errcode(copy);
    } else {
      sqlite3_backup_step(backup, -1);
      code = sqlite3_backup_finish(backup);
    }
  }
  const std::string message = copy == nullptr ? "" : sqlite3_errmsg(copy);
  sqlite3_close_v2(copy);
  if (code != SQLITE_OK) return sqlite_error(code, message, target.string());
  return Done{};
}

std::string quoted_name(std::string_view name) {
  std::string quoted = "\"";
  for (const char c : name) {
    quoted += c;
    if (c == '"') quoted += c;
  }
  return quoted + "\"";
}

}  // namespace oaklight::store
