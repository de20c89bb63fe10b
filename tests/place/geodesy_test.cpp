#include "core/place/geodesy.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace oaklight {
namespace {

constexpr Position at(double latitude, double longitude) {
  return {Degrees{latitude}, Degrees{longitude}};
}

constexpr double dms(double degrees, double minutes, double seconds) {
  return degrees + minutes / 60.0 + seconds / 3600.0;
}

// A made-up place in the Appalachian foothills.
constexpr Position kHill = at(38.4012, -82.3345);

// Geocentric Datum of Australia Technical Manual, the worked example of Vincenty's formulas, from
// memory: 54 972.271 m, forward 306 deg 52' 05.37", reverse 127 deg 10' 25.07". It uses GRS 80,
// whose flattening differs from WGS 84 by 5e-10 of itself: under 0.01 mm here.
constexpr Position kFlindersPeak = at(-dms(37, 57, 3.72030), dms(144, 25, 29.52440));
constexpr Position kBuninyong = at(-dms(37, 39, 10.15610), dms(143, 55, 35.38390));

TEST(Geodesy, MatchesThePublishedSurveyBetweenTwoPeaks) {
  // From memory: the manual's distance and azimuth, above.
  const Leg leg = leg_between(kFlindersPeak, kBuninyong);
  EXPECT_NEAR(to_metres(leg.distance).value, 54972.271, 5e-4);
  EXPECT_NEAR(leg.azimuth.value, dms(306, 52, 5.37), 0.005 / 3600);
}

TEST(Geodesy, WalksFromOnePublishedPeakToTheOther) {
  const Position there =
      position_at(kFlindersPeak, Degrees{dms(306, 52, 5.37)}, to_feet(Metres{54972.271}));
  // Half a unit in the last printed digit of the azimuth is 1.3 mm at this distance.
  EXPECT_NEAR(there.latitude.value, kBuninyong.latitude.value, 2e-8);
  EXPECT_NEAR(there.longitude.value, kBuninyong.longitude.value, 2e-8);
}

TEST(Geodesy, ADegreeAlongTheEquatorIsAnArcOfTheEquator) {
  // Derived: 6 378 137 m is the semi-major axis that defines WGS 84.
  const Leg leg = leg_between(at(0, 10), at(0, 11));
  EXPECT_NEAR(to_metres(leg.distance).value, 6378137.0 * std::numbers::pi / 180.0, 1e-6);
  EXPECT_NEAR(leg.azimuth.value, 90.0, 1e-9);
}

TEST(Geodesy, AzimuthsRunFromNorthClockwiseAndStayBelow360) {
  const auto towards = [](double azimuth) {
    return leg_between(kHill, position_at(kHill, Degrees{azimuth}, Feet{66})).azimuth.value;
  };
  for (const double azimuth : {1.0, 45.0, 90.0, 180.0, 181.0, 270.0, 359.0}) {
    EXPECT_NEAR(towards(azimuth), azimuth, 1e-6) << azimuth;
  }
  EXPECT_NEAR(std::remainder(towards(0.0), 360.0), 0.0, 1e-6);
  EXPECT_LT(towards(-0.0000001), 360.0);
}

TEST(Geodesy, NoDistanceHasNoDirection) {
  const Leg leg = leg_between(kHill, kHill);
  EXPECT_EQ(leg.distance, Feet{0});
  EXPECT_EQ(leg.azimuth, Degrees{0});
}

TEST(Geodesy, FlatGroundKeepsDistanceAndDirectionFromTheOrigin) {
  const LocalFeet east = local_feet(kHill, position_at(kHill, Degrees{90}, Feet{300}));
  EXPECT_NEAR(east.east.value, 300.0, 1e-6);
  EXPECT_NEAR(east.north.value, 0.0, 1e-6);
  const LocalFeet southwest = local_feet(kHill, position_at(kHill, Degrees{225}, Feet{100}));
  EXPECT_NEAR(southwest.east.value, -100.0 * std::numbers::sqrt2 / 2.0, 1e-6);
  EXPECT_NEAR(southwest.north.value, -100.0 * std::numbers::sqrt2 / 2.0, 1e-6);
}

TEST(Geodesy, FlatGroundAgreesWithGeodesicsBetweenTwoTreesMilesOut) {
  const Position a = position_from_local(kHill, {Feet{15000}, Feet{9000}});
  const Position b = position_from_local(kHill, {Feet{15300}, Feet{9400}});
  EXPECT_NEAR(leg_between(a, b).distance.value / 500.0, 1.0, 1e-6);
}

TEST(Geodesy, FlatGroundAndBackIsTheSamePlace) {
  const LocalFeet there{Feet{-1234.5}, Feet{678.9}};
  const LocalFeet back = local_feet(kHill, position_from_local(kHill, there));
  EXPECT_NEAR(back.east.value, there.east.value, 1e-6);
  EXPECT_NEAR(back.north.value, there.north.value, 1e-6);
}

// Expected distances derived from plane geometry around the place asked from.
Position around(double east, double north) {
  return position_from_local(kHill, {Feet{east}, Feet{north}});
}

TEST(Geodesy, TheNearestPointOfALineMayLieBetweenItsPoints) {
  const std::vector<Position> line = {around(-400, 30), around(400, 30)};
  EXPECT_NEAR(distance_to_line(kHill, line)->value, 30.0, 1e-4);
  const std::vector<Position> slanted = {around(-100, 0), around(0, 100)};
  EXPECT_NEAR(distance_to_line(kHill, slanted)->value, 100.0 / std::numbers::sqrt2, 1e-4);
}

TEST(Geodesy, BeyondTheEndOfALineItsEndCounts) {
  // By hand: 30, 40 and 50.
  const std::vector<Position> line = {around(30, 40), around(300, 400)};
  EXPECT_NEAR(distance_to_line(kHill, line)->value, 50.0, 1e-6);
  const std::vector<Position> towards(line.rbegin(), line.rend());
  EXPECT_NEAR(distance_to_line(kHill, towards)->value, 50.0, 1e-6);
}

TEST(Geodesy, ALineOfOnePointIsThatPointAndALineOfNoneIsNothing) {
  EXPECT_NEAR(distance_to_line(kHill, std::vector{around(0, -7)})->value, 7.0, 1e-6);
  EXPECT_NEAR(distance_to_line(kHill, std::vector{around(0, -7), around(0, -7)})->value, 7.0, 1e-6);
  EXPECT_EQ(distance_to_line(kHill, {}), std::nullopt);
}

/// Ground between two meridians and two parallels of WGS 84, square metres; closed form of the
/// ellipsoid's zone (Snyder 1987, USGS Professional Paper 1395, equation 3-12, from memory).
double zone_square_metres(double south, double north, double degrees_wide) {
  constexpr double kA = 6378137.0;
  constexpr double kF = 1.0 / 298.257223563;
  const double e = std::sqrt(kF * (2.0 - kF));
  const auto q = [&](double latitude) {
    const double s = std::sin(latitude * std::numbers::pi / 180.0);
    return (1.0 - e * e) *
           (s / (1.0 - e * e * s * s) - std::log((1.0 - e * s) / (1.0 + e * s)) / (2.0 * e));
  };
  return kA * kA * (degrees_wide * std::numbers::pi / 180.0) * (q(north) - q(south)) / 2.0;
}

Ring box(double south, double west, double side) {
  return {at(south, west), at(south, west + side), at(south + side, west + side),
          at(south + side, west), at(south, west)};
}

// Sides along a parallel are not geodesics; on a box this small they differ by under 1 in a
// million.
TEST(Geodesy, AreaMatchesTheClosedFormOfTheEllipsoid) {
  const auto acres = polygon_acres({box(38.40, -82.34, 0.01), {}});
  ASSERT_TRUE(acres);
  const double want = to_acres(SquareMetres{zone_square_metres(38.40, 38.41, 0.01)}).value;
  EXPECT_NEAR(acres->value / want, 1.0, 1e-6);
}

TEST(Geodesy, AreaDoesNotDependOnDirectionOrOnTheRepeatedCorner) {
  const Ring ring = box(38.40, -82.34, 0.01);
  const Ring backwards(ring.rbegin(), ring.rend());
  const Ring open(ring.begin(), ring.end() - 1);
  const double acres = polygon_acres({ring, {}})->value;
  EXPECT_NEAR(polygon_acres({backwards, {}})->value, acres, 1e-9);
  EXPECT_NEAR(polygon_acres({open, {}})->value, acres, 1e-9);
}

TEST(Geodesy, HolesAreNotGround) {
  const Ring outer = box(38.40, -82.34, 0.01);
  const Ring hole = box(38.404, -82.336, 0.002);
  const double all = polygon_acres({outer, {}})->value;
  const double gone = polygon_acres({hole, {}})->value;
  EXPECT_NEAR(polygon_acres({outer, {hole}})->value, all - gone, 1e-9);
}

TEST(Geodesy, RefusesAreasThatAreNone) {
  const auto no_area = polygon_acres({{at(38, -82), at(38, -81.9), at(38, -82)}, {}});
  ASSERT_FALSE(no_area);
  EXPECT_EQ(no_area.error().code, ErrorCode::bad_geometry);
  const auto inside_out = polygon_acres({box(38.404, -82.336, 0.002), {box(38.40, -82.34, 0.01)}});
  ASSERT_FALSE(inside_out);
  EXPECT_EQ(inside_out.error().code, ErrorCode::bad_geometry);
}

}  // namespace
}  // namespace oaklight
