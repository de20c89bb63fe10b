// What the program says and leaves alone when the call or the input is wrong.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/command/program.hpp"

namespace oaklight::test {
namespace {

/// Copies the demo tract's files into a folder of the test's own.
void copy_demo_to(const TempDir& folder) {
  for (const char* file : {"tract.csv", "stands.csv", "plots.csv", "trees.csv", "regeneration.csv",
                           "crop_trees.csv", "map.geojson"}) {
    std::filesystem::copy_file(demo_plots() / file, folder / file);
  }
}

void replace_first(const std::filesystem::path& path, const std::string& from,
                   const std::string& to) {
  std::string text = bytes_of(path);
  const auto at = text.find(from);
  ASSERT_NE(at, std::string::npos) << from;
  write_bytes(path, text.replace(at, from.size(), to));
}

TEST(Refusals, HelpNamesEachSubcommandAndShowsAnExample) {
  const Ran help = oaklight("--help");
  EXPECT_EQ(help.exit_code, 0);
  for (const std::string name : {"import", "estimate", "recommend", "explain", "packet", "check"}) {
    EXPECT_NE(help.out.find(name), std::string::npos) << name;
    const Ran own = oaklight(name + " --help");
    EXPECT_EQ(own.exit_code, 0);
    EXPECT_NE(own.out.find("Example: oaklight " + name), std::string::npos) << name;
    EXPECT_NE(own.out.find("--json"), std::string::npos) << name;
  }
}

TEST(Refusals, AWrongCallEndsInTwo) {
  EXPECT_EQ(oaklight("").exit_code, 2);
  EXPECT_EQ(oaklight("fell everything").exit_code, 2);
  EXPECT_EQ(oaklight("packet x.gpkg --for neighbour").exit_code, 2);
  EXPECT_EQ(oaklight("estimate x.gpkg --level 2").exit_code, 2);
}

// "nan" is within no bounds, and no figure comes of it.
TEST(Refusals, WhatIsNoNumberIsNoValueOfAnOption) {
  for (const char* call :
       {"estimate x.gpkg --level", "estimate x.gpkg --goal", "compare x.gpkg --level",
        "compare x.gpkg --years", "stumps x.gpkg --level", "design x.gpkg --cruise A --error",
        "design x.gpkg --cruise A --level", "design x.gpkg --cruise A --cv",
        "design x.gpkg --cruise A --mean-dbh", "design x.gpkg --cruise A --azimuth",
        "design x.gpkg --cruise A --minutes-a-plot", "route x.gpkg --start-lon -82 --start-lat",
        "route x.gpkg --start-lat 39 --start-lon"}) {
    for (const char* value : {"nan", "-nan"}) {
      const Ran run = oaklight(std::string(call) + "=" + value);
      EXPECT_EQ(run.exit_code, 2) << call << " " << value << run.out << run.errors;
      EXPECT_NE(run.errors.find(std::string(value) + " is no number"), std::string::npos)
          << call << ": " << run.errors;
    }
  }
}

TEST(Refusals, AMissingTractFileEndsInThreeAndSaysWhich) {
  const Ran run = oaklight("estimate /nowhere/hollow.gpkg");
  EXPECT_EQ(run.exit_code, 3);
  EXPECT_NE(run.errors.find("/nowhere/hollow.gpkg"), std::string::npos) << run.errors;
}

TEST(Refusals, AFileOfAnotherKindIsRefusedAndUnchanged) {
  const TempDir folder;
  write_bytes(folder / "notes.gpkg", "not a database at all");
  const Ran run = oaklight("recommend " + (folder / "notes.gpkg").string());
  EXPECT_EQ(run.exit_code, 3);
  EXPECT_EQ(bytes_of(folder / "notes.gpkg"), "not a database at all");
}

TEST(Refusals, FaultsAreListedWithTheirPlacesAndNothingIsWritten) {
  const TempDir folder;
  copy_demo_to(folder);
  replace_first(folder / "trees.csv", "white oak", "white oakk");
  replace_first(folder / "plots.csv", "measured", "measred");
  const std::string tract = (folder / "hollow.gpkg").string();
  const Ran run = oaklight("import " + tract + " " + folder.path().string());
  EXPECT_EQ(run.exit_code, 1);
  EXPECT_NE(run.errors.find("trees.csv:"), std::string::npos) << run.errors;
  EXPECT_NE(run.errors.find("plots.csv:"), std::string::npos) << run.errors;
  EXPECT_NE(run.errors.find("Nothing was imported."), std::string::npos) << run.errors;
  EXPECT_FALSE(std::filesystem::exists(tract));

  const Ran json = oaklight("import --json " + tract + " " + folder.path().string());
  EXPECT_EQ(json.exit_code, 1);
  const auto errors = nlohmann::json::parse(json.out).at("errors");
  EXPECT_GE(errors.size(), 2U);
  for (const auto& error : errors) {
    EXPECT_FALSE(error.at("where").get<std::string>().empty());
    EXPECT_FALSE(error.at("fix").get<std::string>().empty());
  }
}

TEST(Refusals, ImportingTheSameFilesTwiceIsRefusedAndKeepsTheFirst) {
  const DemoTract demo;
  const std::string before = oaklight("estimate --json " + demo.tract).out;
  const Ran again = oaklight("import " + demo.tract + " " + demo_plots().string());
  EXPECT_EQ(again.exit_code, 1);
  EXPECT_EQ(oaklight("estimate --json " + demo.tract).out, before);
}

TEST(Refusals, AFileThatWouldBePassedOverIsNamed) {
  const TempDir folder;
  copy_demo_to(folder);
  std::filesystem::rename(folder / "map.geojson", folder / "Map.geojson");
  const Ran run =
      oaklight("import " + (folder / "hollow.gpkg").string() + " " + folder.path().string());
  EXPECT_NE(run.exit_code, 0);
  EXPECT_NE(run.errors.find("Call it map.geojson"), std::string::npos) << run.errors;
  EXPECT_FALSE(std::filesystem::exists(folder / "hollow.gpkg"));
}

TEST(Refusals, APacketWithoutMarksEndsInFour) {
  const TempDir folder;
  const std::string tract = (folder / "hollow.gpkg").string();
  ASSERT_EQ(oaklight("import " + tract + " " + demo_plots().string()).exit_code, 0);
  const Ran run = oaklight("packet " + tract + " --for logger --out " + folder.path().string());
  EXPECT_EQ(run.exit_code, 4);
  EXPECT_FALSE(std::filesystem::exists(folder / "logger.csv"));
}

TEST(Refusals, ADayThatIsNoDayIsRefused) {
  const DemoTract demo;
  const Ran run = oaklight("packet " + demo.tract + " --for logger --work-day 2026-02-30 --out " +
                           demo.folder.path().string());
  EXPECT_EQ(run.exit_code, 1);
  EXPECT_NE(run.errors.find("2026-02-30"), std::string::npos) << run.errors;
}

}  // namespace
}  // namespace oaklight::test
