// The stand table of `estimate --stand-table` against the same figures of `estimate --json`.
#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>
#include <sstream>
#include <vector>

#include "core/base/number_text.hpp"
#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

/// A line as it should be: class and species, then each figure and its standard error.
std::string line_of(const std::string& dbh_class, const std::string& species, const Json& figures) {
  std::string line = dbh_class + ' ' + species;
  for (const char* figure : {"trees_ac", "ba_ft2_ac"}) {
    for (const char* part : {"mean", "se"})
      line += ' ' + number_text(figures.at(figure).at(part).get<double>(), 1);
  }
  return line;
}

/// The same without the words after its figures.
bool is_line(const std::string& got, const std::string& want) {
  return got == want || got.starts_with(want + " on fewer") || got.starts_with(want + " two plots");
}

class StandTable : public testing::Test {
 protected:
  /// The lines between the head and the keys, blanks drawn together.
  std::vector<std::string> lines() const {
    std::istringstream text(text_.substr(text_.find("Stand table")));
    std::vector<std::string> found;
    std::string line;
    std::getline(text, line);
    std::getline(text, line);
    while (std::getline(text, line) && line.find('[') == std::string::npos) {
      std::istringstream words(line);
      std::string drawn;
      for (std::string word; words >> word;) drawn += (drawn.empty() ? "" : " ") + word;
      found.push_back(drawn);
    }
    return found;
  }

  DemoTract demo_;
  std::string text_ = oaklight("estimate " + demo_.tract + " --stand-table").out;
  Json json_ = Json::parse(oaklight("estimate " + demo_.tract + " --json").out);
};

TEST_F(StandTable, HasEachSpeciesAndClassWithItsError) {
  const Json& area = json_.at("all");
  std::map<int, std::string> names;
  for (const Json& row : area.at("by_species")) names[row.at("fia")] = row.at("species");
  const auto class_of = [](const Json& row) {
    return std::to_string(row.at("class_in").get<int>()) + " in";
  };
  std::vector<std::string> want;
  for (const Json& row : area.at("by_species_class"))
    want.push_back(line_of(class_of(row), names.at(row.at("fia")), row.at("figures")));
  for (const Json& row : area.at("by_class"))
    want.push_back(line_of(class_of(row), "all", row.at("figures")));
  for (const Json& row : area.at("by_species"))
    want.push_back(line_of("all", row.at("species"), row.at("figures")));
  want.push_back(line_of("all", "all", area.at("live")));
  const std::vector<std::string> got = lines();
  ASSERT_EQ(got.size(), want.size()) << text_;
  for (const std::string& line : want) {
    EXPECT_TRUE(std::ranges::any_of(got, [&](const auto& g) { return is_line(g, line); })) << line;
  }
  EXPECT_TRUE(is_line(got.back(), want.back())) << "the whole comes last";
}

TEST_F(StandTable, IsPrintedOnlyWhenAsked) {
  EXPECT_EQ(oaklight("estimate " + demo_.tract).out.find("Stand table"), std::string::npos);
}

}  // namespace
}  // namespace oaklight::test
