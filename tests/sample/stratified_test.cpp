#include "core/sample/stratified.hpp"

#include <gtest/gtest.h>

#include <vector>

namespace oaklight {
namespace {

Stratum stratum(double acres, const std::vector<double>& plots) {
  return {acres, moments_of(plots, static_cast<int>(plots.size())).value(), std::nullopt};
}

Estimate<double> over(const std::vector<Stratum>& strata) {
  return stratified_mean(strata, Confidence{}).value();
}

const std::vector<double> kRich{90, 110, 130, 70, 100};
const std::vector<double> kPoor{20, 0, 40, 30};

TEST(StratifiedMean, WeighsStandsByAcresAndNotByPlots) {
  const auto e = over({stratum(30, kRich), stratum(70, kPoor)});
  EXPECT_DOUBLE_EQ(e.mean, 0.3 * 100.0 + 0.7 * 22.5);
  EXPECT_EQ(e.plots, 9);
  EXPECT_NE(e.mean, (500.0 + 90.0) / 9.0) << "that is the mean of the pooled plots";
  EXPECT_FALSE(e.sd) << "plots of different stands have no common spread";
}

TEST(StratifiedMean, DoesNotMoveWhenOneStandIsSampledHarder) {
  std::vector<double> twice = kPoor;
  twice.insert(twice.end(), kPoor.begin(), kPoor.end());
  EXPECT_DOUBLE_EQ(over({stratum(30, kRich), stratum(70, twice)}).mean,
                   over({stratum(30, kRich), stratum(70, kPoor)}).mean);
}

TEST(StratifiedMean, KeepsItsMeanWhenAllAcresAreScaled) {
  const auto one = over({stratum(30, kRich), stratum(70, kPoor)});
  const auto ten = over({stratum(300, kRich), stratum(700, kPoor)});
  EXPECT_DOUBLE_EQ(ten.mean, one.mean);
  EXPECT_DOUBLE_EQ(*ten.se, *one.se);
  EXPECT_NEAR(*ten.df, *one.df, 1e-9);
}

TEST(StratifiedMean, OfOneStandIsTheMeanOfThatStand) {
  const auto alone = over({stratum(30, kRich)});
  const auto plain = mean_of(kRich, Confidence{}).value();
  EXPECT_EQ(alone.mean, plain.mean);
  EXPECT_EQ(*alone.se, *plain.se);
  EXPECT_EQ(*alone.df, *plain.df);
}

TEST(StratifiedMean, HasDegreesOfFreedomBetweenTheSmallestStandAndAllPlots) {
  for (const double acres : {0.001, 1.0, 50.0, 1000.0, 1e9}) {
    const auto e = over({stratum(acres, kRich), stratum(50, kPoor)});
    EXPECT_LE(*e.df, 9 - 2 + 1e-9) << acres;
    EXPECT_GE(*e.df, 3 - 1e-9) << acres;
  }
}

TEST(StratifiedMean, ShowsNoErrorWhenAStandHasASinglePlot) {
  const auto e = over({stratum(30, kRich), stratum(70, {25.0})});
  EXPECT_DOUBLE_EQ(e.mean, 0.3 * 100.0 + 0.7 * 25.0);
  EXPECT_EQ(e.trust, Trust::one_plot);
  EXPECT_FALSE(e.se);
  EXPECT_FALSE(e.lo);
}

TEST(StratifiedMean, OfWhatNoStandHoldsClaimsNoCertainty) {
  const auto e = over({stratum(30, {0, 0, 0}), stratum(70, {0, 0})});
  EXPECT_EQ(e.trust, Trust::not_found);
  EXPECT_FALSE(e.se);
}

TEST(StratifiedMean, FoundOnFivePlotsIsFairAndOnFourIsNot) {
  // common practice: kFairPlots, as for one stand.
  EXPECT_EQ(over({stratum(30, {10, 20, 30}), stratum(70, {20, 30, 0})}).trust, Trust::fair);
  EXPECT_EQ(over({stratum(30, {10, 20, 0}), stratum(70, {20, 30, 0})}).trust, Trust::few_found);
}

TEST(StratifiedMean, OfPlotsThatAllAgreeUsesAllDegreesOfFreedom) {
  const auto e = over({stratum(30, {50, 50, 50}), stratum(70, {50, 50, 50})});
  EXPECT_EQ(*e.se, 0.0);
  EXPECT_EQ(*e.df, 4.0);
}

TEST(StratifiedMean, RefusesAStandWithoutPlotsOrAcres) {
  const std::vector<Stratum> no_plots{stratum(30, kRich), Stratum{70, Moments{}, {}}};
  EXPECT_EQ(stratified_mean(no_plots, Confidence{}).error().code, ErrorCode::too_few_plots);
  for (const double acres : {0.0, -1.0, std::numeric_limits<double>::quiet_NaN()}) {
    const std::vector<Stratum> no_acres{stratum(30, kRich), stratum(acres, kPoor)};
    EXPECT_EQ(stratified_mean(no_acres, Confidence{}).error().code, ErrorCode::out_of_range);
  }
  EXPECT_EQ(stratified_mean({}, Confidence{}).error().code, ErrorCode::no_data);
  EXPECT_EQ(stratified_mean(std::vector{Stratum{1, Moments{}, {}}}, Confidence{}).error().code,
            ErrorCode::too_few_plots);
}

TEST(PostStratifiedMean, HasTheMeanOfTheStratifiedOneAndAnErrorOfItsOwn) {
  const std::vector strata{stratum(30, kRich), stratum(70, kPoor)};
  const auto p = post_stratified_mean(strata).value();
  EXPECT_DOUBLE_EQ(p.mean, over(strata).mean);
  EXPECT_GT(p.se, 0.0);
  EXPECT_EQ(post_stratified_mean(std::vector{stratum(30, kRich), stratum(70, {1.0})}).error().code,
            ErrorCode::too_few_plots);
}

}  // namespace
}  // namespace oaklight
