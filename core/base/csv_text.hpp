#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"

namespace oaklight {

/// One record of a CSV text.
struct CsvRow {
  int line = 0;  ///< of the text, counted from 1, where the record starts
  std::vector<std::string> cells;
};

/// The records of an RFC 4180 text, the header included. Lines may end in CRLF or LF; a byte order
/// mark and empty lines are passed over. Cells are kept as they are, blanks included.
///
/// errors   bad_csv for a quote that is not closed, or stands where none may stand; `where` is
///          "file:line"
Result<std::vector<CsvRow>> read_csv(std::string_view text, std::string_view file);

/// A CSV text whose first record names its columns; for the small tables of forms/.
class CsvTable {
 public:
  /// errors   as read_csv; bad_csv also when a needed column is not there, and for a record whose
  ///          count of cells is not that of the header
  static Result<CsvTable> read(std::string_view text, std::string_view file,
                               std::span<const std::string_view> needed);

  [[nodiscard]] std::size_t size() const { return rows_.size(); }
  /// The cell of a needed column.
  [[nodiscard]] const std::string& cell(std::size_t row, std::string_view column) const;
  /// "file:line:column", for an Error.
  [[nodiscard]] std::string place(std::size_t row, std::string_view column) const;

 private:
  std::string file_;
  std::vector<std::string> header_;
  std::vector<CsvRow> rows_;
};

/// One cell, quoted when it has to be (RFC 4180 section 2). For numbers and words of ours.
std::string csv_cell(std::string_view text);

/// One cell of text that a person typed. Where a spreadsheet would run it (= + - @, tab or break in
/// front, after apostrophes too) it gets one apostrophe more in front; taken off, it is back.
std::string safe_csv_cell(std::string_view text);

/// Cells that are already quoted, as one record with its CRLF.
std::string csv_record(std::span<const std::string> cells);

}  // namespace oaklight
