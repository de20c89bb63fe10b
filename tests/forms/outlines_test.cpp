#include "core/forms/outlines.hpp"

#include <gtest/gtest.h>

#include "tests/support/bad_outlines.hpp"

namespace oaklight {
namespace {

using test::bad_outlines;

constexpr const char* kSquare = "-82.50,38.10 -82.49,38.10 -82.49,38.11 -82.50,38.11 -82.50,38.10";
constexpr const char* kPond =
    "-82.497,38.103 -82.494,38.103 -82.494,38.106 -82.497,38.106 -82.497,38.103";

/// What comes of reading and judging a file.
SoundOutlines outlines_of(const NamedText& file, const std::vector<Position>& near = {}) {
  const DrawnOutlines drawn = read_outlines(file);
  return drawn.faults.empty() ? check_outlines(drawn.outlines, near)
                              : SoundOutlines{{}, drawn.faults};
}

class BadFile : public testing::TestWithParam<test::BadOutline> {};

TEST_P(BadFile, IsRefusedWithWhatWhereAndHowToMend) {
  const auto& bad = GetParam();
  const SoundOutlines got = outlines_of({"land" + bad.ending, bad.text});
  EXPECT_TRUE(got.outlines.empty());
  ASSERT_FALSE(got.faults.empty());
  const Error& fault = got.faults.front();
  EXPECT_NE((fault.what + " " + fault.fix).find(bad.says), std::string::npos) << to_text(fault);
  EXPECT_TRUE(fault.where.starts_with("land" + bad.ending)) << fault.where;
  EXPECT_FALSE(fault.what.empty());
  EXPECT_FALSE(fault.fix.empty());
}

INSTANTIATE_TEST_SUITE_P(Outlines, BadFile, testing::ValuesIn(bad_outlines()),
                         [](const auto& bad) { return bad.param.name; });

TEST(BadFiles, AreFortyAtLeast) { EXPECT_GE(bad_outlines().size(), 40U); }

TEST(Outlines, AreTheSameFromGeoJsonAndKml) {
  const auto json = outlines_of({"a.geojson", test::geojson_of("Cove", {kSquare, kPond})});
  const auto kml = outlines_of({"a.KML", test::kml_of("Cove", {kSquare, kPond})});
  ASSERT_EQ(json.outlines.size(), 1U);
  ASSERT_EQ(kml.outlines.size(), 1U);
  EXPECT_EQ(json.outlines[0].name, "Cove");
  EXPECT_EQ(kml.outlines[0].name, "Cove");
  ASSERT_EQ(json.outlines[0].parts.size(), 1U);
  EXPECT_EQ(json.outlines[0].parts, kml.outlines[0].parts);
  EXPECT_EQ(json.outlines[0].parts[0].outer.size(), 5U);
  ASSERT_EQ(json.outlines[0].parts[0].holes.size(), 1U);
}

TEST(Outlines, AreWoundAsTheModelWantsThem) {
  const std::string clockwise = "-82.50,38.10 -82.50,38.11 -82.49,38.11 -82.49,38.10 -82.50,38.10";
  const auto a = outlines_of({"a.geojson", test::geojson_of("Cove", {clockwise})});
  const auto b = outlines_of({"a.geojson", test::geojson_of("Cove", {kSquare})});
  ASSERT_EQ(a.outlines.size(), 1U);
  EXPECT_EQ(a.outlines[0].parts[0].outer[1], b.outlines[0].parts[0].outer[1]);
}

TEST(Outlines, OfAWalkAreClosedAndItIsSaid) {
  const auto got = outlines_of(
      {"a.gpx",
       test::gpx_of("Cove", "-82.5,38.1 -82.49,38.1 -82.49,38.11 -82.5,38.11 -82.5,38.101")});
  ASSERT_EQ(got.outlines.size(), 1U);
  const Ring& ring = got.outlines[0].parts[0].outer;
  EXPECT_EQ(ring.front(), ring.back());
  ASSERT_EQ(got.outlines[0].notes.size(), 1U);
  EXPECT_NE(got.outlines[0].notes[0].find("straight line"), std::string::npos);
}

TEST(Outlines, OfABrokenWalkAreJoinedInOrder) {
  const std::string text =
      "<gpx><trk><trkseg><trkpt lat=\"38.1\" lon=\"-82.5\"/><trkpt lat=\"38.1\" lon=\"-82.49\"/>"
      "</trkseg><trkseg><trkpt lat=\"38.11\" lon=\"-82.49\"/><trkpt lat=\"38.101\" lon=\"-82.5\"/>"
      "</trkseg></trk></gpx>";
  const auto got = outlines_of({"a.gpx", text});
  ASSERT_EQ(got.outlines.size(), 1U);
  EXPECT_EQ(got.outlines[0].parts[0].outer.size(), 5U);
}

TEST(Outlines, KeepTheirPartsAndAnIslandInAPond) {
  const std::string text =
      "<kml><Placemark><name>Two</name><MultiGeometry>"
      "<Polygon><outerBoundaryIs><LinearRing><coordinates>" +
      std::string(kSquare) +
      "</coordinates></LinearRing></outerBoundaryIs><innerBoundaryIs><LinearRing><coordinates>" +
      kPond +
      "</coordinates></LinearRing></innerBoundaryIs></Polygon>"
      "<Polygon><outerBoundaryIs><LinearRing><coordinates>-82.496,38.104 -82.495,38.104 "
      "-82.495,38.105 -82.496,38.104</coordinates></LinearRing></outerBoundaryIs></Polygon>"
      "</MultiGeometry></Placemark></kml>";
  const auto got = outlines_of({"a.kml", text});
  ASSERT_TRUE(got.faults.empty()) << to_text(got.faults.front());
  ASSERT_EQ(got.outlines.size(), 1U);
  EXPECT_EQ(got.outlines[0].parts.size(), 2U);
}

TEST(Outlines, MustLieNearTheTract) {
  const NamedText file{"a.geojson", test::geojson_of("Cove", {kSquare})};
  const Position here{Degrees{38.2}, Degrees{-82.4}};
  EXPECT_EQ(outlines_of(file, {here}).outlines.size(), 1U);
  const auto east = outlines_of(file, {{Degrees{38.1}, Degrees{82.5}}});
  ASSERT_EQ(east.faults.size(), 1U);
  EXPECT_EQ(east.faults[0].code, ErrorCode::contradiction);
  EXPECT_NE(east.faults[0].fix.find("minus sign"), std::string::npos);
  // Swapped positions of a European wood are still on dry land; only the tract tells.
  const NamedText swapped{"a.geojson",
                          test::geojson_of("X", {"47.1,8.5 47.2,8.5 47.2,8.6 47.1,8.5"})};
  const auto faults = outlines_of(swapped, {{Degrees{47.1}, Degrees{8.5}}}).faults;
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_NE(faults[0].fix.find("swapped"), std::string::npos);
}

TEST(Outlines, SayTheLineOfTheFault) {
  const std::string text =
      "<gpx>\n<trk>\n<trkseg>\n<trkpt lat=\"38.1\" lon=\"-82.5\"/>\n<trkpt lat=\"x\" "
      "lon=\"-82.5\"/>\n</trkseg></trk></gpx>";
  const auto got = outlines_of({"a.gpx", text});
  ASSERT_EQ(got.faults.size(), 1U);
  EXPECT_EQ(got.faults[0].where, "a.gpx:5");
}

}  // namespace
}  // namespace oaklight
