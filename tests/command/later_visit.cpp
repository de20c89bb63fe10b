#include "tests/command/later_visit.hpp"

#include <cmath>

#include "core/base/csv_text.hpp"
#include "core/base/number_text.hpp"
#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

/// A file of the demo tract, its header kept for writing.
struct DemoFile {
  std::vector<std::string> header;
  CsvRows rows;
};

DemoFile demo_file(const std::string& name) {
  const std::string text = bytes_of(demo_plots() / name);
  const auto read = read_csv(text, name).value();
  return {read.front().cells, csv_rows(text)};
}

std::string text_of(const DemoFile& file) {
  const auto line = [&](auto cell) {
    std::vector<std::string> cells;
    for (const std::string& column : file.header) cells.push_back(csv_cell(cell(column)));
    return csv_record(cells);
  };
  std::string text = line([](const std::string& column) { return column; });
  for (const auto& row : file.rows) {
    text += line([&](const std::string& column) { return row.at(column); });
  }
  return text;
}

int tenths(const std::string& inches) { return scaled_from_text(inches, 1).value(); }
std::string inches(int tenths) { return number_text(tenths / 10.0, 1); }

std::string plot_of(const std::map<std::string, std::string>& row) {
  return row.at("stand") + "/" + row.at("plot");
}

int count_of(const std::string& cell) {
  return cell.empty() ? 1 : static_cast<int>(whole_from_text(cell).value());
}

constexpr const char* kNotFound = "U03";

}  // namespace

CsvRows csv_rows(const std::string& text) {
  const auto read = read_csv(text, "csv").value();
  CsvRows rows;
  for (std::size_t i = 1; i < read.size(); ++i) {
    auto& row = rows.emplace_back();
    for (std::size_t c = 0; c < read[i].cells.size(); ++c) {
      row[read.front().cells[c]] = read[i].cells[c];
    }
  }
  return rows;
}

LaterVisit later_visit() {
  LaterVisit visit;
  DemoFile plots = demo_file("plots.csv");
  DemoFile trees = demo_file("trees.csv");
  std::map<std::string, int> records;
  CsvRows kept;
  int i = 0;
  for (auto row : trees.rows) {
    ++i;
    const int trees_here = count_of(row.at("stems")) * count_of(row.at("edge_count"));
    const bool live = row.at("status") != "dead";
    if (live) visit.before[plot_of(row)] += trees_here;
    if (row.at("plot") == kNotFound) continue;
    if (row.at("species") == "red maple" && i % 3 != 0) continue;
    if (live) {
      visit.after[plot_of(row)] += trees_here;
      row["dbh_in"] = inches(tenths(row.at("dbh_in")) + 3 + i % 4);
    }
    ++records[plot_of(row)];
    kept.push_back(row);
  }
  trees.rows = kept;
  std::erase_if(plots.rows, [](const auto& row) { return row.at("plot") == kNotFound; });
  for (auto& row : plots.rows) {
    row["cruise"] = "2031 points";
    row["date"] = "2031" + row.at("date").substr(4);
    row["status"] = records[plot_of(row)] > 0 ? "measured" : "empty";
    row["skip_reason"] = "";
  }
  visit.plots = text_of(plots);
  visit.trees = text_of(trees);
  return visit;
}

int crop_growth(const std::string& tag, bool released) {
  const int n = static_cast<int>(whole_from_text(tag).value());
  return (released ? 13 : 8) + n % 4;
}

std::string later_cards(const std::set<std::string>& taken, const std::set<std::string>& released) {
  DemoFile cards = demo_file("crop_trees.csv");
  std::set<std::string> crops;
  for (const auto& row : cards.rows) {
    if (row.at("role") == "crop") crops.insert(row.at("tag"));
  }
  CsvRows rows;
  std::map<std::string, std::set<std::string>> left;    // card -> sides that something left
  std::map<std::string, std::set<std::string>> closed;  // card -> sides that something stands on
  std::map<std::string, std::string> stands;
  for (auto row : cards.rows) {
    const std::string card = row.at("card");
    stands[card] = row.at("stand");
    std::set<std::string>& sides = taken.contains(row.at("tag")) ? left[card] : closed[card];
    for (const char side : row.at("side")) {
      if (side != '|') sides.insert(std::string(1, side));
    }
    if (taken.contains(row.at("tag"))) continue;
    if (crops.contains(row.at("tag")) && !row.at("dbh_in").empty()) {
      const std::string tag = row.at("tag");
      row["dbh_in"] = inches(tenths(row.at("dbh_in")) + crop_growth(tag, released.contains(tag)));
    }
    rows.push_back(row);
  }
  for (const auto& [card, sides] : left) {
    if (taken.contains(card)) continue;
    for (const std::string& side : sides) {
      if (closed[card].contains(side)) continue;
      auto& row = rows.emplace_back();
      for (const std::string& column : cards.header) row[column] = "";
      row["stand"] = stands[card];
      row["card"] = card;
      row["role"] = "open";
      row["side"] = side;
    }
  }
  cards.rows = rows;
  return text_of(cards);
}

}  // namespace oaklight::test
