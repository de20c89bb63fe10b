#pragma once

#include <filesystem>
#include <set>
#include <string>

#include "core/store/join_plan.hpp"

namespace oaklight::store {

/// One of the files that are joined, as it was read.
struct JoinSource {
  std::filesystem::path path;
  HistoryLines lines;
  Lives lives;
  Rows rows;
  std::set<std::string> tracts;  ///< ids of the tracts that it was put together from
  std::string name;              ///< of the tract

  /// How many records the other one does not hold, the tract and its forms aside.
  [[nodiscard]] int records_beside(const JoinSource& other) const;
};

/// Reads a whole file at one moment.
///
/// tables   of the file that it is joined to
/// errors   damaged: a row or a line that does not match its checksum, or a record that is not as
///          its history leaves it; file_too_new: tables with other columns
Result<JoinSource> read_source(SqliteHandle& db, const RecordTables& own_tables,
                               const RecordTables& tables);

/// What several files hold together.
class JoinUnion {
 public:
  HistoryLines lines;
  Lives lives;
  Rows rows;  ///< those without history

  /// Errors: damaged when two files tell one action differently.
  Status add(const JoinSource& source);
  /// After all files were added. Errors: damaged for a row that no history explains although there
  /// is one, or that two files hold differently.
  Status add_rows_without_history(const JoinSource& source, const RecordTables& tables);

  /// Whether a file started from one that one of those added started from.
  [[nodiscard]] bool is_of_tract(const JoinSource& source) const;
  /// Whether the tracts have one name, capitals and outer spaces aside.
  [[nodiscard]] bool has_name(const JoinSource& source) const;

 private:
  std::set<std::string> tracts_;
  std::set<std::string> names_;
};

}  // namespace oaklight::store
