#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "tests/published/published_row.hpp"
#include "tests/support/places.hpp"

namespace oaklight::test {
namespace {

const PublishedRows& published() {
  static const PublishedRows all = read_published(source_path("tests/published"));
  return all;
}

const Evaluators& evaluators() {
  static const Evaluators all = [] {
    Evaluators joined = mensuration_evaluators();
    for (const Evaluators& more : {sampling_evaluators(), place_evaluators()}) {
      for (const auto& [quantity, evaluator] : more) {
        EXPECT_TRUE(joined.emplace(quantity, evaluator).second) << "two of " << quantity;
      }
    }
    return joined;
  }();
  return all;
}

TEST(PublishedFiles, NameTheirSourcesAndFitTheirEvaluators) {
  expect_well_formed(published(), evaluators());
}

/// What read_published finds wrong with one file of this text.
std::vector<std::string> problems_of(const std::string& text) {
  const std::filesystem::path folder =
      std::filesystem::path(testing::TempDir()) /
      testing::UnitTest::GetInstance()->current_test_info()->name();
  std::filesystem::create_directories(folder);
  std::ofstream(folder / "rows.tsv") << text;
  auto problems = read_published(folder.string()).problems;
  std::filesystem::remove_all(folder);
  return problems;
}

TEST(PublishedFiles, AreRefusedWhenTheyCouldHideAMiss) {
  const std::string header = "id\tquantity\tinputs\twant\ttolerance\tunit\tsource\tstatus\n";
  const std::string good = "A1\tq\tx=1\t2\t0.5\tft\tsomebody\tretrieved\n";
  EXPECT_TRUE(problems_of(header + good).empty());
  EXPECT_EQ(problems_of(header).size(), 1U) << "no rows";
  EXPECT_EQ(problems_of(good).size(), 1U) << "no header";
  EXPECT_EQ(problems_of(header + good + good).size(), 1U) << "the same id twice";
  EXPECT_EQ(problems_of(header + good + "A2\tq\tx=1\t2\t0.5\tft\t\tretrieved\n").size(), 1U)
      << "no source";
  EXPECT_EQ(problems_of(header + good + "A2\tq\tx=1\t2\t0.5\tft\tsomebody\tskip\n").size(), 1U)
      << "unknown status";
  EXPECT_EQ(problems_of(header + good + "A2\tq\tx=1\t2\tnan\tft\tsomebody\tgap\n").size(), 1U)
      << "a tolerance that is not a number";
  EXPECT_EQ(problems_of(header + good + "A2\tq\tx\t2\t0.5\tft\tsomebody\tgap\n").size(), 1U)
      << "an input without a value";
}

class Published : public testing::TestWithParam<PublishedRow> {};

TEST_P(Published, Row) { run_row(GetParam(), evaluators(), "published"); }

INSTANTIATE_TEST_SUITE_P(Row, Published, testing::ValuesIn(published().rows), row_name);

}  // namespace
}  // namespace oaklight::test
