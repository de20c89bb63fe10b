#include "core/forms/csv_file.hpp"

#include <algorithm>
#include <optional>

#include "core/base/utf8.hpp"
#include "core/forms/near_word.hpp"

namespace oaklight {
namespace {

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

int line_at(std::string_view text, std::size_t at) {
  return 1 + static_cast<int>(std::count(text.begin(), text.begin() + static_cast<long>(at), '\n'));
}

std::optional<int> line_not_utf8(std::string_view text) {
  if (is_utf8(text)) return std::nullopt;
  int line = 1;
  while (true) {
    const auto end = text.find('\n');
    if (!is_utf8(text.substr(0, end)) || end == std::string_view::npos) return line;
    text.remove_prefix(end + 1);
    ++line;
  }
}

Error bad_csv(std::string where, std::string what, std::string fix) {
  return {ErrorCode::bad_csv, std::move(what), std::move(where), std::move(fix)};
}

/// What is wrong with the text before any cell is looked for; nothing when it can be taken apart.
std::optional<Error> text_fault(const std::string& name, std::string_view text) {
  if (text.size() > kMaxFileBytes) {
    return bad_csv(name, "The file is larger than 8 MiB.",
                   "Split it, or check that it is the right file.");
  }
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) {
    return bad_csv(name, "The file is UTF-16 text.", "Save it as \"CSV UTF-8\".");
  }
  if (std::count(text.begin(), text.end(), '\n') > kMaxCsvLines) {
    return bad_csv(name, "The file has more than 200,000 lines.",
                   "Split it, or check that it is the right file.");
  }
  if (text.starts_with(kByteOrderMark)) text.remove_prefix(kByteOrderMark.size());
  if (trimmed(text).empty()) {
    return bad_csv(name, "The file is empty.", "It needs a header row at least.");
  }
  if (const auto at = text.find('\0'); at != std::string_view::npos) {
    return bad_csv(name + ":" + std::to_string(line_at(text, at)),
                   "There is a NUL byte on this line.",
                   "The file is damaged or no text; save it again as \"CSV UTF-8\".");
  }
  if (const auto line = line_not_utf8(text)) {
    return bad_csv(name + ":" + std::to_string(*line),
                   "There is a character on this line that is not UTF-8.",
                   "Save the file as \"CSV UTF-8\".");
  }
  if (text.find('\r') != std::string_view::npos && text.find('\n') == std::string_view::npos) {
    return bad_csv(name, "The lines end in a bare carriage return.",
                   "Save the file with CRLF or LF line ends.");
  }
  return std::nullopt;
}

bool is_blank(const CsvRow& row) {
  return std::all_of(row.cells.begin(), row.cells.end(),
                     [](const std::string& cell) { return trimmed(cell).empty(); });
}

std::optional<Error> header_fault(const CsvFile& file) {
  const std::string where = place_in(file.name, file.header_line, "");
  if (file.header.size() == 1 && file.header[0].find_first_of(";\t") != std::string::npos) {
    return bad_csv(where, "The columns are not parted by commas.",
                   "Save the file with a comma between the cells.");
  }
  if (file.header.size() > kMaxCsvColumns) {
    return bad_csv(where, "The header has more than 200 columns.",
                   "Check that it is the right file.");
  }
  return std::nullopt;
}

void keep_row(CsvFile& file, CsvRow row) {
  if (is_blank(row)) return;  // spreadsheets leave rows of commas behind
  if (row.cells.size() == file.header.size()) {
    file.rows.push_back(std::move(row));
    return;
  }
  if (file.faults.size() >= kMaxFaults) {
    ++file.more_faults;
    return;
  }
  file.faults.push_back(
      bad_csv(file.name + ":" + std::to_string(row.line),
              "The row has " + std::to_string(row.cells.size()) + " cells, the header has " +
                  std::to_string(file.header.size()) + ".",
              row.cells.size() > file.header.size()
                  ? "Put quotes around a cell that has a comma in it, or take the extra cell out."
                  : "Add the missing cells; an empty one still needs its comma."));
}

}  // namespace

CsvFile read_csv_file(const NamedText& file) {
  CsvFile read;
  read.name = file.name;
  if (auto fault = text_fault(file.name, file.text)) {
    read.faults.push_back(std::move(*fault));
    return read;
  }
  auto rows = read_csv(file.text, file.name);
  if (!rows) {
    read.faults.push_back(rows.error());
    return read;
  }
  if (rows->empty()) {
    read.faults.push_back(
        bad_csv(file.name, "The file is empty.", "It needs a header row at least."));
    return read;
  }
  read.header_line = rows->front().line;
  for (const std::string& cell : rows->front().cells) read.header.emplace_back(trimmed(cell));
  if (auto fault = header_fault(read)) {
    read.faults.push_back(std::move(*fault));
    read.header.clear();
    return read;
  }
  for (std::size_t i = 1; i < rows->size(); ++i) keep_row(read, std::move((*rows)[i]));
  return read;
}

int line_of_cell(const CsvRow& row, std::size_t column) {
  int line = row.line;
  for (std::size_t i = 0; i < column && i < row.cells.size(); ++i) {
    line += static_cast<int>(std::count(row.cells[i].begin(), row.cells[i].end(), '\n'));
  }
  return line;
}

std::vector<Error> check_header(const CsvFile& file, std::span<const std::string_view> known,
                                std::span<const std::string_view> required) {
  std::vector<Error> faults;
  std::vector<std::string> seen;
  const auto is_in = [](const auto& list, std::string_view name) {
    return std::find(list.begin(), list.end(), name) != list.end();
  };
  for (const std::string& title : file.header) {
    const std::string name = lower_case(title);
    const std::string where = place_in(file.name, file.header_line, title);
    if (name.empty()) {
      faults.push_back(bad_csv(where, "A column has no name.", "Name it, or take it out."));
    } else if (is_in(seen, name)) {
      faults.push_back(bad_csv(where, "Column \"" + title + "\" is there twice.", "Keep one."));
    } else if (!is_in(known, name)) {
      // The unit is what people leave out: "dbh" may be "dbh_in" or "dbh_cm".
      std::vector<std::string> near;
      for (const std::string_view other : known) {
        if (other.starts_with(name + "_")) near.emplace_back(other);
      }
      if (near.empty()) near = near_words(name, known);
      faults.push_back(bad_csv(
          where, "Column \"" + title + "\" is unknown.",
          did_you_mean(near, "Take it out; what it says can go into the note, if there is one.")));
    }
    seen.push_back(name);
  }
  for (const std::string_view name : required) {
    if (is_in(seen, name)) continue;
    faults.push_back(bad_csv(place_in(file.name, file.header_line, name),
                             "Column \"" + std::string(name) + "\" is missing.",
                             "Add it to the header."));
  }
  return faults;
}

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view kBlanks = " \t\r\n";
  const auto first = text.find_first_not_of(kBlanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

std::string lower_case(std::string_view text) {
  std::string lower(text);
  for (char& c : lower) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return lower;
}

std::string place_in(std::string_view file, int line, std::string_view column) {
  std::string place(file);
  place += ":" + std::to_string(line);
  if (!column.empty()) place += ":" + std::string(column);
  return place;
}

}  // namespace oaklight
