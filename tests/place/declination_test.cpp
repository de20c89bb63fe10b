// The 112 points that NOAA prints are rows of tests/published/magnetic.tsv.
#include "core/place/declination.hpp"

#include <gtest/gtest.h>

#include "core/base/day.hpp"

namespace oaklight {
namespace {

Day day(const char* text) { return day_from_text(text).value(); }
Position at(double latitude, double longitude) { return {Degrees{latitude}, Degrees{longitude}}; }
Declination declination(double latitude, double longitude, const char* when) {
  return declination_at(at(latitude, longitude), day(when)).value();
}

TEST(Declination, IsWestInTheAppalachiansAndEastInTheNorthwest) {
  // Computed at 2026.0 by two programs apart from this one, printed to 0.01 (derived).
  EXPECT_NEAR(declination(47.5, -121.5, "2026-01-01").east.value, 14.79, 0.0101);
  EXPECT_NEAR(declination(44.0, -71.5, "2026-01-01").east.value, -14.15, 0.0101);
  EXPECT_NEAR(declination(35.5, -83.0, "2026-01-01").east.value, -6.67, 0.0101);
  EXPECT_NEAR(declination(36.8, -92.0, "2026-01-01").east.value, -0.61, 0.0101);
}

TEST(Declination, SaysWhenItsModelIsOutOfDate) {
  EXPECT_TRUE(declination(38.0, -82.0, "2024-12-31").expired);
  EXPECT_FALSE(declination(38.0, -82.0, "2025-01-01").expired);
  EXPECT_FALSE(declination(38.0, -82.0, "2029-12-31").expired);
  const Declination late = declination(38.0, -82.0, "2030-01-01");
  EXPECT_TRUE(late.expired);
  EXPECT_NE(declination_words(late).find("OUT OF DATE"), std::string::npos);
  EXPECT_EQ(declination_words(declination(38.0, -82.0, "2026-05-04")).find("OUT OF DATE"),
            std::string::npos);
}

TEST(Declination, TellsHowSureItIs) {
  // Derived: sqrt(0.26^2 + (5417 / 20,000)^2) = 0.375 where the level field is 20,000 nT.
  const Declination d = declination(38.0, -82.0, "2026-01-01");
  EXPECT_NEAR(d.uncertainty.value, 0.375, 0.02);
  EXPECT_FALSE(d.weak);
}

TEST(Declination, IsNotGivenNearAMagneticPoleAndDoubtedAroundIt) {
  // The north magnetic pole of the model in 2025 is near 85.8 N, 139 E (from memory).
  const auto pole = declination_at(at(85.8, 139.0), day("2025-06-01"));
  ASSERT_FALSE(pole);
  EXPECT_EQ(pole.error().code, ErrorCode::out_of_range);
  EXPECT_TRUE(declination(80.0, -100.0, "2025-06-01").weak);
  EXPECT_FALSE(declination_at(at(91.0, 0.0), day("2025-06-01")));
}

TEST(Declination, TurnsBearingsThroughNorth) {
  EXPECT_NEAR(magnetic_from_true(Degrees{90.0}, Degrees{-6.5}).value, 96.5, 1e-12);
  EXPECT_NEAR(magnetic_from_true(Degrees{355.0}, Degrees{-6.5}).value, 1.5, 1e-12);
  EXPECT_NEAR(magnetic_from_true(Degrees{3.0}, Degrees{14.0}).value, 349.0, 1e-12);
}

TEST(Declination, WordsAlwaysSayWhichNorth) {
  const Declination d{Degrees{-6.6}, Degrees{0.4}, 2026.0};
  EXPECT_EQ(true_words(Degrees{5.4}), "005 true");
  EXPECT_EQ(true_words(Degrees{359.7}), "000 true");
  EXPECT_EQ(magnetic_words(Degrees{120.0}, d), "127 magnetic");
  EXPECT_EQ(declination_words(d), "6.6 degrees west in 2026.0 (WMM2025, give or take 0.4)");
}

TEST(DecimalYear, CountsTheDaysOfItsYear) {
  EXPECT_DOUBLE_EQ(decimal_year(day("2026-01-01")), 2026.0);
  EXPECT_DOUBLE_EQ(decimal_year(day("2025-07-02")), 2025.0 + 182.0 / 365.0);
  EXPECT_DOUBLE_EQ(decimal_year(day("2028-12-31")), 2028.0 + 365.0 / 366.0);
}

}  // namespace
}  // namespace oaklight
