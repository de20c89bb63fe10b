#pragma once

#include <vector>

#include "core/store/contents.hpp"
#include "core/store/tract_store.hpp"

namespace oaklight::store {

/// The records behind the rows that an action wrote: each once, as it now is, or its Remove. Forms
/// are no records and are left out. Errors: damaged, naming table, record and column.
Result<std::vector<Change>> records_as_changed(const std::vector<RowChange>& changes);

}  // namespace oaklight::store
