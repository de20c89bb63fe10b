#include "core/store/field_values.hpp"

#include <cmath>

#include "core/base/utf8.hpp"

namespace oaklight::store {
namespace {

/// The words of a set, in the order of the enumeration.
template <class E, class Set>
std::string words_of(const Set& set) {
  std::vector<std::string> words;
  for (const auto& entry : kWords<E>) {
    if (set.has(entry.value)) words.emplace_back(entry.word);
  }
  return joined_list(words);
}

template <class E, class Set>
bool set_from_words(const Value& cell, Set& out) {
  const auto* text = std::get_if<std::string>(&cell);
  if (text == nullptr) return false;
  out = Set{};
  for (const std::string& word : split_list(*text)) {
    const auto value = from_word<E>(word);
    if (!value) return false;
    out.add(*value);
  }
  return true;
}

}  // namespace

std::string joined_list(const std::vector<std::string>& items) {
  std::string text;
  for (const std::string& item : items) {
    if (!text.empty()) text += kListMark;
    text += item;
  }
  return text;
}

std::vector<std::string> split_list(const std::string& text) {
  std::vector<std::string> items;
  if (text.empty()) return items;
  std::size_t from = 0;
  for (;;) {
    const auto mark = text.find(kListMark, from);
    items.push_back(text.substr(from, mark == std::string::npos ? mark : mark - from));
    if (mark == std::string::npos) return items;
    from = mark + 1;
  }
}

Value to_value(Conditions conditions) { return words_of<Condition>(conditions); }
Value to_value(Sides sides) { return words_of<Side>(sides); }

bool from_value(const Value& cell, std::string& out) {
  const auto* text = std::get_if<std::string>(&cell);
  if (text == nullptr || !is_utf8(*text)) return false;
  out = *text;
  return true;
}

bool from_value(const Value& cell, double& out) {
  const auto* number = std::get_if<double>(&cell);
  if (number == nullptr || !std::isfinite(*number)) return false;
  out = *number;
  return true;
}

bool from_value(const Value& cell, int& out) {
  const auto* number = std::get_if<std::int64_t>(&cell);
  if (number == nullptr || *number < std::numeric_limits<int>::min() ||
      *number > std::numeric_limits<int>::max())
    return false;
  out = static_cast<int>(*number);
  return true;
}

bool from_value(const Value& cell, bool& out) {
  const auto* number = std::get_if<std::int64_t>(&cell);
  if (number == nullptr || (*number != 0 && *number != 1)) return false;
  out = *number == 1;
  return true;
}

bool from_value(const Value& cell, SpeciesCode& out) { return from_value(cell, out.fia); }

bool from_value(const Value& cell, std::vector<std::string>& out) {
  std::string text;
  if (!from_value(cell, text)) return false;
  out = split_list(text);
  return true;
}

bool from_value(const Value& cell, Conditions& out) { return set_from_words<Condition>(cell, out); }
bool from_value(const Value& cell, Sides& out) { return set_from_words<Side>(cell, out); }

bool from_value(const Value& cell, Uuid& out) {
  const auto* text = std::get_if<std::string>(&cell);
  if (text == nullptr) return false;
  const auto id = uuid_from_text(*text);
  if (id) out = *id;
  return id.has_value();
}

}  // namespace oaklight::store
