// Cruises that measure every k-th point, and local volume tables, as files.
#include <gtest/gtest.h>

#include "core/forms/read_volumes.hpp"
#include "core/measure/log_rule.hpp"
#include "core/model/plot_task.hpp"
#include "tests/forms/cruise_files.hpp"

namespace oaklight {
namespace {

using Strings = std::vector<std::string>;

/// Four points of which every so many-th is measured, and these trees.
CruiseFiles points(const std::string& every, const std::string& trees,
                   const std::string& design = "baf_ft2_ac", const std::string& size = "10") {
  CruiseFiles files;
  files.stands = {"stands.csv", "stand,acres\nCove,20\n"};
  std::string rows = "cruise,stand,plot,status,task,measure_every," + design + "\n";
  for (const char* plot : {"1", "2", "3"}) {
    rows += std::string("C,Cove,") + plot + ",measured,," + every + "," + size + "\n";
  }
  rows += "C,Cove,4,measured,count," + every + "," + size + "\n";
  files.plots = {"plots.csv", rows};
  files.trees = {"trees.csv", "stand,plot,species,dbh_in,stems,edge_count,status\n" + trees};
  return files;
}
const std::string kTrees =
    "Cove,1,802,12.0,,,\nCove,2,802,,3,,\nCove,2,316,,,2,\nCove,2,802,,1,,\nCove,3,802,10,,,\n"
    "Cove,4,833,,2,,\n";

TEST(CountPointFiles, EveryKthPointIsMeasuredAndTheOthersCounted) {
  const auto read = test::import_files(points("2", kTrees));
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  ASSERT_EQ(read.data.plots.size(), 4U);
  EXPECT_EQ(read.data.plots[0].note, "");
  // By hand: 3 and 1 white oaks; a red maple that counts twice at the edge.
  EXPECT_EQ(read.data.plots[1].note, "[count point: 802 4, 316 2]");
  EXPECT_EQ(taken_at(read.data.plots[2]).task, PlotTask::measure);
  EXPECT_EQ(read.data.plots[3].note, "[count point: 833 2]");
  EXPECT_EQ(read.data.trees.size(), 2U);
}

Strings faults_of(const CruiseFiles& files) {
  return test::short_faults(test::import_files(files).faults);
}

TEST(CountPointFiles, AMeasuredTreeNeedsItsSize) {
  EXPECT_EQ(faults_of(points("1", kTrees)),
            (Strings{"missing_value trees.csv:3:dbh_in", "missing_value trees.csv:4:dbh_in",
                     "missing_value trees.csv:5:dbh_in"}));
  EXPECT_EQ(faults_of(points("2", kTrees + "Cove,4,833,,1,,dead\n")),
            (Strings{"missing_value trees.csv:8:dbh_in"}));
}

TEST(CountPointFiles, FixedPlotsNeedEverySize) {
  EXPECT_EQ(faults_of(points("2",
                             "Cove,1,802,12,,,\nCove,2,802,,3,,\nCove,3,802,10,,,\n"
                             "Cove,4,802,9,,,\n",
                             "plot_ac", "0.1")),
            (Strings{"missing_value trees.csv:3:dbh_in"}));
}

VolumesRead volumes(const std::string& rows) {
  return read_volumes(
      {"local_volume.csv", "species,dbh_in,log_rule,board_feet,cords,source\n" + rows},
      test::species_table());
}

TEST(LocalVolumeFile, IsReadByItsNamesAndPutInOrder) {
  const auto read = volumes(
      "white oak,16,doyle,90,,Cove mill 2025\nany,12,Doyle,30,0.15,\n"
      "802,12,doyle,40,0.2,\n");
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  ASSERT_EQ(read.volumes.rows.size(), 3U);
  EXPECT_EQ(read.volumes.log_rule, "doyle");
  EXPECT_EQ(read.volumes.source, "Cove mill 2025");
  EXPECT_FALSE(read.volumes.rows[0].fia);
  EXPECT_EQ(read.volumes.rows[1].dbh, Inches{12.0});
  EXPECT_EQ(read.volumes.rows[2].board_feet, 90.0);
  EXPECT_TRUE(volumes("").volumes.rows.empty());
  EXPECT_TRUE(volumes("").faults.empty());
}

TEST(LocalVolumeFile, TellsWhatIsWrongAndWhere) {
  const auto code = [](const std::string& rows) {
    return test::short_faults(volumes(rows).faults);
  };
  EXPECT_EQ(code("oakish,12,doyle,30,,\n"),
            (Strings{"unknown_species local_volume.csv:2:species"}));
  EXPECT_EQ(code("any,,doyle,30,,\n"), (Strings{"missing_value local_volume.csv:2:dbh_in"}));
  EXPECT_EQ(code("any,x,doyle,30,,\n"), (Strings{"not_a_number local_volume.csv:2:dbh_in"}));
  EXPECT_EQ(code("any,12,doyle,-3,,\n"), (Strings{"out_of_range local_volume.csv:2:board_feet"}));
  EXPECT_EQ(code("any,12,,30,,\n"), (Strings{"missing_value local_volume.csv:2:log_rule"}));
  EXPECT_EQ(code("any,12,maine,30,,\n"), (Strings{"not_a_choice local_volume.csv:2:log_rule"}));
  EXPECT_EQ(code("any,12,doyle,,,\n"), (Strings{"missing_value local_volume.csv:2:board_feet"}));
  EXPECT_EQ(code("any,12,doyle,30,,\nany,14,scribner,50,,\n"),
            (Strings{"contradiction local_volume.csv:3:log_rule"}));
  EXPECT_EQ(code("any,12,doyle,30,,\nany,12,doyle,30,,\n"),
            (Strings{"duplicate local_volume.csv:3:dbh_in"}));
  EXPECT_EQ(code("any,12,doyle,30,,\nany,14,doyle,20,,\n"),
            (Strings{"contradiction local_volume.csv:3:dbh_in"}));
  const auto both = read_volumes({"local_volume.csv", "species,dbh_in,dbh_cm,cords\nany,1,2,3\n"},
                                 test::species_table());
  EXPECT_EQ(test::short_faults(both.faults), (Strings{"contradiction local_volume.csv:1:dbh_cm"}));
}

TEST(LocalVolumeFile, KnowsTheLogRulesThatTheProgramKnows) {
  for (const auto& [rule, word] : kWords<LogRule>) {
    EXPECT_TRUE(volumes("any,12," + std::string(word) + ",30,,\n").faults.empty()) << word;
  }
}

TEST(LocalVolumeFile, IsJudgedWithTheFilesOfACruise) {
  CruiseFiles files = test::good_files();
  files.local_volume = {"local_volume.csv", "species,dbh_in,log_rule,board_feet\nany,12,,30\n"};
  EXPECT_EQ(faults_of(files), (Strings{"missing_value local_volume.csv:2:log_rule"}));
}

}  // namespace
}  // namespace oaklight
