// The stand table of `estimate --stand-table` against the same figures of `estimate --json`.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <sstream>
#include <vector>

#include "core/base/number_text.hpp"
#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;
using Row = std::vector<std::string>;

/// Rows of the table that begins with these words, up to its keys; without its head.
std::vector<Row> rows_of(const std::string& text, const std::string& head) {
  std::istringstream lines(text.substr(text.find("\n  " + head) + 1));
  std::vector<Row> rows;
  std::string line;
  std::getline(lines, line);
  while (std::getline(lines, line) && line.find('[') == std::string::npos) {
    std::istringstream words(line);
    Row row;
    for (std::string word; words >> word;) {
      if (word != "in") row.push_back(word);
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

std::string shown(const Json& figures, const char* figure) {
  return number_text(figures.at(figure).at("mean").get<double>(), 1);
}

class StandTable : public testing::Test {
 protected:
  void expect_table(const std::string& head, const char* figure) {
    const auto rows = rows_of(text_, head);
    const Json& area = json_.at("all");
    ASSERT_GT(rows.size(), 3U);
    const Row& sums = rows.back();
    ASSERT_EQ(sums.size(), area.at("by_species").size() + 2) << head;
    EXPECT_EQ(sums.back(), shown(area.at("live"), figure));
    Row want, got(sums.begin() + 1, sums.end() - 1);
    for (const Json& row : area.at("by_species")) want.push_back(shown(row.at("figures"), figure));
    std::ranges::sort(want);
    std::ranges::sort(got);
    EXPECT_EQ(got, want);
    for (std::size_t i = 0; i + 1 < rows.size(); ++i) expect_class(rows[i], figure);
  }

  void expect_class(const Row& row, const char* figure) {
    const int inches = std::stoi(row.front());
    std::string all = ".";
    for (const Json& one : json_.at("all").at("by_class")) {
      if (one.at("class_in") == inches) all = shown(one.at("figures"), figure);
    }
    EXPECT_EQ(row.back(), all) << inches;
    Row want, got;
    for (const Json& one : json_.at("all").at("by_species_class")) {
      if (one.at("class_in") == inches) want.push_back(shown(one.at("figures"), figure));
    }
    for (std::size_t i = 1; i + 1 < row.size(); ++i) {
      if (row[i] != ".") got.push_back(row[i]);
    }
    std::ranges::sort(want);
    std::ranges::sort(got);
    EXPECT_EQ(got, want) << inches;
  }

  DemoTract demo_;
  std::string text_ = oaklight("estimate " + demo_.tract + " --stand-table").out;
  Json json_ = Json::parse(oaklight("estimate " + demo_.tract + " --json").out);
};

TEST_F(StandTable, HasTheFiguresOfEachSpeciesAndClass) {
  expect_table("trees/ac by 2-in class", "trees_ac");
  expect_table("ft2/ac by 2-in class", "ba_ft2_ac");
}

TEST_F(StandTable, IsPrintedOnlyWhenAsked) {
  EXPECT_EQ(oaklight("estimate " + demo_.tract).out.find("Stand table"), std::string::npos);
}

}  // namespace
}  // namespace oaklight::test
