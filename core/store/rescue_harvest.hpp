#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

#include "core/base/result.hpp"
#include "core/store/page_reader.hpp"
#include "core/store/sqlite_handle.hpp"

namespace oaklight::store {

/// A row whose checksum matches, and where it lay.
struct HarvestedRow {
  std::int64_t key = 0;
  Row cells;              ///< as the schema's columns, but for the key, which comes first there
  bool in_place = false;  ///< on a page of its table; else on one that nothing leads to any more
};

struct HarvestedTable {
  std::vector<std::string> columns;  ///< of each row's cells
  std::vector<HarvestedRow> rows;
  std::int64_t highest_key = 0;  ///< that the table ever gave; keys are given one by one
};

/// All that the pages of a file still hold of our tables.
struct Harvest {
  std::map<std::string, HarvestedTable, std::less<>> tables;
  std::vector<Error> lost;  ///< rows that were met and cannot be trusted or read
};

/// Looks at every page of a file, whatever leads to it. A row is of the table whose checksum it
/// carries: the name of the table is part of it (schema/README.md), so that a row needs neither its
/// table's pages nor the list of tables to be known again.
///
/// model   an empty tract file of the newest step, for names and types of columns
/// errors  of reading the model
Result<Harvest> harvest(const PageReader& pages, SqliteHandle& model);

}  // namespace oaklight::store
