// What the program says of two visits where little can be said: one pair of plots, two, none that
// changed, stands of one visit only, oaks of every kind of record. Tracts of a few invented trees.
#include <gtest/gtest.h>

#include <memory>
#include <nlohmann/json.hpp>

#include "tests/command/program.hpp"
#include "tests/command/small_tract.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

/// Points of 10 ft2 a tree; every tree white oak, 12.0 in, with one 16-ft log.
const CruiseTexts kThen = {
    {"stands.csv", "stand,acres\nOne,10\nTwo,20\nSame,30\nBare,40\nOnce,5\n"},
    {"plots.csv",
     "cruise,stand,plot,status,baf_ft2_ac\n"
     "A,One,1,measured,10\nA,Two,1,measured,10\nA,Two,2,measured,10\n"
     "A,Same,1,measured,10\nA,Same,2,measured,10\nA,Same,3,measured,10\n"
     "A,Bare,1,empty,10\nA,Bare,2,empty,10\nA,Bare,3,empty,10\nA,Once,1,measured,10\n"},
    {"trees.csv",
     "stand,plot,species,dbh_in,stems,logs\n"
     "One,1,white oak,12.0,2,1\nTwo,1,white oak,12.0,1,1\nTwo,2,white oak,12.0,1,1\n"
     "Same,1,white oak,12.0,1,1\nSame,2,white oak,12.0,1,1\nSame,3,white oak,12.0,1,1\n"
     "Once,1,white oak,12.0,1,1\n"},
    {"crop_trees.csv",
     "stand,card,role,tag,side,seen,species,dbh_in,status\n"
     "Same,7,crop,7,,,white oak,14.0,\nSame,7,neighbour,201,N,touches,red maple,10.0,\n"
     "Same,7,open,,E,,,,\nSame,7,neighbour,202,S,not_looked,red maple,9.0,\n"
     "Same,8,crop,8,,,white oak,15.0,\nSame,8,open,,N|E|S,,,,\n"
     "Same,8,neighbour,203,W,touches,sugar maple,8.0,\n"
     "Same,9,crop,9,,,black oak,15.0,\nSame,9,open,,N|E|S|W,,,,\n"
     "Same,10,crop,10,,,black oak,15.0,\nSame,10,open,,N|E|S|W,,,,\n"},
    {"acorns.csv",
     "tag,year,date,per_tip,tips,n30\n"
     "7,2024,,20,8,\n8,2024,,12,8,\n"
     "9,2024,,1,8,3\n9,2025,,1,8,\n9,2026,,1,8,\n10,2024,,1,8,0\n"},
    {"acorn_years.csv", "oak_group,year,crop\nred,2024,good\n"},
};

const CruiseTexts kLater = {
    {"stands.csv", "stand,acres\nOne,10\nTwo,20\nSame,30\nBare,40\nNew,5\n"},
    {"plots.csv",
     "cruise,stand,plot,status,baf_ft2_ac\n"
     "B,One,1,measured,10\nB,Two,1,measured,10\nB,Two,2,measured,10\nB,Two,3,empty,10\n"
     "B,Same,1,measured,10\nB,Same,2,measured,10\nB,Same,3,measured,10\n"
     "B,Bare,1,empty,10\nB,Bare,2,empty,10\nB,Bare,3,empty,10\nB,New,1,measured,10\n"},
    {"trees.csv",
     "stand,plot,species,dbh_in,stems,logs\n"
     "One,1,white oak,12.0,3,1\nTwo,1,white oak,12.0,2,1\nTwo,2,white oak,12.0,1,1\n"
     "Same,1,white oak,12.0,1,1\nSame,2,white oak,12.0,1,1\nSame,3,white oak,12.0,1,1\n"
     "New,1,white oak,12.0,1,1\n"},
    {"crop_trees.csv",
     "stand,card,role,tag,side,seen,species,dbh_in,status\n"
     "Same,7,crop,7,,,white oak,13.8,\nSame,7,neighbour,201,N,touches,northern red oak,10.0,\n"
     "Same,7,neighbour,204,E,not_looked,red maple,5.0,\n"
     "Same,8,crop,8,,,white oak,15.6,\nSame,8,open,,N|E|S|W,,,,\n"
     "Same,8,neighbour,203,N,below,sugar maple,8.2,dead\n"},
};

