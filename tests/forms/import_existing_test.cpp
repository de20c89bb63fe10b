// Bringing files into a tract that has records already.
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/forms/cruise_files.hpp"

namespace oaklight {
namespace {

using test::good_files;
using test::import_files;
using test::short_faults;
using Wants = std::vector<std::string>;

/// The tract after good_files() were brought in.
TractData existing() {
  static const TractData data = import_files(good_files()).data;
  return data;
}

CruiseImport import_into_existing(const CruiseFiles& files) {
  return import_files(files, existing(), 99);
}

TEST(ImportIntoTract, TheSameFilesAgainAreDuplicates) {
  const Wants want = {"duplicate plots.csv:2:plot",
                      "duplicate plots.csv:3:plot",
                      "duplicate plots.csv:4:plot",
                      "duplicate plots.csv:5:plot",
                      "duplicate plots.csv:6:plot",
                      "duplicate trees.csv:2:tag",
                      "duplicate trees.csv:5:tag",
                      "duplicate crop_trees.csv:2:card",
                      "duplicate crop_trees.csv:7:card",
                      "duplicate map.geojson:/features/1/geometry/coordinates",
                      "duplicate map.geojson:/features/2/geometry/coordinates"};
  EXPECT_EQ(short_faults(import_into_existing(good_files()).faults), want);
}

TEST(ImportIntoTract, StandsAreUsedByName) {
  CruiseFiles files;
  files.plots = {"plots.csv",
                 "cruise,stand,plot,status,baf_ft2_ac,min_dbh_in,regen_plot_ac,crew,date\n"
                 "points,Cove,7,measured,10,4.6,0.001,crew C,2026-05-09\n"};
  files.trees = {"trees.csv", "stand,plot,species,dbh_in\nCove,7,QURU,12\n"};
  const auto read = import_into_existing(files);
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  EXPECT_TRUE(read.data.stands.empty());
  ASSERT_EQ(read.data.plots.size(), 1U);
  EXPECT_EQ(read.data.plots[0].stand, existing().stands[1].id);
  EXPECT_EQ(read.data.plots[0].cruise, existing().cruises[0].id);
  // The cruise gained a crew, so it comes along with its old id; its first day stays.
  ASSERT_EQ(read.data.cruises.size(), 1U);
  EXPECT_EQ(read.data.cruises[0].id, existing().cruises[0].id);
  EXPECT_EQ(read.data.cruises[0].crew, "crew A; crew B; crew C");
  EXPECT_EQ(read.data.cruises[0].date, "2026-05-04");
}

TEST(ImportIntoTract, ACruiseThatSaysNothingNewIsNotWrittenAgain) {
  CruiseFiles files;
  files.plots = {"plots.csv",
                 "cruise,stand,plot,status,baf_ft2_ac,min_dbh_in,regen_plot_ac,crew,date\n"
                 "points,Cove,7,planned,10,4.6,0.001,crew A,2026-05-09\n"};
  const auto read = import_into_existing(files);
  EXPECT_TRUE(read.faults.empty());
  EXPECT_TRUE(read.data.cruises.empty());
}

TEST(ImportIntoTract, ACruiseOfTheSameNameHasTheSameDesign) {
  CruiseFiles files;
  files.plots = {"plots.csv",
                 "cruise,stand,plot,status,baf_ft2_ac,min_dbh_in,regen_plot_ac\n"
                 "points,Cove,7,planned,20,4.6,0.001\n"};
  EXPECT_EQ(short_faults(import_into_existing(files).faults),
            Wants{"contradiction plots.csv:2:cruise"});
}

TEST(ImportIntoTract, ALaterCruiseMayUseThePlotLabelsAgain) {
  CruiseFiles files;
  files.plots = {"plots.csv",
                 "cruise,stand,plot,status,baf_ft2_ac\npoints 2036,Ridge,1,measured,10\n"};
  files.trees = {"trees.csv", "stand,plot,species,dbh_in\nRidge,1,QUAL,16.0\n"};
  EXPECT_TRUE(import_into_existing(files).faults.empty());
}

TEST(ImportIntoTract, ATreeKeepsItsTagWhenALaterCruiseMeasuresItAgain) {
  CruiseFiles files;
  files.plots = {"plots.csv",
                 "cruise,stand,plot,status,baf_ft2_ac\n"
                 "points 2036,Ridge,1,measured,10\npoints 2036,Ridge,2,measured,10\n"};
  const std::string head = "stand,plot,species,dbh_in,tag\n";
  files.trees = {"trees.csv", head + "Ridge,1,QUAL,16.0,901\nRidge,2,QUAL,9.0,905\n"};
  EXPECT_TRUE(import_into_existing(files).faults.empty());
  files.trees->text = head + "Ridge,2,QUAL,16.0,901\nRidge,1,QUAL,9.0,905\n";
  EXPECT_EQ(short_faults(import_into_existing(files).faults), Wants{"duplicate trees.csv:2:tag"})
      << "901 stands on plot 1";
  files.trees->text = head + "Ridge,1,QUAL,16.0,901\nRidge,2,QUAL,9.0,901\n";
  EXPECT_EQ(short_faults(import_into_existing(files).faults), Wants{"duplicate trees.csv:3:tag"});
}

TEST(ImportIntoTract, TreesOfAKnownPlotNeedItsRow) {
  CruiseFiles files;
  files.trees = {"trees.csv", "stand,plot,species,dbh_in\nRidge,1,QUAL,16.0\nRidge,9,QUAL,16.0\n"};
  const auto faults = import_into_existing(files).faults;
  ASSERT_EQ(short_faults(faults),
            (Wants{"unknown_reference trees.csv:2:plot", "unknown_reference trees.csv:3:plot"}));
  EXPECT_NE(faults[0].what, faults[1].what) << "the first is in the tract, the second nowhere";
}

TEST(ImportIntoTract, AStandIsCompletedAndNeverOverruled) {
  CruiseFiles files;
  files.stands = {"stands.csv",
                  "stand,acres,walked_acres,goal,age_years,site_index_ft\n"
                  "Ridge,42.5,12,mast,85,70\nCove,20,4,,60,\n"};
  const auto read = import_into_existing(files);
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  ASSERT_EQ(read.data.stands.size(), 1U) << "Ridge says nothing new";
  EXPECT_EQ(read.data.stands[0].id, existing().stands[1].id);
  EXPECT_EQ(read.data.stands[0].walked, Acres{4});
  EXPECT_EQ(read.data.stands[0].age_years, 60);
  EXPECT_EQ(read.data.stands[0].goal, Goal::timber) << "an empty cell changes nothing";

  files.stands->text =
      "stand,acres,walked_acres,goal,age_years,site_index_ft\nRidge,43,13,look,86,71\n";
  EXPECT_EQ(
      short_faults(import_into_existing(files).faults),
      (Wants{"contradiction stands.csv:2:acres", "contradiction stands.csv:2:goal",
             "contradiction stands.csv:2:walked_acres", "contradiction stands.csv:2:age_years",
             "contradiction stands.csv:2:site_index_ft"}));
}

TEST(ImportIntoTract, AnOutlineCompletesAKnownStand) {
  CruiseFiles files;
  files.map = {"map.geojson",
               R"({"type":"FeatureCollection","features":[{"type":"Feature","properties":
{"kind":"stand","stand":"Cove"},"geometry":{"type":"MultiPolygon","coordinates":[[[[-82.21,39.31],
[-82.2,39.31],[-82.2,39.32],[-82.21,39.31]]]]}}]})"};
  const auto read = import_into_existing(files);
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  ASSERT_EQ(read.data.stands.size(), 1U);
  EXPECT_EQ(read.data.stands[0].id, existing().stands[1].id);
  ASSERT_TRUE(read.data.stands[0].boundary);
  EXPECT_EQ(read.data.stands[0].boundary->outer.size(), 4U);
}

