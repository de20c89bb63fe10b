#include "core/store/new_file.hpp"

#include <vector>

namespace oaklight::store {

Status make_tables(SqliteHandle& db, std::span<const SchemaStep> steps,
                   const std::string& created_at) {
  if (const auto ran = run_steps(db, steps, 0); !ran) return ran;
  if (const auto set = set_meta(db, "format", kFormatName); !set) return set;
  if (const auto set = set_meta(db, "created_at", created_at); !set) return set;
  return db.run("UPDATE gpkg_contents SET last_change = ?1", {created_at});
}

Status resume_ids(SqliteHandle& db, IdSource& ids) {
  std::vector<std::string_view> tables(kRecordTables.begin(), kRecordTables.end());
  tables.push_back("user_action");
  for (const std::string_view table : tables) {
    const auto row = db.first("SELECT max(uid) FROM " + quoted_name(table));
    if (!row) return row.error();
    Uuid newest;
    if (row->has_value() && from_value((**row)[0], newest)) ids.resume_after(newest);
  }
  return Done{};
}

}  // namespace oaklight::store
