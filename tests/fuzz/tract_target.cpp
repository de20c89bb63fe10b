// A small tract file that an enemy, or a bad card, has changed.
//
// An input is a list of changes: a letter, what it needs, and so on to the end.
//   b offset(3) length(1) bytes   bytes of the file
//   t length(3)                   the file is cut off
//   c table(1) row(1) column(1) value   a cell, its checksum as it was
//   f table(1) row(1) column(1) value   a cell, the row's checksum made anew
//   s length(2) text              a statement of SQL, run by a program that trusts everything
// A value is n, i and 8 bytes, d and 8 bytes, t or x (text, blob) with length(1) and bytes.
#include <sqlite3.h>

#include <cstring>
#include <filesystem>

#include "core/store/record_table.hpp"
#include "core/store/row_text.hpp"
#include "core/store/tract_store.hpp"
#include "tests/fuzz/law.hpp"
#include "tests/fuzz/targets.hpp"
#include "tests/store/store_fixture.hpp"
#include "tests/support/difference.hpp"
#include "tests/support/set_clock.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {
namespace {

namespace fs = std::filesystem;

constexpr std::int64_t kMay2026 = 1'777'900'020'000;

/// Takes an input apart; past its end come zeros.
class Input {
 public:
  explicit Input(std::string_view bytes) : rest_(bytes) {}
  [[nodiscard]] bool empty() const { return rest_.empty(); }
  std::size_t number(std::size_t bytes) {
    std::size_t value = 0;
    for (std::size_t i = 0; i < bytes; ++i) {
      value = value << 8U | static_cast<unsigned char>(take(1).empty() ? 0 : last_);
    }
    return value;
  }
  std::string take(std::size_t count) {
    const std::string_view part = rest_.substr(0, count);
    rest_.remove_prefix(part.size());
    if (!part.empty()) last_ = part.back();
    return std::string(part);
  }
  store::Value value() {
    switch (number(1)) {
      case 'i':
        return static_cast<std::int64_t>(number(8));
      case 'd': {
        const std::uint64_t bits = number(8);
        double value = 0.0;
        std::memcpy(&value, &bits, sizeof value);
        return value;
      }
      case 't':
        return take(number(1));
      case 'x':
        return store::Blob{take(number(1))};
      default:
        return std::monostate{};
    }
  }

