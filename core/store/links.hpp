#pragma once

#include <vector>

#include "core/store/contents.hpp"
#include "core/store/record_table.hpp"

namespace oaklight::store {

// A removed record stays in its table, so that SQLite's foreign keys see nothing wrong with
// pointing at it; these rules do.

/// After an action: what the touched records point at is in use, and nothing in use points at those
/// taken out of use. Errors: unknown_reference, naming the record.
Status check_links_of(SqliteHandle& db, const RecordTables& tables,
                      const std::vector<RowChange>& changes);

/// The same for the whole file, as damage: one Error for each broken link, at most ten a column.
/// but     a table whose links were looked at as it was read; "": none
Result<std::vector<Error>> find_broken_links(SqliteHandle& db, const RecordTables& tables,
                                             std::string_view but = "");

}  // namespace oaklight::store
