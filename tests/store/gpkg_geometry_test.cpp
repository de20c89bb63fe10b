#include "core/store/gpkg_geometry.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace oaklight::store {
namespace {

std::string from_hex(std::string_view hex) {
  std::string bytes;
  std::string digits;
  for (const char c : hex) {
    if (c == ' ') continue;
    digits += c;
    if (digits.size() < 2) continue;
    bytes += static_cast<char>(std::strtol(digits.c_str(), nullptr, 16));
    digits.clear();
  }
  return bytes;
}

Position at(double longitude, double latitude) { return {Degrees{latitude}, Degrees{longitude}}; }

const std::string kZero = "0000000000000000";
const std::string kOne = "000000000000f03f";

// Published: OGC 12-128 1.3, clause 2.1.3 (header) and OGC 06-103r4, clause 8 (well-known binary);
// the doubles are IEEE 754, little-endian.
const std::string kPointHex = "47500001 e6100000 01 01000000 79e92631080052c0 0e2db29defff4540";
const std::string kTriangleHex = "47500003 e6100000 " + kZero + kOne + kZero + kOne +
                                 "01 03000000 01000000 04000000" + kZero + kZero + kOne + kZero +
                                 kOne + kOne + kZero + kZero;
const std::string kLineHex = "47500003 e6100000 " + kZero + kOne + kZero + kOne +
                             "01 02000000 02000000" + kZero + kZero + kOne + kOne;
const Polygon kTriangle{{at(0, 0), at(1, 0), at(1, 1), at(0, 0)}, {}};

TEST(GpkgGeometry, WritesAPointInExactlyTheseBytes) {
  const auto blob = point_blob(at(-72.0005, 43.9995));
  ASSERT_TRUE(blob);
  EXPECT_EQ(*blob, from_hex(kPointHex));
  EXPECT_EQ(blob->size(), 29U);
}

TEST(GpkgGeometry, WritesAPolygonInExactlyTheseBytes) {
  const auto blob = polygon_blob(kTriangle);
  ASSERT_TRUE(blob);
  EXPECT_EQ(*blob, from_hex(kTriangleHex));
  EXPECT_EQ(blob->size(), 117U);
}

TEST(GpkgGeometry, WritesALineInExactlyTheseBytes) {
  const auto blob = line_blob({at(0, 0), at(1, 1)});
  ASSERT_TRUE(blob);
  EXPECT_EQ(*blob, from_hex(kLineHex));
}

TEST(GpkgGeometry, ReadsBackWhatItWrote) {
  Polygon polygon = kTriangle;
  polygon.holes.push_back({at(0.6, 0.1), at(0.7, 0.3), at(0.8, 0.1), at(0.6, 0.1)});
  const std::vector<Position> line = {at(-81.1, 37.9), at(180, 90), at(-180, -90)};
  EXPECT_EQ(point_from_blob(*point_blob(at(-81.123456789, 37.9))).value(), at(-81.123456789, 37.9));
  EXPECT_EQ(line_from_blob(*line_blob(line)).value(), line);
  EXPECT_EQ(polygon_from_blob(*polygon_blob(polygon)).value(), polygon);
}

TEST(GpkgGeometry, RefusesPlacesThatAreNotOnEarth) {
  constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
  constexpr double kFar = std::numeric_limits<double>::infinity();
  for (const Position place : {at(0, 90.0001), at(0, -91), at(180.0001, 0), at(-181, 0),
                               at(kNan, 0), at(0, kNan), at(kFar, 0)}) {
    const auto point = point_blob(place);
    ASSERT_FALSE(point);
    EXPECT_EQ(point.error().code, ErrorCode::bad_geometry);
    EXPECT_FALSE(line_blob({at(0, 0), place}));
    EXPECT_FALSE(polygon_blob({{place, at(1, 0), at(1, 1), place}, {}}));
  }
}

TEST(GpkgGeometry, RefusesLinesAndRingsThatAreTooShortOrOpen) {
  EXPECT_FALSE(line_blob({}));
  EXPECT_FALSE(line_blob({at(0, 0)}));
  EXPECT_FALSE(polygon_blob({}));
  EXPECT_FALSE(polygon_blob({{at(0, 0), at(1, 0), at(0, 0)}, {}}));
  EXPECT_FALSE(polygon_blob({{at(0, 0), at(1, 0), at(1, 1), at(0, 1)}, {}}));
  EXPECT_FALSE(polygon_blob({kTriangle.outer, {{at(0, 0), at(0, 0)}}}));
}

TEST(GpkgGeometry, ReadsNoBlobThatIsCutShortOrRunsOn) {
  for (const std::string& whole :
       {from_hex(kPointHex), from_hex(kLineHex), from_hex(kTriangleHex)}) {
    ASSERT_TRUE(box_of(whole));
    for (std::size_t n = 0; n < whole.size(); ++n) EXPECT_FALSE(box_of(whole.substr(0, n))) << n;
    EXPECT_FALSE(box_of(whole + '\0'));
  }
}

TEST(GpkgGeometry, ReadsNoBlobOfAnotherKind) {
  const std::string point = from_hex(kPointHex);
  EXPECT_FALSE(line_from_blob(point));
  EXPECT_FALSE(polygon_from_blob(point));
  EXPECT_FALSE(point_from_blob(from_hex(kLineHex)));
  // Byte by byte: magic, version, flags, coordinate system, byte order, type.
  for (const std::size_t i : {0U, 1U, 2U, 3U, 4U, 8U, 9U}) {
    std::string other = point;
    other[i] = static_cast<char>(other[i] + 1);
    EXPECT_FALSE(point_from_blob(other)) << i;
  }
}

TEST(GpkgGeometry, BelievesNoCountThatTheBytesCannotHold) {
  std::string line = from_hex(kLineHex);
  line[45] = line[46] = line[47] = line[48] = '\xff';  // four billion positions
  EXPECT_FALSE(line_from_blob(line));
  std::string polygon = from_hex(kTriangleHex);
  polygon[45] = polygon[46] = polygon[47] = polygon[48] = '\xff';  // four billion rings
  EXPECT_FALSE(polygon_from_blob(polygon));
}

TEST(GpkgGeometry, KnowsTheBoxAroundEachKind) {
  EXPECT_EQ(box_of(*point_blob(at(-81, 38))), (Box{-81, 38, -81, 38}));
  EXPECT_EQ(box_of(*line_blob({at(2, 1), at(-3, 5)})), (Box{-3, 1, 2, 5}));
  EXPECT_EQ(box_of(*polygon_blob(kTriangle)), (Box{0, 0, 1, 1}));
  EXPECT_FALSE(box_of(""));
}

}  // namespace
}  // namespace oaklight::store
