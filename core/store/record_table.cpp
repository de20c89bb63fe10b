#include "core/store/record_table.hpp"

#include <algorithm>
#include <cassert>

namespace oaklight::store {
namespace {

constexpr std::array<std::string_view, 4> kOfEveryRecord = {"uid", "deleted", "changed_at",
                                                            "row_crc"};

Error no_table(std::string_view name, const std::string& where) {
  return {ErrorCode::not_a_tract_file,
          "The file has no proper table \"" + std::string(name) + "\".", where,
          "Work on from your newest copy."};
}

const std::string& text_of(const Value& value) {
  static const std::string kNone;
  const auto* text = std::get_if<std::string>(&value);
  return text == nullptr ? kNone : *text;
}

/// "a" and ", " and a function of each name.
template <class F>
std::string joined(const std::vector<std::string>& names, F one) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) text += ", ";
    text += one(names[i], i + 1);
  }
  return text;
}

}  // namespace

Result<RecordTable> RecordTable::read(SqliteHandle& db, std::string_view name) {
  RecordTable table;
  table.name_ = name;
  // rootpage is 0 for views and virtual tables, which could run anything when read.
  const auto real =
      db.first("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = ?1 AND rootpage > 0",
               {table.name_});
  if (!real) return real.error();
  if (!real->has_value()) return no_table(name, db.path().string());

  const auto columns =
      db.each("SELECT name FROM pragma_table_info(?1) WHERE name <> 'fid' ORDER BY cid",
              {table.name_}, [&](const Row& row) -> Status {
                table.columns_.push_back(text_of(row[0]));
                return Done{};
              });
  if (!columns) return columns.error();
  for (const std::string_view column : kOfEveryRecord) {
    if (!table.index_of(column)) return no_table(name, db.path().string());
  }
  const auto references =
      db.each("SELECT \"from\", \"table\" FROM pragma_foreign_key_list(?1) ORDER BY id",
              {table.name_}, [&](const Row& row) -> Status {
                table.references_.push_back({text_of(row[0]), text_of(row[1])});
                return Done{};
              });
  if (!references) return references.error();

  table.text_ = RowText(name, table.columns_);
  table.uid_ = *table.index_of("uid");
  table.deleted_ = *table.index_of("deleted");
  table.crc_ = *table.index_of("row_crc");
  table.units_ = table.index_of("units");
  const std::string quoted = quoted_name(name);
  const auto column = [](const std::string& c, std::size_t) { return quoted_name(c); };
  const auto place = [](const std::string&, std::size_t i) { return "?" + std::to_string(i); };
  const auto set = [](const std::string& c, std::size_t i) {
    return quoted_name(c) + " = ?" + std::to_string(i);
  };
  table.select_ = "SELECT " + joined(table.columns_, column) + " FROM " + quoted;
  table.find_ = table.select_ + " WHERE uid = ?1";
  table.insert_ = "INSERT INTO " + quoted + " (" + joined(table.columns_, column) + ") VALUES (" +
                  joined(table.columns_, place) + ")";
  table.update_ = "UPDATE " + quoted + " SET " + joined(table.columns_, set) + " WHERE uid = ?" +
                  std::to_string(*table.index_of("uid") + 1);
  return table;
}

std::optional<std::size_t> RecordTable::index_of(std::string_view column, std::size_t from) const {
  const std::size_t n = columns_.size();
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t at = from + i < n ? from + i : from + i - n;
    if (columns_[at] == column) return at;
  }
  return std::nullopt;
}

const Value& RecordTable::at(const Row& row, std::string_view column) const {
  const auto i = index_of(column);
  assert(i);
  return row[*i];
}

Value& RecordTable::at(Row& row, std::string_view column) const {
  const auto i = index_of(column);
  assert(i);
  return row[*i];
}

bool RecordTable::is_live(const Row& row) const { return row[deleted_] == Value{std::int64_t{0}}; }

const std::string& RecordTable::uid_of(const Row& row) const { return text_of(row[uid_]); }

Status RecordTable::verify(const Row& row) const {
  if (row[crc_] == Value{text_.crc_of(row)}) return Done{};
  return Error{ErrorCode::damaged,
               "A record is not as it was written: its checksum does not match.",
               name_ + "/" + uid_of(row),
               "Keep this file; rescue what it holds, or work on from your newest copy. If another "
               "program edited this "
               "record, enter the change here instead."};
}

Result<std::optional<Row>> RecordTable::find(SqliteHandle& db, const std::string& uid) const {
  auto row = db.first(find_, {uid});
  if (!row || !row->has_value()) return row;
  if (const auto sound = verify(**row); !sound) return sound.error();
  return row;
}

Status RecordTable::each(SqliteHandle& db, std::string_view order,
                         const SqliteHandle::EachRow& use_row) const {
  return db.each(select_ + " ORDER BY " + quoted_name(order), {}, use_row);
}

Status RecordTable::rehearse(SqliteHandle& db) const {
  if (const auto inserts = db.run("EXPLAIN " + insert_); !inserts) return inserts;
  return db.run("EXPLAIN " + update_);
}

Status RecordTable::insert(SqliteHandle& db, Row& row) const {
  row[crc_] = text_.crc_of(row);
  return db.write_one(insert_, row);
}

Status RecordTable::update(SqliteHandle& db, Row& row) const {
  row[crc_] = text_.crc_of(row);
  return db.write_one(update_, row);
}

Result<RecordTables> read_record_tables(SqliteHandle& db) {
  RecordTables tables;
  for (const std::string_view name : kRecordTables) {
    auto table = RecordTable::read(db, name);
    if (!table) return table.error();
    tables.emplace(name, std::move(*table));
  }
  return tables;
}

}  // namespace oaklight::store
