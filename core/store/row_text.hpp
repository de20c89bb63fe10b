#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"
#include "core/store/value.hpp"

namespace oaklight::store {

/// The text over which a row's checksum is taken: the table's name, then one line for each cell
/// that is not NULL, in order of the column names, except row_crc and the local keys fid and seq.
/// A line is `name=`, a letter and the value: i and digits; r and the shortest digits that read
/// back as the same double; t, the count of bytes, ':' and the text; b and hexadecimal digits. NULL
/// is left out so that a new column that is not recorded yet changes no checksum.
std::string canonical_text(std::string_view table, std::span<const std::string> columns,
                           const Row& row);

/// Writes the texts of a table's rows. The order of its columns, that of their names in both texts,
/// is worked out once: every row of a file is checked each time it is read.
class RowText {
 public:
  RowText() = default;
  RowText(std::string_view table, std::span<const std::string> columns);

  [[nodiscard]] std::string text_of(const Row& row) const;          ///< canonical_text
  [[nodiscard]] std::int64_t crc_of(const Row& row) const;          ///< row_crc
  [[nodiscard]] Result<std::string> json_of(const Row& row) const;  ///< to_json

 private:
  /// Writes it at the front of a text, which grows where it must; how long it is.
  std::size_t write_text(const Row& row, std::string& text) const;

  struct Part {
    std::size_t column = 0;
    std::string name;      ///< "dbh_tenths="
    std::string json_key;  ///< "\"dbh_tenths\":"
    bool in_checksum = true;
  };
  std::string first_line_;
  std::vector<Part> parts_;
};

/// CRC-32 (ISO-HDLC, as in zip and PNG) of canonical_text.
std::int64_t row_crc(std::string_view table, std::span<const std::string> columns, const Row& row);

/// A row as a JSON object, for the history. Bytes are {"bytes": "hexadecimal"}.
/// Errors: not_a_choice for text that is not UTF-8.
Result<std::string> to_json(std::span<const std::string> columns, const Row& row);

/// The reverse: the cells that the text names, laid over a row that gives the others.
/// Errors: damaged.
Result<Row> from_json(std::string_view text, std::span<const std::string> columns, Row base);

}  // namespace oaklight::store
