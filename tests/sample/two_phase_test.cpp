#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <vector>

#include "core/sample/count_measure.hpp"
#include "core/sample/difference.hpp"
#include "core/sample/estimate.hpp"

namespace oaklight {
namespace {

TEST(ProductError, IsTheRootOfTheSumOfSquares) {
  // By hand: 3, 4 and 5; the unbiased form takes off 0.3^2 x 0.4^2 / 100^2, next to nothing.
  EXPECT_DOUBLE_EQ(product_error(Percent{3.0}, Percent{4.0}).value, 5.0);
  EXPECT_LT(product_error_unbiased(Percent{30.0}, Percent{40.0}).value, 50.0);
  EXPECT_NEAR(product_error_unbiased(Percent{0.3}, Percent{0.4}).value, 0.5, 1e-5);
}

TEST(RatioDoubleSample, OfAllPointsMeasuredIsTheirPlainMean) {
  const std::vector<double> ba{60, 110, 0, 70, 90};
  const std::vector<double> volume{1500, 2900, 0, 1700, 2500};
  const auto d = ratio_double_sample(ba, ba, volume).value();
  const auto plain = mean_of(volume, Confidence{}).value();
  EXPECT_DOUBLE_EQ(d.mean, plain.mean);
  EXPECT_DOUBLE_EQ(d.se, *plain.se);
}

TEST(RatioDoubleSample, RefusesTooFewMeasuredPoints) {
  const std::vector<double> ba{60, 110};
  const std::vector<double> one{60};
  const std::vector<double> three{60, 1, 2};
  EXPECT_EQ(ratio_double_sample(ba, one, one).error().code, ErrorCode::too_few_plots);
  EXPECT_EQ(ratio_double_sample(ba, three, three).error().code, ErrorCode::too_few_plots);
  EXPECT_EQ(ratio_double_sample(three, ba, three).error().code, ErrorCode::missing_value);
  const std::vector<double> none{0, 0};
  EXPECT_EQ(ratio_double_sample(ba, none, none).error().code, ErrorCode::no_data);
}

TEST(Change, OfTheSamePlotsIsSurerThanOfNewOnes) {
  // By hand: 50 less 60; 25 + 16 - 2 x 15 = 11 and 25 + 16 = 41.
  const VisitMean before{1.0, 60.0, 25.0};
  const VisitMean after{1.0, 50.0, 16.0};
  const auto same = change_between(before, after, 15.0).value();
  const auto anew = change_between(before, after, 0.0).value();
  EXPECT_DOUBLE_EQ(same.mean, -10.0);
  EXPECT_DOUBLE_EQ(same.se, std::sqrt(11.0));
  EXPECT_DOUBLE_EQ(anew.se, std::sqrt(41.0));
}

TEST(Change, BringsBothVisitsToOneUnit) {
  // Derived: 12 trees on plots of a tenth of an acre are 120 an acre, their variance of 4 is 400;
  // the visit before was told by the acre. 120 - 100 is 20, 400 + 225 - 2 * 10 * 3 is 565.
  const VisitMean before{.mean = 100.0, .variance = 225.0};
  const VisitMean after{.scale = 10.0, .mean = 12.0, .variance = 4.0};
  const auto change = change_between(before, after, 3.0).value();
  EXPECT_DOUBLE_EQ(change.mean, 20.0);
  EXPECT_DOUBLE_EQ(change.se, std::sqrt(565.0));
}

TEST(Change, RefusesACovarianceThatCannotBe) {
  EXPECT_EQ(change_between({1.0, 60.0, 25.0}, {1.0, 50.0, 16.0}, 21.0).error().code,
            ErrorCode::contradiction);
  EXPECT_EQ(
      change_between({1.0, std::numeric_limits<double>::quiet_NaN(), 25.0}, {}, 0.0).error().code,
      ErrorCode::not_a_number);
}

}  // namespace
}  // namespace oaklight
