// The Debian package and what it describes say the same. That it installs and runs:
// tests/install/run.
#include <gtest/gtest.h>

#include <cctype>
#include <filesystem>
#include <fstream>
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

std::string source(const std::string& name) { return text_of(oaklight::test::source_path(name)); }

std::set<std::string> all_of(const std::string& text, const std::regex& pattern) {
  std::set<std::string> found;
  for (std::sregex_iterator at(text.begin(), text.end(), pattern), end; at != end; ++at) {
    found.insert((*at)[1]);
  }
  return found;
}

TEST(Package, TheAppsPageAndCompletionNameEachOfItsOptions) {
  const auto options =
      all_of(source("mobile/main.cpp"),
             std::regex(R"~(QCommandLineOption \w+\(\s*QStringLiteral\("([a-z-]+)"\))~"));
  ASSERT_GE(options.size(), 5U) << "the pattern no longer finds them";
  const std::string page =
      std::regex_replace(source("mobile/package/oaklight-tablet.1"), std::regex(R"(\\-)"), "-");
  const std::string completion = source("mobile/package/oaklight-tablet.bash");
  for (const std::string& option : options) {
    EXPECT_NE(page.find("--" + option), std::string::npos) << option;
    EXPECT_NE(completion.find("--" + option + " "), std::string::npos) << option;
  }
}

TEST(Package, DependsOnEachModuleThatAPageImports) {
  std::set<std::string> imports;
  for (const auto& entry :
       fs::recursive_directory_iterator(oaklight::test::source_path("mobile/qml"))) {
    if (entry.path().extension() != ".qml") continue;
    imports.merge(all_of(text_of(entry.path()), std::regex(R"(import (Qt[A-Za-z.]+))")));
  }
  EXPECT_TRUE(imports.contains("QtQuick"));
  const std::string package = source("mobile/package/CMakeLists.txt");
  for (const std::string& import : imports) {
    std::string name = "qml6-module-";
    for (const char c : import)
      name += c == '.' ? '-' : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    // A style of the controls is in their package.
    name = std::regex_replace(name, std::regex("controls-basic"), "controls");
    EXPECT_NE(package.find(name + ","), std::string::npos) << import << ": " << name;
  }
}

}  // namespace
