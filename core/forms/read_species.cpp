#include "core/forms/read_species.hpp"

#include <algorithm>
#include <map>

#include "core/base/number_text.hpp"
#include "core/forms/near_word.hpp"

namespace oaklight {
namespace {

constexpr std::string_view kSpeciesColumns[] = {"fia_code",
                                                "plants_symbol",
                                                "common_name",
                                                "local_names",
                                                "scientific_name",
                                                "family",
                                                "leaf_type",
                                                "oak_group",
                                                "mast_class",
                                                "wildlife_mast_rank",
                                                "shade_tolerance",
                                                "root_sucker",
                                                "stump_sprout",
                                                "tsi_stance",
                                                "timber_value_class",
                                                "specific_gravity_green",
                                                "wood_density_lb_ft3_green",
                                                "wood_density_lb_ft3_air_dry",
                                                "heat_mbtu_per_cord",
                                                "jenkins_group",
                                                "stocking_group",
                                                "crown_width_group",
                                                "min_sawlog_dbh_in",
                                                "invasive",
                                                "at_risk_pest",
                                                "epicormic_risk",
                                                "conifer_thermal_cover",
                                                "provenance"};
constexpr std::string_view kSetColumns[] = {"set_key", "set_name", "species_count", "fia_codes",
                                            "notes"};
constexpr int kCatchAll[] = {9901, 9902, 998, 299};

/// More rows than this are an accident; each is held against the others.
constexpr std::size_t kMostSpecies = 5'000;
constexpr std::size_t kMostSets = 200;
constexpr std::size_t kMostInSet = 500;

/// A fault for a file of more rows than anybody has use for.
std::optional<Error> too_many_rows(const CsvFile& csv, std::size_t most) {
  if (csv.rows.size() <= most) return std::nullopt;
  return Error{ErrorCode::bad_csv, "The file has more than " + std::to_string(most) + " rows.",
               place_in(csv.name, csv.rows[most].line, ""), "Keep those of your region."};
}

/// Cells of one file by column name, with a place to put what is wrong with them.
class Cells {
 public:
  Cells(const CsvFile& file, std::vector<Error>& faults) : file_(file), faults_(faults) {
    for (std::size_t i = 0; i < file.header.size(); ++i) columns_[lower_case(file.header[i])] = i;
  }
  void go_to(const CsvRow& row) { row_ = &row; }

  [[nodiscard]] std::string text(std::string_view column) const {
    return std::string(trimmed(row_->cells[columns_.find(column)->second]));
  }
  std::string needed(std::string_view column) {
    std::string cell = text(column);
    if (cell.empty()) {
      fault(column, ErrorCode::missing_value, "This cell must not be empty.", "Fill it in.");
    }
    return cell;
  }
  [[nodiscard]] std::vector<std::string> list(std::string_view column) const {
    std::vector<std::string> items;
    std::string rest = text(column);
    while (!rest.empty()) {
      const auto bar = rest.find('|');
      const std::string item(trimmed(rest.substr(0, bar)));
      if (!item.empty()) items.push_back(item);
      rest = bar == std::string::npos ? std::string() : rest.substr(bar + 1);
    }
    return items;
  }
  int whole(std::string_view column, int least, int most) {
    const auto number = whole_from_text(needed(column));
    if (number && *number >= least && *number <= most) return static_cast<int>(*number);
    if (text(column).empty()) return least;
    fault(column, number ? ErrorCode::out_of_range : ErrorCode::not_a_number,
          "\"" + text(column) + "\" is not a whole number from " + std::to_string(least) + " to " +
              std::to_string(most) + ".",
          "Change it.");
    return least;
  }
  template <class E>
  std::optional<E> word(std::string_view column) {
    const std::string cell = text(column);
    if (cell.empty()) return std::nullopt;
    const auto value = from_word<E>(cell);
    if (!value) {
      std::vector<std::string_view> words;
      std::string all;
      for (const auto& entry : kWords<E>) {
        words.push_back(entry.word);
        all += (all.empty() ? "" : ", ") + std::string(entry.word);
      }
      fault(column, ErrorCode::not_a_choice, "\"" + cell + "\" is none of the words for this.",
            did_you_mean(near_words(cell, words), "Write one of: " + all + "."));
    }
    return value;
  }
  template <class E>
  E needed_word(std::string_view column) {
    needed(column);
    return word<E>(column).value_or(kWords<E>[0].value);
  }
  void fault(std::string_view column, ErrorCode code, std::string what, std::string fix) {
    if (faults_.size() >= kMaxFaults) return;
    const int line = line_of_cell(*row_, columns_.find(column)->second);
    faults_.push_back({code, std::move(what), place_in(file_.name, line, column), std::move(fix)});
  }
  /// A fault when the cell's text was met before; empty cells never were.
  void expect_new(std::map<std::string, int>& seen, std::string_view column) {
    const std::string key = lower_case(text(column));
    if (key.empty()) return;
    const auto [other, fresh] = seen.emplace(key, row_->line);
    if (fresh) return;
    fault(column, ErrorCode::duplicate,
          "\"" + text(column) + "\" is on line " + std::to_string(other->second) + " already.",
          "Keep one of the rows, or change this one.");
  }

