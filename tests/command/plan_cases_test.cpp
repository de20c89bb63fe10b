// Planning a cruise with each of its options, and map files as people bring them: several layers,
// holes, parts, nothing drawn.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/command/demo_cases.hpp"
#include "tests/command/small_tract.hpp"

namespace oaklight::test {
namespace {

using Json = nlohmann::json;

class PlanCases : public DemoCases {
 protected:
  /// GeoJSON as a GeoPackage, by another program.
  std::string by_ogr(const std::string& name, const std::string& geojson,
                     const std::string& how) const {
    write_bytes(folder_ / "drawn.geojson", geojson);
    const std::string path = in_folder(name);
    const Ran ran = run_program("ogr2ogr -f GPKG -a_srs EPSG:4326 " + how + " " + path + " " +
                                in_folder("drawn.geojson"));
    EXPECT_EQ(ran.exit_code, 0) << ran.errors;
    return path;
  }
  static Ran boundary(const std::string& more) {
    return oaklight("boundary " + demo_->tract + " --dry-run " + more);
  }
  static Ran design(const std::string& more) {
    return oaklight("design " + demo_->tract + " --cruise Z --dry-run --seed 5 " + more);
  }
};

std::string features(const std::string& list) {
  return "{\"type\": \"FeatureCollection\", \"features\": [" + list + "]}";
}
std::string feature(const std::string& name, const std::string& geometry) {
  return "{\"type\": \"Feature\", \"properties\": {" + name + "}, \"geometry\": " + geometry + "}";
}

/// Two squares of a thousandth of a degree; the first has a hole of a fifth of its sides.
const std::string kParted = feature(R"("name": "Parted")",
                                    R"({"type": "MultiPolygon", "coordinates": [
  [[[-82.210, 39.350], [-82.209, 39.350], [-82.209, 39.351], [-82.210, 39.351], [-82.210, 39.350]],
   [[-82.2096, 39.3504], [-82.2096, 39.3506], [-82.2094, 39.3506], [-82.2094, 39.3504],
    [-82.2096, 39.3504]]],
  [[[-82.205, 39.350], [-82.204, 39.350], [-82.204, 39.351], [-82.205, 39.351],
    [-82.205, 39.350]]]]})");

TEST_F(PlanCases, PartsBecomeStandsAndHolesAreLeftOut) {
  const std::string map = by_ogr("map.gpkg", features(kParted + "," + feature("\"x\": 1", "null")),
                                 "-nln parts -nlt MULTIPOLYGON");
  const Json rows = Json::parse(boundary("--json " + map).out).at("outlines");
  ASSERT_EQ(rows.size(), 2U);
  EXPECT_EQ(rows.at(0).at("stand"), "Parted 1");
  EXPECT_EQ(rows.at(0).at("added"), true);
  EXPECT_TRUE(rows.at(0).at("stated_acres").is_null());
  // By hand: the hole is 1/5 x 1/5 of the square, which leaves 24/25 of it.
  EXPECT_NEAR(
      rows.at(0).at("drawn_acres").get<double>() / rows.at(1).at("drawn_acres").get<double>(), 0.96,
      1e-4);
  const Ran text = boundary(map);
  EXPECT_TRUE(says(text.out, "Parted 1: 2.3 acres drawn, a new stand\n"));
  EXPECT_TRUE(says(text.out, "each part is a stand of its own."));
  EXPECT_TRUE(says(text.out, "Nothing was written.\n"));
}

TEST_F(PlanCases, OfTwoLayersOneIsAskedFor) {
  const std::string map = by_ogr("map.gpkg", features(kParted), "-nln parts -nlt MULTIPOLYGON");
  by_ogr("map.gpkg", features(kParted), "-update -append -nln others -nlt MULTIPOLYGON");
  const Ran both = boundary(map);
  EXPECT_EQ(both.exit_code, 1);
  EXPECT_TRUE(says(both.errors, "Say which: --layer NAME. Its layers: parts, others."));
  EXPECT_EQ(boundary("--layer others " + map).exit_code, 0);
  const Ran unknown = boundary("--layer mine " + map);
  EXPECT_EQ(unknown.exit_code, 1);
  EXPECT_TRUE(says(unknown.errors, "The file has no layer \"mine\". Its layers: parts, others."));
}

TEST_F(PlanCases, AMapOfNothingOrOfTooMuchIsRefused) {
  const std::string nothing = features(feature("\"x\": 1", "null"));
  const std::string square =
      R"({"type": "Polygon", "coordinates": [[[-82.2, 39.3], [-82.1, 39.3], [-82.1, 39.4],
      [-82.2, 39.3]]]})";
  std::string many = feature("\"x\": 1", square);
  for (int i = 1; i < 501; ++i) many += "," + feature("\"x\": 1", square);
  const std::string pipe = in_folder("pipe.gpkg");
  ASSERT_EQ(run_program("mkfifo " + pipe).exit_code, 0);
  for (const auto& [path, words] : {std::pair(by_ogr("none.gpkg", nothing, "-nlt POLYGON"),
                                              "There is no outline in this file."),
                                    std::pair(by_ogr("many.gpkg", features(many), "-nlt POLYGON"),
                                              "The file draws 500 outlines or more."),
                                    std::pair(pipe, "There is no such file.")}) {
    const Ran ran = boundary(path);
    EXPECT_NE(ran.exit_code, 0) << path;
    EXPECT_TRUE(says(ran.errors, words));
    EXPECT_TRUE(ran.out.empty()) << ran.out;
  }
}

