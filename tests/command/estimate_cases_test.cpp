// An estimate where little can be said: one point, points that were only counted, a stand without a
// tree, one that nobody visited. A tract of a few invented trees.
#include <gtest/gtest.h>

#include <memory>
#include <nlohmann/json.hpp>

#include "tests/command/program.hpp"
#include "tests/command/small_tract.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

/// Points of 10 ft2 a tree. In Two every other point was only counted.
const CruiseTexts kFew = {
    {"stands.csv", "stand,acres\nOne,10\nTwo,20\nBare,40\n"},
    {"plots.csv",
     "cruise,stand,plot,status,baf_ft2_ac,task\n"
     "A,One,1,measured,10,\nA,Two,1,measured,10,measure\nA,Two,2,measured,10,count\n"
     "A,Two,3,measured,10,measure\nA,Two,4,measured,10,count\n"
     "A,Bare,1,empty,10,\nA,Bare,2,empty,10,\n"},
    {"trees.csv",
     "stand,plot,species,dbh_in,stems,logs,height_ft\n"
     "One,1,white oak,12.0,2,1,70\nTwo,1,white oak,12.0,1,1,70\nTwo,1,red maple,14.0,2,,70\n"
     "Two,2,white oak,,2,,\nTwo,3,white oak,16.0,1,1.5,80\nTwo,4,white oak,,1,,\n"},
};

/// The part of a text about one stand.
std::string part_of(const std::string& text, const std::string& stand) {
  const auto at = text.find(stand + ": ");
  return at == std::string::npos ? "" : text.substr(at, text.find("\n\n", at) - at);
}

class FewPoints : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    folder_ = std::make_unique<TempDir>();
    tract_ = small_tract(*folder_, "few", kFew);
  }
  static void TearDownTestSuite() { folder_.reset(); }
  static std::string text(const std::string& more = "") {
    const Ran run = oaklight("estimate " + tract_ + " " + more);
    EXPECT_EQ(run.exit_code, 0) << run.errors;
    return run.out;
  }
  static std::unique_ptr<TempDir> folder_;
  static std::string tract_;
};
std::unique_ptr<TempDir> FewPoints::folder_;
std::string FewPoints::tract_;

TEST_F(FewPoints, EachStandSaysWhatItsErrorIsWorth) {
  const std::string all = text();
  const std::string one = part_of(all, "One");
  EXPECT_TRUE(
      says(one, "basal area, ft2 20.0 - - - - - [basal_area] one plot: no error can be told"));
  EXPECT_TRUE(says(one, "a stand has one plot only: no error can be told [interval]"));
  EXPECT_EQ(one.find("plots_needed"), std::string::npos) << "one plot tells no spread";
  // By hand: 30, 20, 10 and 10 ft2; mean 17.5, standard deviation 9.57, SE 4.79; t of 3 degrees is
  // 3.182, so 15.2 less and more. Two of the four give sizes.
  const std::string two = part_of(all, "Two");
  EXPECT_TRUE(says(two, "basal area, ft2 17.5 4.8 27.4 2.3 32.7 3.0 [basal_area]"));
  EXPECT_TRUE(says(two, "[trees] two plots: very unsure"));
  EXPECT_TRUE(says(two, "2 of 4 plots are measure points"));
  EXPECT_TRUE(
      says(two, "not in these volumes: 2 tallied stems without board feet, 0 without cords"));
  // By hand: 5 of 7 tallied trees are oaks, 71 %.
  EXPECT_TRUE(says(two, "oaks hold 71 % of the basal area (SE "));
  const std::string bare = part_of(all, "Bare");
  EXPECT_TRUE(says(bare, "Bare: 40.0 acres, 2 plots (2 empty), 0 live and 0 dead trees tallied"));
  EXPECT_TRUE(says(bare, "basal area, ft2 0.0 - - - - - [basal_area] none found: rare or absent"));
  EXPECT_EQ(bare.find("mean_diameter"), std::string::npos);
  EXPECT_EQ(bare.find("oak_share"), std::string::npos);
}

