#include "core/store/links.hpp"

#include <map>
#include <set>
#include <unordered_map>

namespace oaklight::store {
namespace {

std::string_view text_of(const Value& value) {
  const auto* text = std::get_if<std::string>(&value);
  return text == nullptr ? std::string_view{} : *text;
}

/// Looks up parents, each once: the trees of an import have few plots.
class Parents {
 public:
  explicit Parents(SqliteHandle& db) : db_(db) {}

  Result<bool> is_live(const std::string& table, const Value& uid) {
    auto& known = live_[table];
    if (known.contains(text_of(uid))) return true;
    const auto found =
        db_.first("SELECT 1 FROM " + quoted_name(table) + " WHERE uid = ?1 AND deleted = 0", {uid});
    if (!found) return found.error();
    if (found->has_value()) known.emplace(text_of(uid));
    return found->has_value();
  }

 private:
  SqliteHandle& db_;
  std::map<std::string, std::set<std::string, std::less<>>> live_;
};

/// A live record must point at live ones.
Status check_parents(Parents& parents, const RecordTable& table, const Row& row) {
  for (const Reference& reference : table.references()) {
    const Value& uid = table.at(row, reference.column);
    if (is_null(uid)) continue;
    const auto live = parents.is_live(reference.parent, uid);
    if (!live) return live.error();
    if (*live) continue;
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
                   "Remove " + name + " " + std::string(text_of((**user)[0])) + " first."};
    }
  }
  return Done{};
}

}  // namespace

Status check_links_of(SqliteHandle& db, const RecordTables& tables,
                      const std::vector<RowChange>& changes) {
  // A record may have been touched twice; what counts is what it is now.
  std::map<const RecordTable*, std::unordered_map<std::string_view, const Row*>> now;
  for (const RowChange& change : changes)
    now[change.table].insert_or_assign(change.table->uid_of(change.after), &change.after);
  Parents parents(db);
  for (const RowChange& change : changes) {
    const Row& row = *now[change.table].at(change.table->uid_of(change.after));
    const auto sound = change.table->is_live(row) ? check_parents(parents, *change.table, row)
                                                  : check_children(db, tables, *change.table, row);
    if (!sound) return sound;
  }
  return Done{};
}

Result<std::vector<Error>> find_broken_links(SqliteHandle& db, const RecordTables& tables,
                                             std::string_view but) {
  std::vector<Error> broken;
  for (const auto& [name, table] : tables) {
    if (name == but) continue;
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
                 name + "/" + std::string(text_of(row[0])) + "/" + reference.column,
                 "Keep this file; rescue what it holds, or work on from your newest copy."});
            return Done{};
          });
      if (!walked) return walked.error();
    }
  }
  return broken;
}

}  // namespace oaklight::store
