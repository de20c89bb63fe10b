#pragma once

#include <string>

#include "core/model/species.hpp"
#include "core/sample/cruise_estimate.hpp"

namespace oaklight::command {

/// Live trees and basal area an acre by 2-in class and species, each with its standard error, as a
/// table for a terminal; "-" where one plot tells no error.
[[nodiscard]] std::string stand_table_text(const AreaEstimate& area, const SpeciesTable& species);

}  // namespace oaklight::command
