#pragma once

#include <array>
#include <map>
#include <string>
#include <vector>

#include "core/base/result.hpp"
#include "core/store/sqlite_handle.hpp"

namespace oaklight::store {

/// What a line of each history table holds beside its checksum and its place in the file.
inline constexpr std::array<const char*, 6> kActionColumns = {"uid",   "at_utc", "device",
                                                              "label", "kind",   "target_uid"};
inline constexpr std::array<const char*, 5> kChangeColumns = {"action_uid", "table_name", "row_uid",
                                                              "before_json", "after_json"};

/// Cells in the order of the columns above and then their checksum.
Row action_line(Row cells);
Row change_line(Row cells);

Status add_action_line(SqliteHandle& db, const Row& line);
Status add_change_line(SqliteHandle& db, const Row& line);

/// The history of one file as it lies there.
struct HistoryLines {
  std::map<std::string, Row> actions;               ///< by uid, which is the order of events
  std::map<std::string, std::vector<Row>> changes;  ///< by the uid of their action, in its order
};
/// Errors: damaged for a line that does not match its checksum or belongs to no action.
Result<HistoryLines> read_lines(SqliteHandle& db);

/// Table, record, image before and image after of each change of one action, in its order.
/// Errors: damaged for a line that does not match its checksum.
Result<std::vector<Row>> change_lines_of(SqliteHandle& db, const std::string& action_uid);

/// One Error for each line of the history that does not match its checksum.
Result<std::vector<Error>> find_damaged_history(SqliteHandle& db);

}  // namespace oaklight::store
