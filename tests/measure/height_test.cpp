#include "core/measure/height.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace oaklight {
namespace {

// Values: tests/published/mensuration.tsv.
TEST(Height, SubtractsABaseAboveTheEye) {
  // By hand: 100 ft off, tip 90 %, base 10 % above the eye, so 80 ft.
  EXPECT_NEAR(height_by_percent(Feet{100.0}, Percent{90.0}, Percent{10.0}).value().value, 80.0,
              1e-9);
}

TEST(Height, NeedsADistance) {
  for (const double feet : {0.0, -50.0, std::nan(""), HUGE_VAL}) {
    const auto by_percent = height_by_percent(Feet{feet}, Percent{90.0}, Percent{0.0});
    ASSERT_FALSE(by_percent.has_value());
    EXPECT_EQ(by_percent.error().code, ErrorCode::out_of_range);
    EXPECT_EQ(height_by_chain(Feet{feet}, ChainFeet{50.0}, ChainFeet{0.0}).error().code,
              ErrorCode::out_of_range);
  }
}

TEST(Height, RefusesATipThatIsNotAboveTheBase) {
  for (const double tip : {-20.0, -10.0, std::nan("")}) {
    const auto height = height_by_percent(Feet{66.0}, Percent{tip}, Percent{-10.0});
    ASSERT_FALSE(height.has_value());
    EXPECT_EQ(height.error().code, ErrorCode::contradiction);
    EXPECT_EQ(height_by_chain(Feet{66.0}, ChainFeet{tip}, ChainFeet{-10.0}).error().code,
              ErrorCode::contradiction);
  }
}

int half_logs(double top, HalfLogRounding rounding = HalfLogRounding::down) {
  return half_logs_to(Feet{top}, rounding).value();
}

// Derived: a 1-ft stump and 8.15 ft for each half log with its trim.
TEST(HalfLogs, AreCountedFromAOneFootStump) {
  EXPECT_EQ(half_logs(0.0), 0);
  EXPECT_EQ(half_logs(9.14), 0);
  EXPECT_EQ(half_logs(9.15), 1);
  EXPECT_EQ(half_logs(17.29), 1);
  EXPECT_EQ(half_logs(17.3), 2);
  EXPECT_EQ(half_logs(1.0 + 8 * 8.15), 8);
}

TEST(HalfLogs, GoDownUnlessAskedForTheNearest) {
  const double almost_five = 1.0 + 8.15 * 4.9;
  EXPECT_EQ(half_logs(almost_five), 4);
  EXPECT_EQ(half_logs(almost_five, HalfLogRounding::nearest), 5);
  EXPECT_EQ(half_logs(1.0 + 8.15 * 4.5, HalfLogRounding::nearest), 5);
  EXPECT_EQ(half_logs(1.0 + 8.15 * 4.4, HalfLogRounding::nearest), 4);
}

TEST(HalfLogs, RefuseATopThatNoTreeHas) {
  // Judgement: 0 to 300 ft, both ends among them.
  EXPECT_TRUE(half_logs_to(Feet{0.0}).has_value());
  EXPECT_TRUE(half_logs_to(Feet{300.0}).has_value());
  for (const double feet : {-0.1, 300.1, std::nan("")}) {
    const auto result = half_logs_to(Feet{feet});
    ASSERT_FALSE(result.has_value());
    EXPECT_EQ(result.error().code, ErrorCode::out_of_range);
  }
}

}  // namespace
}  // namespace oaklight
