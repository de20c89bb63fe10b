#include "core/session/list_xlsx.hpp"

#include <xlsxwriter.h>

#include <array>
#include <charconv>
#include <filesystem>
#include <memory>
#include <system_error>

#include "core/handoff/list_table.hpp"
#include "core/session/files.hpp"

namespace oaklight {
namespace {

Error unwritable(const std::string& why, const std::string& path) {
  return {ErrorCode::cannot_write, "The spreadsheet cannot be written (" + why + ").", path,
          "Check that the folder exists, that you may write to it, and its room."};
}

/// What the library said first that was not a success.
class Outcome {
 public:
  void note(lxw_error code) {
    if (code_ == LXW_NO_ERROR) code_ = code;
  }
  [[nodiscard]] Status status(const std::string& path) const {
    if (code_ == LXW_NO_ERROR) return Done{};
    if (code_ == LXW_ERROR_MAX_STRING_LENGTH_EXCEEDED) {
      return Error{ErrorCode::out_of_range, "A text is longer than a cell of a spreadsheet holds.",
                   path, "Shorten the longest name or reason of the tract."};
    }
    return unwritable(lxw_strerror(code_), path);
  }

 private:
  lxw_error code_ = LXW_NO_ERROR;
};

/// The day of the packet as the day on which the file was made, so that bytes do not change.
std::time_t day_of(const std::string& made_on) {
  std::tm day{};
  int year = 2000, month = 1, date = 1;
  if (made_on.size() == 10) {
    std::from_chars(made_on.data(), made_on.data() + 4, year);
    std::from_chars(made_on.data() + 5, made_on.data() + 7, month);
    std::from_chars(made_on.data() + 8, made_on.data() + 10, date);
  }
  day.tm_year = year - 1900;
  day.tm_mon = month - 1;
  day.tm_mday = date;
  return timegm(&day);
}

/// Line breaks as a cell has them: a line feed. Some readers show a carriage return as its code.
std::string with_line_feeds(const std::string& words) {
  std::string text;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (words[i] != '\r') {
      text += words[i];
    } else if (i + 1 == words.size() || words[i + 1] != '\n') {
      text += '\n';
    }
  }
  return text;
}

/// One workbook while it is written.
class Book {
 public:
  Book(const Packet& packet, const std::string& path, const std::string& folder)
      : packet_(packet), folder_(folder) {
    lxw_workbook_options options{};
    options.tmpdir = folder_.data();
    book_ = workbook_new_opt(path.c_str(), &options);
    if (book_ == nullptr) {
      outcome_.note(LXW_ERROR_MEMORY_MALLOC_FAILED);
      return;
    }
    head_ = workbook_add_format(book_);
    format_set_bold(head_);
    format_set_bottom(head_, LXW_BORDER_MEDIUM);
    wrapped_ = workbook_add_format(book_);
    format_set_text_wrap(wrapped_);
    format_set_align(wrapped_, LXW_ALIGN_VERTICAL_TOP);
    for (std::size_t decimals = 0; decimals < numbers_.size(); ++decimals) {
      numbers_[decimals] = workbook_add_format(book_);
      const std::string shown = decimals == 0 ? "0" : "0." + std::string(decimals, '0');
      format_set_num_format(numbers_[decimals], shown.c_str());
    }
    set_properties();
  }
  Book(const Book&) = delete;
  Book& operator=(const Book&) = delete;

  Outcome write() {
    if (book_ == nullptr) return outcome_;
    write_first();
    write_list();
    write_totals();
    outcome_.note(workbook_close(book_));
    return outcome_;
  }

 private:
  void set_properties() {
    std::string title = "Marked trees, list for " + std::string(word_of(packet_.reader));
    std::string company = "Oaklight";
    lxw_doc_properties properties{};
    properties.title = title.data();
    properties.author = company.data();
    properties.created = day_of(packet_.made_on);
    outcome_.note(workbook_set_properties(book_, &properties));
  }

  void text(lxw_worksheet* sheet, lxw_row_t row, std::size_t column, const std::string& words,
            lxw_format* format = nullptr) {
    if (words.empty()) return;
    outcome_.note(worksheet_write_string(sheet, row, static_cast<lxw_col_t>(column),
                                         with_line_feeds(words).c_str(), format));
  }
  void cell(lxw_worksheet* sheet, lxw_row_t row, std::size_t column, const ListCell& what) {
    if (const auto* words = std::get_if<std::string>(&what)) text(sheet, row, column, *words);
    if (const auto* number = std::get_if<ListNumber>(&what)) {
      outcome_.note(worksheet_write_number(sheet, row, static_cast<lxw_col_t>(column),
                                           printed_value(*number),
                                           numbers_[static_cast<std::size_t>(number->decimals)]));
    }
  }
  void width(lxw_worksheet* sheet, std::size_t column, double letters) {
    const auto c = static_cast<lxw_col_t>(column);
    outcome_.note(worksheet_set_column(sheet, c, c, letters, nullptr));
  }

