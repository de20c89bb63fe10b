#include "core/release/prescription.hpp"

#include <gtest/gtest.h>

#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

/// A plot of 1/10 acre: "cut" trees go, "crop" trees are released.
DecidedPlot plot(std::string_view text) {
  DecidedPlot plot{Acres{0.1}, {}, {}};
  if (text.empty()) return plot;
  for (const test::ShortTree& tree : test::trees(text)) {
    TreeVerdict verdict;
    verdict.verdict = Verdict::keep;
    for (const std::string& word : tree.words) {
      if (word == "cut") verdict.verdict = Verdict::take;
      if (word == "crop") verdict.released = true;
    }
    plot.trees.push_back(tree.facts);
    plot.verdicts.push_back(verdict);
  }
  return plot;
}

Result<Prescription> of(const std::vector<DecidedPlot>& plots) {
  return prescription(plots, test::shipped_knowledge(), Confidence{});
}

TEST(Prescription, IsWorkedByHand) {
  const auto p = of({plot("WO 14 co crop, RM 10 co cut, RM 10 co cut, RO 12 co"),
                     plot("WO 16 co crop, WO 14 co crop, RM 10 co cut"), plot("")});
  ASSERT_TRUE(p);
  EXPECT_EQ(p->plots, 3);
  // Derived: 10, 20 and 0 crop trees an acre; the empty plot counts as 0.
  EXPECT_NEAR(p->crop_trees.mean.value, 10.0, 1e-12);
  EXPECT_NEAR(p->removals.mean.value, 10.0, 1e-12);  // 20, 10, 0
  // Standard deviation 10, error 10 / sqrt 3; Student t of 2 degrees of freedom 4.3027 (NIST).
  ASSERT_TRUE(p->crop_trees.half_width);
  EXPECT_NEAR(p->crop_trees.half_width->value, 4.3027 * 10.0 / std::sqrt(3.0), 5e-3);
  // One 10-inch maple has 0.5454 ft2 (pi / 576 of the squared DBH), here 3 on 0.3 acre.
  EXPECT_NEAR(p->ba_before.mean.value - p->ba_after.mean.value, 5.454, 5e-4);
  EXPECT_GT(p->stocking_before.mean, p->stocking_after.mean);
  ASSERT_EQ(p->lines.size(), 1U);
  EXPECT_EQ(p->lines[0].species, SpeciesCode{316});
  EXPECT_NEAR(p->lines[0].trees.mean.value, 10.0, 1e-12);
  EXPECT_EQ(p->lines[0].product, Product::firewood);
}

TEST(Prescription, OnePlotTellsNoErrorAndNoneIsRefused) {
  const auto one = of({plot("WO 14 co crop, RM 10 co cut")});
  ASSERT_TRUE(one);
  EXPECT_FALSE(one->crop_trees.half_width);
  EXPECT_EQ(one->crop_trees.trust, Trust::one_plot);
  const auto none = of({});
  ASSERT_FALSE(none);
  EXPECT_EQ(none.error().code, ErrorCode::too_few_plots);
}

TEST(Prescription, LinesArePartedBySpeciesClassAndProduct) {
  const auto p =
      of({plot("RM 10 co cut, RM 6.9 co cut, RM 5.0 co cut, YP 18 co cut"), plot("RM 4.9 co cut")});
  ASSERT_TRUE(p);
  double sum = 0.0;
  for (const RemovalLine& line : p->lines) sum += line.trees.mean.value;
  EXPECT_NEAR(sum, p->removals.mean.value, 1e-12);
  // 6.9 and 5.0 in are of one class of two inches (practice standard 666, rule R8.09), but a
  // firewood cutter takes nothing under 6 in: two products, two lines.
  EXPECT_EQ(p->lines.size(), 5U);
}

}  // namespace
}  // namespace oaklight
