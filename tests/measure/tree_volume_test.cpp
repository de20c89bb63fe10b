#include "core/measure/tree_volume.hpp"

#include <gtest/gtest.h>

#include "tests/support/readings.hpp"

namespace oaklight {
namespace {

using test::dbh_cm;
using test::dbh_in;

double board_feet(LogRule rule, Dbh dbh, int half_logs, FormClass form = {}) {
  return tree_board_feet(rule, dbh, half_logs, form).value().value;
}

ErrorCode refusal(Dbh dbh, int half_logs, FormClass form = {}) {
  const auto result = tree_board_feet(LogRule::doyle, dbh, half_logs, form);
  EXPECT_FALSE(result.has_value());
  if (result) return ErrorCode::io_failed;
  EXPECT_FALSE(result.error().what.empty());
  EXPECT_FALSE(result.error().fix.empty());
  return result.error().code;
}

// Values: tests/published/tree_tables.tsv. By hand: top of the only log 0.78 x 20 = 15.6 in.
TEST(TreeBoardFeet, OfOneLogIsThatLogScaledAtItsFormClassDiameter) {
  EXPECT_NEAR(board_feet(LogRule::doyle, dbh_in(20.0), 2), 11.6 * 11.6, 1e-9);
}

TEST(TreeBoardFeet, RunsStraightBetweenEvenInches) {
  const double at_18 = board_feet(LogRule::scribner, dbh_in(18.0), 4);
  const double at_20 = board_feet(LogRule::scribner, dbh_in(20.0), 4);
  EXPECT_NEAR(board_feet(LogRule::scribner, dbh_in(19.0), 4), (at_18 + at_20) / 2.0, 1e-9);
  EXPECT_NEAR(board_feet(LogRule::scribner, dbh_in(18.5), 4), at_18 + (at_20 - at_18) / 4.0, 1e-9);
}

TEST(TreeBoardFeet, OfAHalfLogLiesHalfway) {
  const double two = board_feet(LogRule::doyle, dbh_in(16.0), 4);
  const double three = board_feet(LogRule::doyle, dbh_in(16.0), 6);
  EXPECT_NEAR(board_feet(LogRule::doyle, dbh_in(16.0), 5), (two + three) / 2.0, 1e-9);
}

TEST(TreeBoardFeet, GrowsWithDbhAndFormClass) {
  for (const LogRule rule : {LogRule::doyle, LogRule::scribner, LogRule::international}) {
    for (int half_logs = 2; half_logs <= 8; ++half_logs) {
      for (int tenths = 120; tenths < 400; ++tenths) {
        const Dbh thin = Dbh::from_tenths(tenths, UnitSystem::us).value();
        const Dbh thick = Dbh::from_tenths(tenths + 1, UnitSystem::us).value();
        ASSERT_LT(board_feet(rule, thin, half_logs), board_feet(rule, thick, half_logs));
        ASSERT_LT(board_feet(rule, thin, half_logs), board_feet(rule, thin, half_logs, {79}));
      }
    }
  }
}

TEST(TreeBoardFeet, IsTheSameForTheSameSizeOnAMetricTape) {
  // 25.4 cm is 10 in and 101.6 cm is 40 in exactly: the edges of the table.
  EXPECT_EQ(board_feet(LogRule::doyle, dbh_cm(25.4), 2),
            board_feet(LogRule::doyle, dbh_in(10.0), 2));
  EXPECT_EQ(board_feet(LogRule::doyle, dbh_cm(101.6), 8),
            board_feet(LogRule::doyle, dbh_in(40.0), 8));
}

TEST(TreeBoardFeet, AreNotToldOutsideTheTable) {
  EXPECT_EQ(refusal(dbh_in(9.9), 2), ErrorCode::outside_table);
  EXPECT_EQ(refusal(dbh_in(40.1), 2), ErrorCode::outside_table);
  EXPECT_EQ(refusal(dbh_cm(25.3), 2), ErrorCode::outside_table);
  EXPECT_EQ(refusal(dbh_in(20.0), 1), ErrorCode::outside_table);
  EXPECT_EQ(refusal(dbh_in(20.0), 0), ErrorCode::outside_table);
  EXPECT_EQ(refusal(dbh_in(20.0), -2), ErrorCode::outside_table);
  EXPECT_EQ(refusal(dbh_in(20.0), 9), ErrorCode::outside_table);
  EXPECT_EQ(refusal(dbh_in(11.9), 7), ErrorCode::outside_table);
  EXPECT_TRUE(tree_board_feet(LogRule::doyle, dbh_in(11.9), 6).has_value());
  EXPECT_TRUE(tree_board_feet(LogRule::doyle, dbh_in(12.0), 7).has_value());
}

TEST(TreeBoardFeet, RefuseAFormClassThatNoTreeHas) {
  EXPECT_EQ(refusal(dbh_in(20.0), 4, {64}), ErrorCode::out_of_range);
  EXPECT_EQ(refusal(dbh_in(20.0), 4, {91}), ErrorCode::out_of_range);
}

}  // namespace
}  // namespace oaklight
