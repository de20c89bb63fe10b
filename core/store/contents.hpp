#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/store/gpkg_geometry.hpp"
#include "core/store/record_table.hpp"

namespace oaklight::store {

/// One row that an action wrote.
struct RowChange {
  const RecordTable* table = nullptr;
  std::optional<Row> before;  ///< nothing: the record was new
  Row after;
};

/// Keeps gpkg_contents true after an action: time of the last change and bounding box of each table
/// touched, and of the layer of trees, which shows plots and trees together.
/// Boxes cover removed records too, since a GIS that reads the table meets them.
Status update_contents(SqliteHandle& db, const std::vector<RowChange>& changes,
                       const std::string& at_utc);

/// Boxes and times of all layers from what the file holds, when it was filled in another way.
Status measure_contents(SqliteHandle& db);

}  // namespace oaklight::store
