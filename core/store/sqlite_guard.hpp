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

/// SQLite keeps statistics of its memory under a lock that each allocation takes, and makes room for
/// twenty pages for each list of words in a CHECK. Ours to turn off before the first connection of
/// the process; later SQLite refuses, and works as it would.
void save_allocations();

/// Looks at what lies beside a file before SQLite does. A journal may name a second journal, which
/// SQLite would take away after a rollback, whatever file that is; no transaction of ours has one.
/// Errors: not_a_tract_file.
Status guard_journal(const std::filesystem::path& file);

}  // namespace oaklight::store
