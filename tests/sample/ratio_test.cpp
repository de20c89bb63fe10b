#include "core/sample/ratio.hpp"

#include <gtest/gtest.h>

#include <vector>

#include "core/measure/basal_area.hpp"

namespace oaklight {
namespace {

const std::vector<double> kTrees{100, 150, 0, 80, 120};
const std::vector<double> kBa{60, 110, 0, 70, 90};

PairedStratum pairs(const std::vector<double>& x, const std::vector<double>& y, int plots,
                    double size = 1.0) {
  return {.size = size, .plots = plots, .x = x, .y = y};
}

TEST(Ratio, IsThatOfTheSumsAndNotTheMeanOfRatios) {
  const auto r = ratio_of_sums(std::vector{pairs(kTrees, kBa, 5)}).value();
  EXPECT_DOUBLE_EQ(r.ratio, 330.0 / 450.0);
}

TEST(Ratio, CountsPlotsThatHoldNeitherValue) {
  const std::vector<double> trees{100, 150, 80, 120};
  const std::vector<double> ba{60, 110, 70, 90};
  const auto dense = ratio_of_sums(std::vector{pairs(kTrees, kBa, 5)}).value();
  const auto sparse = ratio_of_sums(std::vector{pairs(trees, ba, 5)}).value();
  EXPECT_DOUBLE_EQ(sparse.ratio, dense.ratio);
  EXPECT_NEAR(*sparse.se, *dense.se, 1e-15);
  EXPECT_DOUBLE_EQ(sparse.x_mean, 90.0);
}

TEST(Ratio, IsCombinedOverStandsByAcres) {
  const std::vector<double> x{10, 20, 30};
  const std::vector<double> y{30, 40, 80};
  const auto r =
      ratio_of_sums(std::vector{pairs(kTrees, kBa, 5, 25.0), pairs(x, y, 3, 75.0)}).value();
  EXPECT_DOUBLE_EQ(r.ratio, (0.25 * 66.0 + 0.75 * 50.0) / (0.25 * 90.0 + 0.75 * 20.0));
}

TEST(Ratio, OfProportionalValuesHasNoError) {
  // By hand: each y is twice its x.
  const std::vector<double> y{200, 300, 0, 160, 240};
  const auto r = ratio_of_sums(std::vector{pairs(kTrees, y, 5)}).value();
  EXPECT_DOUBLE_EQ(r.ratio, 2.0);
  EXPECT_NEAR(*r.se, 0.0, 1e-15);
}

TEST(Ratio, OfASinglePlotIsTheRatioAlone) {
  const std::vector<double> one{5.0};
  const auto r = ratio_of_sums(std::vector{pairs(one, one, 1)}).value();
  EXPECT_DOUBLE_EQ(r.ratio, 1.0);
  EXPECT_FALSE(r.se);
}

TEST(Ratio, RefusesWhatHasNoRatio) {
  const std::vector<double> none{0, 0, 0};
  EXPECT_EQ(ratio_of_sums(std::vector{pairs(none, none, 3)}).error().code, ErrorCode::no_data);
  EXPECT_EQ(ratio_of_sums({}).error().code, ErrorCode::no_data);
  EXPECT_EQ(ratio_of_sums(std::vector{pairs(kTrees, none, 5)}).error().code,
            ErrorCode::missing_value);
  EXPECT_EQ(ratio_of_sums(std::vector{pairs(kTrees, kBa, 4)}).error().code,
            ErrorCode::too_few_plots);
}

TEST(MeanDiameter, ComesFromTheMeansAndNotFromThePlots) {
  const auto d = mean_diameter(std::vector{pairs(kTrees, kBa, 5)}).value();
  EXPECT_DOUBLE_EQ(d.qmd.value,
                   quadratic_mean_diameter(SquareFeetPerAcre{66.0}, TreesPerAcre{90.0}).value);
  // By hand: the ratio is 330 / 450, the residuals -13.33, 0, 0, 11.33 and 2 have a variance of
  // 77.56, so that its error is sqrt(77.56 / 5) / 90 = 0.04376, 5.967 % of it; half of that
  // of 11.60.
  EXPECT_NEAR(d.se->value, 0.3460, 5e-5);
}

TEST(MeanDiameter, OfTreesOfOneSizeIsThatSize) {
  std::vector<double> ba;
  for (const double n : kTrees) ba.push_back(n * basal_area(Inches{12.0}).value);
  const auto d = mean_diameter(std::vector{pairs(kTrees, ba, 5)}).value();
  EXPECT_NEAR(d.qmd.value, 12.0, 1e-12);
  EXPECT_NEAR(d.se->value, 0.0, 1e-12);
}

}  // namespace
}  // namespace oaklight
