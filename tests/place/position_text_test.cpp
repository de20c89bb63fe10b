#include "core/place/position_text.hpp"

#include <gtest/gtest.h>

namespace oaklight {
namespace {

Position at(double latitude, double longitude) { return {Degrees{latitude}, Degrees{longitude}}; }

TEST(PositionText, DecimalDegreesHaveFivePlacesAndKeepTheirZeros) {
  EXPECT_EQ(decimal_degrees_text(at(38.4, -82.3345678)), "38.40000, -82.33457");
}

// Derived: 0.4012 deg is 24.072 minutes, 0.3345 deg is 20.070 minutes.
TEST(PositionText, DegreesAndMinutesNameTheirHemispheres) {
  EXPECT_EQ(degrees_minutes_text(at(38.4012, -82.3345)), "38° 24.072' N, 82° 20.070' W");
  EXPECT_EQ(degrees_minutes_text(at(-38.4012, 82.3345)), "38° 24.072' S, 82° 20.070' E");
}

TEST(PositionText, MinutesAlwaysHaveTwoDigitsBeforeThePoint) {
  EXPECT_EQ(degrees_minutes_text(at(38.05, -82.0)), "38° 03.000' N, 82° 00.000' W");
}

TEST(PositionText, SixtyMinutesAreTheNextDegree) {
  EXPECT_EQ(degrees_minutes_text(at(38.999999, -82.999999)), "39° 00.000' N, 83° 00.000' W");
}

}  // namespace
}  // namespace oaklight