TEST(ImportIntoTract, TheTractKeepsWhatTheFileLeavesEmpty) {
  CruiseFiles files;
  files.tract = {"tract.csv", "name,state,county,demo\nFernhollow,,Othercounty,no\n"};
  const auto read = import_into_existing(files);
  ASSERT_TRUE(read.faults.empty());
  EXPECT_EQ(read.data.tract.state, "OH");
  EXPECT_EQ(read.data.tract.county, "Othercounty");
  EXPECT_TRUE(read.data.tract.demo) << "invented data stays marked as invented";
}

TEST(ImportIntoTract, FilesOfAnotherTractAreRefused) {
  CruiseFiles files;
  files.tract = {"tract.csv", "name\nElsewhere\n"};
  EXPECT_EQ(short_faults(import_into_existing(files).faults),
            Wants{"contradiction tract.csv:2:name"});
}

TEST(ImportIntoTract, WithoutTractFileTheTractStays) {
  CruiseFiles files;
  files.stands = {"stands.csv", "stand,acres\nFlat,8\n"};
  EXPECT_EQ(import_into_existing(files).data.tract.name, "Fernhollow");
}

constexpr const char* kCardHeader =
    "stand,card,role,tag,side,seen,species,dbh_in,crown_class,status,distance_ft,note\n";

