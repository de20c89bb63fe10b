#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "core/base/error.hpp"

namespace oaklight {

/// Limits that no JSON of a tract comes near; past them a file is an accident or an attack.
inline constexpr std::size_t kMaxJsonBytes = 8U << 20U;
inline constexpr int kMaxJsonDepth = 64;

/// What makes a JSON text unfit to be parsed at all: too large, or brackets within brackets without
/// end, which take a parser's memory and the stack of whoever walks through the values.
///
/// returns  bad_json; `where` is the file, or "file:line" where it grows too deep. Nothing: parse
/// it
[[nodiscard]] std::optional<Error> json_beyond_limits(std::string_view text, std::string_view file);

}  // namespace oaklight
