#include "core/forms/read_volumes.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/number_text.hpp"
#include "core/forms/species_names.hpp"

namespace oaklight {
namespace {

constexpr std::array<std::string_view, 7> kKnown = {"species",    "dbh_in", "dbh_cm", "log_rule",
                                                    "board_feet", "cords",  "source"};
constexpr std::array<std::string_view, 1> kRequired = {"species"};
/// The words of LogRule (core/measure), which forms stand apart from; a test holds the two
/// together.
constexpr std::array<std::string_view, 3> kLogRules = {"doyle", "scribner", "international"};
constexpr double kMostDbh = 200.0;         // inches, as a Dbh
constexpr double kMostBoardFeet = 20'000;  // of one tree: more is a slip of the keyboard
constexpr double kMostCords = 40.0;

/// One file while it is read.
class Reader {
 public:
  Reader(const NamedText& file, const SpeciesTable& species)
      : csv_(read_csv_file(file)), names_(species) {}

  VolumesRead read() {
    read_.faults = csv_.faults;
    if (!read_.faults.empty()) return std::move(read_);
    read_.faults = check_header(csv_, kKnown, kRequired);
    if (!read_.faults.empty()) return std::move(read_);
    metric_ = column("dbh_cm").has_value();
    if (metric_ == column("dbh_in").has_value()) {
      const bool both = metric_;
      blame(csv_.header_line, both ? "dbh_cm" : "dbh_in",
            both ? ErrorCode::contradiction : ErrorCode::missing_value,
            both ? "The table has DBH in inches and in centimetres." : "The table has no DBH.",
            "Keep one column: dbh_in or dbh_cm.");
      return std::move(read_);
    }
    for (const CsvRow& row : csv_.rows) add(row);
    check_lines();
    if (read_.faults.size() > kMaxFaults) read_.faults.resize(kMaxFaults);
    return std::move(read_);
  }

 private:
  [[nodiscard]] std::optional<std::size_t> column(std::string_view name) const {
    const auto found = std::ranges::find_if(
        csv_.header, [&](const std::string& h) { return lower_case(h) == name; });
    if (found == csv_.header.end()) return std::nullopt;
    return static_cast<std::size_t>(found - csv_.header.begin());
  }
  [[nodiscard]] std::string cell(const CsvRow& row, std::string_view name) const {
    const auto i = column(name);
    return i ? std::string(trimmed(row.cells[*i])) : std::string();
  }
  void blame(int line, std::string_view column, ErrorCode code, std::string what, std::string fix) {
    read_.faults.push_back(
        {code, std::move(what), place_in(csv_.name, line, column), std::move(fix)});
  }

  std::optional<double> number(const CsvRow& row, std::string_view name, double most) {
    const std::string text = cell(row, name);
    if (text.empty()) return std::nullopt;
    const auto value = number_from_text(text);
    if (!value) {
      blame(row.line, name, ErrorCode::not_a_number, "\"" + text + "\" is no number.",
            "Write it with a decimal point.");
    } else if (!(*value >= 0.0 && *value <= most)) {
      blame(row.line, name, ErrorCode::out_of_range,
            text + " is outside 0 to " + number_text(most, 0) + ".", "Check the decimal point.");
    } else {
      return *value;
    }
    return std::nullopt;
  }

  /// False, and a fault, for a species that nobody knows.
  bool take_species(const CsvRow& row, LocalVolumeRow& line) {
    const std::string name = cell(row, "species");
    if (lower_case(name) == "any") return true;
    const auto code = names_.find(name);
    if (!code) {
      blame(row.line, "species", code.error().code, code.error().what,
            code.error().fix + " \"any\" is for all species without lines of their own.");
      return false;
    }
    line.fia = code->fia;
    return true;
  }

  void take_rule(const CsvRow& row) {
    const std::string rule = lower_case(cell(row, "log_rule"));
    if (rule.empty()) {
      blame(row.line, "log_rule", ErrorCode::missing_value,
            "Board feet are given, and not by which log rule.",
            "Write doyle, scribner or international.");
    } else if (std::ranges::find(kLogRules, rule) == kLogRules.end()) {
      blame(row.line, "log_rule", ErrorCode::not_a_choice, "\"" + rule + "\" is no log rule here.",
            "Write doyle, scribner or international.");
    } else if (!read_.volumes.log_rule.empty() && read_.volumes.log_rule != rule) {
      blame(row.line, "log_rule", ErrorCode::contradiction,
            "The table has board feet by two log rules.", "Keep those of one.");
    } else {
      read_.volumes.log_rule = rule;
    }
  }

  void add(const CsvRow& row) {
    LocalVolumeRow line;
    const std::string_view dbh_column = metric_ ? "dbh_cm" : "dbh_in";
    const double per_inch = metric_ ? kCentimetresPerInch : 1.0;
    const bool known = take_species(row, line);
    const auto dbh = number(row, dbh_column, kMostDbh * per_inch);
    if (cell(row, dbh_column).empty()) {
      blame(row.line, dbh_column, ErrorCode::missing_value, "DBH is needed here.",
            "Each line is for one DBH.");
    }
    line.board_feet = number(row, "board_feet", kMostBoardFeet);
    line.cords = number(row, "cords", kMostCords);
    if (cell(row, "board_feet").empty() && cell(row, "cords").empty()) {
      blame(row.line, "board_feet", ErrorCode::missing_value, "The line gives no volume.",
            "Give board feet, cords, or both.");
    }
    if (line.board_feet) take_rule(row);
    if (read_.volumes.source.empty()) read_.volumes.source = cell(row, "source");
    if (!known || !dbh) return;
    line.dbh = Inches{*dbh / per_inch};
    read_.volumes.rows.push_back(line);
    lines_.push_back(row.line);
  }

  /// Puts the lines in order; two of one DBH, and a thicker tree with less wood, are slips.
  void check_lines() {
    std::vector<std::size_t> order(read_.volumes.rows.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
    const auto& rows = read_.volumes.rows;
    std::ranges::stable_sort(order, {}, [&](std::size_t i) {
      return std::pair(rows[i].fia.value_or(0), rows[i].dbh.value);
    });
    std::vector<LocalVolumeRow> sorted;
    for (std::size_t at = 0; at < order.size(); ++at) {
      const LocalVolumeRow& row = rows[order[at]];
      if (!sorted.empty() && sorted.back().fia == row.fia) {
        check_pair(sorted.back(), row, lines_[order[at]]);
      }
      sorted.push_back(row);
    }
    read_.volumes.rows = std::move(sorted);
  }

  void check_pair(const LocalVolumeRow& thin, const LocalVolumeRow& thick, int line) {
    const std::string_view dbh_column = metric_ ? "dbh_cm" : "dbh_in";
    if (!(thick.dbh > thin.dbh)) {
      blame(line, dbh_column, ErrorCode::duplicate, "This species and DBH is there twice.",
            "Keep one of the lines.");
      return;
    }
    const auto falls = [&](const std::optional<double>& a, const std::optional<double>& b) {
      return a && b && *b < *a;
    };
    if (falls(thin.board_feet, thick.board_feet) || falls(thin.cords, thick.cords)) {
      blame(line, dbh_column, ErrorCode::contradiction,
            "A thicker tree holds less than the line before it.", "Correct one of the two.");
    }
  }

  CsvFile csv_;
  SpeciesNames names_;
  VolumesRead read_;
  std::vector<int> lines_;
  bool metric_ = false;
};

}  // namespace

VolumesRead read_volumes(const NamedText& file, const SpeciesTable& species) {
  return Reader(file, species).read();
}

}  // namespace oaklight
