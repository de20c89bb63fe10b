#include "core/base/csv_text.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>

namespace oaklight {
namespace {

using testing::ElementsAre;

std::vector<std::vector<std::string>> cells_of(std::string_view text) {
  const auto rows = read_csv(text, "x.csv");
  EXPECT_TRUE(rows) << (rows ? "" : to_text(rows.error()));
  std::vector<std::vector<std::string>> cells;
  if (rows) {
    for (const CsvRow& row : *rows) cells.push_back(row.cells);
  }
  return cells;
}

// The seven rules and the examples of RFC 4180 section 2.
TEST(CsvText, ReadsWhatRfc4180Allows) {
  EXPECT_THAT(cells_of("aaa,bbb\r\nzzz,yyy\r\n"),
              ElementsAre(ElementsAre("aaa", "bbb"), ElementsAre("zzz", "yyy")));
  EXPECT_THAT(cells_of("aaa,bbb"), ElementsAre(ElementsAre("aaa", "bbb")));
  EXPECT_THAT(cells_of("\"aaa\",\"b\r\nbb\",\"c\"\"c\""),
              ElementsAre(ElementsAre("aaa", "b\r\nbb", "c\"c")));
  EXPECT_THAT(cells_of(" a , b "), ElementsAre(ElementsAre(" a ", " b ")));
  EXPECT_THAT(cells_of("a,,\n"), ElementsAre(ElementsAre("a", "", "")));
}

TEST(CsvText, PassesOverByteOrderMarkAndEmptyLines) {
  const auto rows = read_csv(
      "\xEF\xBB\xBF"
      "a,b\n\n1,2\n",
      "x.csv");
  ASSERT_TRUE(rows);
  ASSERT_EQ(rows->size(), 2U);
  EXPECT_EQ(rows->front().cells.front(), "a");
  EXPECT_EQ(rows->back().line, 3);
}

TEST(CsvText, CountsLinesInsideQuotedCells) {
  const auto rows = read_csv("a\n\"1\n2\"\n3\n", "x.csv");
  ASSERT_TRUE(rows);
  EXPECT_EQ(rows->at(1).line, 2);
  EXPECT_EQ(rows->at(2).line, 4);
}

TEST(CsvText, RefusesBrokenQuotesAndSaysWhere) {
  const auto open = read_csv("a,b\n1,\"2\n3,4\n", "trees.csv");
  ASSERT_FALSE(open);
  EXPECT_EQ(open.error().code, ErrorCode::bad_csv);
  EXPECT_EQ(open.error().where, "trees.csv:2");
  const auto tail = read_csv("a\n\"b\"c\n", "trees.csv");
  ASSERT_FALSE(tail);
  EXPECT_EQ(tail.error().where, "trees.csv:2");
  const auto inside = read_csv("a\nb\"c\n", "trees.csv");
  ASSERT_FALSE(inside);
  EXPECT_EQ(inside.error().where, "trees.csv:2");
}

TEST(CsvText, AnEmptyTextHasNoRows) { EXPECT_TRUE(cells_of("").empty()); }

TEST(CsvTable, FindsCellsByTheNameOfTheirColumn) {
  constexpr std::array<std::string_view, 2> kNeeded = {"b", "a"};
  const auto table = CsvTable::read("a,b,c\n1,2,3\n4,5,6\n", "t.csv", kNeeded);
  ASSERT_TRUE(table);
  ASSERT_EQ(table->size(), 2U);
  EXPECT_EQ(table->cell(1, "b"), "5");
  EXPECT_EQ(table->place(1, "b"), "t.csv:3:b");
}

TEST(CsvTable, RefusesMissingColumnsAndRaggedLines) {
  constexpr std::array<std::string_view, 1> kNeeded = {"b"};
  const auto without = CsvTable::read("a,c\n1,2\n", "t.csv", kNeeded);
  ASSERT_FALSE(without);
  EXPECT_EQ(without.error().code, ErrorCode::bad_csv);
  const auto ragged = CsvTable::read("a,b\n1,2\n1,2,3\n", "t.csv", kNeeded);
  ASSERT_FALSE(ragged);
  EXPECT_EQ(ragged.error().where, "t.csv:3");
  EXPECT_FALSE(CsvTable::read("", "t.csv", kNeeded));
}

TEST(CsvText, QuotesOnlyWhatNeedsIt) {
  EXPECT_EQ(csv_cell("red oak"), "red oak");
  EXPECT_EQ(csv_cell("oak, red"), "\"oak, red\"");
  EXPECT_EQ(csv_cell("12\" oak"), "\"12\"\" oak\"");
  EXPECT_EQ(csv_cell("-82.5"), "-82.5");
}

TEST(CsvText, TypedTextCannotBecomeAFormula) {
  EXPECT_EQ(safe_csv_cell("=cmd|' /C calc'!A0"), "'=cmd|' /C calc'!A0");
  EXPECT_EQ(safe_csv_cell("+1"), "'+1");
  EXPECT_EQ(safe_csv_cell("-1"), "'-1");
  EXPECT_EQ(safe_csv_cell("@x"), "'@x");
  EXPECT_EQ(safe_csv_cell("\tx"), "'\tx");
  EXPECT_EQ(safe_csv_cell("\r=1"), "\"'\r=1\"");
  EXPECT_EQ(safe_csv_cell("=1,2"), "\"'=1,2\"");
  EXPECT_EQ(safe_csv_cell("\xEF\xBC\x9D"
                          "1"),
            "'\xEF\xBC\x9D"
            "1")
      << "a wide equals sign";
  EXPECT_EQ(safe_csv_cell("'=1"), "''=1") << "so that one apostrophe taken off gives the text back";
  EXPECT_EQ(safe_csv_cell("'tis"), "'tis");
  EXPECT_EQ(safe_csv_cell("a=b"), "a=b");
  EXPECT_EQ(safe_csv_cell(""), "");
}

TEST(CsvText, ARecordEndsInCrlf) {
  const std::vector<std::string> cells = {"a", csv_cell("b,c")};
  EXPECT_EQ(csv_record(cells), "a,\"b,c\"\r\n");
}

}  // namespace
}  // namespace oaklight
