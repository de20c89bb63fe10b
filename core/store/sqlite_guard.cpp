#include "core/store/sqlite_guard.hpp"

#include <sqlite3.h>

#include <array>
#include <fstream>
#include <string>
#include <string_view>

#include "core/store/gpkg_functions.hpp"

namespace oaklight::store {
namespace {

// Far below what SQLite allows and far above what the schema needs. One attached database is left
// because VACUUM INTO attaches its target.
struct Limit {
  int id;
  int value;
};
constexpr std::array kLimits = {Limit{SQLITE_LIMIT_LENGTH, 64 * 1024 * 1024},
                                Limit{SQLITE_LIMIT_SQL_LENGTH, 100'000},
                                Limit{SQLITE_LIMIT_COLUMN, 100},
                                Limit{SQLITE_LIMIT_EXPR_DEPTH, 100},
                                Limit{SQLITE_LIMIT_COMPOUND_SELECT, 10},
                                Limit{SQLITE_LIMIT_VDBE_OP, 100'000},
                                Limit{SQLITE_LIMIT_FUNCTION_ARG, 8},
                                Limit{SQLITE_LIMIT_ATTACHED, 1},
                                Limit{SQLITE_LIMIT_LIKE_PATTERN_LENGTH, 100},
                                Limit{SQLITE_LIMIT_VARIABLE_NUMBER, 100},
                                Limit{SQLITE_LIMIT_TRIGGER_DEPTH, 4},
                                Limit{SQLITE_LIMIT_WORKER_THREADS, 0}};

struct Flag {
  int id;
  int value;
};
constexpr std::array kFlags = {
    Flag{SQLITE_DBCONFIG_DEFENSIVE, 1}, Flag{SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0},
    Flag{SQLITE_DBCONFIG_WRITABLE_SCHEMA, 0}, Flag{SQLITE_DBCONFIG_ENABLE_LOAD_EXTENSION, 0},
    Flag{SQLITE_DBCONFIG_DQS_DML, 0}};

/// Inside a trigger only a spatial index may be kept up; GDAL also counts its features. Those need
/// no SELECT, and without one a trigger cannot make a row vanish by RAISE(IGNORE).
int authorize(void*, int action, const char* first, const char* second, const char*,
              const char* inside) {
  if (inside == nullptr) return SQLITE_OK;
  const std::string_view name = first == nullptr ? "" : first;
  switch (action) {
    case SQLITE_READ:
      return SQLITE_OK;
    case SQLITE_FUNCTION: {
      const std::string_view function = second == nullptr ? "" : second;
      // SQLite keeps the names of functions in lower case.
      const bool harmless = function.starts_with("st_") || function == "lower";
      return harmless ? SQLITE_OK : SQLITE_DENY;
    }
    case SQLITE_INSERT:
    case SQLITE_UPDATE:
    case SQLITE_DELETE:
      return name.starts_with("rtree_") || name == "gpkg_ogr_contents" ? SQLITE_OK : SQLITE_DENY;
    default:
      return SQLITE_DENY;
  }
}

}  // namespace

int guard_connection(sqlite3* db, bool runs_steps) {
  for (const Flag& flag : kFlags) {
    const int code = sqlite3_db_config(db, flag.id, flag.value, nullptr);
    if (code != SQLITE_OK) return code;
  }
  sqlite3_db_config(db, SQLITE_DBCONFIG_ENABLE_VIEW, runs_steps ? 1 : 0, nullptr);
  if (!runs_steps) sqlite3_set_authorizer(db, authorize, nullptr);
  for (const Limit& limit : kLimits) sqlite3_limit(db, limit.id, limit.value);
  return register_gpkg_functions(db);
}

void save_allocations() {
  static const bool kSaid = [] {
    sqlite3_config(SQLITE_CONFIG_MEMSTATUS, 0);
    return sqlite3_config(SQLITE_CONFIG_PAGECACHE, nullptr, 0, 0) == SQLITE_OK;
  }();
  static_cast<void>(kSaid);
}

Status guard_journal(const std::filesystem::path& file) {
  // Source: "Database File Format", sqlite.org/fileformat2.html, section 3; the name of the other
  // journal, its length, a checksum and this mark stand at the very end.
  constexpr std::string_view kMark{"\xd9\xd5\x05\xf9\x20\xa1\x63\xd7", 8};
  const std::filesystem::path journal = file.string() + "-journal";
  std::ifstream in(journal, std::ios::binary | std::ios::ate);
  if (!in || in.tellg() < std::streamoff{16}) return Done{};
  std::string mark(kMark.size(), '\0');
  in.seekg(-static_cast<std::streamoff>(mark.size()), std::ios::end);
  in.read(mark.data(), static_cast<std::streamsize>(mark.size()));
  if (mark != kMark) return Done{};
  return Error{ErrorCode::not_a_tract_file,
               "The journal beside the tract file names another file, as no journal of Oaklight "
               "does.",
               journal.string(), "Do not use it; ask whoever gave you the files for a copy."};
}

}  // namespace oaklight::store
