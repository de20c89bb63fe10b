// The rows of tests/published by the core as WebAssembly. Without the sources of the libraries
// declinations are left out: they need GeographicLib.
#include <gtest/gtest.h>

#include "tests/published/published_row.hpp"
#include "tests/support/places.hpp"

namespace oaklight::test {
namespace {

const PublishedRows& published() {
#ifdef OAKLIGHT_WEB_WHOLE
  static const PublishedRows all = read_published(source_path("tests/published"));
#else
  static const PublishedRows all = read_published(source_path("tests/published"), {"magnetic.tsv"});
#endif
  return all;
}

const Evaluators& evaluators() {
  static const Evaluators all = [] {
    Evaluators joined = mensuration_evaluators();
    for (const auto& [quantity, evaluator] : sampling_evaluators()) {
      EXPECT_TRUE(joined.emplace(quantity, evaluator).second) << "two of " << quantity;
    }
#ifdef OAKLIGHT_WEB_WHOLE
    joined.merge(place_evaluators());
#endif
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
