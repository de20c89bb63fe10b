// Planning a cruise from the command line: outlines, design, route, sheet.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "core/forms/outlines.hpp"
#include "tests/command/program.hpp"
#include "tests/support/bad_outlines.hpp"
#include "tests/support/places.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

class Plan : public testing::Test {
 protected:
  Plan() : tract_(demo_.tract) {}
  std::string file(const std::string& name, const std::string& bytes) {
    const auto path = demo_.folder / name;
    write_bytes(path, bytes);
    return path.string();
  }
  Json json(const std::string& words) {
    const Ran ran = oaklight(words + " --json");
    EXPECT_EQ(ran.exit_code, 0) << ran.errors << ran.out;
    return Json::parse(ran.out, nullptr, false);
  }
  /// The stands of the demo tract by another program's hand.
  std::string by_ogr(const std::string& name, const std::string& how) {
    const auto path = (demo_.folder / name).string();
    const Ran ran =
        run_program("ogr2ogr " + how + " " + path + " " + (demo_plots() / "map.geojson").string());
    EXPECT_EQ(ran.exit_code, 0) << ran.errors;
    return path;
  }

  DemoTract demo_;
  std::string tract_;
};

TEST_F(Plan, BadOutlinesAreRefusedAndNothingIsWritten) {
  const std::string before = bytes_of(tract_);
  for (const BadOutline& bad : bad_outlines()) {
    const Ran ran = oaklight("boundary " + tract_ + " " + file("land" + bad.ending, bad.text));
    EXPECT_NE(ran.exit_code, 0) << bad.name;
    EXPECT_NE(ran.exit_code, 139) << bad.name;
    EXPECT_NE(ran.errors.find("land" + bad.ending), std::string::npos) << bad.name << ran.errors;
    EXPECT_TRUE(ran.out.empty()) << bad.name;
  }
  EXPECT_EQ(bytes_of(tract_), before);
}

TEST_F(Plan, OutlinesComeFromGeoPackageAndShapefileInAnySystem) {
  const std::string sql = " -sql \"SELECT * FROM map WHERE kind = 'stand'\" -dialect SQLite ";
  const Json geojson = json("boundary " + tract_ + " " + (demo_plots() / "map.geojson").string());
  ASSERT_EQ(geojson.at("outlines").size(), 3U);
  for (const auto& [name, how] :
       {std::pair("utm.shp", sql + "-f 'ESRI Shapefile' -nlt POLYGON -t_srs EPSG:32617"),
        std::pair("land.gpkg", sql + "-f GPKG -nlt POLYGON -nln land")}) {
    const Json got = json("boundary " + tract_ + " " + by_ogr(name, how) + " --dry-run");
    ASSERT_EQ(got.at("outlines").size(), 3U) << name;
    EXPECT_EQ(got.at("written"), false);
    for (std::size_t i = 0; i < 3; ++i) {
      const Json& one = got.at("outlines").at(i);
      const Json& other = geojson.at("outlines").at(i);
      EXPECT_EQ(one.at("stand"), other.at("stand")) << name;
      // A Shapefile in metres keeps its corners to a tenth of a millimetre or better.
      EXPECT_NEAR(one.at("drawn_acres").get<double>(), other.at("drawn_acres").get<double>(), 1e-3);
      EXPECT_EQ(one.at("added"), false);
    }
  }
}