 private:
  const CsvFile& file_;
  std::vector<Error>& faults_;
  const CsvRow* row_ = nullptr;
  std::map<std::string, std::size_t, std::less<>> columns_;
};

std::optional<Inches> read_sawlog_dbh(Cells& cells) {
  const std::string cell = cells.text("min_sawlog_dbh_in");
  if (cell.empty()) return std::nullopt;
  const auto inches = number_from_text(cell);
  if (inches && *inches > 0 && *inches <= 200) return Inches{*inches};
  cells.fault("min_sawlog_dbh_in", inches ? ErrorCode::out_of_range : ErrorCode::not_a_number,
              "\"" + cell + "\" is not a diameter in inches.", "Write it like 11.0.");
  return std::nullopt;
}

Species read_row(Cells& cells) {
  Species s;
  s.code = SpeciesCode{cells.whole("fia_code", 1, 99'999)};
  s.plants_symbol = cells.text("plants_symbol");
  s.common_name = cells.needed("common_name");
  s.local_names = cells.list("local_names");
  s.scientific_name = cells.needed("scientific_name");
  s.leaf = cells.needed_word<LeafType>("leaf_type");
  s.oak_group = cells.needed_word<OakGroup>("oak_group");
  s.mast = cells.needed_word<MastClass>("mast_class");
  s.mast_rank = cells.whole("wildlife_mast_rank", 0, 5);
  s.root_sucker = cells.whole("root_sucker", 0, 1) == 1;
  s.stance = cells.needed_word<Stance>("tsi_stance");
  s.timber_value = cells.word<Level>("timber_value_class");
  s.jenkins_group = cells.needed("jenkins_group");
  s.stocking_group = cells.needed("stocking_group");
  s.crown_width_group = cells.needed("crown_width_group");
  s.min_sawlog_dbh = read_sawlog_dbh(cells);
  s.invasive = cells.whole("invasive", 0, 1) == 1;
  s.pests = cells.list("at_risk_pest");
  s.winter_cover = cells.whole("conifer_thermal_cover", 0, 1) == 1;
  // Kept for people who read the file; the model has no use for them yet.
  cells.word<Level>("stump_sprout");
  cells.word<Level>("epicormic_risk");
  return s;
}

TallySet read_set(Cells& cells, const SpeciesTable& species) {
  TallySet set{cells.needed("set_key"), cells.needed("set_name"), {}, cells.text("notes")};
  const auto add = [&](SpeciesCode code) {
    const bool there = std::find(set.species.begin(), set.species.end(), code) != set.species.end();
    if (!there) set.species.push_back(code);
    return !there;
  };
  const auto items = cells.list("fia_codes");
  if (items.size() > kMostInSet) {
    cells.fault("fia_codes", ErrorCode::out_of_range, "The set has more than 500 species.",
                "A screen shows some dozens; leave the others out.");
    return set;
  }
  for (const std::string& item : items) {
    const auto code = whole_from_text(item);
    if (!code || *code < 1 || *code > 99'999 || !species.find({static_cast<int>(*code)})) {
      cells.fault("fia_codes", code ? ErrorCode::unknown_species : ErrorCode::not_a_number,
                  "\"" + item + "\" is not a code of species.csv.", "Take it out or correct it.");
    } else if (!add({static_cast<int>(*code)})) {
      cells.fault("fia_codes", ErrorCode::duplicate, "Code " + item + " is in the set twice.",
                  "Take one out.");
    }
  }
  const int listed = static_cast<int>(items.size());
  if (cells.whole("species_count", 0, 9999) != listed) {
    cells.fault("species_count", ErrorCode::contradiction,
                "The set lists " + std::to_string(listed) + " species.", "Correct the count.");
  }
  for (const int code : kCatchAll) {
    if (species.find({code})) add({code});
  }
  return set;
}

/// Faults of the header; when there are none, the rows can be read by column name.
bool header_is_good(const CsvFile& csv, std::span<const std::string_view> columns,
                    std::vector<Error>& faults) {
  faults = csv.faults;
  if (csv.header.empty()) return false;
  const auto header = check_header(csv, columns, columns);
  faults.insert(faults.end(), header.begin(), header.end());
  return header.empty();
}

}  // namespace

SpeciesRead read_species(const NamedText& file) {
  const CsvFile csv = read_csv_file(file);
  SpeciesRead read;
  if (!header_is_good(csv, kSpeciesColumns, read.faults)) return read;
  if (auto fault = too_many_rows(csv, kMostSpecies)) {
    read.faults.push_back(*std::move(fault));
    return read;
  }
  Cells cells(csv, read.faults);
  std::map<std::string, int> codes;
  std::map<std::string, int> symbols;
  std::map<std::string, int> common;
  std::map<std::string, int> scientific;
  std::vector<Species> rows;
  for (const CsvRow& row : csv.rows) {
    cells.go_to(row);
    rows.push_back(read_row(cells));
    cells.expect_new(codes, "fia_code");
    cells.expect_new(symbols, "plants_symbol");
    cells.expect_new(common, "common_name");
    cells.expect_new(scientific, "scientific_name");
  }
  read.table = SpeciesTable(std::move(rows));
  return read;
}

TallySetsRead read_tally_sets(const NamedText& file, const SpeciesTable& species) {
  const CsvFile csv = read_csv_file(file);
  TallySetsRead read;
  if (!header_is_good(csv, kSetColumns, read.faults)) return read;
  if (auto fault = too_many_rows(csv, kMostSets)) {
    read.faults.push_back(*std::move(fault));
    return read;
  }
  Cells cells(csv, read.faults);
  std::map<std::string, int> keys;
  for (const CsvRow& row : csv.rows) {
    cells.go_to(row);
    read.sets.push_back(read_set(cells, species));
    cells.expect_new(keys, "set_key");
  }
  return read;
}

}  // namespace oaklight
