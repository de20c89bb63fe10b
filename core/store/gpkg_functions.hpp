#pragma once

struct sqlite3;

namespace oaklight::store {

/// Gives the connection ST_IsEmpty, ST_MinX, ST_MaxX, ST_MinY and ST_MaxY, which the triggers of a
/// spatial index call (OGC 12-128 1.3, Annex F.3). Returns an SQLite result code.
int register_gpkg_functions(sqlite3* db);

}  // namespace oaklight::store