  /// Cautions before any tree.
  void write_first() {
    lxw_worksheet* sheet = workbook_add_worksheet(book_, "Read first");
    width(sheet, 0, 110.0);
    lxw_row_t row = 0;
    const auto line = [&](const std::string& words, lxw_format* format) {
      text(sheet, row++, 0, clean_text(words), format);
    };
    line("Read this first: " + packet_.tract.name, head_);
    for (const std::string& sentence : packet_.before_you_start) line(sentence, wrapped_);
    line("If someone is hurt", head_);
    for (const PacketFact& fact : packet_.emergency) line(fact.label + ": " + fact.text, wrapped_);
    line("Cautions for this job", head_);
    for (const Caution& caution : packet_.job_cautions) {
      line(std::string(word_of(caution.severity)) + ": " + caution.text, wrapped_);
    }
    line("Season", head_);
    line(packet_.season_advice, wrapped_);
    line("List SHA-256 " + packet_.list_sha256, wrapped_);
  }

  void write_list() {
    lxw_worksheet* sheet = workbook_add_worksheet(book_, "List");
    const ListTable table = list_table(packet_);
    for (std::size_t c = 0; c < table.columns.size(); ++c) {
      width(sheet, c, table.columns[c].width);
      text(sheet, 0, c, std::string(table.columns[c].name), head_);
    }
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
      for (std::size_t c = 0; c < table.columns.size(); ++c) {
        cell(sheet, static_cast<lxw_row_t>(r + 1), c, table.rows[r][c]);
      }
    }
    worksheet_freeze_panes(sheet, 1, 0);
  }

  void write_totals() {
    lxw_worksheet* sheet = workbook_add_worksheet(book_, "Totals");
    constexpr std::array kHead = {
        "list", "product", "trees", "board_feet", "log_rule", "cords", "trees_without_volume"};
    for (std::size_t c = 0; c < kHead.size(); ++c) {
      width(sheet, c, 20.0);
      text(sheet, 0, c, kHead[c], head_);
    }
    const auto lists = lists_of(packet_);
    lxw_row_t row = 1;
    for (const ProductTotal& total : packet_.totals) total_row(sheet, row++, lists[0], total);
    for (const ProductTotal& total : packet_.totals_if_cleared) {
      total_row(sheet, row++, lists[1], total);
    }
    worksheet_freeze_panes(sheet, 1, 0);
  }

  void total_row(lxw_worksheet* sheet, lxw_row_t row, const PacketList& list,
                 const ProductTotal& total) {
    const auto count = [](int n) { return ListNumber{static_cast<double>(n), 0}; };
    text(sheet, row, 0, std::string(list.name));
    text(sheet, row, 1, std::string(word_of(total.product)));
    cell(sheet, row, 2, count(total.trees));
    if (total.board_feet) {
      cell(sheet, row, 3, ListNumber{total.board_feet->value, 0});
      text(sheet, row, 4, packet_.log_rule);
    }
    if (total.cords) cell(sheet, row, 5, ListNumber{total.cords->value, 2});
    cell(sheet, row, 6, count(total.without_volume));
  }

  const Packet& packet_;
  std::string folder_;
  lxw_workbook* book_ = nullptr;
  lxw_format* head_ = nullptr;
  lxw_format* wrapped_ = nullptr;
  std::array<lxw_format*, 7> numbers_{};
  Outcome outcome_;
};

}  // namespace

Result<std::string> list_xlsx(const Packet& packet, const std::string& folder) {
  // A folder, because the library makes files of its own beside the one that it is asked for.
  const std::filesystem::path making =
      std::filesystem::path(folder) / (std::string(word_of(packet.reader)) + ".xlsx.making");
  std::error_code outcome;
  std::filesystem::remove_all(making, outcome);  // it may be a link to a file of somebody's
  if (!std::filesystem::create_directory(making, outcome))
    return unwritable(outcome.message(), making.string());
  const std::filesystem::path path = making / "list.xlsx";
  const Status written = Book(packet, path.string(), making.string()).write().status(path.string());
  auto bytes = written ? read_whole_file(path) : Result<std::string>(written.error());
  std::filesystem::remove_all(making, outcome);
  return bytes;
}

}  // namespace oaklight
