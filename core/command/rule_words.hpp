#pragma once

#include "core/command/json_values.hpp"
#include "core/release/rules.hpp"

namespace oaklight::command {

/// One rule with its value, unit, status and source.
Json rule_json(const Rule& rule);
/// The same in two lines on standard output.
void print(const Rule& rule);

}  // namespace oaklight::command
