#pragma once

#include <array>
#include <cstddef>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"
#include "core/store/row_text.hpp"
#include "core/store/sqlite_handle.hpp"
#include "core/store/value.hpp"

namespace oaklight::store {

/// The record tables in the order of the data dictionary; a table comes after those it points at.
inline constexpr std::array<std::string_view, 14> kRecordTables = {
    "tract",   "stand", "cruise",   "plot",  "tree",        "regen",      "walk_tree",
    "contact", "mark",  "map_line", "stump", "acorn_count", "acorn_year", "form_file"};

/// A column that holds the uid of a record of another table.
struct Reference {
  std::string column;
  std::string parent;
};

/// A table of records as the file has it. A newer program may have added columns that this one does
/// not know: they are read, checked and written back like the others.
class RecordTable {
 public:
  /// Errors: not_a_tract_file when there is no such table or it lacks the columns of every record.
  static Result<RecordTable> read(SqliteHandle& db, std::string_view name);

  [[nodiscard]] const std::string& name() const { return name_; }
  /// All but fid, the key that means something in this one file only.
  [[nodiscard]] const std::vector<std::string>& columns() const { return columns_; }
  [[nodiscard]] const std::vector<Reference>& references() const { return references_; }
  /// Looks from one place on first, where who takes column after column will find the next.
  [[nodiscard]] std::optional<std::size_t> index_of(std::string_view column,
                                                    std::size_t from = 0) const;
  /// A cell of a row of this table; the column must be one that every record has.
  [[nodiscard]] const Value& at(const Row& row, std::string_view column) const;
  Value& at(Row& row, std::string_view column) const;
  [[nodiscard]] bool is_live(const Row& row) const;
  /// The cell that says in which units a row's readings are; nothing where a table has none.
  [[nodiscard]] const Value* units_of(const Row& row) const {
    return units_ ? &row[*units_] : nullptr;
  }
  [[nodiscard]] const std::string& uid_of(const Row& row) const;

  /// The row of a record, removed or not, its checksum verified. Errors: damaged.
  Result<std::optional<Row>> find(SqliteHandle& db, const std::string& uid) const;
  /// Every row in order of uid, unverified; removed ones too.
  Status each(SqliteHandle& db, const SqliteHandle::EachRow& use_row) const {
    return each(db, "uid", use_row);
  }
  /// The same in order of another column.
  Status each(SqliteHandle& db, std::string_view order, const SqliteHandle::EachRow& use_row) const;
  /// A row as the history keeps it. Errors: of to_json.
  [[nodiscard]] Result<std::string> json_of(const Row& row) const { return text_.json_of(row); }
  /// Errors: damaged when the row does not match its checksum.
  [[nodiscard]] Status verify(const Row& row) const;

  /// Compiles what writing would run, triggers of other programs included, and runs none of it.
  /// Errors: not_a_tract_file when a trigger does more than keep up a spatial index.
  Status rehearse(SqliteHandle& db) const;
  /// Writes a row whose checksum is taken here.
  Status insert(SqliteHandle& db, Row& row) const;
  Status update(SqliteHandle& db, Row& row) const;

 private:
  std::string name_;
  std::vector<std::string> columns_;
  std::vector<Reference> references_;
  RowText text_;
  std::size_t uid_ = 0, deleted_ = 0, crc_ = 0;  ///< columns that each row is asked for
  std::optional<std::size_t> units_;
  std::string select_;  ///< every column, no condition
  std::string find_;
  std::string insert_;
  std::string update_;
};

/// The record tables of a file, by name.
using RecordTables = std::map<std::string, RecordTable, std::less<>>;
Result<RecordTables> read_record_tables(SqliteHandle& db);

}  // namespace oaklight::store
