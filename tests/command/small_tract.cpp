#include "tests/command/small_tract.hpp"

#include <filesystem>

#include "tests/command/program.hpp"

namespace oaklight::test {

std::string small_tract(const TempDir& folder, const std::string& name, const CruiseTexts& texts) {
  const auto files = folder / name;
  std::filesystem::create_directories(files);
  write_bytes(files / "tract.csv", "name,state\nSmall wood (invented),OH\n");
  for (const auto& [file, text] : texts) write_bytes(files / file, text);
  const std::string tract = (folder / (name + ".gpkg")).string();
  const Ran imported = oaklight("import " + tract + " " + files.string());
  EXPECT_EQ(imported.exit_code, 0) << imported.errors;
  return tract;
}

std::string squeezed(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == ' ' && (out.empty() || out.back() == ' ' || out.back() == '\n')) continue;
    if (c == '\n' && !out.empty() && out.back() == ' ') out.pop_back();
    out += c;
  }
  return out;
}

testing::AssertionResult says(const std::string& text, const std::string& words) {
  if (squeezed(text).find(words) != std::string::npos) return testing::AssertionSuccess();
  return testing::AssertionFailure() << "\"" << words << "\" is not in:\n" << text;
}

}  // namespace oaklight::test
