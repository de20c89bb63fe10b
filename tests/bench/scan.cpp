// The machine's limit for an estimate: steps over the columns that one needs and does nothing with
// them: bench_scan FILE [--all]. --all: over every column, which the checksum of a row covers.
#include <sqlite3.h>

#include <cstdint>
#include <iostream>
#include <string_view>

int main(int argc, char** argv) {
  const bool all = argc == 3 && std::string_view(argv[2]) == "--all";
  if (argc != 2 && !all) return 2;
  sqlite3* db = nullptr;
  sqlite3_stmt* rows = nullptr;
  int code = sqlite3_open_v2(argv[1], &db, SQLITE_OPEN_READONLY | SQLITE_OPEN_NOMUTEX, nullptr);
  if (code == SQLITE_OK) {
    code = sqlite3_prepare_v2(db,
                              all ? "SELECT * FROM tree"
                                  : "SELECT plot_uid, units, species_fia, dbh_tenths, status, "
                                    "half_logs, stems, edge_count FROM tree WHERE deleted = 0",
                              -1, &rows, nullptr);
  }
  std::int64_t trees = 0;
  std::int64_t sum = 0;  // so that reading a cell is not left out
  while (code == SQLITE_OK && sqlite3_step(rows) == SQLITE_ROW) {
    ++trees;
    for (int column = 0; all && column < sqlite3_column_count(rows); ++column) {
      const int type = sqlite3_column_type(rows, column);
      if (type == SQLITE_INTEGER) sum += sqlite3_column_int64(rows, column);
      if (type == SQLITE_TEXT) sum += *sqlite3_column_text(rows, column);
    }
    if (all) continue;
    sum += *sqlite3_column_text(rows, 0) + *sqlite3_column_text(rows, 1) +
           *sqlite3_column_text(rows, 4);
    for (const int column : {2, 3, 5, 6, 7}) sum += sqlite3_column_int64(rows, column);
  }
  sqlite3_finalize(rows);
  if (code != SQLITE_OK) std::cerr << sqlite3_errmsg(db) << '\n';
  sqlite3_close(db);
  std::cout << trees << " trees, " << sum << '\n';
  return code == SQLITE_OK && trees > 0 ? 0 : 1;
}