TEST_F(FewPoints, EmptyPlotsCountInTheTract) {
  // By hand: (10 x 20 + 20 x 17.5 + 40 x 0) / 70 acres = 7.86 ft2.
  const Json all = Json::parse(text("--json")).at("all").at("live").at("ba_ft2_ac");
  EXPECT_NEAR(all.at("mean").get<double>(), 550.0 / 70.0, 1e-9);
  EXPECT_TRUE(all.at("se").is_null()) << "one stand has one plot";
  EXPECT_TRUE(says(text(), "All cruised stands, by acres: 70.0 acres, 7 plots (2 empty)"));
}

TEST_F(FewPoints, WhatTheErrorsAreOfIsSaid) {
  const std::string asked = text("--fpc --post-strata --plots-less-stands --stand-table");
  EXPECT_TRUE(
      says(asked, "corrected for the share of the stand that they cover [finite_population]"));
  EXPECT_TRUE(says(asked, "plots sorted into stands afterwards [post_strata]"));
  EXPECT_TRUE(says(asked, "by 2-in class species"));
  const std::string plain = text();
  EXPECT_EQ(plain.find("[finite_population]"), std::string::npos);
  EXPECT_EQ(plain.find("[post_strata]"), std::string::npos);
}

TEST_F(FewPoints, AStandThatNobodyVisitedStopsTheTotalAndNotTheOthers) {
  CruiseTexts texts = kFew;
  texts["stands.csv"] += "Left,5\n";
  texts["plots.csv"] =
      "cruise,stand,plot,status,baf_ft2_ac,task,skip_reason\n"
      "A,Left,1,skipped,10,,posted land\nA,One,1,measured,10,,\n";
  texts["trees.csv"] = "stand,plot,species,dbh_in\nOne,1,white oak,12.0\n";
  const TempDir folder;
  const std::string tract = small_tract(folder, "left", texts);
  const Ran run = oaklight("estimate " + tract + " --stand-table");
  EXPECT_EQ(run.exit_code, 0) << run.errors;
  EXPECT_TRUE(says(run.out, "One: 10.0 acres, 1 plots"));
  EXPECT_TRUE(says(run.out, "\nLeft: stand/Left: No plot of stand Left was visited yet."));
  EXPECT_TRUE(says(run.out, "All stands together: stand/Left: No plot of stand Left"));
  EXPECT_FALSE(says(run.out, "by 2-in class species")) << "of all stands together";
  const Json told = Json::parse(oaklight("estimate --json " + tract).out);
  EXPECT_EQ(told.at("all").at("error").at("code"), "no_data");
  EXPECT_TRUE(told.at("stands").at(0).at("figures").contains("live"));
  EXPECT_EQ(told.at("stands").at(1).at("figures").at("error").at("where"), "stand/Left");
}

TEST_F(FewPoints, TheTablesOfThePlaceAreNamed) {
  const TempDir folder;
  const std::string tract = small_tract(folder, "few", kFew);
  write_bytes(folder / "local_volume.csv",
              "species,dbh_in,log_rule,board_feet,cords,source\n"
              "white oak,10,doyle,30,0.1,the mill (invented)\nwhite oak,20,doyle,300,0.6,\n");
  ASSERT_EQ(oaklight("import " + tract + " " + (folder / "local_volume.csv").string()).exit_code,
            0);
  const std::string all = oaklight("estimate --log-rule doyle " + tract).out;
  EXPECT_TRUE(
      says(part_of(all, "One"),
           "local volume table (the mill (invented)): board feet of 2 stems, cords of 2; the "
           "others by the book [local_volume]"));
  // By hand: 12 in lies a fifth of the way from 10 to 20: 30 + 0.2 x 270 = 84 board feet a tree,
  // and 20 ft2 are 20 / 0.7854 = 25.46 trees: 2139 an acre.
  EXPECT_TRUE(says(part_of(all, "One"), "board feet, Doyle 2139 "));
}

}  // namespace
}  // namespace oaklight::test
