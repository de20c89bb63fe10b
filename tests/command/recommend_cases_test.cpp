// A prescription from stem-mapped plots in words, the steps of a decision, and runs that write
// nothing. Invented trees.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/command/program.hpp"
#include "tests/command/small_tract.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

/// A tenth-acre plot: an oak of 14 in within so many maples of 9 in that touch it, and twelve oaks
/// of 10 in well off.
std::string mapped_plot(int plot, int maples) {
  const std::string on = "M," + std::to_string(plot) + ",";
  std::string rows = on + "white oak,14.0,codominant,1,75,0,1,45\n";
  for (int i = 0; i < maples; ++i) {
    rows += on + "red maple,9.0,codominant,,68," + std::to_string(i * 360 / maples) + ",14,40\n";
  }
  for (int i = 0; i < 12; ++i) {
    rows += on + (i % 2 == 0 ? "white oak" : "black oak") + ",10.0,codominant,,66," +
            std::to_string(10 + 30 * i) + ",32,40\n";
  }
  return rows;
}

const CruiseTexts kMapped = {
    {"stands.csv", "stand,acres\nM,10\n"},
    {"plots.csv",
     "cruise,stand,plot,status,plot_ac,lat,lon\n"
     "F,M,1,measured,0.1,39.350,-82.21\nF,M,2,measured,0.1,39.351,-82.21\n"},
    {"trees.csv",
     "stand,plot,species,dbh_in,crown_class,logs,height_ft,azimuth_deg,distance_ft,"
     "live_crown_pct\n" +
         mapped_plot(1, 2) + mapped_plot(2, 4)},
};

TEST(RecommendCases, APrescriptionInWords) {
  const TempDir folder;
  const std::string tract = small_tract(folder, "mapped", kMapped);
  const Ran run = oaklight("recommend --plots " + tract);
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  EXPECT_TRUE(says(run.out, "\n1 15 2 4 0 release\n"));
  EXPECT_TRUE(says(run.out, "\n2 17 1 4 0 release\n"));
  EXPECT_TRUE(says(run.out, "\nM, an acre:\n"));
  // By hand: 2 and 1 crop trees on tenths of an acre are 20 and 10 an acre: mean 15, SE 5, and t of
  // one degree is 12.706: 63.5 less and more, and never less than none. Four go on either plot.
  EXPECT_TRUE(says(run.out, "\ncrop trees released [trees] 15.0 0.0 to 78.5 trees\n"));
  EXPECT_TRUE(says(run.out, "\ntrees removed [trees] 40.0 40.0 to 40.0 trees\n"));
  // By hand: 2 and 4 maples are 30 an acre, SE 10, of 0.442 ft2 each; 2 and 0 black oaks are 10 an
  // acre of 0.545 ft2.
  EXPECT_TRUE(says(run.out, "\nred maple 10 firewood 30.0 0.0 to 157.1 13.3\n"));
  EXPECT_TRUE(says(run.out, "\nblack oak 10 firewood 10.0 0.0 to 137.1 5.5\n"));
  // By hand: an oak of 14 in and twelve of 10 in are 1.069 + 6.545 = 7.614 ft2, 76.1 an acre, and
  // the maples are 13.3.
  EXPECT_TRUE(says(run.out, "\nbasal area before [basal_area] 89.4 "));
  EXPECT_TRUE(says(run.out, "\nbasal area after [basal_area] 70.7 "));
  EXPECT_TRUE(says(run.out, "2 plots, empty ones included; intervals [interval]\n"));
  EXPECT_TRUE(says(run.out, "never which trees to cut."));
  EXPECT_TRUE(says(run.out, "Nothing was written.\n"));
}

TEST(RecommendCases, WhatNothingWasFoundOfHasNoInterval) {
  CruiseTexts texts = kMapped;
  texts["trees.csv"] =
      "stand,plot,species,dbh_in,azimuth_deg,distance_ft\n"
      "M,1,white oak,10.0,0,1\nM,2,white oak,10.0,0,1\n";
  const TempDir folder;
  const std::string tract = small_tract(folder, "open", texts);
  const Ran run = oaklight("recommend --plots " + tract);
  EXPECT_TRUE(says(run.out, "\n1 1 0 0 0 wait\n"));
  EXPECT_TRUE(says(run.out, "\ntrees removed [trees] 0.0 not known trees\n"));
  EXPECT_EQ(run.out.find("product"), std::string::npos) << "no table of nothing";
  const Json told = Json::parse(oaklight("recommend --plots --json " + tract).out);
  const Json& removals = told.at("stands").at(0).at("prescription").at("removals_ac");
  EXPECT_TRUE(removals.at("lo").is_null());
  EXPECT_TRUE(removals.at("hi").is_null());
}

TEST(RecommendCases, StepsSayWhatWasDecidedAndADryRunWritesNothing) {
  const DemoTract demo;
  const std::string before = bytes_of(demo.tract);
  const Ran dry = oaklight("recommend --steps --dry-run " + demo.tract);
  ASSERT_EQ(dry.exit_code, 0) << dry.errors;
  for (const char* words :
       {"\nright job\n", "\nkeep list\n", "\ncrop trees\n", "white oak 101: fit, worth ",
        "white oak 108: not fit, because its live crown is too short",
        "Nothing was written (--dry-run).\n"}) {
    EXPECT_TRUE(says(dry.out, words));
  }
  EXPECT_EQ(bytes_of(demo.tract), before);
  EXPECT_EQ(oaklight("recommend " + demo.tract + " --dry-run").out.find("worth "),
            std::string::npos);
  // The same marks again are none to write.
  EXPECT_TRUE(
      says(oaklight("recommend " + demo.tract).out, "\n0 marks written to " + demo.tract + ".\n"));
}

TEST(RecommendCases, WithoutAWalkThereIsNothingToDecide) {
  const TempDir folder;
  const std::string tract = small_tract(folder, "mapped", kMapped);
  const Ran run = oaklight("recommend " + tract);
  EXPECT_EQ(run.exit_code, 4) << run.out << run.errors;
}

}  // namespace
}  // namespace oaklight::test
