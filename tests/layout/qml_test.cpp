// Pages lay out, bind and forward taps; what is computed is computed where it can be tested.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <regex>
#include <string>
#include <vector>
#include "tests/support/places.hpp"

namespace fs = std::filesystem;

namespace {

std::vector<fs::path> qml_files() {
  std::vector<fs::path> files;
  for (const auto& entry :
       fs::recursive_directory_iterator(fs::path(oaklight::test::source_path("mobile/qml")))) {
    if (entry.path().extension() == ".qml") files.push_back(entry.path());
  }
  return files;
}

/// A line without what it says and what it explains.
std::string code_of(const std::string& line) {
  static const std::regex quoted(R"("[^"]*")");
  static const std::regex comment("//.*");
  return std::regex_replace(std::regex_replace(line, quoted, "\"\""), comment, "");
}

bool computes(const std::string& code) {
  static const std::regex sum(R"([\w\)\]]\s*(\+|\*|/|%|-)\s*[\w\(])");
  static const std::regex maths(R"(\bMath\.|\+\+|--|[-+*/%]=)");
  return std::regex_search(code, sum) || std::regex_search(code, maths);
}

TEST(Qml, TheCheckSeesArithmetic) {
  EXPECT_TRUE(computes(code_of("width: parent.width - 2")));
  EXPECT_TRUE(computes(code_of("x: Math.max(a, b)")));
  EXPECT_TRUE(computes(code_of("count += 1")));
  EXPECT_FALSE(computes(code_of("onClicked: row => list.tap(row, -1) // a - b")));
  EXPECT_FALSE(computes(code_of("text: \"a - b\"")));
}

TEST(Qml, NoPageComputes) {
  const auto files = qml_files();
  ASSERT_GT(files.size(), 10U);
  for (const fs::path& path : files) {
    std::ifstream in(path);
    int number = 0;
    for (std::string line; std::getline(in, line);) {
      ++number;
      EXPECT_FALSE(computes(code_of(line))) << path.filename() << ":" << number << ": " << line;
    }
  }
}

TEST(Qml, ColoursAndSizesComeFromTheTheme) {
  static const std::regex colour(R"("#[0-9a-fA-F]{3,8}")");
  static const std::regex size(R"(pixelSize:\s*\d)");
  for (const fs::path& path : qml_files()) {
    std::ifstream in(path);
    for (std::string line; std::getline(in, line);) {
      EXPECT_FALSE(std::regex_search(line, colour)) << path.filename() << ": " << line;
      EXPECT_FALSE(std::regex_search(line, size)) << path.filename() << ": " << line;
    }
  }
}

}  // namespace
