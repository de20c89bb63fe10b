#include "core/store/row_text.hpp"

#include <libdeflate.h>
#include <algorithm>
#include <array>
#include <charconv>
#include <cstring>
#include <nlohmann/json.hpp>
#include <optional>
#include <vector>

#include "core/base/json_limits.hpp"

namespace oaklight::store {
namespace {

using nlohmann::json;

constexpr std::string_view kHex = "0123456789abcdef";

std::string hex_of(std::string_view bytes) {
  std::string text;
  text.reserve(2 * bytes.size());
  for (const char c : bytes) {
    const auto byte = static_cast<unsigned char>(c);
    text += kHex[byte >> 4];
    text += kHex[byte & 15];
  }
  return text;
}

std::optional<std::string> bytes_of(std::string_view hex) {
  if (hex.size() % 2 != 0) return std::nullopt;
  std::string bytes;
  bytes.reserve(hex.size() / 2);
  for (std::size_t i = 0; i < hex.size(); i += 2) {
    const auto high = kHex.find(hex[i]);
    const auto low = kHex.find(hex[i + 1]);
    if (high == std::string_view::npos || low == std::string_view::npos) return std::nullopt;
    bytes += static_cast<char>((high << 4) | low);
  }
  return bytes;
}

constexpr std::size_t kMostDigits = 32;  // of a number: a double needs 24, and a letter

/// How many characters a cell may add to a canonical text.
std::size_t room_for(const Value& cell) {
  if (const auto* text = std::get_if<std::string>(&cell)) return kMostDigits + text->size();
  if (const auto* blob = std::get_if<Blob>(&cell)) return kMostDigits + 2 * blob->bytes.size();
  return kMostDigits;
}

char* put(char* to, std::string_view text) {
  std::memcpy(to, text.data(), text.size());
  return to + text.size();
}

/// Writes a cell into a canonical text that has room for it; where it ends.
struct CanonicalCell {
  char* to;

  template <class T>
  [[nodiscard]] char* number(char kind, T x) const {
    *to = kind;
    return std::to_chars(to + 1, to + kMostDigits, x).ptr;
  }
  char* operator()(std::monostate) const { return to; }
  char* operator()(std::int64_t x) const { return number('i', x); }
  char* operator()(double x) const { return number('r', x); }
  char* operator()(const std::string& x) const {
    char* end = number('t', x.size());
    *end++ = ':';
    return put(end, x);
  }
  char* operator()(const Blob& x) const {
    *to = 'b';
    return put(to + 1, hex_of(x.bytes));
  }
};

/// A text that JSON writes as it stands, between quotes.
bool is_plain(std::string_view text) {
  return std::ranges::all_of(text,
                             [](char c) { return c >= ' ' && c <= '~' && c != '"' && c != '\\'; });
}

/// Adds a cell to a JSON text. Throws for text that is not UTF-8.
struct JsonCell {
  std::string& to;

  void operator()(std::monostate) const { to += "null"; }
  void operator()(std::int64_t x) const {
    std::array<char, kMostDigits> digits{};
    to.append(digits.data(), std::to_chars(digits.data(), digits.data() + kMostDigits, x).ptr);
  }
  void operator()(double x) const { to += json(x).dump(); }
  void operator()(const std::string& x) const {
    if (is_plain(x)) {
      (to += '"').append(x) += '"';
    } else {
      to += json(x).dump();
    }
  }
  void operator()(const Blob& x) const { (to += R"({"bytes":")").append(hex_of(x.bytes)) += "\"}"; }
};

std::optional<Value> value_of(const json& cell) {
  if (cell.is_null()) return Value{};
  if (cell.is_number_integer()) return Value{cell.get<std::int64_t>()};
  if (cell.is_number_float()) return Value{cell.get<double>()};
  if (cell.is_string()) return Value{cell.get<std::string>()};
  if (cell.is_object() && cell.size() == 1 && cell.contains("bytes") && cell["bytes"].is_string()) {
    if (auto bytes = bytes_of(cell["bytes"].get<std::string>())) return Value{Blob{*bytes}};
  }
  return std::nullopt;
}

bool is_outside_checksum(std::string_view column) {
  return column == "row_crc" || column == "fid" || column == "seq";
}

}  // namespace

RowText::RowText(std::string_view table, std::span<const std::string> columns)
    : first_line_(std::string(table) + '\n') {
  for (std::size_t i = 0; i < columns.size(); ++i) {
    parts_.push_back(
        {i, columns[i] + "=", json(columns[i]).dump() + ":", !is_outside_checksum(columns[i])});
  }
  std::sort(parts_.begin(), parts_.end(),
            [&](const Part& a, const Part& b) { return columns[a.column] < columns[b.column]; });
}

std::size_t RowText::write_text(const Row& row, std::string& text) const {
  std::size_t room = first_line_.size();
  for (const Part& part : parts_) room += part.name.size() + room_for(row[part.column]) + 1;
  if (text.size() < room) text.resize(room);
  char* end = put(text.data(), first_line_);
  for (const Part& part : parts_) {
    const Value& cell = row[part.column];
    if (is_null(cell) || !part.in_checksum) continue;
    end = std::visit(CanonicalCell{put(end, part.name)}, cell);
    *end++ = '\n';
  }
  return static_cast<std::size_t>(end - text.data());
}

std::string RowText::text_of(const Row& row) const {
  std::string text;
  text.resize(write_text(row, text));
  return text;
}

std::int64_t RowText::crc_of(const Row& row) const {
  thread_local std::string text;  // its room serves row after row
  const std::size_t size = write_text(row, text);
  return libdeflate_crc32(0, text.data(), size);
}

Result<std::string> RowText::json_of(const Row& row) const {
  std::string text;
  try {
    for (const Part& part : parts_) {
      (text += text.empty() ? '{' : ',') += part.json_key;
      std::visit(JsonCell{text}, row[part.column]);
    }
  } catch (const json::exception&) {
    return Error{ErrorCode::not_a_choice, "A text is not valid UTF-8.", "",
                 "Save the file it came from as UTF-8."};
  }
  return text.empty() ? "{}" : text += '}';
}

std::string canonical_text(std::string_view table, std::span<const std::string> columns,
                           const Row& row) {
  return RowText(table, columns).text_of(row);
}

std::int64_t row_crc(std::string_view table, std::span<const std::string> columns, const Row& row) {
  return RowText(table, columns).crc_of(row);
}

Result<std::string> to_json(std::span<const std::string> columns, const Row& row) {
  return RowText("", columns).json_of(row);
}

Result<Row> from_json(std::string_view text, std::span<const std::string> columns, Row base) {
  const Error damaged{ErrorCode::damaged, "A line of the history cannot be read.", "change",
                      "Keep this file; rescue what it holds, or work on from your newest copy."};
  if (json_beyond_limits(text, "change")) return damaged;
  const json object = json::parse(text, nullptr, false);
  if (!object.is_object()) return damaged;
  for (std::size_t i = 0; i < columns.size(); ++i) {
    const auto cell = object.find(columns[i]);
    if (cell == object.end()) continue;
    const auto value = value_of(*cell);
    if (!value) return damaged;
    base[i] = *value;
  }
  return base;
}

}  // namespace oaklight::store
