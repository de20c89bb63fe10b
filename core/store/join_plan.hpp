#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "core/store/history_lines.hpp"
#include "core/store/join.hpp"
#include "core/store/record_table.hpp"

// What the records are after several histories were put together: a pure function of the union of
// those histories, and of the rows that have none. Hence joining is commutative, associative and
// idempotent, whatever was joined before.

namespace oaklight::store {

/// A record in one step of its life: what one line of the history made of it.
struct Version {
  std::string action;    ///< the order of events is that of the actions' uids
  std::size_t line = 0;  ///< within the action
  Row row;
  std::uint64_t exact = 0;       ///< tells this image of the record from its others
  std::uint64_t content = 0;     ///< the same for images that say the same, whenever they were made
  std::uint64_t from_exact = 0;  ///< of the image that it was made from; 0: the record was new
  std::uint64_t from_content = 0;
};

/// The versions of each record, by table and uid, in the order of events.
using Lives = std::map<std::string, std::map<std::string, std::vector<Version>>, std::less<>>;
/// Rows by table and uid.
using Rows = std::map<std::string, std::map<std::string, Row>, std::less<>>;

/// Reads the lines as versions. Errors: damaged, file_too_new, naming the line's record.
Result<Lives> lives_of(const HistoryLines& lines, const RecordTables& tables);

/// Those versions of a record that no other was made from: one, unless tablets went apart.
std::vector<const Version*> heads_of(const std::vector<Version>& life);

/// Whether a row is what its own history ends in; its name and its being in use may have been
/// settled by an earlier join.
bool is_a_head(const RecordTable& table, const Row& row, const std::vector<Version>& life);
/// Whether a row is one that the history began with or went through.
bool is_known(const RecordTable& table, const Row& row, const std::vector<Version>& life);

struct JoinPlan {
  Rows rows;
  std::vector<Question> questions;
};

/// rows   those without history
JoinPlan plan_join(const RecordTables& tables, const Lives& lives, const Rows& rows,
                   const HistoryLines& lines);

}  // namespace oaklight::store
