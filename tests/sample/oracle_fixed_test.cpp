// The invented fixed plots of tests/golden/oracle against the results of R's survey package: every
// number that is printed there is either met, or named below with the reason why we do not give it.

#include <gtest/gtest.h>

#include <cmath>
#include <string>

#include "core/measure/basal_area.hpp"
#include "core/sample/cruise_estimate.hpp"
#include "tests/sample/ledger.hpp"
#include "tests/support/oracle_figures.hpp"

namespace oaklight {
namespace {

using test::Ledger;

TEST(OracleFixed, MeetsEveryExpectedNumber) {
  const auto oracle = test::read_oracle_fixed();
  const auto e = cruise_estimate(oracle.data, test::test_species(), EstimateOptions{}).value();
  const auto samples = test::samples_of(oracle.data);
  const auto small = [](const TreeFacts& t) { return !test::is_large(t); };
  Ledger ledger("expected_fixed.json");
  test::expect_mean(ledger, "/ba", e.all->live.ba);
  test::expect_mean(ledger, "/tpa", e.all->live.trees);
  const auto ba_large = test::figure_of(samples, test::is_large, test::ba_of);
  const auto tpa_large = test::figure_of(samples, test::is_large, test::trees_of);
  test::expect_mean(ledger, "/ba_large", ba_large);
  test::expect_mean(ledger, "/tpa_large", tpa_large);
  test::expect_mean(ledger, "/tpa_small", test::figure_of(samples, small, test::trees_of));
  ledger.expect("/qmd_large_in", quadratic_mean_diameter(SquareFeetPerAcre{ba_large.mean},
                                                         TreesPerAcre{tpa_large.mean})
                                     .value);
  EstimateOptions corrected;
  corrected.finite_population = true;
  const double population = *plots_to_tile(samples[0], false);
  ledger.expect("/ba_large_with_fpc/N_plots", population);
  ledger.expect("/ba_large_with_fpc/n", static_cast<double>(ba_large.plots));
  ledger.expect("/ba_large_with_fpc/factor", finite_correction(ba_large.plots, population));
  ledger.expect("/ba_large_with_fpc/se",
                test::figure_of(samples, test::is_large, test::ba_of, corrected).se);
  for (const char* key :
       {"n", "mean", "sd", "cv_pct", "se", "se_pct", "df", "t", "lo", "hi", "half_pct"}) {
    ledger.leave_out(std::string("/zero_plot_dropped_wrong/") + key,
                     "an empty plot left out: a trap, tested below");
  }
  ledger.fail_on_numbers_not_asked_for();
}

TEST(OracleFixed, CorrectsTreesOfTheSmallPlotByThatPlot) {
  // Derived: 3,000 small plots tile the 30 acres, so the correction is all but nothing.
  const auto oracle = test::read_oracle_fixed();
  const auto samples = test::samples_of(oracle.data);
  EstimateOptions corrected;
  corrected.finite_population = true;
  for (const test::Pick& pick :
       {test::Pick(test::any_tree), test::Pick([](const auto& t) { return !test::is_large(t); })}) {
    const auto plain = test::figure_of(samples, pick, test::trees_of);
    const auto less = test::figure_of(samples, pick, test::trees_of, corrected);
    EXPECT_NEAR(*less.se / *plain.se, std::sqrt(1.0 - 10.0 / 3000.0), 1e-12);
  }
}

TEST(OracleFixed, NeverLeavesOutAnEmptyPlot) {
  const auto oracle = test::read_oracle_fixed();
  const double wrong =
      Ledger("expected_fixed.json").at("/zero_plot_dropped_wrong/mean").get<double>();
  ASSERT_NEAR(wrong, 82.738, 5e-4);
  const auto samples = test::samples_of(oracle.data);
  EXPECT_EQ(samples[0].plots.size(), 10U);
  const auto large = test::figure_of(samples, test::is_large, test::ba_of);
  EXPECT_EQ(large.plots, 10);
  EXPECT_EQ(large.found, 9);
  EXPECT_NEAR(large.mean * 10.0 / 9.0, wrong, 1e-9) << "the same trees over nine plots";
  EXPECT_GT(std::abs(large.mean - wrong), 8.0);
}

}  // namespace
}  // namespace oaklight
