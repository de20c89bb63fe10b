// The page of field requirements and the tests named after its rows say the same.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include "tests/support/places.hpp"

namespace fs = std::filesystem;

namespace {

std::string text_of(const fs::path& file) {
  std::ifstream in(file);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

/// Ids of rows by which tests are named: T12, F7. A test may hold several.
std::set<std::string> tested_rows(const fs::path& folder) {
  static const std::regex test(R"(TEST_F\(\w+,\s*((?:[TVFSD]\d+_)+))");
  static const std::regex id(R"([TVFSD]\d+)");
  std::set<std::string> rows;
  for (const auto& entry : fs::directory_iterator(folder)) {
    if (entry.path().extension() != ".cpp") continue;
    const std::string text = text_of(entry.path());
    for (auto at = std::sregex_iterator(text.begin(), text.end(), test);
         at != std::sregex_iterator(); ++at) {
      const std::string ids = (*at)[1];
      for (auto one = std::sregex_iterator(ids.begin(), ids.end(), id);
           one != std::sregex_iterator(); ++one) {
        rows.insert(one->str());
      }
    }
  }
  return rows;
}

/// The last cell of each row of the page, by its id.
std::map<std::string, std::string> rows_of_the_page(const fs::path& page) {
  static const std::regex row(R"(^\| ([TVFSD]\d+) \|.*\| ([^|]+) \|$)");
  std::map<std::string, std::string> rows;
  std::istringstream lines(text_of(page));
  std::smatch cells;
  for (std::string line; std::getline(lines, line);) {
    if (std::regex_match(line, cells, row)) rows[cells[1]] = cells[2];
  }
  return rows;
}

TEST(FieldRows, EveryRowHasATestOrSaysWhyNot) {
  const fs::path folder = fs::path(oaklight::test::source_path("tests/app"));
  const auto rows = rows_of_the_page(folder / "field_rows.md");
  const auto tested = tested_rows(folder);
  ASSERT_GE(rows.size(), 40U);
  for (const auto& [id, held_by] : rows) {
    const bool says_test = held_by.starts_with("test");
    EXPECT_TRUE(says_test || held_by.starts_with("no test")) << id << ": " << held_by;
    EXPECT_EQ(tested.contains(id), says_test) << id << ": " << held_by;
    if (!says_test) {
      EXPECT_NE(held_by.find(": "), std::string::npos) << id << " does not say why";
    }
  }
  for (const std::string& id : tested) EXPECT_TRUE(rows.contains(id)) << id << " is on no row";
}

}  // namespace
