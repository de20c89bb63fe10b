#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "core/handoff/packet.hpp"

namespace oaklight {

/// A figure as every file prints it: rounded to so many decimals.
struct ListNumber {
  double value = 0.0;
  int decimals = 0;
  friend bool operator==(const ListNumber&, const ListNumber&) = default;
};

/// One cell of the list; monostate is "not known".
using ListCell = std::variant<std::monostate, std::string, ListNumber>;

enum class ColumnKind { text, whole, decimal };

struct ListColumn {
  std::string_view name;  ///< as a machine reads it, with its unit: "dbh_in"
  ColumnKind kind = ColumnKind::text;
  double width = 12.0;  ///< in letters, for a sheet that people look at
  bool typed = false;   ///< may hold text that a person typed
};

/// The list of a packet as one table, from which every file for machines is written, so that all of
/// them say the same. Text is well-formed UTF-8 without control characters but tab and line break;
/// what was not is U+FFFD.
struct ListTable {
  std::vector<ListColumn> columns;
  std::vector<std::vector<ListCell>> rows;
  std::vector<std::optional<Position>> places;  ///< one a row

  /// Of a column that the table has.
  [[nodiscard]] std::size_t column(std::string_view name) const;
};

/// Every tree of a packet, one a row, list by list (lists_of) and each in the packet's order.
/// Method, product, volume and ways are empty for trees that this reader does not deal with.
[[nodiscard]] ListTable list_table(const Packet& packet);

/// A cell as plain text: "" where nothing is known.
[[nodiscard]] std::string text_of(const ListCell& cell);

/// The figure that is printed, as a number: the double nearest to its decimals.
[[nodiscard]] double printed_value(const ListNumber& number);

/// Text with each bad byte, and each control character that XML 1.0 cannot hold, as U+FFFD.
/// Source: Extensible Markup Language (XML) 1.0, production 2 (Char).
[[nodiscard]] std::string clean_text(std::string_view text);

}  // namespace oaklight