/// Part of a text from these words on; "" where they are not in it.
std::string from(const std::string& text, const std::string& words) {
  const auto at = text.find(words);
  return at == std::string::npos ? "" : text.substr(at);
}

/// Both visits, imported once; what was asked of them is asked once.
class SmallVisits : public testing::Test {
 protected:
  static void SetUpTestSuite() { visits_ = std::make_unique<Visits>(); }
  static void TearDownTestSuite() { visits_.reset(); }

  static const std::string& text(const std::string& more = "") {
    const auto [told, fresh] = visits_->told.try_emplace(more);
    if (fresh) {
      const Ran run = oaklight("compare " + visits_->then + " " + visits_->later + " " + more);
      EXPECT_EQ(run.exit_code, 0) << run.errors << run.out;
      told->second = run.out;
    }
    return told->second;
  }
  static Json json(const std::string& more = "") { return Json::parse(text("--json " + more)); }

 private:
  struct Visits {
    TempDir folder;
    std::string then = small_tract(folder, "then", kThen);
    std::string later = small_tract(folder, "later", kLater);
    std::map<std::string, std::string> told;
  };
  static std::unique_ptr<Visits> visits_;
};
std::unique_ptr<SmallVisits::Visits> SmallVisits::visits_;

TEST_F(SmallVisits, EachStandSaysHowMuchItsPairsCanTell) {
  const std::string all = text();
  // By hand: 10 ft2 a tree, so 2 trees and then 3 are 20 and 30 ft2.
  const std::string one = from(all, "One: \"A\" and \"B\"; 1 plots visited both times");
  EXPECT_TRUE(says(one,
                   "basal area, ft2 [basal_area] 20.0 30.0 +10.0 - - - "
                   "one pair: no error can be told"));
  // By hand: changes 10 and 0, mean 5; their standard deviation is 10 / sqrt 2, and over sqrt 2 the
  // SE is 5; t with one degree of freedom is 12.706: 5 less and more 63.5.
  const std::string two = from(all, "Two: \"A\" and \"B\"; 2 plots visited both times");
  EXPECT_TRUE(says(two,
                   "basal area, ft2 [basal_area] 10.0 15.0 +5.0 5.0 -58.5 +68.5 "
                   "two pairs: very unsure"));
  EXPECT_TRUE(says(two, "left out, second visit only: 3"));
  const std::string same = from(all, "Same: \"A\" and \"B\"; 3 plots visited both times");
  EXPECT_TRUE(says(same,
                   "basal area, ft2 [basal_area] 10.0 10.0 0.0 - - - "
                   "no plot changed: not known to be none"));
}

// Plots without trees are plots: their change of 0 counts, and no mean diameter is made up.
TEST_F(SmallVisits, AStandWithoutTreesHasNoDiameterAndCounts) {
  const std::string all = text();
  const std::string bare = from(all, "Bare: \"A\" and \"B\"; 3 plots visited both times");
  EXPECT_TRUE(says(bare, "basal area, ft2 [basal_area] 0.0 0.0 0.0"));
  EXPECT_EQ(bare.substr(0, bare.find("[paired_change]")).find("[mean_diameter]"),
            std::string::npos);
  for (const Json& stand : json().at("stands")) {
    const bool bare_stand = stand.at("stand") == "Bare";
    EXPECT_EQ(stand.at("change").at("qmd_in").is_null(), bare_stand) << stand.at("stand");
  }
  // By hand: (10 x 20 + 20 x 10 + 30 x 10 + 40 x 0) / 100 acres is 7 ft2; then 300, 300 and 300
  // over 100, 9 ft2; in all 700 and 900.
  const std::string tract = from(all, "All stands cruised both times, by acres: 100.0 acres");
  EXPECT_TRUE(says(tract, "basal area, ft2 [basal_area] 7.0 9.0 +2.0 - - -"));
  EXPECT_TRUE(says(tract, "basal area, ft2 [basal_area] 700 900 +200 - - -"));
  EXPECT_TRUE(says(tract, "plots left out, one visit only: 1"));
}

