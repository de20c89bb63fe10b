#include "core/store/row_text.hpp"

#include <gtest/gtest.h>

#include <array>
#include <limits>
#include <nlohmann/json.hpp>

namespace oaklight::store {
namespace {

const std::array<std::string, 7> kColumns = {"n", "c", "b", "empty", "g", "row_crc", "fid"};
const Row kRow = {std::int64_t{-7}, 12.5,           std::string("a\nb"), {}, Blob{"GP\xff"},
                  std::int64_t{99}, std::int64_t{3}};
const std::string kText = "tree\nb=t3:a\nb\nc=r12.5\ng=b4750ff\nn=i-7\n";

// The form is part of the file format: schema/README.md, "Checksum of a row".
TEST(RowText, IsTheDocumentedOne) { EXPECT_EQ(canonical_text("tree", kColumns, kRow), kText); }

// Derived: CRC-32 of that text by Python's zlib.crc32.
TEST(RowText, ChecksumIsTheCommonCrc32) {
  EXPECT_EQ(row_crc("tree", kColumns, kRow), 511387549);
  EXPECT_EQ(row_crc("tree", {}, {}), 3171264050);
}

TEST(RowText, ColumnOrderAndColumnsWithoutValueChangeNothing) {
  const std::array<std::string, 6> columns = {"later", "g", "empty", "b", "c", "n"};
  const Row row = {{}, kRow[4], {}, kRow[2], kRow[1], kRow[0]};
  EXPECT_EQ(canonical_text("tree", columns, row), kText);
}

TEST(RowText, EveryCellAndTheTableCount) {
  const auto whole = row_crc("tree", kColumns, kRow);
  EXPECT_NE(row_crc("regen", kColumns, kRow), whole);
  for (std::size_t i = 0; i < kRow.size(); ++i) {
    Row other = kRow;
    other[i] = std::string("other");
    const bool outside = kColumns[i] == "row_crc" || kColumns[i] == "fid";
    EXPECT_EQ(row_crc("tree", kColumns, other) == whole, outside) << kColumns[i];
  }
}

TEST(RowText, NumbersAreWrittenWithTheFewestDigitsThatReadBack) {
  const std::array<std::string, 1> column = {"x"};
  const auto text = [&](double x) { return canonical_text("t", column, {x}); };
  EXPECT_EQ(text(0.1), "t\nx=r0.1\n");
  EXPECT_EQ(text(10.0), "t\nx=r10\n");
  EXPECT_EQ(text(-81.12345678), "t\nx=r-81.12345678\n");
  EXPECT_EQ(text(1.0 / 3.0), "t\nx=r0.3333333333333333\n");
}

TEST(RowText, JsonGivesEveryCellBack) {
  Row row = kRow;
  row[1] = 1.0 / 3.0;
  row[2] = std::string("quote \" back \\ null \0 tree \xF0\x9F\x8C\xB3", 27);
  row[5] = std::numeric_limits<std::int64_t>::max();
  const auto json = to_json(kColumns, row);
  ASSERT_TRUE(json);
  EXPECT_EQ(from_json(*json, kColumns, Row(kColumns.size())).value(), row);
}

// The history is written by hand where a text needs no escape; byte for byte as the library would.
TEST(RowText, JsonIsThatOfTheLibrary) {
  const std::array<std::string, 2> columns = {"wide \"name\"", "a"};
  const auto same = [&](const Value& cell, const nlohmann::json& theirs) {
    const nlohmann::json object = {{columns[0], theirs}, {columns[1], nullptr}};
    EXPECT_EQ(to_json(columns, {cell, {}}).value(), object.dump());
  };
  for (int c = 0; c < 0x80; ++c) {
    const std::string text{'x', static_cast<char>(c), 'y'};
    same(text, text);
  }
  for (const char* text : {"", "\xC3\xA9", "\xE2\x80\xA8", "\xF0\x9F\x8C\xB3"})
    same(std::string(text), text);
  for (const double x : {0.0, -0.0, 0.1, 1e16, 1e-7, 1.0 / 3.0, std::numeric_limits<double>::max()})
    same(x, x);
  for (const std::int64_t x :
       {std::int64_t{0}, std::int64_t{-1}, std::numeric_limits<std::int64_t>::min()})
    same(x, x);
  same(Blob{"GP\xff"}, {{"bytes", "4750ff"}});
  EXPECT_EQ(to_json({}, {}).value(), "{}");
}

TEST(RowText, JsonKeepsWholeNumbersAndRealOnesApart) {
  const std::array<std::string, 2> columns = {"i", "r"};
  const Row row = {std::int64_t{10}, 10.0};
  EXPECT_EQ(to_json(columns, row).value(), R"({"i":10,"r":10.0})");
  EXPECT_EQ(from_json(R"({"i":10,"r":10.0})", columns, Row(2)).value(), row);
}

TEST(RowText, JsonOfAnOlderStepLeavesNewerColumnsAsTheyAre) {
  const std::array<std::string, 2> columns = {"a", "newer"};
  const auto row = from_json(R"({"a":1})", columns, {std::int64_t{0}, std::string("kept")});
  EXPECT_EQ(row.value(), (Row{std::int64_t{1}, std::string("kept")}));
}

TEST(RowText, RefusesTextThatIsNotUtf8) {
  const std::array<std::string, 1> column = {"x"};
  const auto json = to_json(column, {std::string("\xff")});
  ASSERT_FALSE(json);
  EXPECT_EQ(json.error().code, ErrorCode::not_a_choice);
}

TEST(RowText, CallsJsonThatIsNoRowDamage) {
  const std::array<std::string, 1> column = {"x"};
  for (const char* text : {"", "[]", "{", R"({"x":[1]})", R"({"x":true})", R"({"x":{"bytes":"4"}})",
                           R"({"x":{"bytes":"4G"}})", R"({"x":{"bytes":1}})"}) {
    const auto row = from_json(text, column, Row(1));
    ASSERT_FALSE(row) << text;
    EXPECT_EQ(row.error().code, ErrorCode::damaged);
  }
}

}  // namespace
}  // namespace oaklight::store
