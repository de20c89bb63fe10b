// Maps that are no maps, or not of this tract: each is refused where it is wrong, and nothing else
// is found beside it.
#include <gtest/gtest.h>

#include "tests/forms/cruise_files.hpp"

namespace oaklight::test {
namespace {

struct MapCase {
  const char* label;
  const char* from;
  const char* to;
  const char* fault;
};

const char* const kOutline =
    "[[[-82.214,39.309],[-82.214,39.314],[-82.208,39.314],[-82.208,39.309],[-82.214,39.309]]]";

const MapCase kCases[] = {
    {"BrokenJson", "\"kind\":\"stream\",", "\"kind\":\"stream\"", "bad_json map.geojson:4"},
    {"NotACollection", "FeatureCollection", "Feature", "bad_json map.geojson:/type"},
    {"OtherCoordinates",
     "\"features\":", "\"crs\":{},\"features\":", "bad_geometry map.geojson:/crs"},
    {"UnknownKind", "\"kind\":\"stream\"", "\"kind\":\"strem\"",
     "not_a_choice map.geojson:/features/1/properties/kind"},
    {"NoKind", "\"kind\":\"stream\"", "\"sort\":\"stream\"",
     "bad_json map.geojson:/features/1/properties"},
    {"UnknownStand", "\"stand\":\"Ridge\"", "\"stand\":\"Rigde\"",
     "unknown_reference map.geojson:/features/0/properties/stand"},
    {"StandIsALine", "\"kind\":\"stream\",\"name\":\"Fern run\"",
     "\"kind\":\"stand\",\"stand\":\"Cove\"", "bad_geometry map.geojson:/features/1/geometry"},
    {"StreamIsAnOutline", "\"kind\":\"stand\",\"stand\":\"Ridge\"", "\"kind\":\"stream\"",
     "bad_geometry map.geojson:/features/0/geometry"},
    {"OutlineTwice", "\"features\":[",
     "\"features\":[{\"type\":\"Feature\",\"properties\":{\"kind\":\"stand\",\"stand\":\"Ridge\"}"
     ","
     "\"geometry\":{\"type\":\"Polygon\",\"coordinates\":[[[-82.21,39.31],[-82.2,39.31],"
     "[-82.2,39.32],[-82.21,39.31]]]}},",
     "duplicate map.geojson:/features/1/properties/stand"},
    {"OutlineNotClosed", ",[-82.214,39.309]]]", ",[-82.213,39.309]]]",
     "bad_geometry map.geojson:/features/0/geometry/coordinates/0"},
    {"OutlineTooShort", "[-82.214,39.314],[-82.208,39.314],[-82.208,39.309],", "",
     "bad_geometry map.geojson:/features/0/geometry/coordinates/0"},
    {"OutlineCrossesItself", "[-82.208,39.314],[-82.208,39.309]",
     "[-82.208,39.309],[-82.208,39.314]",
     "bad_geometry map.geojson:/features/0/geometry/coordinates/0"},
    {"OutlineOfNoGround", "[-82.214,39.314],[-82.208,39.314],[-82.208,39.309]",
     "[-82.213,39.309],[-82.212,39.309],[-82.211,39.309]",
     "bad_geometry map.geojson:/features/0/geometry/coordinates/0"},
    {"PositionOffTheEarth", "[-82.207,39.308]", "[39.308,-182.207]",
     "bad_geometry map.geojson:/features/1/geometry/coordinates/0"},
    {"PositionSwapped", "[-82.207,39.308]", "[39.308,-82.207]",
     "contradiction map.geojson:/features/1/geometry/coordinates"},
    {"NotAPosition", "[-82.207,39.308]", "[-82.207]",
     "bad_geometry map.geojson:/features/1/geometry/coordinates/0"},
    {"LineOfOnePosition", "[-82.207,39.308],", "",
     "bad_geometry map.geojson:/features/1/geometry/coordinates"},
    {"LineTwice", "\"features\":[",
     "\"features\":[{\"type\":\"Feature\",\"properties\":{\"kind\":\"stream\"},\"geometry\":{"
     "\"type\":"
     "\"LineString\",\"coordinates\":[[-82.207,39.308],[-82.206,39.312]]}},",
     "duplicate map.geojson:/features/2/geometry/coordinates"},
    {"ConfirmedIsNoYesOrNo", "\"confirmed\":true", "\"confirmed\":\"true\"",
     "bad_json map.geojson:/features/2/properties/confirmed"},
    {"NoGeometry", "{\"type\":\"LineString\",\"coordinates\":[[-82.215,39.309],[-82.215,39.314]]}",
     "null", "bad_json map.geojson:/features/2/geometry"},
    {"FeaturesAreNoList", "\"features\":[", "\"features\":{},\"old\":[",
     "bad_json map.geojson:/features"},
    {"KindIsANumber", "\"kind\":\"stream\"", "\"kind\":7",
     "bad_json map.geojson:/features/1/properties/kind"},
    {"PositionInWords", "[-82.207,39.308]", "[\"-82.207\",39.308]",
     "bad_geometry map.geojson:/features/1/geometry/coordinates/0"},
    {"LatitudeInWords", "[-82.207,39.308]", "[-82.207,\"39.308\"]",
     "bad_geometry map.geojson:/features/1/geometry/coordinates/0"},
    {"PositionIsAnObject", "[-82.207,39.308]", "{}",
     "bad_geometry map.geojson:/features/1/geometry/coordinates/0"},
    {"PositionBeyondThePole", "[-82.207,39.308]", "[-82.207,99.308]",
     "bad_geometry map.geojson:/features/1/geometry/coordinates/0"},
    {"LineOfNoPositions", "[[-82.215,39.309],[-82.215,39.314]]", "7",
     "bad_geometry map.geojson:/features/2/geometry/coordinates"},
    {"OutlineOfNothing", kOutline, "[]",
     "bad_geometry map.geojson:/features/0/geometry/coordinates"},
    {"OutlineIsNoList", kOutline, "{}",
     "bad_geometry map.geojson:/features/0/geometry/coordinates"},
    {"PartsThatAreNone", "\"Polygon\"", "\"MultiPolygon\"",
     "bad_geometry map.geojson:/features/0/geometry/coordinates/0/0/0"},
    {"StandOfTwoParts", "\"Polygon\",\n  \"coordinates\":[",
     "\"MultiPolygon\",\n  \"coordinates\":[[[[0,0],[1,0],[1,1],[0,0]]],",
     "bad_geometry map.geojson:/features/0/geometry"},
    {"LinesAreNoList", "\"LineString\",\"coordinates\":[[-82.215,39.309],[-82.215,39.314]]",
     "\"MultiLineString\",\"coordinates\":1", "bad_geometry map.geojson:/features/2/geometry"},
    {"HoleOfNoGround", "[-82.214,39.309]]]",
     "[-82.214,39.309]],[[-82.21,39.31],[-82.21,39.31],[-82.21,39.31],[-82.21,39.31]]]",
     "bad_geometry map.geojson:/features/0/geometry/coordinates/1"},
};

class MapFaults : public testing::TestWithParam<MapCase> {};

TEST_P(MapFaults, AreToldWithTheirPlace) {
  CruiseFiles files = good_files();
  replace_once(files.map->text, GetParam().from, GetParam().to);
  const CruiseImport read = import_files(files);
  EXPECT_EQ(short_faults(read.faults), std::vector<std::string>{GetParam().fault});
  for (const Error& fault : read.faults) {
    EXPECT_FALSE(fault.what.empty()) << fault.where;
    EXPECT_FALSE(fault.fix.empty()) << fault.where;
  }
}

INSTANTIATE_TEST_SUITE_P(All, MapFaults, testing::ValuesIn(kCases),
                         [](const auto& made) { return std::string(made.param.label); });

/// The one outline of the map as it was read.
Polygon outline_of(const CruiseFiles& files) {
  const CruiseImport read = import_files(files);
  for (const Error& fault : read.faults) ADD_FAILURE() << to_text(fault);
  for (const Stand& stand : read.data.stands) {
    if (stand.boundary) return *stand.boundary;
  }
  ADD_FAILURE() << "no outline";
  return {};
}

TEST(MapImport, AHoleIsKeptAndWoundTheOtherWay) {
  CruiseFiles files = good_files();
  const Polygon whole = outline_of(files);
  replace_once(files.map->text, "[-82.214,39.309]]]",
               "[-82.214,39.309]],[[-82.212,39.310],[-82.211,39.310],[-82.211,39.311],"
               "[-82.212,39.310]]]");
  const Polygon holed = outline_of(files);
  EXPECT_EQ(holed.outer, whole.outer);
  ASSERT_EQ(holed.holes.size(), 1U);
  // It was drawn counter-clockwise, as an outline goes; RFC 7946 has holes clockwise.
  EXPECT_EQ(holed.holes[0][1], (Position{Degrees{39.311}, Degrees{-82.211}}));
}

TEST(MapImport, APolygonOfOnePartAndSeveralLinesUnderOneNameAreTaken) {
  CruiseFiles files = good_files();
  const Polygon whole = outline_of(files);
  const std::size_t lines = import_files(files).data.lines.size();
  replace_once(files.map->text, "\"Polygon\"", "\"MultiPolygon\"");
  replace_once(files.map->text, kOutline, "[" + std::string(kOutline) + "]");
  replace_once(files.map->text,
               "\"LineString\",\"coordinates\":[[-82.215,39.309],[-82.215,39.314]]",
               "\"MultiLineString\",\"coordinates\":[[[-82.215,39.309],[-82.215,39.314]],"
               "[[-82.216,39.309],[-82.216,39.314]]]");
  files.map->text.insert(0, "\xEF\xBB\xBF");
  EXPECT_EQ(outline_of(files), whole);
  EXPECT_EQ(import_files(files).data.lines.size(), lines + 1);
}

// Limits of import_map.cpp.
TEST(MapImport, MoreThanAnybodyHasUseForIsRefused) {
  CruiseFiles files = good_files();
  std::string features;
  for (int i = 0; i < 5'001; ++i) features += i == 0 ? "{}" : ",{}";
  files.map->text = R"({"type":"FeatureCollection","features":[)" + features + "]}";
  EXPECT_EQ(short_faults(import_files(files).faults),
            std::vector<std::string>{"bad_json map.geojson:/features"});
}

}  // namespace
}  // namespace oaklight::test
