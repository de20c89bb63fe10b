// The machine's limit for an estimate: steps over the columns that one needs and does nothing with
// them: bench_scan FILE.
#include <sqlite3.h>

#include <cstdint>
#include <iostream>

int main(int argc, char** argv) {
  if (argc != 2) return 2;
  sqlite3* db = nullptr;
  sqlite3_stmt* rows = nullptr;
  int code = sqlite3_open_v2(argv[1], &db, SQLITE_OPEN_READONLY | SQLITE_OPEN_NOMUTEX, nullptr);
  if (code == SQLITE_OK) {
    code = sqlite3_prepare_v2(db,
                              "SELECT plot_uid, units, species_fia, dbh_tenths, status, half_logs, "
                              "stems, edge_count FROM tree WHERE deleted = 0",
                              -1, &rows, nullptr);
  }
  std::int64_t trees = 0;
  std::int64_t sum = 0;  // so that reading a cell is not left out
  while (code == SQLITE_OK && sqlite3_step(rows) == SQLITE_ROW) {
    ++trees;
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
