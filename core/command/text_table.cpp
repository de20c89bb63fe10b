#include "core/command/text_table.hpp"

#include <algorithm>

namespace oaklight::command {
namespace {

/// Characters of UTF-8 text, as far as a terminal's columns go.
std::size_t width_of(const std::string& text) {
  return static_cast<std::size_t>(std::ranges::count_if(
      text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

}  // namespace

std::string TextTable::text(std::size_t indent) const {
  std::vector<std::size_t> widths;
  for (const auto& row : rows_) {
    widths.resize(std::max(widths.size(), row.size()));
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], width_of(row[i]));
  }
  std::string text;
  for (const auto& row : rows_) {
    std::string line(indent, ' ');
    for (std::size_t i = 0; i < row.size(); ++i) {
      const std::string padding(widths[i] - width_of(row[i]), ' ');
      if (i > 0) line += "  ";
      line += i == 0 ? row[i] + padding : padding + row[i];
    }
    line.resize(line.find_last_not_of(' ') + 1);
    text += line + '\n';
  }
  return text;
}

}  // namespace oaklight::command
