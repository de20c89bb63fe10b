#pragma once

#include <vector>

#include "core/base/result.hpp"
#include "core/store/sqlite_handle.hpp"

namespace oaklight::store {

/// What of the GeoPackage rules an open file breaks; the rules are those that writing records could
/// break. Source: OGC 12-128 1.3, requirement numbers in the .cpp.
Result<std::vector<Error>> find_gpkg_faults(SqliteHandle& db);

}  // namespace oaklight::store
