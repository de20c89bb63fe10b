#include "core/forms/csv_file.hpp"

#include <gtest/gtest.h>

#include "core/forms/near_word.hpp"

namespace oaklight {
namespace {

CsvFile read(std::string text) { return read_csv_file({"a.csv", std::move(text)}); }

TEST(CsvFile, KeepsCellsAndTheLinesOnWhichTheyBegin) {
  const CsvFile file = read("a, b ,c\n\"x\ny\",\"1,2\",\"he said \"\"no\"\"\"\n\n,,\n4,5,6");
  ASSERT_TRUE(file.faults.empty());
  EXPECT_EQ(file.header, (std::vector<std::string>{"a", "b", "c"}));
  ASSERT_EQ(file.rows.size(), 2U) << "blank lines and rows of blanks are no rows";
  EXPECT_EQ(file.rows[0].cells, (std::vector<std::string>{"x\ny", "1,2", "he said \"no\""}));
  EXPECT_EQ(file.rows[0].line, 2);
  EXPECT_EQ(line_of_cell(file.rows[0], 0), 2);
  EXPECT_EQ(line_of_cell(file.rows[0], 1), 3);
  EXPECT_EQ(file.rows[1].line, 6);
}

TEST(CsvFile, RowsBesideABadOneAreStillRead) {
  const CsvFile file = read("a,b\n1\n3,4\n5,6,7\n");
  ASSERT_EQ(file.faults.size(), 2U);
  EXPECT_EQ(file.faults[0].where, "a.csv:2");
  EXPECT_EQ(file.faults[1].where, "a.csv:4");
  ASSERT_EQ(file.rows.size(), 1U);
  EXPECT_EQ(file.rows[0].cells[1], "4");
}

TEST(CsvFile, NamesTheLineThatIsNotUtf8) {
  EXPECT_EQ(read("a\nb\nc\xC3(\nd\n").faults.at(0).where, "a.csv:3");
  EXPECT_EQ(read("a\nb\xC3").faults.at(0).where, "a.csv:2");
}

TEST(CsvHeader, SuggestsTheNearColumn) {
  constexpr std::string_view kKnown[] = {"dbh_in", "dbh_cm", "species", "note"};
  const auto fix = [&](const char* header) {
    const auto faults = check_header(read(header), kKnown, {});
    return faults.size() == 1 ? faults[0].fix : "";
  };
  EXPECT_EQ(fix("dbh\n"), "Did you mean \"dbh_in\" or \"dbh_cm\"?");
  EXPECT_EQ(fix("speceis\n"), "Did you mean \"species\"?");
  EXPECT_EQ(fix("colour\n").find("Did you mean"), std::string::npos);
}

TEST(CsvHeader, CapitalsDoNotMatter) {
  constexpr std::string_view kKnown[] = {"dbh_in"};
  EXPECT_TRUE(check_header(read("DBH_in\n"), kKnown, kKnown).empty());
}

TEST(NearWord, CountsSlips) {
  // Derived: by hand, each from the definition of an insertion, deletion, change or swap.
  EXPECT_EQ(slips_between("oak", "oak"), 0);
  EXPECT_EQ(slips_between("oak", "oka"), 1);
  EXPECT_EQ(slips_between("oak", "oaks"), 1);
  EXPECT_EQ(slips_between("maple", "maqle"), 1);
  EXPECT_EQ(slips_between("", "abc"), 3);
  EXPECT_EQ(slips_between("red maple", "red mpale"), 1);
  EXPECT_GT(slips_between(std::string(65, 'a'), "a"), 60);
}

TEST(NearWord, OffersTheNearestOnly) {
  constexpr std::string_view kWords[] = {"den", "dead", "deed"};
  EXPECT_EQ(near_words("deen", kWords), (std::vector<std::string>{"den", "deed"}));
  EXPECT_EQ(near_words("DEAD", kWords), std::vector<std::string>{"dead"});
  EXPECT_TRUE(near_words("xy", kWords).empty());
  EXPECT_TRUE(near_words("", kWords).empty());
}

}  // namespace
}  // namespace oaklight
