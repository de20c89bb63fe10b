// forms/README.md tells every column of every file, and no other.
#include <gtest/gtest.h>

#include <fstream>
#include <regex>
#include <sstream>

#include "tests/forms/cruise_files.hpp"
#include "tests/support/places.hpp"

namespace oaklight {
namespace {

std::string readme() {
  std::ifstream in(test::source_path("forms/README.md"), std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  return text.str();
}

/// The part under "### trees.csv", up to the next heading.
std::string section_of(const std::string& text, const std::string& file) {
  const auto start = text.find("### " + file + "\n");
  if (start == std::string::npos) return {};
  return text.substr(start, text.find("\n#", start + 4) - start);
}

TEST(FormsReadme, TellsEachColumnOfEachFileInTheOrderOfTheForm) {
  const std::string text = readme();
  const std::regex row("\n\\| `([a-z0-9_]+)`(?: or `([a-z0-9_]+)`)? \\|");
  for (const RecordForm& record : test::tally_form().records) {
    const std::string section = section_of(text, record.file);
    std::vector<std::string> told;
    for (auto it = std::sregex_iterator(section.begin(), section.end(), row);
         it != std::sregex_iterator(); ++it) {
      told.push_back((*it)[1].str() + "/" + ((*it)[2].matched ? (*it)[2] : (*it)[1]).str());
    }
    std::vector<std::string> columns;
    for (const Field& field : record.fields) {
      columns.push_back(field.column.us + "/" + field.column.metric);
    }
    EXPECT_EQ(told, columns) << record.file;
  }
}

TEST(FormsReadme, TellsWhatEachColumnMeansAndWhichAreNeeded) {
  const std::string text = readme();
  for (const RecordForm& record : test::tally_form().records) {
    const std::string section = section_of(text, record.file);
    for (const Field& field : record.fields) {
      const auto at = section.find("| `" + field.column.us + "`");
      ASSERT_NE(at, std::string::npos) << field.column.us;
      const std::string line = section.substr(at, section.find('\n', at) - at);
      EXPECT_NE(line.find(field.help), std::string::npos) << line;
      EXPECT_EQ(line.find("| yes | ") != std::string::npos, field.required) << line;
    }
  }
}

}  // namespace
}  // namespace oaklight
