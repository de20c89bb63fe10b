#include "core/store/links.hpp"

namespace oaklight::store {
namespace {

std::string text_of(const Value& value) {
  const auto* text = std::get_if<std::string>(&value);
  return text == nullptr ? std::string{} : *text;
}

/// A live record must point at live ones.
Status check_parents(SqliteHandle& db, const RecordTable& table, const Row& row) {
  for (const Reference& reference : table.references()) {
    if (is_null(table.at(row, reference.column))) continue;
    const auto parent = db.first(
        "SELECT 1 FROM " + quoted_name(reference.parent) + " WHERE uid = ?1 AND deleted = 0",
        {table.at(row, reference.column)});
    if (!parent) return parent.error();
    if (parent->has_value()) continue;
    return Error{ErrorCode::unknown_reference,
                 "A record belongs to a " + reference.parent +
                     " that the file does not hold or that was removed.",
                 table.name() + "/" + table.uid_of(row) + "/" + reference.column,
                 "Add that " + reference.parent + " first."};
  }
  return Done{};
}

/// No live record may point at one that was taken out of use.
Status check_children(SqliteHandle& db, const RecordTables& tables, const RecordTable& table,
                      const Row& row) {
  for (const auto& [name, child] : tables) {
    for (const Reference& reference : child.references()) {
      if (reference.parent != table.name()) continue;
      const auto user =
          db.first("SELECT uid FROM " + quoted_name(name) + " WHERE " +
                       quoted_name(reference.column) + " = ?1 AND deleted = 0 LIMIT 1",
                   {table.uid_of(row)});
      if (!user) return user.error();
      if (!user->has_value()) continue;
      return Error{ErrorCode::unknown_reference,
                   "A " + table.name() + " cannot be removed while a " + name + " belongs to it.",
                   table.name() + "/" + table.uid_of(row),
                   "Remove " + name + " " + text_of((**user)[0]) + " first."};
    }
  }
  return Done{};
}

}  // namespace

Status check_links_of(SqliteHandle& db, const RecordTables& tables,
                      const std::vector<RowChange>& changes) {
  for (const RowChange& change : changes) {
    // A record may have been touched twice; what counts is what it is now.
    const auto row = change.table->find(db, change.table->uid_of(change.after));
    if (!row) return row.error();
    if (!row->has_value()) continue;
    const auto sound = change.table->is_live(**row)
                           ? check_parents(db, *change.table, **row)
                           : check_children(db, tables, *change.table, **row);
    if (!sound) return sound;
  }
  return Done{};
}

Result<std::vector<Error>> find_broken_links(SqliteHandle& db, const RecordTables& tables) {
  std::vector<Error> broken;
  for (const auto& [name, table] : tables) {
    for (const Reference& reference : table.references()) {
      const auto walked = db.each(
          "SELECT child.uid FROM " + quoted_name(name) + " AS child LEFT JOIN " +
              quoted_name(reference.parent) + " AS parent ON parent.uid = child." +
              quoted_name(reference.column) +
              " WHERE child.deleted = 0 AND ifnull(parent.deleted, 1) <> 0 AND child." +
              quoted_name(reference.column) + " IS NOT NULL ORDER BY child.uid LIMIT 10",
          {}, [&](const Row& row) -> Status {
            broken.push_back(
                {ErrorCode::damaged,
                 "A record belongs to a " + reference.parent + " that is missing or removed.",
                 name + "/" + text_of(row[0]) + "/" + reference.column,
                 "Keep this file; rescue what it holds, or work on from your newest copy."});
            return Done{};
          });
      if (!walked) return walked.error();
    }
  }
  return broken;
}

}  // namespace oaklight::store
