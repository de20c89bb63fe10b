#include "core/base/csv_text.hpp"

#include <algorithm>
#include <array>
#include <cassert>

namespace oaklight {
namespace {

/// Reads records one by one and knows on which line it stands.
class Reader {
 public:
  Reader(std::string_view text, std::string_view file) : text_(text), file_(file) {
    constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
    if (text_.starts_with(kByteOrderMark)) text_.remove_prefix(kByteOrderMark.size());
  }

  [[nodiscard]] bool at_end() const { return at_ == text_.size(); }

  /// The next record; a line with nothing on it is one empty cell.
  Result<CsvRow> record() {
    CsvRow row{line_, {}};
    while (true) {
      std::string cell;
      if (!at_end() && text_[at_] == '"') {
        if (const Status read = quoted(cell); !read) return read.error();
      } else if (const Status read = plain(cell); !read) {
        return read.error();
      }
      row.cells.push_back(std::move(cell));
      if (at_end() || text_[at_] != ',') break;
      ++at_;
    }
    skip_line_end();
    return row;
  }

 private:
  [[nodiscard]] bool at_line_end() const {
    return at_end() || text_[at_] == '\n' ||
           (text_[at_] == '\r' && (at_ + 1 == text_.size() || text_[at_ + 1] == '\n'));
  }

  void skip_line_end() {
    if (!at_end() && text_[at_] == '\r') ++at_;
    if (!at_end() && text_[at_] == '\n') ++at_;
    ++line_;
  }

  Status plain(std::string& cell) {
    while (!at_line_end() && text_[at_] != ',') {
      if (text_[at_] == '"') {
        return problem(line_, "A quote stands inside a cell that does not begin with one.");
      }
      cell += text_[at_++];
    }
    return Done{};
  }

  Status quoted(std::string& cell) {
    const int opened = line_;
    ++at_;
    while (!at_end()) {
      const char c = text_[at_++];
      if (c == '\n') ++line_;
      if (c != '"') {
        cell += c;
      } else if (!at_end() && text_[at_] == '"') {
        cell += '"';
        ++at_;
      } else if (at_line_end() || text_[at_] == ',') {
        return Done{};
      } else {
        return problem(opened, "Text follows the closing quote of a cell.");
      }
    }
    return problem(opened, "A quote is opened and never closed.");
  }

  [[nodiscard]] Error problem(int line, std::string what) const {
    return {ErrorCode::bad_csv, std::move(what), std::string(file_) + ":" + std::to_string(line),
            "Put quotes around the whole cell and write a quote inside it twice."};
  }

  std::string_view text_;
  std::string_view file_;
  std::size_t at_ = 0;
  int line_ = 1;
};

}  // namespace

Result<std::vector<CsvRow>> read_csv(std::string_view text, std::string_view file) {
  Reader reader(text, file);
  std::vector<CsvRow> rows;
  while (!reader.at_end()) {
    auto row = reader.record();
    if (!row) return row.error();
    const bool blank = row->cells.size() == 1 && row->cells.front().empty();
    if (!blank) rows.push_back(std::move(*row));
  }
  return rows;
}

Result<CsvTable> CsvTable::read(std::string_view text, std::string_view file,
                                std::span<const std::string_view> needed) {
  constexpr std::size_t kMaxTableBytes = 2U << 20U;  // the tables of forms/ have some kilobytes
  if (text.size() > kMaxTableBytes) {
    return Error{ErrorCode::bad_csv, "The file is larger than 2 MiB.", std::string(file),
                 "Start again from the table that came with the program."};
  }
  auto rows = read_csv(text, file);
  if (!rows) return rows.error();
  CsvTable table;
  table.file_ = file;
  if (!rows->empty()) {
    table.header_ = std::move(rows->front().cells);
    rows->erase(rows->begin());
  }
  for (const std::string_view column : needed) {
    if (std::find(table.header_.begin(), table.header_.end(), column) == table.header_.end()) {
      return Error{ErrorCode::bad_csv, "The column " + std::string(column) + " is not there.",
                   table.file_ + ":1", "Name it in the first line."};
    }
  }
  for (const CsvRow& row : *rows) {
    if (row.cells.size() == table.header_.size()) continue;
    return Error{ErrorCode::bad_csv,
                 "This line has " + std::to_string(row.cells.size()) +
                     " cells; the first line has " + std::to_string(table.header_.size()) + ".",
                 table.file_ + ":" + std::to_string(row.line),
                 "Look for a comma too many or too few, or quotes around a cell with a comma."};
  }
  table.rows_ = std::move(*rows);
  return table;
}

const std::string& CsvTable::cell(std::size_t row, std::string_view column) const {
  const auto at = std::find(header_.begin(), header_.end(), column);
  assert(at != header_.end());
  return rows_[row].cells[static_cast<std::size_t>(at - header_.begin())];
}

std::string CsvTable::place(std::size_t row, std::string_view column) const {
  return file_ + ":" + std::to_string(rows_[row].line) + ":" + std::string(column);
}

std::string csv_cell(std::string_view text) {
  if (text.find_first_of(",\"\r\n") == std::string_view::npos) return std::string(text);
  std::string quoted = "\"";
  for (const char c : text) {
    if (c == '"') quoted += '"';
    quoted += c;
  }
  return quoted + '"';
}

std::string safe_csv_cell(std::string_view text) {
  // Wide forms of the same signs (U+FF1D, U+FF0B, U+FF0D, U+FF20) run in some spreadsheets too.
  constexpr std::array<std::string_view, 11> kStartsFormula = {"=",
                                                               "+",
                                                               "-",
                                                               "@",
                                                               "\t",
                                                               "\r",
                                                               "\n",
                                                               "\xEF\xBC\x9D",
                                                               "\xEF\xBC\x8B",
                                                               "\xEF\xBC\x8D",
                                                               "\xEF\xBC\xA0"};
  // Apostrophes that stand before such a sign get one more, so that the text can be told again.
  std::string_view inner = text;
  inner.remove_prefix(std::min(inner.find_first_not_of('\''), inner.size()));
  for (const std::string_view sign : kStartsFormula) {
    if (inner.starts_with(sign)) return csv_cell("'" + std::string(text));
  }
  return csv_cell(text);
}

std::string csv_record(std::span<const std::string> cells) {
  std::string record;
  for (const std::string& cell : cells) {
    if (&cell != &cells.front()) record += ',';
    record += cell;
  }
  return record + "\r\n";
}

}  // namespace oaklight