TEST(ImportIntoTract, ATagOfTheTractIsTheSameTree) {
  CruiseFiles files;
  files.crop_trees = {"crop_trees.csv", std::string(kCardHeader) +
                                            "Ridge,30,crop,30,,,scarlet oak,12,,,,\n"
                                            "Ridge,30,neighbour,18,E,touches,,,,,9,\n"};
  const auto read = import_into_existing(files);
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  ASSERT_EQ(read.data.walk_trees.size(), 1U) << "tree 18 says nothing new";
  const auto& known = existing().walk_trees;
  const auto eighteen = std::find_if(known.begin(), known.end(),
                                     [](const WalkTree& tree) { return tree.tag == "18"; });
  ASSERT_EQ(read.data.contacts.size(), 1U);
  EXPECT_EQ(read.data.contacts[0].neighbour, eighteen->id);
}

TEST(ImportIntoTract, ANeighbourMayBecomeACropTree) {
  CruiseFiles files;
  files.crop_trees = {"crop_trees.csv", std::string(kCardHeader) +
                                            "Ridge,19,crop,19,,,,,codominant,,,a clean one\n"
                                            "Ridge,19,open,,N|E,,,,,,,\n"};
  const auto read = import_into_existing(files);
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  ASSERT_EQ(read.data.walk_trees.size(), 1U);
  const WalkTree& tree = read.data.walk_trees[0];
  EXPECT_TRUE(tree.crop);
  EXPECT_EQ(tree.looked, (Sides{Side::north, Side::east}));
  EXPECT_EQ(tree.facts.species, SpeciesCode{531});
  EXPECT_TRUE(tree.facts.conditions.has(Condition::den)) << "what was known stays";
  EXPECT_EQ(tree.facts.note, "a clean one");
}

TEST(ImportIntoTract, FactsOfTheTractAreNotContradicted) {
  CruiseFiles files;
  files.crop_trees = {"crop_trees.csv", std::string(kCardHeader) +
                                            "Ridge,30,crop,30,,,scarlet oak,12,,,,\n"
                                            "Ridge,30,neighbour,18,E,touches,,9.5,,dead,9,\n"};
  EXPECT_EQ(
      short_faults(import_into_existing(files).faults),
      (Wants{"contradiction crop_trees.csv:3:dbh_in", "contradiction crop_trees.csv:3:status"}));
}

TEST(ImportIntoTract, APositionFarFromTheTractIsTold) {
  CruiseFiles files;
  files.plots = {"plots.csv",
                 "cruise,stand,plot,status,baf_ft2_ac,lat,lon\n"
                 "later,Cove,7,planned,10,39.31,82.21\n"};
  const auto faults = import_into_existing(files).faults;
  ASSERT_EQ(short_faults(faults), Wants{"contradiction plots.csv:2:lat"});
  EXPECT_NE(faults[0].fix.find("minus sign"), std::string::npos);
}

}  // namespace
}  // namespace oaklight
