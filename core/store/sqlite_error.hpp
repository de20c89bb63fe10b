#pragma once

#include <string>
#include <string_view>

#include "core/base/error.hpp"

namespace oaklight::store {

/// An SQLite result code (extended codes too) in plain words.
///
/// code     as SQLite returned it
/// message  SQLite's own text, which names the constraint that failed
/// where    file or record
Error sqlite_error(int code, std::string_view message, const std::string& where);

}  // namespace oaklight::store
