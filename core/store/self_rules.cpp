#include "core/store/self_rules.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <regex>
#include <string>
#include <utility>

#include "core/store/record_table.hpp"

namespace oaklight::store {
namespace {

using Problems = std::vector<Error>;

std::string text_of(const Value& value) {
  const auto* text = std::get_if<std::string>(&value);
  return text == nullptr ? std::string{} : *text;
}

Error damage(std::string what, std::string where) {
  return {ErrorCode::damaged, std::move(what), std::move(where),
          "Keep this file; rescue what it holds, or work on from your newest copy."};
}

/// Rows that each tract file has alike, and their columns, the name of the row first.
struct FixedRows {
  const char* table;
  const char* columns;
};
constexpr std::array kFixedRows = {
    FixedRows{"gpkg_spatial_ref_sys",
              "srs_id, srs_name, organization, organization_coordsys_id, definition, description"},
    FixedRows{"gpkg_contents", "table_name, data_type, identifier, description, srs_id"},
    FixedRows{"gpkg_geometry_columns",
              "table_name, column_name, geometry_type_name, srs_id, z, m"}};

std::string name_of_row(const Value& value) {
  const auto* number = std::get_if<std::int64_t>(&value);
  return number == nullptr ? text_of(value) : std::to_string(*number);
}

Status compare_rows(SqliteHandle& db, SqliteHandle& model, const FixedRows& fixed,
                    Problems& found) {
  std::vector<Row> there;
  const std::string select =
      std::string("SELECT ") + fixed.columns + " FROM " + quoted_name(fixed.table);
  const auto read = db.each(select, {}, [&](const Row& row) -> Status {
    there.push_back(row);
    return Done{};
  });
  if (!read) return read;
  return model.each(select + " ORDER BY 1", {}, [&](const Row& wanted) -> Status {
    if (std::find(there.begin(), there.end(), wanted) == there.end())
      found.push_back(damage("A row of the GeoPackage's own tables is not as Oaklight makes it.",
                             std::string(fixed.table) + "/" + name_of_row(wanted[0])));
    return Done{};
  });
}

/// A file is made with its forms: the moment is theirs, or that of one before it was changed.
Status check_created_at(SqliteHandle& db, Problems& found) {
  const auto row = db.first(
      "SELECT 1 WHERE NOT EXISTS (SELECT 1 FROM form_file) UNION"
      " SELECT 1 FROM meta AS m WHERE m.key = 'created_at' AND (m.value IN (SELECT changed_at FROM "
      "form_file) OR EXISTS"
      " (SELECT 1 FROM change AS c WHERE c.table_name = 'form_file' AND"
      " instr(c.before_json, '\"changed_at\":\"' || m.value || '\"') > 0))");
  if (!row) return row.error();
  if (!row->has_value())
    found.push_back(
        damage("The moment when the file was made is not that of its forms.", "meta/created_at"));
  return Done{};
}

/// A key that is none of ours was one of them.
Status check_keys(SqliteHandle& db, Problems& found) {
  return db.each(
      "SELECT key FROM meta WHERE key NOT IN"
      " ('format', 'step', 'min_reader', 'created_at', 'created_by', 'joined') ORDER BY key",
      {}, [&](const Row& row) -> Status {
        found.push_back(damage("The file says something of itself that no Oaklight writes.",
                               "meta/" + text_of(row[0])));
        return Done{};
      });
}

/// A layer last changed with an action, or when the file was made.
Status check_times(SqliteHandle& db, SqliteHandle& model, Problems& found) {
  return model.each("SELECT table_name FROM gpkg_contents ORDER BY 1", {},
                    [&](const Row& layer) -> Status {
                      const auto row = db.first(
                          "SELECT 1 FROM gpkg_contents WHERE table_name = ?1 AND"
                          " (last_change IN (SELECT at_utc FROM user_action) OR"
                          " last_change IN (SELECT value FROM meta WHERE key = 'created_at'))",
                          {layer[0]});
                      if (!row) return row.error();
                      if (!row->has_value())
                        found.push_back(damage("A time of last change is of no action in the file.",
                                               "gpkg_contents/" + text_of(layer[0])));
                      return Done{};
                    });
}

/// Rows are numbered one by one and none is ever taken away. Copying no row into a table leaves a
/// 0.
Status compare_numbers(SqliteHandle& db, Problems& found) {
  std::vector<std::string_view> tables(kRecordTables.begin(), kRecordTables.end());
  tables.insert(tables.end(), {"user_action", "change"});
  for (const std::string_view table : tables) {
    const auto row = db.first("SELECT (SELECT max(rowid) FROM " + quoted_name(table) +
                                  ") IS (SELECT sum(seq) FROM sqlite_sequence WHERE name = ?1)",
                              {std::string(table)});
    if (!row) return row.error();
    if (row->has_value() && (**row)[0] == Value{std::int64_t{1}}) continue;
    found.push_back(damage("The highest number of a table's rows is not the one that was given.",
                           "sqlite_sequence/" + std::string(table)));
  }
  return Done{};
}

// Longer texts are no plain addition.
constexpr std::size_t kMostText = 2'000;

/// The text of a table is ours, or ours with columns behind it that have a name, a type and nothing
/// else, as ALTER TABLE adds them.
bool is_ours(const std::string& theirs, const std::string& ours) {
  if (theirs == ours) return true;
  const std::size_t end = ours.rfind(')');
  const std::size_t tail = ours.size() - end;
  if (theirs.size() < ours.size() || theirs.compare(0, end, ours, 0, end) != 0 ||
      theirs.compare(theirs.size() - tail, tail, ours, end, tail) != 0)
    return false;
  const std::string added = theirs.substr(end, theirs.size() - tail - end);
  static const std::regex kPlain(R"((, ?("[^"]{1,60}"|\w{1,60}) \w{1,20}(\(\d{1,9}\))?)+\s*)");
  return added.size() < kMostText && std::regex_match(added, kPlain);
}

/// Columns by name, and of all rows.
bool is_plain_index(const std::string& sql) {
  // No two ways to match the same text, so that no text makes the match take long.
  const std::string name = R"(("[^"]{1,60}"|\w{1,60}))";
  const std::string column = name + "( ASC| DESC)?";
  static const std::regex kPlain("CREATE (UNIQUE )?INDEX " + name + " ON " + name + R"( ?\()" +
                                 column + "(, ?" + column + R"()*\))");
  return sql.size() < kMostText && std::regex_match(sql, kPlain);
}

