#pragma once

struct sqlite3;

namespace oaklight::store {

/// Makes a connection distrust its file: defensive mode, nothing in the schema trusted, views off,
/// triggers only as far as a spatial index needs them, limits far lower than SQLite's.
///
/// runs_steps  the connection is for schema steps of ours, which look into views
/// returns     an SQLite result code
int guard_connection(sqlite3* db, bool runs_steps);

}  // namespace oaklight::store
