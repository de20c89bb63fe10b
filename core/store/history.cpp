#include "core/store/history.hpp"

#include <algorithm>
#include <span>

#include "core/store/history_lines.hpp"
#include "core/store/join_cells.hpp"
#include "core/store/links.hpp"
#include "core/store/row_text.hpp"

namespace oaklight::store {
namespace {

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

/// Whether two rows say the same; when they were written does not matter.
bool same_content(const RecordTable& table, Row a, Row b) {
  for (const char* column : {"changed_at", "row_crc"}) {
    table.at(a, column) = Value{};
    table.at(b, column) = Value{};
  }
  return a == b;
}

Error out_of_step(const RecordTable& table, const std::string& uid) {
  return {
      ErrorCode::contradiction, "A record is not as this action left it.", table.name() + "/" + uid,
      "Somebody, perhaps on another tablet, changed it since. Enter the wanted values by hand."};
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

// The last word on an action counts: two tablets may have taken back the same one.
constexpr std::string_view kIsUndone =
    "(SELECT r.kind FROM user_action AS r WHERE r.target_uid = a.uid ORDER BY r.uid DESC LIMIT 1)"
    " IS 'undo'";

/// Who may undo what: once the file holds what other tablets did, each its own.
Result<std::string> own_actions(SqliteHandle& db, std::string_view alias) {
  const auto joined = db.first("SELECT 1 FROM meta WHERE key = 'joined'");
  if (!joined) return joined.error();
  if (!joined->has_value()) return std::string("?1 = ?1");
  return std::string(alias) + ".device = ?1";
}

Result<std::optional<Candidate>> candidate(const Result<std::optional<Row>>& row) {
  if (!row) return row.error();
  if (!row->has_value()) return std::optional<Candidate>{};
  return std::optional(Candidate{text_of((**row)[0]), text_of((**row)[1])});
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
  if (const auto put = put_row(table, *before, after); !put) return put;
  return retire_rivals(table, after);
}

// What another tablet put in the same place gave way in a join; it must not come back with the next
// one, now that somebody emptied the place.
Status ActionWriter::retire_rivals(const RecordTable& table, const Row& removed) {
  const auto place = place_of(table, removed);
  if (!place) return Done{};
  const auto joined = db_.first("SELECT 1 FROM meta WHERE key = 'joined'");
  if (!joined) return joined.error();
  if (!joined->has_value()) return Done{};
  std::vector<Row> rivals;
  const auto read = table.each(db_, [&](const Row& row) {
    const bool rival = !table.is_live(row) && place_of(table, row) == place &&
                       table.uid_of(row) != table.uid_of(removed);
    if (rival) rivals.push_back(row);
    return Status(Done{});
  });
  if (!read) return read;
  for (const Row& rival : rivals) {
    if (const auto retired = settle(table, {rival}, rival); !retired) return retired;
  }
  return Done{};
}

Status ActionWriter::replay_lines(std::span<const Row> lines, bool undo) {
  const auto found = tables_.find(text_of(lines.front()[0]));
  const std::string uid = text_of(lines.front()[1]);
  if (found == tables_.end()) {
    return Error{ErrorCode::file_too_new,
                 "The history holds a kind of record that this program does not know.",
                 text_of(lines.front()[0]) + "/" + uid, "Use the newest Oaklight."};
  }
  const RecordTable& table = found->second;
  const auto now = table.find(db_, uid);
  if (!now) return now.error();
  if (!now->has_value()) return out_of_step(table, uid);
  std::vector<Row> versions;
  Row chosen;
  for (const Row& line : lines) {
    auto images = read_images(table, line[2], line[3], **now);
    if (!images) return images.error();
    versions.push_back(std::move(images->before));
    chosen = std::move(images->after);
  }
  if (!same_content(table, **now, undo ? chosen : versions.front())) return out_of_step(table, uid);
  if (lines.size() == 1) return put_row(table, *now, undo ? versions.front() : chosen);
  return undo ? open_again(table, **now, std::move(versions)) : settle(table, versions, chosen);
}

Status ActionWriter::replay(const std::string& action_uid, HistoryKind kind) {
  const bool undo = kind == HistoryKind::undo;
  const auto read = change_lines_of(db_, action_uid);
  if (!read) return read.error();
  const std::vector<Row>& lines = *read;
  // The lines of a decision between versions of one record belong together.
  std::vector<std::span<const Row>> groups;
  for (std::size_t from = 0, to = 1; from < lines.size(); from = to++) {
    while (to < lines.size() && lines[to][1] == lines[from][1] && lines[to][3] == lines[from][3]) {
      ++to;
    }
    groups.emplace_back(lines.data() + from, to - from);
  }
  if (undo) std::ranges::reverse(groups);
  for (const auto& group : groups) {
    if (const auto done = replay_lines(group, undo); !done) return done;
  }
  return Done{};
}

Status ActionWriter::open_again(const RecordTable& table, const Row& chosen,
                                std::vector<Row> versions) {
  for (Row& version : versions) table.at(version, "changed_at") = at_utc_;
  // The one that showed goes last, as the newest of them.
  std::ranges::reverse(versions);
  if (const auto written = table.update(db_, versions.back()); !written)
    return at_record(written.error(), table, table.uid_of(chosen));
  for (Row& version : versions) {
    table.at(version, "row_crc") = row_crc(table.name(), table.columns(), version);
    changes_.push_back({&table, chosen, std::move(version)});
  }
  return Done{};
}

Status ActionWriter::settle(const RecordTable& table, const std::vector<Row>& versions,
                            Row chosen) {
  table.at(chosen, "changed_at") = at_utc_;
  const auto now = table.find(db_, table.uid_of(chosen));
  if (!now) return now.error();
  const auto written = now->has_value() ? table.update(db_, chosen) : table.insert(db_, chosen);
  if (!written) return at_record(written.error(), table, table.uid_of(chosen));
  for (const Row& version : versions) changes_.push_back({&table, version, chosen});
  return Done{};
}

Status ActionWriter::write_change(const std::string& action, const RowChange& change) {
  const RecordTable& table = *change.table;
  const std::string& uid = table.uid_of(change.after);
  Row line{action, table.name(), uid, Value{}};
  if (change.before) {
    auto json = table.json_of(*change.before);
    if (!json) return at_record(json.error(), table, uid);
    line.back() = *std::move(json);
  }
  auto json = table.json_of(change.after);
  if (!json) return at_record(json.error(), table, uid);
  line.emplace_back(*std::move(json));
  return add_change_line(db_, change_line(std::move(line)));
}

Status ActionWriter::finish(const Uuid& action, const std::string& device, const std::string& label,
                            HistoryKind kind, const std::optional<std::string>& target_uid) {
  if (changes_.empty() && kind == HistoryKind::action) return Done{};
  if (const auto sound = check_links_of(db_, tables_, changes_); !sound) return sound;
  const std::string uid = to_text(action);
  const Row line = action_line({uid, at_utc_, device, label, std::string(word_of_kind(kind)),
                                target_uid ? Value{*target_uid} : Value{}});
  if (const auto written = add_action_line(db_, line); !written) return written;
  for (const RowChange& change : changes_) {
    if (const auto written = write_change(uid, change); !written) return written;
  }
  return update_contents(db_, changes_, at_utc_);
}

// The order of events is that of the uids: they rise in each file above all that it held before,
// whatever its clock says, so that it also holds for what several files are joined from.
Result<std::optional<Candidate>> next_undo(SqliteHandle& db, const std::string& device) {
  const auto own = own_actions(db, "a");
  if (!own) return own.error();
  return candidate(db.first("SELECT a.uid, a.label FROM user_action AS a WHERE a.kind = 'do' AND " +
                                *own + " AND NOT " + std::string(kIsUndone) +
                                " ORDER BY a.uid DESC LIMIT 1",
                            {device}));
}

Result<std::optional<Candidate>> next_redo(SqliteHandle& db, const std::string& device) {
  const auto own = own_actions(db, "a");
  if (!own) return own.error();
  const auto own_undo = own_actions(db, "u");
  if (!own_undo) return own_undo.error();
  return candidate(db.first(
      "SELECT a.uid, a.label FROM user_action AS u JOIN user_action AS a ON a.uid = u.target_uid"
      " WHERE u.kind = 'undo' AND " +
          *own_undo + " AND u.uid > (SELECT a.uid FROM user_action AS a WHERE a.kind = 'do' AND " +
          *own + " ORDER BY a.uid DESC LIMIT 1) AND " + std::string(kIsUndone) +
          " ORDER BY a.uid LIMIT 1",
      {device}));
}

Result<std::vector<HistoryEntry>> read_history(SqliteHandle& db, std::int64_t limit) {
  std::vector<HistoryEntry> entries;
  const auto walked = db.each(
      "SELECT uid, at_utc, device, label, kind, target_uid,"
      " (SELECT count(*) FROM change AS c WHERE c.action_uid = a.uid)"
      " FROM user_action AS a ORDER BY uid DESC LIMIT ?1",
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

}  // namespace oaklight::store
