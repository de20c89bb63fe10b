#pragma once

#include <string>

#include "core/session/compare.hpp"

namespace oaklight::command {

/// A comparison as one JSON object: units are in the names, what is not known is null.
std::string compare_json(const Comparison& comparison, const SpeciesTable& species,
                         const std::string& rule_version);

}  // namespace oaklight::command
