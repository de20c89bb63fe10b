// Every input that a fuzzer found worth keeping, fed again without a fuzzer: crashes stay tests.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <ostream>

#include "tests/fuzz/law.hpp"
#include "tests/fuzz/targets.hpp"
#include "tests/support/places.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {

void PrintTo(const Target& target, std::ostream* out) { *out << target.name; }

namespace {

namespace fs = std::filesystem;

std::vector<fs::path> inputs_of(const Target& target) {
  std::vector<fs::path> inputs;
  const fs::path folder = source_path("tests/fuzz/corpus/" + std::string(target.name));
  if (!fs::exists(folder)) return inputs;
  for (const auto& entry : fs::directory_iterator(folder)) inputs.push_back(entry.path());
  std::sort(inputs.begin(), inputs.end());
  return inputs;
}

class Replay : public testing::TestWithParam<Target> {};

TEST_P(Replay, NoKeptInputBreaksALaw) {
  const auto inputs = inputs_of(GetParam());
  ASSERT_FALSE(inputs.empty()) << "no corpus for " << GetParam().name;
  for (const fs::path& input : inputs) {
    SCOPED_TRACE(input.filename().string());
    EXPECT_NO_THROW(GetParam().run(bytes_of(input)));
  }
}

TEST_P(Replay, NorDoesAnyPartOfOne) {
  const auto inputs = inputs_of(GetParam());
  ASSERT_FALSE(inputs.empty()) << "no corpus for " << GetParam().name;
  const std::string whole = bytes_of(inputs.front());
  for (std::size_t i = 0; i < 16; ++i) {
    SCOPED_TRACE(i);
    EXPECT_NO_THROW(GetParam().run(std::string_view(whole).substr(0, whole.size() * i / 16)));
  }
}

INSTANTIATE_TEST_SUITE_P(All, Replay, testing::ValuesIn(kTargets),
                         [](const auto& target) { return std::string(target.param.name); });

TEST(Law, ABrokenOneIsFound) {
  EXPECT_THROW(require(false, "two is three"), Broken);
  EXPECT_THROW(require_told(Error{ErrorCode::bad_csv, "Wrong.", "a.csv:1", ""}), Broken);
  EXPECT_THROW(require_told(Error{ErrorCode::bad_csv, "Wrong \xFF", "a.csv:1", "Mend."}), Broken);
  EXPECT_NO_THROW(require_told(Error{ErrorCode::bad_csv, "Wrong.", "a.csv:1", "Mend it."}));
}

TEST(Law, ABundleIsTakenApart) {
  const auto files = files_of("@a.csv\nx,y\n1,2\n@b.csv\n\n");
  ASSERT_EQ(files.size(), 2U);
  EXPECT_EQ(files[0].name, "a.csv");
  EXPECT_EQ(files[0].text, "x,y\n1,2\n");
  EXPECT_EQ(files[1].text, "\n");
}

}  // namespace
}  // namespace oaklight::test