TEST_F(SmallVisits, StandsOfOneVisitAreNamed) {
  const std::string all = text();
  EXPECT_TRUE(says(all, "Not compared, first visit only: Once\n"));
  EXPECT_TRUE(says(all, "Not compared, second visit only: New\n"));
  const Json told = json();
  EXPECT_EQ(told.at("stands_of_first_visit_only"), Json::array({"Once"}));
  EXPECT_EQ(told.at("stands_of_second_visit_only"), Json::array({"New"}));
}

TEST_F(SmallVisits, BoardFeetArePairedWhereEveryTreeHasItsLogs) {
  const Json told = json("--log-rule doyle");
  const Json& one = told.at("stands").at(0).at("change");
  const auto figure = [&](const char* key) { return one.at(key).at("change").get<double>(); };
  // By hand: 10 ft2 of trees of 12 in are 10 / 0.7854 = 12.73 trees; Doyle needs no more than the
  // ratio of the two visits here: 3 trees for 2.
  EXPECT_NEAR(figure("trees_ac"), 12.73, 0.005);
  EXPECT_NEAR(one.at("board_feet_ac").at("after").get<double>() /
                  one.at("board_feet_ac").at("before").get<double>(),
              1.5, 1e-9);
  EXPECT_NEAR(one.at("total_board_feet").at("change").get<double>(), 10.0 * figure("board_feet_ac"),
              1e-6)
      << "10 acres";
  EXPECT_TRUE(says(text("--log-rule doyle"), "board feet, Doyle [board_feet]"));
}

TEST_F(SmallVisits, WithoutDaysTheYearsAreNotMadeUp) {
  EXPECT_TRUE(json().at("stands").at(0).at("years").is_null());
  EXPECT_TRUE(json().at("stands").at(0).at("first").at("day").is_null());
  EXPECT_TRUE(json().at("trees").at(0).at("growth_in_a_year").is_null());
  EXPECT_EQ(text().find("DBH growth"), std::string::npos);
  EXPECT_TRUE(says(text("--years 5"), "One: \"A\" and \"B\", 5.0 years"));
}

TEST_F(SmallVisits, GrowthOfOneGroupAloneIsNoComparison) {
  const std::string all = text("--years 4");
  EXPECT_TRUE(says(all, "released 0 - - - -"));
  // By hand: (-0.2 + 0.6) / 2 / 4 years is 0.05; the two differ by 0.2 a year, so SE 0.1.
  EXPECT_TRUE(says(all, "not released 2 0.050 0.100"));
  EXPECT_TRUE(says(all, "A group has fewer than two trees."));
  const Json growth = json("--years 4").at("crop_tree_growth");
  EXPECT_TRUE(growth.at("released").is_null());
  EXPECT_TRUE(growth.at("difference").is_null());
  EXPECT_EQ(growth.at("why_no_difference"), "A group has fewer than two trees.");
}

TEST_F(SmallVisits, EachTagThatIsNotWhatItWasIsListed) {
  const std::string all = text();
  EXPECT_TRUE(says(all, "standing dead now (stay clear; they fall without warning): 203\n"));
  EXPECT_TRUE(says(all, "not met again: fallen, stolen, or the tag is lost: 9, 10, 202\n"));
  EXPECT_TRUE(says(all, "another species wears the tag now: look again: 201\n"));
  EXPECT_TRUE(says(all, "thinner than before, read again (they are in the figures): 7\n"));
}

TEST_F(SmallVisits, SidesThatNobodyLookedAtAreToldAsSuch) {
  const std::string all = text();
  EXPECT_TRUE(says(all, "7 white oak 1+2? 1+2? 0+4? - sides not looked at"));
  EXPECT_TRUE(says(all, "8 white oak 3 3 4 0 not yet"));
  EXPECT_TRUE(says(all, "9 black oak 4 4 - - not known"));
}

