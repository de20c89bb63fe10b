#pragma once

#include <map>
#include <string>
#include <vector>

#include "core/store/record_table.hpp"
#include "core/store/rescue.hpp"
#include "core/store/rescue_harvest.hpp"

namespace oaklight::store {

/// Where the row of a record comes from, the best first.
enum class RescueSource { table, history, stray };

struct RescuedRow {
  std::int64_t key = 0;
  Row cells;
  RescueSource source = RescueSource::table;
};

/// One row for each record of a table, in the order in which they were made.
using RescuedRows = std::map<std::string, std::vector<RescuedRow>, std::less<>>;

/// Settles which image of each record holds: the row in its table; else what the history left, or a
/// stray page when that is younger. Adds to `lost` which of them may have been changed after that,
/// and how many rows no image is left of.
RescuedRows settle_records(const Harvest& harvest, const RecordTables& tables,
                           std::vector<Error>& lost);

/// The lines of the history that stand whole, in order: an action of which a part is lost keeps no
/// changes, since to undo the rest of it would leave records that nobody ever saw.
struct RescuedHistory {
  std::vector<Row> actions;
  std::vector<Row> changes;
};
RescuedHistory settle_history(const Harvest& harvest, std::vector<Error>& lost);

}  // namespace oaklight::store