TEST_F(Plan, BadMapFilesAreRefusedAndNothingIsWritten) {
  const std::string before = bytes_of(tract_);
  const std::string sql = " -sql \"SELECT * FROM map WHERE kind = 'stand'\" -dialect SQLite ";
  const std::string shape = by_ogr("a.shp", sql + "-f 'ESRI Shapefile' -nlt POLYGON");
  const auto refused = [&](const std::string& path, const char* says) {
    const Ran ran = oaklight("boundary " + tract_ + " " + path);
    EXPECT_TRUE(ran.exit_code == 1 || ran.exit_code == 3 || ran.exit_code == 4) << ran.exit_code;
    EXPECT_NE(ran.errors.find(says), std::string::npos) << ran.errors;
  };
  refused(file("garbage.gpkg", "not a database"), "no GeoPackage and no Shapefile");
  refused(file("garbage.shp", "not a shape"), "no GeoPackage and no Shapefile");
  std::filesystem::remove(demo_.folder / "a.prj");
  refused(shape, "what its coordinates mean");
  const std::string lines =
      by_ogr("lines.gpkg", "-f GPKG -nlt LINESTRING -where \"kind = 'stream'\"");
  refused(lines, "No layer of the file holds polygons");
  std::string ring = "-82.5,38.1 ";
  for (int i = 0; i < 25'000; ++i) ring += "-82.4" + std::to_string(10000 + i) + ",38.1 ";
  const std::string big = file("big.geojson", geojson_of("Big", {ring + "-82.45,38.2 -82.5,38.1"}));
  const std::string huge = (demo_.folder / "huge.gpkg").string();
  ASSERT_EQ(run_program("ogr2ogr -f GPKG " + huge + " " + big).exit_code, 0);
  refused(huge, "more than 5,000 positions");
  EXPECT_EQ(bytes_of(tract_), before);
}

TEST_F(Plan, ADesignIsWrittenOnceAndComesBackWithItsSeed) {
  const std::string words =
      "design " + tract_ + " --cruise Spring --error 15 --azimuth 45 --seed 7";
  const Json dry = json(words + " --dry-run");
  const Json made = json(words);
  EXPECT_EQ(dry.at("stands"), made.at("stands"));
  EXPECT_EQ(made.at("seed"), 7);
  EXPECT_EQ(made.at("stands").size(), 3U);
  EXPECT_EQ(made.at("stands").at(0).at("cv_source"), "from 15 plots");
  EXPECT_EQ(oaklight("check " + tract_).exit_code, 0);
  const Ran again = oaklight(words);
  EXPECT_EQ(again.exit_code, 1);
  EXPECT_NE(again.errors.find("not visited yet"), std::string::npos);
  const Ran told = oaklight("design " + tract_ + " --cruise Next --plots 30 --dry-run");
  EXPECT_NE(told.out.find("as if the plots lay at random"), std::string::npos) << told.out;
}

TEST_F(Plan, ARouteSaysTrueAndMagneticAndWritesItsSheet) {
  EXPECT_EQ(oaklight("route " + tract_).exit_code, 4) << "no plot is planned in the demo tract";
  json("design " + tract_ + " --cruise Spring --plots 12 --seed 7");
  const auto out = demo_.folder / "plan";
  const Json route = json("route " + tract_ + " --day 2026-05-04 --unit chains --paces-100-ft 40" +
                          " --out " + out.string());
  EXPECT_GT(route.at("plots").get<int>(), 5);
  const Json& leg = route.at("stops").at(0).at("legs").at(0);
  EXPECT_FALSE(leg.at("magnetic").get<std::string>().empty());
  EXPECT_NE(leg.at("true"), leg.at("magnetic")) << "declination is some 7 degrees west in Ohio";
  EXPECT_TRUE(leg.at("distance").get<std::string>().ends_with(" ch"));
  EXPECT_TRUE(bytes_of(out / "plan.pdf").starts_with("%PDF"));
  const Ran text = run_program("pdftotext -layout " + (out / "plan.pdf").string() + " -");
  for (const char* words : {"Before you go", "Map of the walk", "TRUE", "MAGNETIC", "Declination",
                            "back to the start"}) {
    EXPECT_NE(text.out.find(words), std::string::npos) << words;
  }
  // GDAL reads the waypoints, as many as there are plots.
  const Ran gpx = run_program("ogrinfo -so " + (out / "plots.gpx").string() + " waypoints");
  EXPECT_NE(gpx.out.find("Feature Count: " + std::to_string(route.at("plots").get<int>())),
            std::string::npos)
      << gpx.out;
}

// tests/run takes the published schema out of a Debian package; where it could not, ctest says that
// this was skipped.
TEST_F(Plan, ARouteFitsThePublishedGpxSchema) {
  const std::string schema = source_path(".build/gpx11.xsd");
  if (!std::filesystem::exists(schema))
    GTEST_SKIP() << schema << " could not be fetched by .ci/gpx_schema";
  json("design " + tract_ + " --cruise Spring --plots 12 --seed 7");
  const auto out = demo_.folder / "plan";
  json("route " + tract_ + " --day 2026-05-04 --out " + out.string());
  const Ran valid =
      run_program("xmllint --noout --schema " + schema + " " + (out / "plots.gpx").string());
  EXPECT_EQ(valid.exit_code, 0) << valid.errors;
}

TEST_F(Plan, ARouteOutOfDateSaysSo) {
  json("design " + tract_ + " --cruise Spring --plots 12 --seed 7");
  const Ran late = oaklight("route " + tract_ + " --day 2031-05-04");
  EXPECT_NE(late.out.find("OUT OF DATE"), std::string::npos) << late.out;
}

}  // namespace
}  // namespace oaklight::test
