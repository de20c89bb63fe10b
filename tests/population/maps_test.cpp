// The rows of maps.tsv: what whole maps hold, and how plots on them spread.
#include <gtest/gtest.h>

#include "tests/population/map_evaluators.hpp"
#include "tests/population/stem_map.hpp"
#include "tests/published/published_row.hpp"
#include "tests/support/places.hpp"

namespace oaklight::test {
namespace {

const PublishedRows& rows() {
  static const PublishedRows all = read_published(source_path("tests/population"));
  return all;
}

const Evaluators& evaluators() {
  static const Evaluators all = map_evaluators();
  return all;
}

TEST(MapRows, NameTheirSourcesAndFitTheirEvaluators) { expect_well_formed(rows(), evaluators()); }

class Map : public testing::TestWithParam<PublishedRow> {};

TEST_P(Map, Row) {
  if (!maps_are_installed()) GTEST_SKIP() << "needs R with package spatstat.data";
  run_row(GetParam(), evaluators(), "maps");
}

INSTANTIATE_TEST_SUITE_P(Row, Map, testing::ValuesIn(rows().rows), row_name);

}  // namespace
}  // namespace oaklight::test