// Classes by R3.41 to R3.43 of the rules: white oak excellent from 18 a tip, good from 12; black
// oak fair from 8. Proven poor by R3.39: three autumns, one of them good.
TEST_F(SmallVisits, OaksOfEveryRecord) {
  const std::string all = text();
  EXPECT_TRUE(says(all, "7 white oak excellent 2024: 20.0 a tip"));
  EXPECT_TRUE(says(all, "8 white oak good 2024: 12.0 a tip"));
  EXPECT_TRUE(says(all, "10 black oak poor so far 2024: 1.0 a tip 0 in 30 s"));
  EXPECT_TRUE(
      says(all, "9 black oak poor, proven 2024: 1.0 a tip 3 in 30 s; 2025: 1.0 a tip; 2026"));
  // By hand: (ln 4 + ln 1) / 2 is 0.69, and so is half their difference; one of two bore.
  EXPECT_TRUE(says(all, "Same black oak 2024 2 0.69 0.69 50 few oaks"));
}

/// The same stand on plots of other labels, or of another factor.
CruiseTexts one_stand(const std::string& plots, const std::string& trees) {
  return {{"stands.csv", "stand,acres\nOne,10\n"},
          {"plots.csv", "cruise,stand,plot,status,baf_ft2_ac\n" + plots},
          {"trees.csv", "stand,plot,species,dbh_in\n" + trees}};
}

TEST(CompareCases, AStandThatCannotBePairedSaysWhy) {
  const TempDir folder;
  const std::string then =
      small_tract(folder, "then", one_stand("A,One,1,measured,10\n", "One,1,white oak,12.0\n"));
  const std::string relabelled = small_tract(
      folder, "relabelled", one_stand("B,One,9,measured,10\n", "One,9,white oak,12.0\n"));
  const std::string factor =
      small_tract(folder, "factor", one_stand("B,One,1,measured,20\n", "One,1,white oak,12.0\n"));
  for (const auto& [later, why] :
       {std::pair(relabelled, "No plot of stand One was visited both times."),
        std::pair(factor, "The two visits to stand One were made by different designs")}) {
    const Ran text = oaklight("compare " + then + " " + later);
    EXPECT_EQ(text.exit_code, 0) << text.errors;
    EXPECT_TRUE(says(text.out, std::string("One: \"A\" and \"B\"\nstand/One: ") + why));
    EXPECT_TRUE(says(text.out, std::string("All stands together: stand/One: ") + why));
    const Json json = Json::parse(oaklight("compare --json " + then + " " + later).out);
    EXPECT_TRUE(json.at("all").is_null());
    EXPECT_TRUE(says(json.at("why_no_total").at("what"), why));
    EXPECT_EQ(json.at("stands").at(0).at("error"), json.at("why_no_total"));
    EXPECT_FALSE(json.at("stands").at(0).contains("change"));
  }
}

TEST(CompareCases, TreesWithoutLogsAndBeyondTheTableHaveNoVolume) {
  const TempDir folder;
  const std::string then = small_tract(
      folder, "then",
      one_stand("A,One,1,measured,10\n", "One,1,white oak,12.0\nOne,1,white oak,70.0\n"));
  const std::string later =
      small_tract(folder, "later", one_stand("B,One,1,measured,10\n", "One,1,white oak,12.5\n"));
  const std::string text = oaklight("compare " + then + " " + later).out;
  EXPECT_TRUE(says(text, "no board feet: 3 stems of the two visits have no logs recorded"));
  EXPECT_TRUE(says(text, "no cords: 1 stems are thicker than the table"));
  const Json all = Json::parse(oaklight("compare --json " + then + " " + later).out).at("all");
  EXPECT_TRUE(all.at("board_feet_ac").is_null());
  EXPECT_TRUE(all.at("cords_ac").is_null());
  EXPECT_FALSE(all.contains("total_cords"));
}

TEST(CompareCases, NothingInCommonEndsInFour) {
  const TempDir folder;
  const CruiseTexts bare = {{"stands.csv", "stand,acres\nOne,10\n"}};
  const std::string tract = small_tract(folder, "bare", bare);
  const Ran run = oaklight("compare " + tract + " " + tract);
  EXPECT_EQ(run.exit_code, 4) << run.out;
  EXPECT_NE(run.errors.find("No stand was cruised at both visits."), std::string::npos);
  const Ran named = oaklight("compare --json " + tract + " " + tract + " --second-cruise A");
  EXPECT_EQ(named.exit_code, 1);
  EXPECT_EQ(Json::parse(named.out).at("errors").at(0).at("fix"), "The tract has no cruise.");
}

}  // namespace
}  // namespace oaklight::test
