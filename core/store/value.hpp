#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

namespace oaklight::store {

/// Bytes that are not text: a geometry.
struct Blob {
  std::string bytes;
  friend bool operator==(const Blob&, const Blob&) = default;
};

/// One cell of the tract file; monostate is NULL, "not recorded".
using Value = std::variant<std::monostate, std::int64_t, double, std::string, Blob>;

/// Cells in the order of their columns.
using Row = std::vector<Value>;

inline bool is_null(const Value& value) { return std::holds_alternative<std::monostate>(value); }

}  // namespace oaklight::store
