#include "core/store/history_lines.hpp"

#include <functional>
#include <span>

#include "core/store/row_text.hpp"

namespace oaklight::store {
namespace {

using Columns = std::vector<std::string>;

const Columns& action_columns() {
  static const Columns kNames(kActionColumns.begin(), kActionColumns.end());
  return kNames;
}
const Columns& change_columns() {
  static const Columns kNames(kChangeColumns.begin(), kChangeColumns.end());
  return kNames;
}

/// The checksum of a line: the order of its columns is worked out once.
std::int64_t crc_of_line(const std::string& table, const Row& cells) {
  static const RowText kAction("user_action", action_columns());
  static const RowText kChange("change", change_columns());
  return table == "change" ? kChange.crc_of(cells) : kAction.crc_of(cells);
}

std::string column_list(const Columns& columns) {
  std::string list;
  for (const std::string& column : columns) list += column + ", ";
  return list + "row_crc";
}

Error damaged_line(const std::string& table, const Value& seq) {
  const auto* number = std::get_if<std::int64_t>(&seq);
  return {ErrorCode::damaged, "A line of the history does not match its checksum.",
          table + "/" + std::to_string(number == nullptr ? 0 : *number),
          "Keep this file; rescue what it holds, or work on from your newest copy."};
}

/// Calls the function with the cells of each line, their checksum and the line's place.
Status each_line(SqliteHandle& db, const std::string& table, const Columns& columns,
                 const std::function<Status(const Row& cells, const Value& seq, bool sound)>& use) {
  const std::size_t n = columns.size();
  return db.each("SELECT " + column_list(columns) + ", seq FROM " + table + " ORDER BY seq", {},
                 [&](const Row& row) -> Status {
                   const Row cells(row.begin(), row.begin() + static_cast<std::ptrdiff_t>(n));
                   return use(cells, row[n + 1], row[n] == Value{crc_of_line(table, cells)});
                 });
}

Row with_crc(const std::string& table, Row cells) {
  cells.emplace_back(crc_of_line(table, cells));
  return cells;
}

std::string text_of(const Value& value) {
  const auto* text = std::get_if<std::string>(&value);
  return text == nullptr ? std::string{} : *text;
}

}  // namespace

Row action_line(Row cells) { return with_crc("user_action", std::move(cells)); }
Row change_line(Row cells) { return with_crc("change", std::move(cells)); }

Status add_action_line(SqliteHandle& db, const Row& line) {
  return db.write_one("INSERT INTO user_action (" + column_list(action_columns()) +
                          ") VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
                      line);
}

Status add_change_line(SqliteHandle& db, const Row& line) {
  static const std::string kInsert =
      "INSERT INTO change (" + column_list(change_columns()) + ") VALUES (?1, ?2, ?3, ?4, ?5, ?6)";
  return db.write_one(kInsert, line);
}

Result<HistoryLines> read_lines(SqliteHandle& db) {
  HistoryLines lines;
  const auto actions = each_line(db, "user_action", action_columns(),
                                 [&](const Row& cells, const Value& seq, bool sound) {
                                   if (!sound) return Status(damaged_line("user_action", seq));
                                   lines.actions.emplace(text_of(cells[0]), action_line(cells));
                                   return Status(Done{});
                                 });
  if (!actions) return actions.error();
  const auto changes = each_line(db, "change", change_columns(),
                                 [&](const Row& cells, const Value& seq, bool sound) {
                                   const std::string action = text_of(cells[0]);
                                   if (!sound || !lines.actions.contains(action))
                                     return Status(damaged_line("change", seq));
                                   lines.changes[action].push_back(change_line(cells));
                                   return Status(Done{});
                                 });
  if (!changes) return changes.error();
  return lines;
}

Result<std::vector<Row>> change_lines_of(SqliteHandle& db, const std::string& action_uid) {
  std::vector<Row> lines;
  const Columns& columns = change_columns();
  const auto n = static_cast<std::ptrdiff_t>(columns.size());
  const auto read = db.each(
      "SELECT " + column_list(columns) + ", seq FROM change WHERE action_uid = ?1 ORDER BY seq",
      {action_uid}, [&](const Row& row) -> Status {
        const Row cells(row.begin(), row.begin() + n);
        if (row[columns.size()] != Value{crc_of_line("change", cells)})
          return damaged_line("change", row.back());
        lines.emplace_back(cells.begin() + 1, cells.end());
        return Done{};
      });
  if (!read) return read.error();
  return lines;
}

Result<std::vector<Error>> find_damaged_history(SqliteHandle& db) {
  std::vector<Error> found;
  for (const auto& [table, columns] :
       {std::pair{"user_action", &action_columns()}, std::pair{"change", &change_columns()}}) {
    const auto walked =
        each_line(db, table, *columns, [&](const Row& /*cells*/, const Value& seq, bool sound) {
          if (!sound) found.push_back(damaged_line(table, seq));
          return Status(Done{});
        });
    if (!walked) return walked.error();
  }
  return found;
}

}  // namespace oaklight::store
