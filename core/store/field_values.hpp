#pragma once

#include <limits>
#include <optional>
#include <string>
#include <type_traits>
#include <vector>

#include "core/model/mark.hpp"
#include "core/store/value.hpp"

// How each type of the model becomes one cell, and back. from_value answers false, and leaves what
// it was given in any state, when the cell holds something else.

namespace oaklight::store {

inline constexpr char kListMark = '|';

std::string joined_list(const std::vector<std::string>& items);
std::vector<std::string> split_list(const std::string& text);

inline Value to_value(const std::string& text) { return text; }
inline Value to_value(double number) { return number; }
template <class T>
  requires std::is_integral_v<T>
Value to_value(T number) {
  return static_cast<std::int64_t>(number);
}
template <class Unit>
Value to_value(Quantity<Unit> quantity) {
  return quantity.value;
}
template <class Tag>
Value to_value(const Id<Tag>& id) {
  return to_text(id);
}
template <class E>
  requires std::is_enum_v<E>
Value to_value(E value) {
  return std::string(word_of(value));
}
inline Value to_value(SpeciesCode code) { return std::int64_t{code.fia}; }
inline Value to_value(const std::vector<std::string>& items) { return joined_list(items); }
Value to_value(Conditions conditions);
Value to_value(Sides sides);
template <class T>
Value to_value(const std::optional<T>& value) {
  return value ? to_value(*value) : Value{};
}

bool from_value(const Value& cell, std::string& out);  ///< false also for text that is not UTF-8
bool from_value(const Value& cell, double& out);       ///< false also for infinity
bool from_value(const Value& cell, int& out);
bool from_value(const Value& cell, bool& out);
bool from_value(const Value& cell, SpeciesCode& out);
bool from_value(const Value& cell, std::vector<std::string>& out);
bool from_value(const Value& cell, Conditions& out);
bool from_value(const Value& cell, Sides& out);
bool from_value(const Value& cell, Uuid& out);
template <class Tag>
bool from_value(const Value& cell, Id<Tag>& out) {
  return from_value(cell, out.value);
}
template <class Unit>
bool from_value(const Value& cell, Quantity<Unit>& out) {
  return from_value(cell, out.value);
}
template <class E>
  requires std::is_enum_v<E>
bool from_value(const Value& cell, E& out) {
  const auto* word = std::get_if<std::string>(&cell);
  const auto value = word == nullptr ? std::nullopt : from_word<E>(*word);
  if (value) out = *value;
  return value.has_value();
}
template <class T>
bool from_value(const Value& cell, std::optional<T>& out) {
  out.reset();
  if (is_null(cell)) return true;
  return from_value(cell, out.emplace());
}

}  // namespace oaklight::store
