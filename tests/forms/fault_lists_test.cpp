// How faults are listed: in which order, how many, and on which line of a file with long cells.
#include <gtest/gtest.h>

#include "tests/forms/cruise_files.hpp"

namespace oaklight {
namespace {

std::vector<Error> faults_of(const CruiseFiles& files) { return test::import_files(files).faults; }

TEST(ImportFaults, AFileWithNothingInItIsTold) {
  CruiseFiles files;
  files.trees = {"trees.csv", "\xEF\xBB\xBF \r\n"};
  EXPECT_EQ(test::short_faults(faults_of(files)), std::vector<std::string>{"bad_csv trees.csv"});
  files.trees->text = "\"\"\n";
  EXPECT_EQ(test::short_faults(faults_of(files)), std::vector<std::string>{"bad_csv trees.csv"});
}

TEST(ImportFaults, AFileWithoutRowsHasNothingWrong) {
  CruiseFiles files;
  files.trees = {"trees.csv", "stand,plot,species,dbh_in\n\n,,,\n"};
  EXPECT_TRUE(faults_of(files).empty());
}

TEST(ImportFaults, OneBadRowInATractFileIsNoRow) {
  CruiseFiles files;
  files.tract = {"tract.csv", "name\n"};
  EXPECT_EQ(test::short_faults(faults_of(files)),
            std::vector<std::string>{"contradiction tract.csv:1"});
}

TEST(ImportFaults, OtherTextThanUtf8CsvIsNamedForWhatItIs) {
  CruiseFiles files;
  const auto what = [&](std::string text) {
    files.stands = {"stands.csv", std::move(text)};
    const auto faults = faults_of(files);
    return faults.size() == 1 && faults[0].code == ErrorCode::bad_csv ? faults[0].what : "";
  };
  using namespace std::string_literals;
  EXPECT_EQ(what("\xFF\xFEs\0t\0"s), "The file is UTF-16 text.");
  EXPECT_EQ(what("stand,acres\nA\0,1\n"s), "There is a NUL byte on this line.");
  EXPECT_EQ(what("stand;acres\nA;1\n"), "The columns are not parted by commas.");
  EXPECT_EQ(what("stand\tacres\nA\t1\n"), "The columns are not parted by commas.");
  EXPECT_EQ(what("stand,acres\rA,1\r"), "The lines end in a bare carriage return.");
  EXPECT_EQ(what(std::string((8U << 20U) + 1, 'x')), "The file is larger than 8 MiB.");
  EXPECT_EQ(what(std::string(200'001, '\n') + "x"), "The file has more than 200,000 lines.");
  EXPECT_EQ(what(std::string(200, ',') + "\n"), "The header has more than 200 columns.");
}

TEST(ImportFaults, LinesAreThoseOfTheFileAlsoAfterALongNote) {
  CruiseFiles files = test::good_files();
  test::replace_once(files.trees->text, "a snag", "\"a snag,\nthree\nlines of it\"");
  test::replace_once(files.trees->text, "18.4", "18.4x");
  EXPECT_EQ(test::short_faults(faults_of(files)),
            std::vector<std::string>{"not_a_number trees.csv:7:dbh_in"});
}

TEST(ImportFaults, ALineIsThatOfTheCellInARowOfSeveralLines) {
  CruiseFiles files;
  files.tract = {"tract.csv", "name,directions,demo\nFernhollow,\"over the\nbridge\",perhaps\n"};
  EXPECT_EQ(test::short_faults(faults_of(files)),
            std::vector<std::string>{"not_a_choice tract.csv:3:demo"});
}

TEST(ImportFaults, AllAreToldInTheOrderOfFilesAndLines) {
  CruiseFiles files = test::good_files();
  test::replace_once(files.crop_trees->text, "12.2,,", "0,,");
  test::replace_once(files.trees->text, "ACRU,5.1", "ACRU,4.5");
  test::replace_once(files.trees->text, "14.2,1,2", "412,1,3");
  test::replace_once(files.stands->text, "timber", "money");
  const std::vector<std::string> want = {
      "not_a_choice stands.csv:3:goal", "out_of_range trees.csv:2:dbh_in",
      "out_of_range trees.csv:2:edge_count", "contradiction trees.csv:4:dbh_in",
      "out_of_range crop_trees.csv:5:distance_ft"};
  EXPECT_EQ(test::short_faults(faults_of(files)), want);
}

TEST(ImportFaults, PastTwoHundredTheRestIsCounted) {
  CruiseFiles files;
  files.stands = {"stands.csv", "stand,acres\nA,1\n"};
  files.trees = {"trees.csv", "stand,plot,species,dbh_in\n"};
  for (int i = 0; i < 500; ++i) files.trees->text += "A,,802,99999\n";  // two faults a row
  const auto faults = faults_of(files);
  ASSERT_EQ(faults.size(), kMaxFaults + 1);
  EXPECT_EQ(faults.back().code, ErrorCode::import_refused);
  EXPECT_EQ(faults.back().what, "And 800 more faults, not listed.");
  files.trees->text += "A,1,802,1,7\n";  // a row of five cells
  EXPECT_EQ(faults_of(files).back().what, "And 801 more faults, not listed.");
}

TEST(ImportFaults, RowsOfTheWrongLengthAreCountedToo) {
  CruiseFiles files;
  files.stands = {"stands.csv", "stand,acres\n"};
  for (int i = 0; i < 300; ++i) files.stands->text += "A\n";
  const auto faults = faults_of(files);
  ASSERT_EQ(faults.size(), kMaxFaults + 1);
  EXPECT_EQ(faults.back().what, "And 100 more faults, not listed.");
}

}  // namespace
}  // namespace oaklight
