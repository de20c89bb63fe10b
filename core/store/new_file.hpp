#pragma once

#include <span>
#include <string>

#include "core/base/id.hpp"
#include "core/store/migrate.hpp"
#include "core/store/records.hpp"

namespace oaklight::store {

/// The tables of a tract file in an empty one, and what it says of itself; inside a transaction.
Status make_tables(SqliteHandle& db, std::span<const SchemaStep> steps,
                   const std::string& created_at);

/// Ids that come from there come after every id in the file.
Status resume_ids(SqliteHandle& db, IdSource& ids);

/// Adds a record that no action made: the history begins after it.
template <class R>
Status add_first(SqliteHandle& db, const RecordTables& tables, const Uuid& id, const R& record,
                 const std::string& at_utc) {
  const RecordTable& table = tables.find(Fields<R>::kTable)->second;
  auto row = row_of(table, Row(table.columns().size()), record);
  if (!row) return row.error();
  table.at(*row, "uid") = to_text(id);
  table.at(*row, "changed_at") = at_utc;
  return table.insert(db, *row);
}

}  // namespace oaklight::store
