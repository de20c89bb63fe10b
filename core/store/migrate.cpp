#include "core/store/migrate.hpp"

#include <algorithm>
#include <map>
#include <system_error>

#include "core/base/number_text.hpp"
#include "core/store/file_header.hpp"

namespace oaklight::store {
namespace {

namespace fs = std::filesystem;

/// The rest of a line after its mark, or nothing when the line begins otherwise.
std::optional<std::string_view> after_mark(std::string_view line, std::string_view mark) {
  if (!line.starts_with(mark)) return std::nullopt;
  line.remove_prefix(mark.size());
  const auto from = line.find_first_not_of(' ');
  return from == std::string_view::npos ? std::string_view{} : line.substr(from);
}

std::string_view next_line(std::string_view& text) {
  const auto end = std::min(text.find('\n'), text.size());
  const std::string_view line = text.substr(0, end);
  text.remove_prefix(std::min(end + 1, text.size()));
  return line;
}

std::string four_digits(int number) {
  const std::string digits = std::to_string(number);
  return std::string(digits.size() < 4 ? 4 - digits.size() : 0, '0') + digits;
}

Error bad_step(std::string_view file, const std::string& what) {
  return {ErrorCode::not_a_choice, what, "schema/" + std::string(file),
          "See schema/README.md, how to add a step."};
}

Result<SchemaStep> read_step(const EmbeddedFile& file, int number) {
  const std::string digits = four_digits(number);
  if (!file.path.starts_with(digits + "_"))
    return bad_step(file.path, "Step " + digits + " is missing or named otherwise.");
  std::string_view rest = file.text;
  const auto what = after_mark(next_line(rest), "-- " + digits + ":");
  const auto min_reader = after_mark(next_line(rest), "-- min_reader:");
  const auto loses = after_mark(next_line(rest), "-- loses:");
  if (!what || what->empty()) return bad_step(file.path, "Line 1 does not say what the step does.");
  if (!min_reader) return bad_step(file.path, "Line 2 does not name min_reader.");
  if (!loses || loses->empty()) return bad_step(file.path, "Line 3 does not say what it loses.");
  const auto reader = whole_from_text(min_reader->substr(0, min_reader->find(' ')));
  if (!reader || *reader < 1 || *reader > number)
    return bad_step(file.path, "min_reader is not a step up to this one.");
  return SchemaStep{number, std::string(*what), static_cast<int>(*reader), std::string(*loses),
                    std::string(file.text)};
}

Result<int> whole_meta(const std::map<std::string, std::string>& meta, const std::string& key,
                       const std::string& where) {
  const auto found = meta.find(key);
  const auto number =
      found == meta.end() ? Result<std::int64_t>(Error{}) : whole_from_text(found->second);
  if (!number || *number < 1 || *number > 9999) {
    return Error{ErrorCode::damaged, "The file does not say which step its tables are at.", where,
                 "Keep this file; rescue what it holds, or work on from your newest copy."};
  }
  return static_cast<int>(*number);
}

Status check_references(SqliteHandle& db) {
  const auto row = db.first("PRAGMA foreign_key_check");
  if (!row) return row.error();
  if (!row->has_value()) return Done{};
  return Error{ErrorCode::damaged, "After the update a record would point at one that is missing.",
               db.path().string(), "The file was left as it was; work on from your newest copy."};
}

fs::path free_copy_name(const fs::path& path, int step) {
  const std::string stem =
      (path.parent_path() / path.stem()).string() + ".before-step-" + std::to_string(step);
  fs::path name = stem + path.extension().string();
  std::error_code ignored;
  // A link that leads nowhere is taken too: the copy would be made where it leads.
  for (int i = 2; fs::exists(fs::symlink_status(name, ignored)); ++i)
    name = stem + "-" + std::to_string(i) + path.extension().string();
  return name;
}

/// Keeps a copy of the file beside it, which has its name only when it is whole.
Status keep_copy(SqliteHandle& db, int step) {
  const fs::path copy = free_copy_name(db.path(), step);
  const fs::path unfinished = copy.string() + ".new";
  const auto take_away = [&unfinished] {
    std::error_code ignored;
    fs::remove(unfinished.string() + "-journal", ignored);
    fs::remove(unfinished, ignored);
  };
  take_away();
  Status kept = db.backup_to(unfinished);
  if (kept) kept = publish_file(unfinished, copy);
  if (!kept) take_away();
  return kept;
}

}  // namespace

Result<std::vector<SchemaStep>> read_steps(std::span<const EmbeddedFile> files) {
  std::vector<SchemaStep> steps;
  for (const EmbeddedFile& file : files) {
    auto step = read_step(file, static_cast<int>(steps.size()) + 1);
    if (!step) return step.error();
    steps.push_back(std::move(*step));
  }
  return steps;
}

Result<FileState> read_state(SqliteHandle& db) {
  const std::string where = db.path().string();
  const Error not_ours{ErrorCode::not_a_tract_file, "This GeoPackage was made by another program.",
                       where,
                       "It was left untouched. To bring its shapes in, save them as GeoJSON there "
                       "and import that."};
  const auto table = db.first(
      "SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = 'meta' AND rootpage > 0");
  if (!table) return table.error();
  if (!table->has_value()) return not_ours;
  std::map<std::string, std::string> meta;
  const auto read =
      db.each("SELECT CAST(key AS TEXT), CAST(value AS TEXT) FROM meta ORDER BY key LIMIT 100", {},
              [&](const Row& row) -> Status {
                const auto* key = std::get_if<std::string>(&row[0]);
                const auto* value = std::get_if<std::string>(&row[1]);
                if (key != nullptr && value != nullptr) meta[*key] = *value;
                return Done{};
              });
  if (!read || meta["format"] != kFormatName) return not_ours;
  const auto step = whole_meta(meta, "step", where);
  if (!step) return step.error();
  const auto min_reader = whole_meta(meta, "min_reader", where);
  if (!min_reader) return min_reader.error();
  return FileState{*step, *min_reader};
}

Result<Fit> fit_of(const FileState& state, std::span<const SchemaStep> steps,
                   const fs::path& path) {
  const int ours = steps.back().number;
  if (state.min_reader > ours) {
    return Error{ErrorCode::file_too_new,
                 "The file was made by a newer Oaklight (step " + std::to_string(state.step) +
                     "; this one knows step " + std::to_string(ours) + ").",
                 path.string(), "It was left untouched. Open it with the newest Oaklight."};
  }
  return state.step < ours ? Fit::older : Fit::current;
}

int min_reader_of(std::span<const SchemaStep> steps) {
  return std::max_element(steps.begin(), steps.end(),
                          [](const auto& a, const auto& b) { return a.min_reader < b.min_reader; })
      ->min_reader;
}

Status set_meta(SqliteHandle& db, const std::string& key, const std::string& value) {
  return db.run(
      "INSERT INTO meta (key, value) VALUES (?1, ?2)"
      " ON CONFLICT (key) DO UPDATE SET value = excluded.value",
      {key, value});
}

Status run_steps(SqliteHandle& db, std::span<const SchemaStep> steps, int from) {
  for (const SchemaStep& step : steps) {
    if (step.number <= from) continue;
    if (const auto ran = db.script(step.sql); !ran) {
      Error error = ran.error();
      error.what = "Step " + std::to_string(step.number) + " of the tables failed: " + error.what;
      return error;
    }
  }
  if (const auto set = set_meta(db, "step", std::to_string(steps.back().number)); !set) return set;
  return set_meta(db, "min_reader", std::to_string(min_reader_of(steps)));
}

Status bring_up_to_date(const fs::path& path, std::span<const SchemaStep> steps,
                        const FileState& state) {
  auto db = SqliteHandle::open(path, Use::bring_up);
  if (!db) return db.error();
  if (const auto kept = keep_copy(*db, state.step + 1); !kept) return kept;
  // A log's frames are checked whole. Of a rollback journal's pages every 200th byte is checked,
  // and their count not at all: what a power cut left half written there could be played back.
  if (const auto set = db->script("PRAGMA journal_mode = WAL;"); !set) return set;
  return db->transaction([&]() -> Status {
    if (const auto ran = run_steps(*db, steps, state.step); !ran) return ran;
    // A layer that a step adds has not changed since the file was made; the step itself cannot
    // know.
    const auto dated = db->run(
        "UPDATE gpkg_contents SET last_change = (SELECT value FROM meta WHERE key = 'created_at')"
        " WHERE last_change NOT IN (SELECT at_utc FROM user_action)"
        " AND EXISTS (SELECT 1 FROM meta WHERE key = 'created_at')");
    if (!dated) return dated;
    return check_references(*db);
  });
}

}  // namespace oaklight::store