// The demo tract has 52 + 38 + 28 = 118 acres in three stands, 36 plots with trees between them.
TEST_F(PlanCases, EachGoalAndOptionOfADesign) {
  const struct {
    const char* options;
    const char* words;
  } kCalls[] = {
      // By hand: 0.2 x 52 = 10.4 and 0.2 x 38 = 7.6, rounded up.
      {"--plots-per-acre 0.2", "(11 wanted) on 52.0 acres"},
      {"--plots-per-acre 0.2", "(8 wanted) on 38.0 acres"},
      {"--error 20 --cv 40", "spread 40 %, as told"},
      {"--plots 12 --baf 20", "Cruise Z: point, BAF 20 ft2/ac, "},
      {"--plots 12 --plot-acres 0.1", "Cruise Z: fixed plot, 0.1 ac, "},
      // By hand: 12 plots by acres, 12 x 52 / 118 = 5.3, 3.9 and 2.8.
      {"--plots 12 --pattern random", "Cruise Z: point, BAF 15 ft2/ac, 13 plots, random, seed 5"},
      {"--plots 12 --pattern random", "Upland: 6 plots (6 wanted) on 52.0 acres; spread"},
      {"--plots 12", "Nothing was written. The same plots again: --seed 5"},
      {"--plots 4 --stand Cove", "Cruise Z: point, BAF 15 ft2/ac"},
      {"--plots 4 --stand Cove", "(4 wanted) on 38.0 acres"},
  };
  for (const auto& [options, words] : kCalls) {
    const Ran run = design(options);
    EXPECT_EQ(run.exit_code, 0) << options << run.errors;
    EXPECT_TRUE(says(run.out, words)) << options;
  }
  EXPECT_EQ(design("--plots 4 --stand Cove").out.find("Upland"), std::string::npos);
  // By hand: a factor of 15 reaches 8.696 / sqrt(15) = 2.245 ft for each inch, 9 in 20.2 ft.
  EXPECT_TRUE(says(design("--plots 12 --mean-dbh 9").out, "one of the mean diameter up to 20 ft"));
  // Twice the hours are about twice the plots.
  const auto plots_in = [](const Ran& run) {
    int plots = 0;
    const Json told = Json::parse(run.out);
    for (const Json& stand : told.at("stands")) plots += static_cast<int>(stand.at("plots").size());
    return plots;
  };
  const int few = plots_in(design("--json --hours 8 --minutes-a-plot 20"));
  const int many = plots_in(design("--json --hours 16 --minutes-a-plot 20"));
  EXPECT_GT(many, few * 3 / 2);
  EXPECT_LT(many, few * 3);
}

TEST_F(PlanCases, AStandWithoutAnOutlineGetsPlotsWithoutPlaces) {
  const std::string tract = small_tract(folder_, "bare", {{"stands.csv", "stand,acres\nOne,10\n"}});
  const std::string words = "design " + tract + " --cruise Z --plots 3 --dry-run";
  EXPECT_TRUE(
      says(oaklight(words).out, "Note: Stand One has no outline: its plots have no positions."));
  const Json stand = Json::parse(oaklight(words + " --json").out).at("stands").at(0);
  ASSERT_EQ(stand.at("plots").size(), 3U);
  EXPECT_TRUE(stand.at("plots").at(0).at("lat").is_null());
  const Ran unknown = oaklight(words + " --stand Nope");
  EXPECT_EQ(unknown.exit_code, 1);
  EXPECT_TRUE(says(unknown.errors, "The tract has no stand \"Nope\"."));
}

TEST_F(PlanCases, ARouteInMetresFromAnAccessPoint) {
  const std::string tract = copy_of_demo("walk.gpkg");
  ASSERT_EQ(oaklight("design " + tract + " --cruise Z --plots 6 --seed 5").exit_code, 0);
  const Ran walk = oaklight("route " + tract + " --unit metres --paces-100-m 60 --day 2026-05-04 " +
                            "--start-lat 39.354 --start-lon -82.212");
  ASSERT_EQ(walk.exit_code, 0) << walk.errors;
  EXPECT_TRUE(says(walk.out, "Start and end: 39.35400, -82.21200."));
  EXPECT_TRUE(says(walk.out, "Paces: 60 in 100 m."));
  EXPECT_TRUE(says(walk.out, " 277 m, 166 paces")) << "by hand: 277 x 0.6 = 166.2";
  const struct {
    const char* options;
    int code;
    const char* words;
  } kRefused[] = {
      {"--day 2026-02-30", 1, "\"2026-02-30\" is not a day."},
      {"--stand Nope", 1, "There is no stand \"Nope\"."},
      {"--paces-100-ft -3", 1, "This is no count of paces that a walker has."},
      {"--out /dev/null/x", 3, "This folder cannot be made"},
      {"--start-lat 39", 2, "--start-lon"},
      {"--paces-100-ft 40 --paces-100-m 60", 2, "excludes"},
  };
  for (const auto& [options, code, words] : kRefused) {
    const Ran run = oaklight("route " + tract + " " + options);
    EXPECT_EQ(run.exit_code, code) << options << run.out << run.errors;
    EXPECT_TRUE(says(run.errors, words)) << options;
  }
}

}  // namespace
}  // namespace oaklight::test
