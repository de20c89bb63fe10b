#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/csv_text.hpp"
#include "core/base/error.hpp"

namespace oaklight {

/// A text that came from somewhere, with the name by which a person knows it ("trees.csv").
struct NamedText {
  std::string name;
  std::string text;
};

/// Limits that no file of a tract comes near; past them a file is an accident or an attack.
inline constexpr std::size_t kMaxFileBytes = 8U << 20U;
inline constexpr std::ptrdiff_t kMaxCsvLines = 200'000;
inline constexpr std::size_t kMaxCsvColumns = 200;
/// Faults that one reading lists; more would not be read by anybody.
inline constexpr std::size_t kMaxFaults = 200;

/// A CSV file, taken apart, with what is wrong with it as a CSV file.
struct CsvFile {
  std::string name;
  int header_line = 1;
  std::vector<std::string> header;  ///< blanks around it taken off
  std::vector<CsvRow> rows;         ///< as many cells as the header; rows of blanks are left out
  std::vector<Error> faults;        ///< bad_csv; where is "trees.csv" or "trees.csv:14"
  std::size_t more_faults = 0;      ///< past kMaxFaults
};

/// Takes a CSV text apart (RFC 4180, UTF-8 with or without byte order mark, CRLF or LF).
///
/// returns  what could be read; a row with a wrong count of cells is a fault and left out, after a
///          fault of quoting nothing is read
/// faults   bad_csv: empty, too large, not UTF-8, a NUL, other separators than commas, quoting,
/// wrong
///          count of cells
CsvFile read_csv_file(const NamedText& file);

/// The line of the file on which cell `column` of a row begins. Cells with line breaks inside make
/// this another line than that of the row.
int line_of_cell(const CsvRow& row, std::size_t column);

/// Checks a header against the columns that a file may and must have; capitals do not matter.
///
/// returns  bad_csv for a column that is unknown (naming the near one), there twice, or missing
std::vector<Error> check_header(const CsvFile& file, std::span<const std::string_view> known,
                                std::span<const std::string_view> required);

/// The text without blanks, tabs and line ends around it.
std::string_view trimmed(std::string_view text);

/// ASCII letters in lower case; other characters as they are.
std::string lower_case(std::string_view text);

/// "trees.csv:14:dbh_in"
std::string place_in(std::string_view file, int line, std::string_view column);

}  // namespace oaklight
