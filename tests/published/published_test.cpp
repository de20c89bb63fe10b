#include <gtest/gtest.h>

#include <cctype>
#include <filesystem>
#include <fstream>
#include <set>

#include "tests/published/published_row.hpp"
#include "tests/support/places.hpp"

namespace oaklight::test {
namespace {

const PublishedRows& published() {
  static const PublishedRows all = read_published(source_path("tests/published"));
  return all;
}

const Evaluators& evaluators() {
  static const Evaluators all = all_evaluators();
  return all;
}

TEST(PublishedFiles, AreWellFormedAndNameTheirSources) {
  EXPECT_GT(published().rows.size(), 0U);
  for (const std::string& problem : published().problems) ADD_FAILURE() << problem;
}

TEST(PublishedFiles, HaveAnEvaluatorForEachQuantity) {
  for (const PublishedRow& row : published().rows) {
    EXPECT_TRUE(evaluators().contains(row.quantity)) << row;
  }
}

TEST(PublishedFiles, UseEachEvaluator) {
  std::set<std::string> used;
  for (const PublishedRow& row : published().rows) used.insert(row.quantity);
  for (const auto& [quantity, evaluator] : evaluators()) {
    EXPECT_TRUE(used.contains(quantity)) << "no row asks for " << quantity;
  }
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

/// One row of one file. A row marked gap is a value that we are known to miss: when it starts to
/// match, the test fails so that somebody promotes the row.
class Published : public testing::TestWithParam<PublishedRow> {};

TEST_P(Published, Row) {
  const PublishedRow& row = GetParam();
  const auto evaluator = evaluators().find(row.quantity);
  ASSERT_NE(evaluator, evaluators().end()) << row;
  const double got = evaluator->second(row.inputs);
  if (row.status == "gap") {
    EXPECT_GT(std::abs(got - row.want), row.tolerance) << "this gap has closed: " << row;
  } else {
    EXPECT_NEAR(got, row.want, row.tolerance) << row;
  }
}

std::string test_name(const testing::TestParamInfo<PublishedRow>& info) {
  std::string name = info.param.id;
  for (char& c : name) {
    if (std::isalnum(static_cast<unsigned char>(c)) == 0) c = '_';
  }
  return name;
}

INSTANTIATE_TEST_SUITE_P(Row, Published, testing::ValuesIn(published().rows), test_name);

}  // namespace
}  // namespace oaklight::test
