#include "core/store/join_source.hpp"

#include <algorithm>
#include <cctype>
#include <iterator>
#include <tuple>

#include "core/store/join_cells.hpp"

namespace oaklight::store {
namespace {

Error not_as_history_says(const std::string& table, const std::string& uid) {
  return {ErrorCode::damaged, "A record is not as its history leaves it.", table + "/" + uid,
          "Keep this file, and work on from your newest copy."};
}

std::string folded(const std::string& name) {
  std::string text;
  for (const char c : name) {
    const auto letter = static_cast<unsigned char>(c);
    if (text.empty() && std::isspace(letter) != 0) continue;
    text += static_cast<char>(std::tolower(letter));
  }
  while (!text.empty() && std::isspace(static_cast<unsigned char>(text.back())) != 0)
    text.pop_back();
  return text;
}

const std::vector<Version>* life_of(const Lives& lives, const std::string& table,
                                    const std::string& uid) {
  const auto of_table = lives.find(table);
  if (of_table == lives.end()) return nullptr;
  const auto life = of_table->second.find(uid);
  return life == of_table->second.end() ? nullptr : &life->second;
}

Status read_rows(SqliteHandle& db, const RecordTable& table, JoinSource& source) {
  auto& rows = source.rows[table.name()];
  return table.each(db, [&](const Row& row) -> Status {
    if (const auto sound = table.verify(row); !sound) return sound;
    const std::string uid = table.uid_of(row);
    const auto* life = life_of(source.lives, table.name(), uid);
    if (life != nullptr && !is_a_head(table, row, *life))
      return not_as_history_says(table.name(), uid);
    rows.emplace(uid, row);
    return Done{};
  });
}

/// Every record of the history is there; a form may have given way to that of another tablet.
Status find_missing_rows(const JoinSource& source) {
  for (const auto& [table, lives] : source.lives) {
    if (table == "form_file") continue;
    const auto& rows = source.rows.find(table)->second;
    for (const auto& [uid, life] : lives) {
      if (!rows.contains(uid)) return not_as_history_says(table, uid);
    }
  }
  return Done{};
}

/// A row without history as it was before joins settled its name or took its tract out of use.
Row before_any_join(const RecordTable& table, Row row) {
  if (table.name() == "tract") table.at(row, "deleted") = std::int64_t{0};
  if (const auto column = name_column(table.name()))
    table.at(row, *column) = first_name(text_of(table.at(row, *column)));
  return row;
}

}  // namespace

int JoinSource::records_beside(const JoinSource& other) const {
  int count = 0;
  for (const auto& [table, of_table] : rows) {
    if (table == "tract" || table == "form_file") continue;
    const auto& others = other.rows.find(table)->second;
    count += static_cast<int>(std::ranges::count_if(
        of_table, [&](const auto& row) { return !others.contains(row.first); }));
  }
  return count;
}

Result<JoinSource> read_source(SqliteHandle& db, const RecordTables& own_tables,
                               const RecordTables& tables) {
  JoinSource source;
  const auto read = db.snapshot([&]() -> Status {
    auto lines = read_lines(db);
    if (!lines) return lines.error();
    source.lines = *std::move(lines);
    auto lives = lives_of(source.lines, tables);
    if (!lives) return lives.error();
    source.lives = *std::move(lives);
    for (const auto& [name, table] : tables) {
      if (own_tables.find(name)->second.columns() != table.columns()) {
        return Error{ErrorCode::file_too_new, "The file has columns that this one does not have.",
                     name, "Join with the newest Oaklight."};
      }
      if (const auto done = read_rows(db, table, source); !done) return done;
    }
    return find_missing_rows(source);
  });
  if (!read) return read.error();
  const RecordTable& tract = tables.find("tract")->second;
  for (const auto& [uid, row] : source.rows["tract"]) {
    source.tracts.insert(uid);
    if (tract.is_live(row)) source.name = text_of(tract.at(row, "name"));
  }
  return source;
}

Status JoinUnion::add(const JoinSource& source) {
  const Error differs{ErrorCode::damaged, "Two files tell one action differently.", "user_action",
                      "Keep both files, and work on from your newest copy."};
  std::set<std::string> fresh;
  for (const auto& [uid, action] : source.lines.actions) {
    const auto changes = source.lines.changes.find(uid);
    const auto& theirs =
        changes == source.lines.changes.end() ? std::vector<Row>{} : changes->second;
    const auto [known, added] = lines.actions.emplace(uid, action);
    if (added) {
      fresh.insert(uid);
      if (!theirs.empty()) lines.changes.emplace(uid, theirs);
    } else if (known->second != action || lines.changes[uid] != theirs) {
      return differs;
    }
  }
  for (const auto& [table, of_table] : source.lives) {
    for (const auto& [uid, life] : of_table) {
      auto& versions = lives[table][uid];
      const auto before = versions.size();
      std::ranges::copy_if(life, std::back_inserter(versions),
                           [&](const Version& v) { return fresh.contains(v.action); });
      if (before == 0 || before == versions.size()) continue;
      std::ranges::sort(versions, {}, [](const Version& v) { return std::tie(v.action, v.line); });
    }
  }
  tracts_.insert(source.tracts.begin(), source.tracts.end());
  if (!source.name.empty()) names_.insert(folded(source.name));
  return Done{};
}

Status JoinUnion::add_rows_without_history(const JoinSource& source, const RecordTables& tables) {
  for (const auto& [name, of_table] : source.rows) {
    const RecordTable& table = tables.find(name)->second;
    for (const auto& [uid, row] : of_table) {
      if (life_of(source.lives, name, uid) != nullptr) continue;
      if (const auto* life = life_of(lives, name, uid); life != nullptr) {
        if (!is_known(table, row, *life)) return not_as_history_says(name, uid);
        continue;
      }
      const auto [known, added] = rows[name].emplace(uid, before_any_join(table, row));
      if (!added && exact_image(table, known->second) != exact_image(table, row))
        return not_as_history_says(name, uid);
    }
  }
  return Done{};
}

bool JoinUnion::is_of_tract(const JoinSource& source) const {
  return std::ranges::any_of(source.tracts,
                             [&](const std::string& uid) { return tracts_.contains(uid); });
}

bool JoinUnion::has_name(const JoinSource& source) const {
  return names_.contains(folded(source.name));
}

}  // namespace oaklight::store