 private:
  std::string_view rest_;
  char last_ = 0;
};

/// What was done to the file, as far as a law needs to know it.
struct Harm {
  bool forged = false;  ///< by somebody who can make a checksum, or run SQL
  int bursts = 0;       ///< changes
  bool small = true;    ///< none of them longer than a checksum surely finds
};

/// SQLite as another program opens it, that may do nothing outside this file.
class Enemy {
 public:
  explicit Enemy(const fs::path& path) {
    sqlite3_open(path.c_str(), &db_);
    sqlite3_set_authorizer(db_, may, nullptr);
    sqlite3_progress_handler(
        db_, 100'000, [](void*) { return 1; }, nullptr);
    sqlite3_limit(db_, SQLITE_LIMIT_LENGTH, 1 << 20);
    sqlite3_exec(db_, "PRAGMA writable_schema = ON", nullptr, nullptr, nullptr);
  }
  Enemy(const Enemy&) = delete;
  Enemy& operator=(const Enemy&) = delete;
  ~Enemy() { sqlite3_close(db_); }
  void run(const std::string& sql) { sqlite3_exec(db_, sql.c_str(), nullptr, nullptr, nullptr); }

  void set_cell(std::string_view table, std::size_t row, std::size_t column,
                const store::Value& value, bool sealed) {
    std::vector<std::string> names;
    store::Row cells;
    std::string uid;
    if (!read_row(std::string(table), row, names, cells, uid)) return;
    column %= names.size();
    cells[column] = value;
    write(std::string(table), uid, names[column], value);
    if (!sealed) return;
    write(std::string(table), uid, "row_crc", store::row_crc(table, names, cells));
  }

 private:
  static int may(void*, int action, const char*, const char*, const char*, const char*) {
    return action == SQLITE_ATTACH || action == SQLITE_DETACH ? SQLITE_DENY : SQLITE_OK;
  }

  bool read_row(const std::string& table, std::size_t row, std::vector<std::string>& names,
                store::Row& cells, std::string& uid) {
    sqlite3_stmt* read = nullptr;
    const std::string sql =
        "SELECT * FROM \"" + table + "\" ORDER BY uid LIMIT 1 OFFSET " + std::to_string(row % 4);
    if (sqlite3_prepare_v2(db_, sql.c_str(), -1, &read, nullptr) != SQLITE_OK) return false;
    const bool there = sqlite3_step(read) == SQLITE_ROW;
    for (int i = 0; there && i < sqlite3_column_count(read); ++i) {
      const std::string name = sqlite3_column_name(read, i);
      if (name == "fid") continue;
      names.push_back(name);
      cells.push_back(cell(read, i));
      if (name == "uid" && std::holds_alternative<std::string>(cells.back())) {
        uid = std::get<std::string>(cells.back());
      }
    }
    sqlite3_finalize(read);
    return there && !uid.empty();
  }

  static store::Value cell(sqlite3_stmt* read, int i) {
    const auto bytes = [&] {
      const auto* start = static_cast<const char*>(sqlite3_column_blob(read, i));
      return start == nullptr
                 ? std::string()
                 : std::string(start, static_cast<std::size_t>(sqlite3_column_bytes(read, i)));
    };
    switch (sqlite3_column_type(read, i)) {
      case SQLITE_INTEGER:
        return std::int64_t{sqlite3_column_int64(read, i)};
      case SQLITE_FLOAT:
        return sqlite3_column_double(read, i);
      case SQLITE_TEXT:
        return bytes();
      case SQLITE_BLOB:
        return store::Blob{bytes()};
      default:
        return std::monostate{};
    }
  }

  void write(const std::string& table, const std::string& uid, const std::string& column,
             const store::Value& value) {
    sqlite3_stmt* update = nullptr;
    const std::string sql = "UPDATE \"" + table + "\" SET \"" + column + "\" = ?1 WHERE uid = ?2";
    if (sqlite3_prepare_v2(db_, sql.c_str(), -1, &update, nullptr) != SQLITE_OK) return;
    bind(update, 1, value);
    bind(update, 2, uid);
    sqlite3_step(update);
    sqlite3_finalize(update);
  }

  static void bind(sqlite3_stmt* to, int at, const store::Value& value) {
    if (const auto* whole = std::get_if<std::int64_t>(&value)) sqlite3_bind_int64(to, at, *whole);
    if (const auto* real = std::get_if<double>(&value)) sqlite3_bind_double(to, at, *real);
    if (const auto* text = std::get_if<std::string>(&value)) {
      sqlite3_bind_text(to, at, text->data(), static_cast<int>(text->size()), SQLITE_TRANSIENT);
    }
    if (const auto* blob = std::get_if<store::Blob>(&value)) {
      sqlite3_bind_blob(to, at, blob->bytes.data(), static_cast<int>(blob->bytes.size()),
                        SQLITE_TRANSIENT);
    }
  }

  sqlite3* db_ = nullptr;
};

/// The sound file, made once, and a place for its changed copies.
class Ground {
 public:
  Ground() {
    fill();
    // Short forms and no history of the long ones: a file of some pages, quick to change and read.
    Enemy(folder_ / "sound.gpkg")
        .run(
            "PRAGMA foreign_keys = OFF; DELETE FROM change; DELETE FROM user_action; VACUUM; "
            "PRAGMA wal_checkpoint(TRUNCATE)");
    bytes_ = bytes_of(folder_ / "sound.gpkg");
  }
  /// The sound file under its changed name, with nothing beside it.
  fs::path fresh() {
    for (const auto& entry : fs::directory_iterator(folder_.path())) fs::remove(entry.path());
    write_bytes(path(), bytes_);
    return path();
  }
  [[nodiscard]] fs::path path() const { return folder_ / "woods.gpkg"; }
  [[nodiscard]] const TractData& sound() const { return sound_; }
  [[nodiscard]] const fs::path& folder() const { return folder_.path(); }
  StoreContext context() { return {clock_, same_bits(), "fuzz"}; }

 private:
  void fill() {
    auto made = TractStore::create(folder_ / "sound.gpkg", context());
    require(made.has_value(), "a tract file is made");
    require(made->apply(as_action(sample_records(made->ids(), true), "all of it")).has_value(),
            "a tract is stored");
    const std::vector<std::string> paths = made->form_paths().value();
    for (const std::string& path : paths) {
      require(made->set_form_text(path, "short").has_value(), "a form is stored");
    }
    sound_ = made->load().value();
  }

