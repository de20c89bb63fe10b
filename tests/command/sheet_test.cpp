// Sheets to print, from a tract and from a form alone.
#include <gtest/gtest.h>

#include "tests/command/program.hpp"
#include "tests/support/places.hpp"

namespace oaklight::test {
namespace {

std::string text_of(const std::filesystem::path& pdf) {
  const Ran text = run_program("pdftotext -layout " + pdf.string() + " -");
  EXPECT_EQ(text.exit_code, 0) << text.errors;
  return text.out;
}

TEST(Sheet, OfTheDemoTractKnowsItsCruise) {
  const DemoTract demo;
  const auto pdf = demo.folder / "sheets.pdf";
  const Ran run = oaklight("sheet " + demo.tract + " " + pdf.string() + " --paper a4");
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const std::string text = text_of(pdf);
  for (const char* words : {"2026 points", "DEMO: invented tract", "Plot sheet", "Crop tree card",
                            "Seedlings", "red maple"}) {
    EXPECT_NE(text.find(words), std::string::npos) << words;
  }
}

TEST(Sheet, ForEachPlotNeedsPlannedPlots) {
  const DemoTract demo;
  const std::string call =
      "sheet " + demo.tract + " " + (demo.folder / "sheets.pdf").string() + " --each-plot";
  EXPECT_EQ(oaklight(call).exit_code, 4) << "all plots of the demo tract were visited";
  const auto folder = demo.folder / "next";
  std::filesystem::create_directory(folder);
  write_bytes(folder / "plots.csv",
              "cruise,stand,plot,status,baf_ft2_ac,min_dbh_in,date\n"
              "2031 points,Upland,U01,planned,10,3.0,2031-06-09\n"
              "2031 points,Upland,U02,planned,10,3.0,2031-06-09\n");
  ASSERT_EQ(oaklight("import " + demo.tract + " " + folder.string()).exit_code, 0);
  ASSERT_EQ(oaklight(call).exit_code, 0);
  const std::string text = text_of(demo.folder / "sheets.pdf");
  EXPECT_NE(text.find("U01"), std::string::npos);
  EXPECT_NE(text.find("U02"), std::string::npos);
  EXPECT_NE(text.find("2031 points"), std::string::npos);
}

TEST(Sheet, OfAFormAloneIsBlank) {
  const TempDir folder;
  const auto pdf = folder / "blank.pdf";
  const std::string form = source_path("forms/tally.form.json");
  const Ran run = oaklight("sheet --metric --form " + form + " " + pdf.string());
  ASSERT_EQ(run.exit_code, 0) << run.errors;
  const std::string text = text_of(pdf);
  EXPECT_NE(text.find("baf_m2_ha"), std::string::npos);
  EXPECT_EQ(text.find("baf_ft2_ac"), std::string::npos);
}

TEST(Sheet, AWrongCallSaysWhatIsMissing) {
  const TempDir folder;
  EXPECT_EQ(oaklight("sheet " + (folder / "a.pdf").string()).exit_code, 2);
  EXPECT_EQ(oaklight("sheet nowhere.gpkg " + (folder / "a.pdf").string()).exit_code, 3);
  write_bytes(folder / "bad.json", "{}");
  EXPECT_EQ(
      oaklight("sheet --form " + (folder / "bad.json").string() + " " + (folder / "a.pdf").string())
          .exit_code,
      1);
  EXPECT_FALSE(std::filesystem::exists(folder / "a.pdf")) << "nothing is written then";
}

}  // namespace
}  // namespace oaklight::test
