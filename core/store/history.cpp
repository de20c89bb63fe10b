#include "core/store/history.hpp"

#include <array>

#include "core/store/links.hpp"
#include "core/store/row_text.hpp"

namespace oaklight::store {
namespace {

const std::array<std::string, 6> kActionColumns = {"uid",   "at_utc", "device",
                                                   "label", "kind",   "target_uid"};
const std::array<std::string, 5> kChangeColumns = {"action_uid", "table_name", "row_uid",
                                                   "before_json", "after_json"};

std::string_view word_of_kind(HistoryKind kind) {
  switch (kind) {
    case HistoryKind::undo:
      return "undo";
    case HistoryKind::redo:
      return "redo";
    case HistoryKind::action:
      break;
  }
  return "do";
}

HistoryKind kind_of_word(std::string_view word) {
  if (word == "undo") return HistoryKind::undo;
  return word == "redo" ? HistoryKind::redo : HistoryKind::action;
}

std::string text_of(const Value& value) {
  const auto* text = std::get_if<std::string>(&value);
  return text == nullptr ? std::string{} : *text;
}

/// Whether two rows say the same; when they were written does not matter.
bool same_content(const RecordTable& table, Row a, Row b) {
  for (const char* column : {"changed_at", "row_crc"}) {
    table.at(a, column) = Value{};
    table.at(b, column) = Value{};
  }
  return a == b;
}

Error out_of_step(const RecordTable& table, const std::string& uid) {
  return {ErrorCode::damaged, "A record is not as the history left it.", table.name() + "/" + uid,
          "Enter the wanted values by hand; the change cannot be undone in one step."};
}

/// The record before and after one change of the history, over the row as it is now.
struct Images {
  Row before;  ///< a record that was new is the later image, taken out of use
  Row after;
};

Result<Images> read_images(const RecordTable& table, const Value& before_json,
                           const Value& after_json, const Row& now) {
  auto after = from_json(text_of(after_json), table.columns(), now);
  if (!after) return after.error();
  Images images{*after, *after};
  if (is_null(before_json)) {
    table.at(images.before, "deleted") = std::int64_t{1};
    return images;
  }
  auto before = from_json(text_of(before_json), table.columns(), now);
  if (!before) return before.error();
  images.before = std::move(*before);
  return images;
}

// An action is undone when it was undone once more than it was done again.
constexpr std::string_view kUndoneTimes =
    "(SELECT count(*) FILTER (WHERE r.kind = 'undo') - count(*) FILTER (WHERE r.kind = 'redo')"
    " FROM user_action AS r WHERE r.target_uid = a.uid)";

Result<std::optional<Candidate>> candidate(const Result<std::optional<Row>>& row) {
  if (!row) return row.error();
  if (!row->has_value()) return std::optional<Candidate>{};
  return std::optional(Candidate{text_of((**row)[0]), text_of((**row)[1])});
}

template <std::size_t N>
std::string column_list(const std::array<std::string, N>& columns) {
  std::string list;
  for (const std::string& column : columns) list += column + ", ";
  return list + "row_crc";
}

template <std::size_t N>
Status find_damaged_lines(SqliteHandle& db, const std::string& table,
                          const std::array<std::string, N>& columns, std::vector<Error>& found) {
  return db.each(
      "SELECT " + column_list(columns) + ", seq FROM " + table + " ORDER BY seq", {},
      [&](const Row& row) -> Status {
        const Row cells(row.begin(), row.begin() + N);
        if (row[N] == Value{row_crc(table, columns, cells)}) return Done{};
        const auto* seq = std::get_if<std::int64_t>(&row[N + 1]);
        found.push_back({ErrorCode::damaged, "A line of the history does not match its checksum.",
                         table + "/" + std::to_string(seq == nullptr ? 0 : *seq),
                         "Keep this file, and work on from your newest copy."});
        return Done{};
      });
}

}  // namespace

Error ActionWriter::at_record(Error error, const RecordTable& table, const std::string& uid) {
  error.where = table.name() + "/" + uid + (error.where.empty() ? "" : "/" + error.where);
  return error;
}

Status ActionWriter::put_row(const RecordTable& table, const std::optional<Row>& before,
                             Row after) {
  if (before && same_content(table, *before, after)) return Done{};
  table.at(after, "changed_at") = at_utc_;
  const auto written = before ? table.update(db_, after) : table.insert(db_, after);
  if (!written) {
    Error error = written.error();
    const bool about_record = error.code == ErrorCode::duplicate ||
                              error.code == ErrorCode::out_of_range ||
                              error.code == ErrorCode::missing_value;
    if (!about_record) return error;
    error.where.clear();
    return at_record(error, table, table.uid_of(after));
  }
  changes_.push_back({&table, before, std::move(after)});
  return Done{};
}

Status ActionWriter::remove(std::string_view table_name, const std::string& uid) {
  const RecordTable& table = tables_.find(table_name)->second;
  const auto before = table.find(db_, uid);
  if (!before) return before.error();
  if (!before->has_value() || !table.is_live(**before)) {
    return Error{ErrorCode::unknown_reference, "There is no such " + table.name() + " to remove.",
                 table.name() + "/" + uid, "It may have been removed already."};
  }
  Row after = **before;
  table.at(after, "deleted") = std::int64_t{1};
  return put_row(table, *before, std::move(after));
}

Status ActionWriter::replay(const std::string& action_uid, HistoryKind kind) {
  const bool undo = kind == HistoryKind::undo;
  const auto one = [&](const Row& line) -> Status {
    const auto table = tables_.find(text_of(line[0]));
    const std::string uid = text_of(line[1]);
    if (table == tables_.end()) {
      return Error{ErrorCode::file_too_new,
                   "The history holds a kind of record that this program does not know.",
                   text_of(line[0]) + "/" + uid, "Use the newest Oaklight."};
    }
    const auto now = table->second.find(db_, uid);
    if (!now) return now.error();
    if (!now->has_value()) return out_of_step(table->second, uid);
    const auto images = read_images(table->second, line[2], line[3], **now);
    if (!images) return images.error();
    const Row& expected = undo ? images->after : images->before;
    if (!same_content(table->second, **now, expected)) return out_of_step(table->second, uid);
    return put_row(table->second, *now, undo ? images->before : images->after);
  };
  return db_.each(
      "SELECT table_name, row_uid, before_json, after_json FROM change"
      " WHERE action_uid = ?1 ORDER BY seq" +
          std::string(undo ? " DESC" : ""),
      {action_uid}, one);
}

Status ActionWriter::write_change(const Uuid& action, const RowChange& change) {
  const RecordTable& table = *change.table;
  const std::string uid = table.uid_of(change.after);
  Value before_json;
  if (change.before) {
    const auto json = to_json(table.columns(), *change.before);
    if (!json) return at_record(json.error(), table, uid);
    before_json = *json;
  }
  const auto after_json = to_json(table.columns(), change.after);
  if (!after_json) return at_record(after_json.error(), table, uid);
  Row line = {to_text(action), table.name(), uid, before_json, *after_json};
  line.emplace_back(row_crc("change", kChangeColumns, line));
  return db_.run(
      "INSERT INTO change (" + column_list(kChangeColumns) + ") VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
      line);
}

Status ActionWriter::finish(const Uuid& action, const std::string& device, const std::string& label,
                            HistoryKind kind, const std::optional<std::string>& target_uid) {
  if (changes_.empty() && kind == HistoryKind::action) return Done{};
  if (const auto sound = check_links_of(db_, tables_, changes_); !sound) return sound;
  Row line = {to_text(action),
              at_utc_,
              device,
              label,
              std::string(word_of_kind(kind)),
              target_uid ? Value{*target_uid} : Value{}};
  line.emplace_back(row_crc("user_action", kActionColumns, line));
  if (const auto written = db_.write_one("INSERT INTO user_action (" + column_list(kActionColumns) +
                                             ") VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
                                         line);
      !written)
    return written;
  for (const RowChange& change : changes_) {
    if (const auto written = write_change(action, change); !written) return written;
  }
  return update_contents(db_, changes_, at_utc_);
}

Result<std::optional<Candidate>> next_undo(SqliteHandle& db) {
  return candidate(db.first("SELECT a.uid, a.label FROM user_action AS a WHERE a.kind = 'do' AND " +
                            std::string(kUndoneTimes) + " = 0 ORDER BY a.seq DESC LIMIT 1"));
}

Result<std::optional<Candidate>> next_redo(SqliteHandle& db) {
  return candidate(db.first(
      "SELECT a.uid, a.label FROM user_action AS u JOIN user_action AS a ON a.uid = u.target_uid"
      " WHERE u.kind = 'undo' AND u.seq >"
      " (SELECT seq FROM user_action WHERE kind = 'do' ORDER BY seq DESC LIMIT 1) AND " +
      std::string(kUndoneTimes) + " = 1 ORDER BY a.seq LIMIT 1"));
}

Result<std::vector<HistoryEntry>> read_history(SqliteHandle& db, std::int64_t limit) {
  std::vector<HistoryEntry> entries;
  const auto walked = db.each(
      "SELECT uid, at_utc, device, label, kind, target_uid,"
      " (SELECT count(*) FROM change AS c WHERE c.action_uid = a.uid)"
      " FROM user_action AS a ORDER BY seq DESC LIMIT ?1",
      {limit}, [&](const Row& row) -> Status {
        HistoryEntry entry;
        const bool read = from_value(row[0], entry.id) && from_value(row[1], entry.at) &&
                          from_value(row[2], entry.device) && from_value(row[3], entry.label) &&
                          from_value(row[5], entry.target) && from_value(row[6], entry.rows);
        if (!read) {
          return Error{ErrorCode::damaged, "A line of the history cannot be read.",
                       "user_action/" + text_of(row[0]),
                       "Keep this file, and work on from your newest copy."};
        }
        entry.kind = kind_of_word(text_of(row[4]));
        entries.push_back(std::move(entry));
        return Done{};
      });
  if (!walked) return walked.error();
  return entries;
}

Result<std::vector<Error>> find_damaged_history(SqliteHandle& db) {
  std::vector<Error> found;
  if (const auto walked = find_damaged_lines(db, "user_action", kActionColumns, found); !walked)
    return walked.error();
  if (const auto walked = find_damaged_lines(db, "change", kChangeColumns, found); !walked)
    return walked.error();
  return found;
}

}  // namespace oaklight::store
