#pragma once

#include <span>
#include <vector>

#include "core/base/result.hpp"
#include "core/store/migrate.hpp"
#include "core/store/sqlite_handle.hpp"

namespace oaklight::store {

/// What a file says of itself, in tables that carry no checksum, against what the rest of it shows:
/// every fact there can be worked out in another way. So no byte of it can change unnoticed.
///
/// model  an empty tract file of the newest step
/// state  of the file, not of a newer step than the model
Result<std::vector<Error>> find_false_facts(SqliteHandle& db, SqliteHandle& model,
                                            std::span<const SchemaStep> steps,
                                            const FileState& state);

/// Tables, indexes and views that are not as the steps make them; what others added is no fault.
Result<std::vector<Error>> find_changed_tables(SqliteHandle& db, SqliteHandle& model);

/// Looks whether a table of ours has rules that only its maker knows: a check, a column or an index
/// that is worked out would run at each read or write, and could run for ever. Columns without
/// rules that a GIS added pass. Errors: damaged, naming the table.
Status refuse_foreign_rules(SqliteHandle& db, std::span<const SchemaStep> steps,
                            const FileState& state);

}  // namespace oaklight::store
