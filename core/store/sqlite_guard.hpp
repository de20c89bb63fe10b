#pragma once

#include <filesystem>

#include "core/base/result.hpp"

struct sqlite3;

namespace oaklight::store {

/// Makes a connection distrust its file: defensive mode, nothing in the schema trusted, views off,
/// triggers only as far as a spatial index needs them, limits far lower than SQLite's.
///
/// runs_steps  the connection is for schema steps of ours, which look into views
/// returns     an SQLite result code
int guard_connection(sqlite3* db, bool runs_steps);

/// Looks at what lies beside a file before SQLite does. A journal may name a second journal, which
/// SQLite would take away after a rollback, whatever file that is; no transaction of ours has one.
/// Errors: not_a_tract_file.
Status guard_journal(const std::filesystem::path& file);

}  // namespace oaklight::store
