// The printed sheets: every field of the form is there by label and column, nothing leaves the
// page, no words lie on words, and other programs read the PDF.
#include "core/paper/tally_sheet.hpp"

#include <algorithm>
#include <sstream>

#include "core/forms/read_form.hpp"
#include "tests/paper/paper_fixture.hpp"
#include "tests/support/places.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {
namespace {

class TallySheet : public PaperTest {
 protected:
  static SheetSet set() {
    const std::string text = bytes_of(source_path("forms/tally.form.json"));
    return {.form = read_form(text, "tally.form.json").value(),
            .tract = "Fernhollow",
            .given = {{"cruise", "2031 points"}, {"baf", "10"}, {"min_dbh", "4.6"}},
            .species = {"white oak", "northern red oak", "red maple", "yellow-poplar",
                        "pignut hickory", "American hornbeam, musclewood"},
            .min_dbh = dbh_in(4.6),
            .plots = {}};
  }
  static std::string joined(const SheetPage& page) {
    std::string all;
    for (const std::string& text : texts_of(page.drawing)) all += text;
    return all;
  }
  static std::string joined(const std::vector<SheetPage>& pages) {
    std::string all;
    for (const SheetPage& page : pages) all += joined(page);
    return all;
  }
};

TEST_F(TallySheet, EachFieldIsPrintedByTheNameOfItsColumn) {
  SheetSet metric = set();
  metric.system = UnitSystem::metric;
  for (const SheetSet& sheets : {set(), metric}) {
    const std::string all = joined(tally_sheets(sheets, PaperSize::letter));
    for (const SheetPart part : kSheetParts) {
      const auto fields = printed_fields(sheets.form, part);
      EXPECT_FALSE(fields.empty());
      for (const Field* field : fields) {
        const std::string column = field->column.of(sheets.system);
        EXPECT_NE(all.find(column), std::string::npos) << column;
      }
    }
  }
}

TEST_F(TallySheet, WhatTheCruiseIsKnownToBeIsPrintedAlready) {
  const SheetSet sheets = set();
  const auto pages = tally_sheets(sheets, PaperSize::letter);
  const auto texts = texts_of(pages.front().drawing);
  for (const char* words : {"2031 points", "10", "4.6", "Fernhollow", "white oak"}) {
    EXPECT_NE(std::ranges::find(texts, words), texts.end()) << words;
  }
  EXPECT_NE(joined(pages.front()).find("So do trees from 4.6 to under 5.0 in"), std::string::npos);
}

TEST_F(TallySheet, TheCautionStandsAboveEverythingThatIsWritten) {
  for (const SheetPage& page : tally_sheets(set(), PaperSize::letter)) {
    const auto texts = texts_of(page.drawing);
    ASSERT_GT(texts.size(), 5U);
    EXPECT_EQ(texts[2].substr(0, 28), "Look up before you step in: ");
  }
}

TEST_F(TallySheet, NothingLeavesThePageAndNoWordsLieOnWords) {
  for (const PaperSize paper : {PaperSize::letter, PaperSize::a4}) {
    SheetSet sheets = set();
    sheets.demo = paper == PaperSize::a4;
    sheets.plots = {{"A stand with a name as long as sixty letters can be made to be", "U-17"}};
    for (const SheetPage& page : tally_sheets(sheets, paper)) {
      const QRectF sheet({0.0, 0.0}, page.size);
      std::vector<std::pair<QRectF, std::string>> words;
      for (const DrawingItem& item : page.drawing.items()) {
        EXPECT_TRUE(sheet.contains(box_of(item)));
        const auto* text = std::get_if<TextItem>(&item);
        if (text == nullptr) continue;
        EXPECT_GE(text->style.points, kSmallestText);
        const QRectF box = box_of(item).adjusted(0.5, 1.5, -0.5, -2.5);
        for (const auto& [other, other_words] : words) {
          EXPECT_FALSE(box.intersects(other)) << text->text.toStdString() << " on " << other_words;
        }
        words.emplace_back(box, text->text.toStdString());
      }
    }
  }
}

TEST_F(TallySheet, EachPlotHasItsSheetsWithItsLabel) {
  SheetSet sheets = set();
  sheets.plots = {{"Upland", "U01"}, {"Upland", "U02"}};
  const auto pages = tally_sheets(sheets, PaperSize::letter);
  ASSERT_EQ(pages.size(), 7U);  // head and tally, lines, seedlings for each; one card
  EXPECT_NE(joined(pages[0]).find("U01"), std::string::npos);
  EXPECT_NE(joined(pages[3]).find("U02"), std::string::npos);
  EXPECT_NE(joined(pages[6]).find("Sheet 7 of 7"), std::string::npos);
  sheets.seedlings = false;
  EXPECT_EQ(tally_sheets(sheets, PaperSize::letter).size(), 5U);
}

TEST_F(TallySheet, CellsAreLargeEnoughForAPencilInAGlove) {
  // Ours: 25 pt, a third of an inch, is the least height of a line that is written on.
  for (const SheetPage& page : tally_sheets(set(), PaperSize::letter)) {
    double least = 1000.0;
    for (const DrawingItem& item : page.drawing.items()) {
      const auto* path = std::get_if<PathItem>(&item);
      if (path == nullptr || !path->stroke || path->fill) continue;
      const QRectF box = path->path.boundingRect();
      if (box.width() > 30.0 && box.height() > 14.0) least = std::min(least, box.height());
    }
    EXPECT_GE(least, 24.0);
  }
}

TEST_F(TallySheet, OtherProgramsReadThePdf) {
  const TempDir folder;
  for (const auto& [paper, size] :
       {std::pair(PaperSize::letter, "612 x 792"), std::pair(PaperSize::a4, "595")}) {
    const auto pdf = sheet_pdf(set(), paper);
    ASSERT_TRUE(pdf) << to_text(pdf.error());
    write_bytes(folder / "sheet.pdf", *pdf);
    const Ran info = run_program("pdfinfo " + (folder / "sheet.pdf").string());
    EXPECT_EQ(info.exit_code, 0) << info.errors;
    EXPECT_NE(info.out.find("Pages:           4"), std::string::npos) << info.out;
    EXPECT_NE(info.out.find("Fernhollow: tally sheets"), std::string::npos) << info.out;
    EXPECT_NE(info.out.find(size), std::string::npos) << info.out;
    const Ran fonts = run_program("pdffonts " + (folder / "sheet.pdf").string());
    int embedded = 0;
    std::istringstream lines(fonts.out);
    for (std::string line; std::getline(lines, line);) {
      if (line.find("TrueType") == std::string::npos) continue;
      EXPECT_NE(line.find("Identity-H       yes"), std::string::npos) << line;
      ++embedded;
    }
    EXPECT_EQ(embedded, 2) << fonts.out;
    const Ran text = run_program("pdftotext -layout " + (folder / "sheet.pdf").string() + " -");
    for (const char* words : {"Look up before you step in", "Crop tree card", "baf_ft2_ac"}) {
      EXPECT_NE(text.out.find(words), std::string::npos) << words;
    }
  }
}

}  // namespace
}  // namespace oaklight::test
