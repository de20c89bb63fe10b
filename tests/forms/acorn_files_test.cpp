// acorns.csv, acorn_years.csv, and the crown radii of crop_trees.csv.
#include <gtest/gtest.h>

#include "tests/forms/cruise_files.hpp"
#include "tests/support/set_clock.hpp"

namespace oaklight {
namespace {

using Strings = std::vector<std::string>;

/// The good files with a red oak 21 and a white oak 17, and these counts.
CruiseFiles with_acorns(std::string rows) {
  CruiseFiles files = test::good_files();
  files.acorns = {"acorns.csv", "tag,year,date,per_tip,tips,n30,note\n" + std::move(rows)};
  return files;
}

CruiseFiles with_years(std::string rows) {
  CruiseFiles files = test::good_files();
  files.acorn_years = {"acorn_years.csv", "oak_group,year,crop,source\n" + std::move(rows)};
  return files;
}

Strings faults_of(const CruiseFiles& files, const TractData& existing = {}) {
  return test::short_faults(test::import_files(files, existing).faults);
}

TEST(AcornFiles, GiveACountForEachMethodThatTheRowTells) {
  const auto read = test::import_files(
      with_acorns("17,2025,2025-08-21,14.25,8,,north side\n17,2024,,,,0,\n21,2025,,3,,11,\n"));
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  const auto& counts = read.data.acorn_counts;
  ASSERT_EQ(counts.size(), 4U);
  const auto tag = [&](const AcornCount& count) {
    for (const WalkTree& tree : read.data.walk_trees) {
      if (tree.id == count.tree) return tree.tag;
    }
    return std::string();
  };
  EXPECT_EQ(tag(counts[0]), "17");
  EXPECT_EQ(counts[0].year, 2025);
  EXPECT_EQ(counts[0].date, "2025-08-21");
  EXPECT_EQ(counts[0].note, "north side");
  EXPECT_EQ(std::get<BranchTipCount>(counts[0].count), (BranchTipCount{14.25, 8}));
  EXPECT_EQ(std::get<TimedCount>(counts[1].count).n30, 0);  // looked, and none
  EXPECT_EQ(std::get<BranchTipCount>(counts[2].count), (BranchTipCount{3.0, std::nullopt}));
  EXPECT_EQ(std::get<TimedCount>(counts[3].count).n30, 11);
  EXPECT_EQ(tag(counts[3]), "21");
}

TEST(AcornFiles, GiveTheCropOfAYearByGroup) {
  const auto read = test::import_files(with_years("white,2025,poor,own walk\nred,2025,Bumper,\n"));
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  ASSERT_EQ(read.data.acorn_years.size(), 2U);
  EXPECT_EQ(read.data.acorn_years[0].group, OakGroup::white);
  EXPECT_EQ(read.data.acorn_years[0].crop, AcornCrop::poor);
  EXPECT_EQ(read.data.acorn_years[0].source, "own walk");
  EXPECT_EQ(read.data.acorn_years[1].crop, AcornCrop::bumper);
}

TEST(AcornFiles, AreToldTheirFaultsWithTheirPlace) {
  const std::vector<std::pair<const char*, Strings>> cases = {
      {"17,2025,,,,,\n", {"missing_value acorns.csv:2:per_tip"}},
      {"17,,,3,,,\n", {"missing_value acorns.csv:2:year"}},
      {",2025,,3,,,\n", {"missing_value acorns.csv:2:tag"}},
      {"99,2025,,3,,,\n", {"unknown_reference acorns.csv:2:tag"}},
      {"18,2025,,3,,,\n", {"contradiction acorns.csv:2:tag"}},  // a red maple
      {"17,2025,2024-09-01,3,,,\n", {"contradiction acorns.csv:2:date"}},
      {"17,25,,3,,,\n", {"out_of_range acorns.csv:2:year"}},
      {"17,2025,,-3,,,\n", {"out_of_range acorns.csv:2:per_tip"}},
      {"17,2025,,3.125,,,\n", {"out_of_range acorns.csv:2:per_tip"}},
      {"17,2025,,,,2.5,\n", {"not_a_number acorns.csv:2:n30"}},
      {"17,2025,,3,0,,\n", {"out_of_range acorns.csv:2:tips"}},
      {"17,2025,,3,,,\n17,2025,,4,,9,\n", {"duplicate acorns.csv:3:per_tip"}},
      {"17,2025,,,,3,\n17,2025,,4,,3,\n", {"duplicate acorns.csv:3:n30"}}};
  for (const auto& [rows, want] : cases) EXPECT_EQ(faults_of(with_acorns(rows)), want) << rows;
  const Strings no_tips = faults_of(with_acorns("17,2025,,,5,9,\n"));
  ASSERT_FALSE(no_tips.empty());
  EXPECT_EQ(no_tips.front().substr(no_tips.front().find(' ') + 1, 13), "acorns.csv:2:");
}

TEST(AcornFiles, OfYearsAreToldTheirFaultsWithTheirPlace) {
  const std::vector<std::pair<const char*, Strings>> cases = {
      {"none,2025,good,\n", {"not_a_choice acorn_years.csv:2:oak_group"}},
      {"red,2025,heavy,\n", {"not_a_choice acorn_years.csv:2:crop"}},
      {"red,2025,,\n", {"missing_value acorn_years.csv:2:crop"}},
      {"red,2025,good,\nred,2025,good,\n", {"duplicate acorn_years.csv:3:year"}}};
  for (const auto& [rows, want] : cases) EXPECT_EQ(faults_of(with_years(rows)), want) << rows;
}

// A crew adds each autumn's rows to the same file and brings it again.
TEST(AcornFiles, RowsThatTheTractHasAlreadyArePassedOver) {
  CruiseFiles first = with_acorns("17,2024,,9.5,4,,\n");
  first.acorn_years = with_years("white,2024,fair,own walk\n").acorn_years;
  const TractData tract = test::import_files(first).data;
  CruiseFiles again;
  again.acorns = {"acorns.csv", "tag,year,per_tip,tips,n30\n17,2024,9.5,4,\n17,2025,0,4,\n"};
  again.acorn_years = {"acorn_years.csv", "oak_group,year,crop\nwhite,2024,fair\nred,2024,good\n"};
  const auto read = test::import_files(again, tract);
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  ASSERT_EQ(read.data.acorn_counts.size(), 1U);
  EXPECT_EQ(read.data.acorn_counts[0].year, 2025);
  EXPECT_EQ(read.data.acorn_counts[0].tree, tract.acorn_counts[0].tree);
  ASSERT_EQ(read.data.acorn_years.size(), 1U);
  EXPECT_EQ(read.data.acorn_years[0].group, OakGroup::red);

  test::replace_once(again.acorns->text, "2024,9.5", "2024,8.5");
  test::replace_once(again.acorn_years->text, "white,2024,fair", "white,2024,good");
  EXPECT_EQ(faults_of(again, tract), (Strings{"contradiction acorns.csv:2:per_tip",
                                              "contradiction acorn_years.csv:2:crop"}));
}

TEST(AcornFiles, AFormThatLacksTheirRecordRefusesThemAndReadsTheRest) {
  Form older = test::tally_form();
  std::erase_if(older.records, [](const RecordForm& r) { return r.name.starts_with("acorn"); });
  test::SetClock clock(1'777'000'000'000);
  IdSource ids(clock, [] { return std::uint64_t{7}; });
  const auto read =
      read_cruise(with_acorns("17,2025,,3,,,\n"), older, test::species_table(), {}, ids);
  EXPECT_EQ(test::short_faults(read.faults), Strings{"import_refused acorns.csv"});
}

/// The good files with four crown columns; `own` are the cells of crop tree 17, `other` those of
/// its row as a neighbour.
CruiseFiles with_radii(const std::string& own, const std::string& other = ",,,") {
  CruiseFiles files;
  files.stands = {"stands.csv", "stand,acres\nRidge,10\n"};
  files.crop_trees = {
      "crop_trees.csv",
      "stand,card,role,tag,seen,side,species,dbh_in,crown_n_ft,crown_e_ft,crown_s_ft,crown_w_ft\n"
      "Ridge,17,crop,,,,white oak,15.1," +
          own + "\n" +
          "Ridge,17,neighbour,21,none,N,red oak,12,,,,\n"
          "Ridge,21,crop,,,,,,,,,\n"
          "Ridge,21,neighbour,17,none,S,,," +
          other + "\n"};
  return files;
}

TEST(CrownRadiiInCards, AreKeptAsTaped) {
  const auto read = test::import_files(with_radii("12.5,0,9.75,11", ",,,11.00"));
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  for (const WalkTree& tree : read.data.walk_trees) {
    EXPECT_EQ(tree.crown.complete(), tree.tag == "17") << tree.tag;
    if (tree.tag != "17") continue;
    EXPECT_EQ(tree.crown.north->hundredths(), 1250);
    EXPECT_EQ(tree.crown.east->hundredths(), 0);
    EXPECT_EQ(tree.crown.south->hundredths(), 975);
    EXPECT_EQ(tree.crown.west->hundredths(), 1100);
  }
}

TEST(CrownRadiiInCards, MayNotContradictEachOther) {
  EXPECT_EQ(faults_of(with_radii("12.5,8,9.75,11", "12.5,9,,")),
            Strings{"contradiction crop_trees.csv:5:crown_e_ft"});
  EXPECT_EQ(faults_of(with_radii("125,8,9.75,11")),
            Strings{"out_of_range crop_trees.csv:2:crown_n_ft"});
}

TEST(CrownRadiiInCards, OneSideAloneIsKeptAndTheOthersAreNotRecorded) {
  const auto read = test::import_files(with_radii("12.5,,,"));
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  for (const WalkTree& tree : read.data.walk_trees) {
    if (tree.tag != "17") continue;
    EXPECT_TRUE(tree.crown.north.has_value());
    EXPECT_FALSE(tree.crown.east.has_value());
  }
}

}  // namespace
}  // namespace oaklight