/// What the tables and indexes of a step are made of, by type and name.
using StepTexts = std::map<std::pair<std::string, std::string>, std::string>;

Result<std::vector<StepTexts>> read_texts(std::span<const SchemaStep> steps) {
  std::vector<StepTexts> all;
  auto model = SqliteHandle::open(SqliteHandle::kMemory, Use::make);
  if (!model) return model.error();
  for (const SchemaStep& step : steps) {
    if (const auto ran = model->script(step.sql); !ran) return ran.error();
    StepTexts& texts = all.emplace_back();
    const auto read = model->each("SELECT type, name, sql FROM sqlite_schema WHERE sql IS NOT NULL",
                                  {}, [&](const Row& row) -> Status {
                                    texts[{text_of(row[0]), text_of(row[1])}] = text_of(row[2]);
                                    return Done{};
                                  });
    if (!read) return read.error();
  }
  return all;
}

/// Worked out once: a program knows one set of steps, and each file is looked at when it is opened.
const Result<std::vector<StepTexts>>& texts_of_steps(std::span<const SchemaStep> steps) {
  static const Result<std::vector<StepTexts>> kAll = read_texts(steps);
  return kAll;
}

}  // namespace

Result<Problems> find_false_facts(SqliteHandle& db, SqliteHandle& model,
                                  std::span<const SchemaStep> steps, const FileState& state) {
  Problems found;
  for (const FixedRows& fixed : kFixedRows) {
    if (const auto compared = compare_rows(db, model, fixed, found); !compared)
      return compared.error();
  }
  if (const auto checked = check_keys(db, found); !checked) return checked.error();
  const auto joined = db.first("SELECT 1 FROM meta WHERE key = 'joined'");
  if (!joined) return joined.error();
  // What several files are joined from was made and changed at times that are not this file's own.
  if (!joined->has_value()) {
    if (const auto checked = check_created_at(db, found); !checked) return checked.error();
    if (const auto checked = check_times(db, model, found); !checked) return checked.error();
  }
  if (state.min_reader != min_reader_of(steps))
    found.push_back(
        damage("The file says that another program may read it than may.", "meta/min_reader"));
  if (const auto compared = compare_numbers(db, found); !compared) return compared.error();
  return found;
}

Result<Problems> find_changed_tables(SqliteHandle& db, SqliteHandle& model) {
  Problems found;
  const auto walked = model.each(
      "SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY name", {},
      [&](const Row& wanted) -> Status {
        const auto there = db.first(
            "SELECT sql FROM sqlite_schema WHERE type = ?1 AND name = ?2 AND tbl_name = ?3",
            {wanted[0], wanted[1], wanted[2]});
        if (!there) return there.error();
        if (there->has_value() && (**there)[0] == wanted[3]) return Done{};
        found.push_back(damage("The " + text_of(wanted[0]) + " \"" + text_of(wanted[1]) +
                                   "\" is not as Oaklight makes it.",
                               db.path().string()));
        return Done{};
      });
  if (!walked) return walked.error();
  return found;
}

Status refuse_foreign_rules(SqliteHandle& db, std::span<const SchemaStep> steps,
                            const FileState& state) {
  // What a newer program made cannot be known here.
  if (state.step > steps.back().number) return Done{};
  const auto& all = texts_of_steps(steps);
  if (!all) return all.error();
  const StepTexts& ours = (*all)[static_cast<std::size_t>(state.step - 1)];
  return db.each("SELECT type, name, tbl_name, sql FROM sqlite_schema WHERE sql IS NOT NULL", {},
                 [&](const Row& row) -> Status {
                   const std::string type = text_of(row[0]);
                   const std::string sql = text_of(row[3]);
                   const bool is_table = type == "table";
                   if (!is_table && type != "index") return Done{};
                   if (ours.find({"table", text_of(row[2])}) == ours.end()) return Done{};
                   const auto known = ours.find({type, text_of(row[1])});
                   const bool plain = known != ours.end() && is_ours(sql, known->second);
                   if (plain || (!is_table && is_plain_index(sql))) return Done{};
                   return Error{
                       ErrorCode::damaged,
                       "The " + type + " \"" + text_of(row[1]) +
                           "\" is not as Oaklight makes it, so nothing is done with it.",
                       db.path().string() + "/" + text_of(row[2]),
                       "Copy what it holds into a new file by: oaklight rescue FILE NEW.gpkg"};
                 });
}

}  // namespace oaklight::store
