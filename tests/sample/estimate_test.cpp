#include "core/sample/estimate.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <vector>

namespace oaklight {
namespace {

Estimate<double> mean(const std::vector<double>& plots) {
  return mean_of(plots, Confidence{}).value();
}

TEST(Moments, CountPlotsOnWhichNothingWasFoundAsZero) {
  // By hand: (30 + 10) / 5.
  const auto sparse = moments_of(std::vector{30.0, 10.0}, 5).value();
  const auto full = moments_of(std::vector{0.0, 30.0, 0.0, 0.0, 10.0}, 5).value();
  EXPECT_DOUBLE_EQ(sparse.mean, 8.0);
  EXPECT_DOUBLE_EQ(sparse.mean, full.mean);
  EXPECT_DOUBLE_EQ(sparse.squares, full.squares);
  EXPECT_EQ(sparse.found, 2);
  EXPECT_EQ(full.found, 2);
}

TEST(Moments, KeepTheirDigitsFarFromZero) {
  // Sums of squares would lose all 8 digits here: squares are 1e16, their differences 1.
  const auto m = moments_of(std::vector{1e8 + 1.0, 1e8 + 2.0, 1e8 + 3.0}, 3).value();
  EXPECT_DOUBLE_EQ(*m.variance(), 1.0);
}

TEST(Moments, RefuseWhatIsNoSample) {
  EXPECT_EQ(moments_of({}, 0).error().code, ErrorCode::too_few_plots);
  EXPECT_EQ(moments_of(std::vector{1.0, 2.0}, 1).error().code, ErrorCode::too_few_plots);
  for (const double bad :
       {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    EXPECT_EQ(moments_of(std::vector{1.0, bad}, 4).error().code, ErrorCode::not_a_number);
  }
}

TEST(Estimate, OfOnePlotIsAMeanWithoutAnError) {
  const auto e = mean({70.0});
  EXPECT_EQ(e.mean, 70.0);
  EXPECT_EQ(e.trust, Trust::one_plot);
  for (const auto& part : {e.sd, e.se, e.df, e.half_width, e.lo, e.hi}) EXPECT_FALSE(part);
  for (const auto& part : {e.cv, e.se_pct, e.half_pct, e.on_at_most}) EXPECT_FALSE(part);
}

TEST(Estimate, OfTwoPlotsIsShownWithAWarning) {
  const auto e = mean({60.0, 80.0});
  EXPECT_EQ(e.trust, Trust::two_plots);
  EXPECT_EQ(*e.df, 1.0);
  EXPECT_NEAR(*e.half_width, 127.062, 5e-4);  // By hand: t 12.7062 (tests/published) x 10
}

TEST(Estimate, IsFlaggedWhenFoundOnFewPlots) {
  EXPECT_EQ(mean({0, 0, 0, 0, 0, 0, 10, 10, 10, 10}).trust, Trust::few_found);
  EXPECT_EQ(mean({0, 0, 0, 0, 0, 10, 10, 10, 10, 10}).trust, Trust::fair);
}

TEST(Estimate, ShowsNoLowerLimitBelowZeroButTheWholeHalfWidth) {
  const auto e = mean({0.0, 0.0, 60.0, 0.0});
  EXPECT_EQ(*e.lo, 0.0);
  EXPECT_GT(*e.half_width, e.mean);
  EXPECT_DOUBLE_EQ(*e.hi, e.mean + *e.half_width);
  EXPECT_GT(e.half_pct->value, 100.0);
}

TEST(Estimate, OfWhatWasNotFoundClaimsNoCertainty) {
  const auto e = mean(std::vector<double>(15, 0.0));
  EXPECT_EQ(e.mean, 0.0);
  EXPECT_EQ(e.trust, Trust::not_found);
  EXPECT_FALSE(e.se) << "an error of 0 would say that there is none for certain";
  EXPECT_FALSE(e.cv);
  EXPECT_FALSE(e.se_pct);
  EXPECT_NEAR(e.on_at_most->value, 18.1, 0.05);  // By hand: 1 - 0.05^(1/15)
}

TEST(Estimate, OfAZeroPlotDoesNotHideIt) {
  // By hand: (50 + 70 + 0) / 3.
  const auto with = mean({50.0, 70.0, 0.0});
  EXPECT_DOUBLE_EQ(with.mean, 40.0);
  EXPECT_EQ(with.plots, 3);
  EXPECT_EQ(with.found, 2);
}

TEST(Estimate, CorrectsForSamplingWithoutReturnOnlyWhenAsked) {
  const std::vector<double> plots{10, 20, 30, 40, 50};
  const auto plain = mean(plots);
  const auto corrected = mean_of(plots, Confidence{}, 20.0).value();
  EXPECT_DOUBLE_EQ(*corrected.se, *plain.se * std::sqrt(1.0 - 5.0 / 20.0));
  EXPECT_EQ(*mean_of(plots, Confidence{}, 5.0).value().se, 0.0) << "the whole stand was measured";
}

TEST(Estimate, IsTheSameInAnyOrderOfPlots) {
  std::vector<double> plots{12.5, 0.0, 88.25, 40.0, 7.75, 0.0, 31.0};
  const auto first = mean(plots);
  std::ranges::sort(plots);
  do {
    const auto again = mean(plots);
    ASSERT_NEAR(again.mean, first.mean, 1e-12);
    ASSERT_NEAR(*again.se, *first.se, 1e-12);
    ASSERT_EQ(again.found, first.found);
  } while (std::ranges::next_permutation(plots).found);
}

TEST(Estimate, FallsWhenAnEmptyPlotIsAdded) {
  std::vector<double> plots{40.0, 60.0, 20.0, 80.0};
  double last = mean(plots).mean;
  for (int i = 0; i < 20; ++i) {
    plots.push_back(0.0);
    const double now = mean(plots).mean;
    ASSERT_LT(now, last);
    ASSERT_NEAR(now, 200.0 / static_cast<double>(plots.size()), 1e-12);
    last = now;
  }
}

TEST(Estimate, OfEachPlotTwiceClaimsTheErrorThatThatFormulaGives) {
  // Derived: squares double, so se^2 goes from S / (n (n-1)) to 2 S / (2n (2n-1)).
  const std::vector<double> once{40.0, 60.0, 20.0, 80.0, 0.0};
  std::vector<double> twice = once;
  twice.insert(twice.end(), once.begin(), once.end());
  EXPECT_DOUBLE_EQ(mean(twice).mean, mean(once).mean);
  EXPECT_NEAR(*mean(twice).se / *mean(once).se, std::sqrt(4.0 / 9.0), 1e-12);
}

TEST(Estimate, MovesAndStretchesWithItsUnit) {
  const std::vector<double> plots{40.0, 60.0, 20.0, 80.0, 0.0};
  std::vector<double> tenfold = plots;
  for (double& x : tenfold) x *= 10.0;
  EXPECT_NEAR(mean(tenfold).mean, 10.0 * mean(plots).mean, 1e-9);
  EXPECT_NEAR(*mean(tenfold).se, 10.0 * *mean(plots).se, 1e-9);
  EXPECT_NEAR(mean(tenfold).cv->value, mean(plots).cv->value, 1e-9);
}

TEST(Total, IsTheMeanTimesTheAcresAndSoIsItsError) {
  const auto per_acre = with_unit<SquareFeetPerAcre>(mean({40.0, 60.0, 20.0, 80.0}));
  const Estimate<SquareFeet> total = total_of(per_acre, Acres{42.0});
  EXPECT_DOUBLE_EQ(total.mean.value, 42.0 * 50.0);
  EXPECT_DOUBLE_EQ(total.se->value, 42.0 * per_acre.se->value);
  EXPECT_DOUBLE_EQ(total.lo->value, 42.0 * per_acre.lo->value);
  EXPECT_EQ(total.cv, per_acre.cv);
  EXPECT_EQ(total.plots, 4);
}

}  // namespace
}  // namespace oaklight
