// The rows of tests/published by the core as WebAssembly. Declinations are left out: GeographicLib
// has no build for it.
#include <gtest/gtest.h>

#include "tests/published/published_row.hpp"
#include "tests/support/places.hpp"

namespace oaklight::test {
namespace {

const PublishedRows& published() {
  static const PublishedRows all = read_published(source_path("tests/published"), {"magnetic.tsv"});
  return all;
}

const Evaluators& evaluators() {
  static const Evaluators all = [] {
    Evaluators joined = mensuration_evaluators();
    for (const auto& [quantity, evaluator] : sampling_evaluators()) {
      EXPECT_TRUE(joined.emplace(quantity, evaluator).second) << "two of " << quantity;
    }
    return joined;
  }();
  return all;
}

TEST(PublishedFiles, FitTheirEvaluatorsHereToo) { expect_well_formed(published(), evaluators()); }

class Published : public testing::TestWithParam<PublishedRow> {};

TEST_P(Published, Row) { run_row(GetParam(), evaluators(), "published"); }

INSTANTIATE_TEST_SUITE_P(Row, Published, testing::ValuesIn(published().rows), row_name);

}  // namespace
}  // namespace oaklight::test
