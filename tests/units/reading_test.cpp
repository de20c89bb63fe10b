#include "core/units/reading.hpp"

#include <gtest/gtest.h>

#include <concepts>
#include <limits>

namespace oaklight {
namespace {

constexpr auto kLowest = std::numeric_limits<std::int32_t>::min();
constexpr auto kHighest = std::numeric_limits<std::int32_t>::max();

// Only from_tenths makes a Dbh, and a Dbh is not a bare number.
static_assert(!std::default_initializable<Dbh>);
static_assert(!std::constructible_from<Dbh, double>);
static_assert(!std::constructible_from<Dbh, std::int32_t, UnitSystem>);
static_assert(!std::convertible_to<Dbh, double>);
static_assert(!std::convertible_to<Dbh, Inches>);
static_assert(!std::constructible_from<TapedLength, std::int32_t, UnitSystem>);
static_assert(!std::convertible_to<TapedLength, Feet>);

void expect_refused(std::int32_t tenths, UnitSystem system) {
  const auto dbh = Dbh::from_tenths(tenths, system);
  ASSERT_FALSE(dbh.has_value()) << tenths;
  EXPECT_EQ(dbh.error().code, ErrorCode::out_of_range);
  EXPECT_EQ(dbh.error().where, "dbh");
  EXPECT_FALSE(dbh.error().fix.empty());
}

TEST(Dbh, KeepsWhatTheTapeShowed) {
  const Dbh dbh = Dbh::from_tenths(123, UnitSystem::us).value();
  EXPECT_EQ(dbh.tenths(), 123);
  EXPECT_EQ(dbh.system(), UnitSystem::us);
  EXPECT_EQ(dbh.inches(), Inches{12.3});
}

TEST(Dbh, LiesBetweenATenthAndTwoHundredInches) {
  EXPECT_TRUE(Dbh::from_tenths(1, UnitSystem::us).has_value());
  EXPECT_TRUE(Dbh::from_tenths(2000, UnitSystem::us).has_value());
  for (const std::int32_t tenths : {0, -1, 2001, kLowest, kHighest}) {
    expect_refused(tenths, UnitSystem::us);
  }
}

TEST(Dbh, LiesBetweenAMillimetreAndTheSameInCentimetres) {
  EXPECT_TRUE(Dbh::from_tenths(1, UnitSystem::metric).has_value());
  EXPECT_TRUE(Dbh::from_tenths(5080, UnitSystem::metric).has_value());
  EXPECT_EQ(Dbh::from_tenths(5080, UnitSystem::metric).value().inches(), Inches{200.0});
  for (const std::int32_t tenths : {0, -1, 5081, kLowest, kHighest}) {
    expect_refused(tenths, UnitSystem::metric);
  }
}

TEST(Dbh, SaysWhichUnitItRefused) {
  const auto us = Dbh::from_tenths(4120, UnitSystem::us);
  EXPECT_EQ(us.error().what, "DBH 412.0 in is outside 0.1 to 200.0 in.");
  const auto metric = Dbh::from_tenths(0, UnitSystem::metric);
  EXPECT_EQ(metric.error().what, "DBH 0.0 cm is outside 0.1 to 508.0 cm.");
}

// Derived: 1 in is 2.54 cm, so each 12.7 cm is 5 in.
TEST(Dbh, OfAMetricTapeIsExactWhereAnInchIs) {
  for (int fives = 1; fives <= 40; ++fives) {
    const Dbh dbh = Dbh::from_tenths(127 * fives, UnitSystem::metric).value();
    EXPECT_EQ(dbh.inches(), Inches{5.0 * fives});
  }
}

TEST(Dbh, ComparesSizesOfBothTapesInHundredthsOfAMillimetre) {
  const Dbh metric = Dbh::from_tenths(127, UnitSystem::metric).value();
  const Dbh us = Dbh::from_tenths(50, UnitSystem::us).value();
  EXPECT_EQ(metric.hundredth_mm(), us.hundredth_mm());
  EXPECT_NE(metric, us) << "a reading remembers its tape";
}

TEST(Dbh, OfEveryUsReadingIsItsTenths) {
  for (std::int32_t tenths = 1; tenths <= 2000; ++tenths) {
    ASSERT_EQ(Dbh::from_tenths(tenths, UnitSystem::us).value().inches(), Inches{tenths / 10.0});
  }
}

TEST(TapedLength, KeepsWhatTheTapeShowed) {
  const TapedLength us = TapedLength::from_hundredths(3345, UnitSystem::us).value();
  EXPECT_EQ(us.hundredths(), 3345);
  EXPECT_EQ(us.feet(), Feet{33.45});
  const TapedLength metric = TapedLength::from_hundredths(3048, UnitSystem::metric).value();
  EXPECT_NEAR(metric.feet().value, 100.0, 1e-12);
}

TEST(TapedLength, MayBeNothingButNotLess) {
  EXPECT_EQ(TapedLength::from_hundredths(0, UnitSystem::us).value().feet(), Feet{});
  EXPECT_TRUE(TapedLength::from_hundredths(100'000, UnitSystem::us).has_value());
  EXPECT_TRUE(TapedLength::from_hundredths(30'500, UnitSystem::metric).has_value());
  for (const auto& [hundredths, system] : {std::pair{-1, UnitSystem::us},
                                           {100'001, UnitSystem::us},
                                           {-1, UnitSystem::metric},
                                           {30'501, UnitSystem::metric},
                                           {kLowest, UnitSystem::us},
                                           {kHighest, UnitSystem::metric}}) {
    const auto length = TapedLength::from_hundredths(hundredths, system);
    ASSERT_FALSE(length.has_value()) << hundredths;
    EXPECT_EQ(length.error().code, ErrorCode::out_of_range);
    EXPECT_FALSE(length.error().fix.empty());
  }
}

TEST(TapedLength, SaysWhichUnitItRefused) {
  EXPECT_EQ(TapedLength::from_hundredths(-1, UnitSystem::us).error().what,
            "Length -0.01 ft is outside 0 to 1000 ft.");
  EXPECT_EQ(TapedLength::from_hundredths(30'501, UnitSystem::metric).error().what,
            "Length 305.01 m is outside 0 to 305 m.");
}

}  // namespace
}  // namespace oaklight