  TempDir folder_;
  SetClock clock_{kMay2026};
  TractData sound_;
  std::string bytes_;
};

Ground& ground() {
  static Ground one;
  return one;
}

void change_bytes(const fs::path& path, Input& input, Harm& harm) {
  std::string bytes = bytes_of(path);
  const std::size_t at = input.number(3);
  const std::string put = input.take(input.number(1));
  ++harm.bursts;
  harm.small = harm.small && put.size() <= 4;
  if (bytes.empty()) return;
  for (std::size_t i = 0; i < put.size(); ++i) bytes[(at + i) % bytes.size()] = put[i];
  write_bytes(path, bytes);
}

void change_cell(const fs::path& path, Input& input, Harm& harm, bool sealed) {
  const auto& tables = store::kRecordTables;
  const std::string_view table = tables[input.number(1) % tables.size()];
  const std::size_t row = input.number(1);
  const std::size_t column = input.number(1);
  harm.forged = harm.forged || sealed;
  ++harm.bursts;
  Enemy(path).set_cell(table, row, column, input.value(), sealed);
}

Harm change(const fs::path& path, std::string_view bytes) {
  Harm harm;
  Input input(bytes);
  for (int i = 0; i < 16 && !input.empty(); ++i) {
    switch (input.number(1)) {
      case 'b':
        change_bytes(path, input, harm);
        break;
      case 't':
        harm.small = false;
        ++harm.bursts;
        fs::resize_file(path, input.number(3) % (fs::file_size(path) + 1));
        break;
      case 'c':
        change_cell(path, input, harm, false);
        break;
      case 'f':
        change_cell(path, input, harm, true);
        break;
      case 's':
        harm.forged = true;
        Enemy(path).run(input.take(input.number(2)));
        break;
      default:
        break;
    }
  }
  return harm;
}

/// Looking at the file: it is left as it was, and what it says is whole or refused.
std::optional<TractData> look(const fs::path& path) {
  const std::string before = bytes_of(path);
  std::optional<TractData> seen;
  {
    const auto store = TractStore::open(path, OpenMode::read_only, ground().context());
    if (!store) {
      require_told(store.error());
    } else {
      const auto data = store->load();
      if (data) {
        seen = *data;
      } else {
        require_told(data.error());
      }
      const auto report = store->check();
      if (report) {
        require_told(report->problems);
      } else {
        require_told(report.error());
      }
      if (const auto lines = store->history(20); !lines) require_told(lines.error());
      if (const auto forms = store->form_paths(); !forms) require_told(forms.error());
    }
  }
  require(bytes_of(path) == before, "looking at a file changes nothing in it");
  return seen;
}

/// Working in the file: what it held stays, and what is added is there afterwards.
void work(const fs::path& path) {
  auto store = TractStore::open(path, OpenMode::read_write, ground().context());
  if (!store) return require_told(store.error());
  const auto before = store->load();
  if (!before) return require_told(before.error());
  if (const auto undone = store->undo(); !undone) require_told(undone.error());
  if (const auto redone = store->redo(); !redone) require_told(redone.error());
  TractData wanted = *before;
  Stand stand;
  stand.id = store->ids().next_id<StandTag>();
  stand.name = "one more";
  stand.acres = Acres{7.0};
  if (const auto added = store->apply({"add a stand", {stand}}); !added) {
    require_told(added.error());
  } else {
    wanted.stands.push_back(stand);
  }
  const auto after = store->load();
  if (!after) throw Broken("what was written is read: " + to_text(after.error()));
  require(difference(wanted, *after).empty(),
          "work keeps what was there: " + difference(wanted, *after));
}

/// Whatever a file holds, all that its opening makes lies beside it under its name.
void require_nothing_else_written() {
  for (const auto& entry : fs::directory_iterator(ground().folder())) {
    require(entry.path().filename().string().starts_with("woods"),
            "nothing is written elsewhere: " + entry.path().string());
  }
}

}  // namespace

void fuzz_tract(std::string_view bytes) {
  const fs::path path = ground().fresh();
  const Harm harm = change(path, bytes);
  const auto seen = look(path);
  const bool must_be_found = !harm.forged && harm.small && harm.bursts <= 1;
  if (seen && must_be_found) {
    const std::string changed = difference(ground().sound(), *seen);
    require(changed.empty(), "no damage passes for a record: " + changed);
  }
  work(path);
  require_nothing_else_written();
}

}  // namespace oaklight::test
