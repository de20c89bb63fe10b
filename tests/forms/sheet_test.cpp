// What the printed sheets ask for, held against what the import takes.
#include "core/forms/sheet.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/base/csv_text.hpp"
#include "tests/forms/cruise_files.hpp"
#include "tests/support/readings.hpp"

namespace oaklight {
namespace {

using test::good_files;
using test::import_files;
using test::tally_form;

/// Columns of one file that the sheets print, stand and plot of their head among them.
std::set<std::string> printed_columns(std::string_view record) {
  std::set<std::string> columns;
  for (const SheetPart part : kSheetParts) {
    if (record_of(part) != record) continue;
    for (const Field* field : printed_fields(tally_form(), part)) columns.insert(field->column.us);
  }
  if (record == "trees" || record == "regeneration") columns.insert({"stand", "plot"});
  return columns;
}

/// A CSV with the columns that are printed and no others, as it would be typed in from the sheets;
/// what the text does not have stays empty.
std::string typed_in(const std::string& text, std::string_view record) {
  const auto rows = read_csv(text, "csv").value();
  const auto& header = rows.front().cells;
  const std::set<std::string> columns = printed_columns(record);
  std::vector<std::string> head(columns.begin(), columns.end());
  std::string typed = csv_record(head);
  for (std::size_t r = 1; r < rows.size(); ++r) {
    std::vector<std::string> cells;
    for (const std::string& column : head) {
      const auto at = std::find(header.begin(), header.end(), column);
      cells.push_back(at == header.end()
                          ? ""
                          : csv_cell(rows[r].cells[static_cast<std::size_t>(at - header.begin())]));
    }
    typed += csv_record(cells);
  }
  return typed;
}

TEST(Sheet, EachFieldPrintedIsAColumnThatTheImportTakes) {
  CruiseFiles files = good_files();
  for (const auto& [slot, record] :
       {std::pair(&CruiseFiles::plots, "plots"), std::pair(&CruiseFiles::trees, "trees"),
        std::pair(&CruiseFiles::regeneration, "regeneration"),
        std::pair(&CruiseFiles::crop_trees, "crop_trees")}) {
    (files.*slot)->text = typed_in((files.*slot)->text, record);
  }
  const CruiseImport typed = import_files(files);
  ASSERT_TRUE(typed.faults.empty()) << to_text(typed.faults.front());
  EXPECT_EQ(test::dump(typed.data), test::dump(import_files(good_files()).data))
      << "the sheets ask for everything that the example of each file holds";
}

TEST(Sheet, EachFieldThatARowCannotDoWithoutIsPrinted) {
  for (const char* record : {"plots", "trees", "regeneration", "crop_trees"}) {
    const auto columns = printed_columns(record);
    const RecordForm* form = tally_form().find_record(record);
    ASSERT_NE(form, nullptr);
    int needed = 0;
    for (const Field& field : form->fields) {
      if (!field.required && !field.required_when) continue;
      ++needed;
      EXPECT_TRUE(columns.contains(field.column.us)) << record << " " << field.name;
    }
    EXPECT_GT(needed, 2) << record;
  }
}

TEST(Sheet, AFieldThatTheFormLeavesOutIsNotPrinted) {
  Form form = tally_form();
  for (RecordForm& record : form.records) {
    std::erase_if(record.fields, [](const Field& field) { return field.name == "dieback_pct"; });
  }
  for (const SheetPart part : kSheetParts) {
    for (const Field* field : printed_fields(form, part)) EXPECT_NE(field->name, "dieback_pct");
  }
}

TEST(Sheet, ClassesBeginWhereTheirMiddleIsNoThinnerThanTheSmallestTree) {
  EXPECT_EQ(sheet_classes(std::nullopt, UnitSystem::us).first, 2);
  EXPECT_FALSE(sheet_classes(std::nullopt, UnitSystem::us).by_line_below.has_value());
  // Typed in as the middle of its class, a tree of 4.7 in would come out under 4.6 in.
  const SheetClasses from_4_6 = sheet_classes(test::dbh_in(4.6), UnitSystem::us);
  EXPECT_EQ(from_4_6.first, 6);
  EXPECT_DOUBLE_EQ(from_4_6.by_line_below.value(), 5.0);
  const SheetClasses from_5 = sheet_classes(test::dbh_in(5.0), UnitSystem::us);
  EXPECT_EQ(from_5.first, 6);
  EXPECT_FALSE(from_5.by_line_below.has_value());
  const SheetClasses metric =
      sheet_classes(Dbh::from_tenths(115, UnitSystem::metric).value(), UnitSystem::metric);
  EXPECT_EQ(metric.first, 15);
  EXPECT_EQ(metric.step, 5);
  EXPECT_DOUBLE_EQ(metric.by_line_below.value(), 12.5);
}

TEST(Sheet, ADotTallyIsTypedInByItsClasses) {
  CruiseFiles files;
  files.plots = {"plots.csv",
                 "cruise,stand,plot,status,baf_ft2_ac,min_dbh_in\nrain,Ridge,1,measured,10,4.6\n"};
  const SheetClasses classes = sheet_classes(test::dbh_in(4.6), UnitSystem::us);
  std::string text = "stand,plot,species,dbh_in,stems\n";
  for (int size = classes.first; size < 30; size += classes.step) {
    text += "Ridge,1,white oak," + std::to_string(size) + ",3\n";
  }
  files.trees = {"trees.csv", text};
  files.stands = good_files().stands;
  const CruiseImport read = import_files(files);
  ASSERT_TRUE(read.faults.empty()) << to_text(read.faults.front());
  EXPECT_EQ(read.data.trees.front().stems, 3);
}

}  // namespace
}  // namespace oaklight
