// The shape of the tree is a promise; these tests hold it.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "tests/support/places.hpp"

namespace fs = std::filesystem;

namespace {

const fs::path kRoot = oaklight::test::source_path("");

std::string text_of(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

bool is_code(const fs::path& path) {
  return path.extension() == ".cpp" || path.extension() == ".hpp";
}

std::vector<fs::path> code_under(const std::string& folder) {
  std::vector<fs::path> files;
  EXPECT_TRUE(fs::exists(kRoot / folder)) << folder;
  if (!fs::exists(kRoot / folder)) return files;
  for (const auto& entry : fs::recursive_directory_iterator(kRoot / folder)) {
    if (entry.is_regular_file() && is_code(entry.path())) files.push_back(entry.path());
  }
  EXPECT_GT(files.size(), 2U) << "the walk over " << folder << " found nothing to check";
  return files;
}

/// Folder of core -> folders it may include, besides itself.
const std::map<std::string, std::set<std::string>> kMayInclude = [] {
  std::map<std::string, std::set<std::string>> may;
  // The folders of calculation build up one way ...
  const std::vector<std::string> ladder = {"base",   "units", "model",   "measure",
                                           "sample", "stand", "release", "handoff"};
  for (std::size_t i = 0; i < ladder.size(); ++i) {
    may[ladder[i]].insert(ladder.begin(), ladder.begin() + static_cast<std::ptrdiff_t>(i));
  }
  // ... forms and place stand apart, and the edges are outside.
  may["forms"] = {"base", "units", "model"};
  may["place"] = {"base", "units", "model"};
  for (const char* user : {"release", "handoff"}) may[user].insert("place");
  may["store"] = {"base", "units", "model", "forms"};
  may["session"] = {"base",  "units",   "model",   "measure", "sample", "stand",
                    "place", "release", "handoff", "forms",   "store"};
  // One form drives the screen, the check of a CSV and the printed sheet: paper reads it too.
  may["paper"] = {"base",  "units",   "model", "measure", "sample",
                  "stand", "release", "place", "handoff", "forms"};
  may["command"] = may["session"];
  may["command"].insert({"session", "paper"});
  return may;
}();

std::vector<std::string> includes_of(const std::string& text) {
  static const std::regex kInclude("#include [<\"]([^>\"]+)[>\"]");
  std::vector<std::string> found;
  for (auto it = std::sregex_iterator(text.begin(), text.end(), kInclude);
       it != std::sregex_iterator(); ++it) {
    found.push_back((*it)[1]);
  }
  return found;
}

TEST(Layout, TopLevelHoldsOnlyWhatItIsMeantTo) {
  const std::set<std::string> allowed = {"CMakeLists.txt", "README.md", "DEVELOPERS.md",
                                         "mobile",         "core",      "schema",
                                         "tests",          "forms",     "demo_plots"};
  for (const auto& entry : fs::directory_iterator(kRoot)) {
    const std::string name = entry.path().filename().string();
    EXPECT_TRUE(name.starts_with('.') || allowed.count(name)) << name;
  }
}

TEST(Layout, CoreIncludesPointOneWay) {
  int checked = 0;
  for (const fs::path& file : code_under("core")) {
    const std::string folder = (*std::next(fs::relative(file, kRoot).begin())).string();
    ASSERT_TRUE(kMayInclude.count(folder)) << "a folder of core that no rule knows: " << folder;
    for (const std::string& include : includes_of(text_of(file))) {
      if (!include.starts_with("core/")) continue;
      ++checked;
      const std::string target = include.substr(5, include.find('/', 5) - 5);
      EXPECT_TRUE(target == folder || kMayInclude.at(folder).count(target))
          << file << " includes " << include;
    }
  }
  EXPECT_GT(checked, 50) << "the walk found too few includes to mean anything";
}

TEST(Layout, QtEntersCoreOnlyInPaper) {
  for (const fs::path& file : code_under("core")) {
    if (file.string().find("/core/paper/") != std::string::npos) continue;
    for (const std::string& include : includes_of(text_of(file))) {
      EXPECT_FALSE(std::regex_match(include, std::regex("Q[A-Z].*|Qt[A-Z].*")))
          << file << " includes " << include;
    }
  }
}

TEST(Layout, PaperUsesNoQtBeyondCoreAndGui) {
  const std::set<std::string> gone = {"QWidget", "QQuickItem", "QPrinter", "QSqlDatabase",
                                      "QNetworkAccessManager"};
  for (const fs::path& file : code_under("core/paper")) {
    for (const std::string& include : includes_of(text_of(file))) {
      EXPECT_FALSE(gone.count(include)) << file << " includes " << include;
    }
  }
}

TEST(Layout, HeadersOfCoreShowNoLibraryOfOthers) {
  for (const fs::path& file : code_under("core")) {
    if (file.extension() != ".hpp" || file.string().find("/core/paper/") != std::string::npos)
      continue;
    for (const std::string& include : includes_of(text_of(file))) {
      const bool ours = include.starts_with("core/");
      const bool standard =
          include.find('/') == std::string::npos && include.find('.') == std::string::npos;
      // The command is the outermost layer: nothing includes its headers but the command itself.
      const bool of_command = (include == "CLI/CLI.hpp" || include == "nlohmann/json.hpp") &&
                              file.string().find("/core/command/") != std::string::npos;
      EXPECT_TRUE(ours || standard || of_command) << file << " includes " << include;
    }
  }
}

TEST(Layout, SqlLivesInSchemaAndStore) {
  static const std::regex kSql("\"(SELECT|INSERT|UPDATE|DELETE|CREATE|PRAGMA) ");
  for (const fs::path& file : code_under("core")) {
    if (file.string().find("/core/store/") != std::string::npos) continue;
    EXPECT_FALSE(std::regex_search(text_of(file), kSql)) << file;
  }
}

TEST(Layout, NoRecordIsEverRemoved) {
  static const std::regex kDelete("DELETE\\s+FROM", std::regex::icase);
  for (const fs::path& file : code_under("core/store")) {
    EXPECT_FALSE(std::regex_search(text_of(file), kDelete)) << file;
  }
}

TEST(Layout, NumbersBecomeTextInOnePlaceOnly) {
  static const std::regex kLocaleBound(
      "std::stod|std::stof|std::atof|strtod|setprecision|std::stoi");
  for (const fs::path& file : code_under("core")) {
    EXPECT_FALSE(std::regex_search(text_of(file), kLocaleBound)) << file;
  }
}

TEST(Layout, FilesStaySmallEnoughToKnow) {
  for (const char* folder : {"core", "tests"}) {
    for (const fs::path& file : code_under(folder)) {
      const std::string text = text_of(file);
      EXPECT_LE(std::count(text.begin(), text.end(), '\n'), 500) << file;
    }
  }
}

}  // namespace
