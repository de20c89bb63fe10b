#include "core/measure/log_rule.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace oaklight {
namespace {

constexpr auto kRules = {LogRule::doyle, LogRule::scribner, LogRule::international};

double board_feet(LogRule rule, double d, double length) {
  return log_board_feet(rule, Inches{d}, Feet{length}).value().value;
}

// Values: tests/published/log_rules.tsv.
TEST(LogRule, HoldsNothingWhereAFormulaLosesItsMeaning) {
  EXPECT_EQ(board_feet(LogRule::doyle, 4.0, 16.0), 0.0);
  EXPECT_EQ(board_feet(LogRule::doyle, 3.0, 16.0), 0.0) << "(3 - 4)^2 is not wood";
  for (const LogRule rule : kRules) EXPECT_EQ(board_feet(rule, 0.0, 16.0), 0.0);
}

TEST(LogRule, NeverShrinksWithTheLog) {
  for (const LogRule rule : kRules) {
    for (double d = 0.0; d < 60.0; d += 0.5) {
      for (double length = 1.0; length < 30.0; length += 0.5) {
        ASSERT_LE(board_feet(rule, d, length), board_feet(rule, d + 0.5, length));
        if (d >= 4.0) {
          ASSERT_LE(board_feet(rule, d, length), board_feet(rule, d, length + 0.5));
        }
      }
    }
  }
}

// Derived from the section formula by hand: 0.904762 (0.22 d^2 - 0.71 d) for the whole section, and
// half of one that is 1/2 in thicker for the two feet left.
TEST(LogRule, CountsAPartSectionByItsShare) {
  const double whole = 0.904762 * (0.22 * 100.0 - 0.71 * 10.0);
  const double half = 0.904762 * (0.22 * 110.25 - 0.71 * 10.5) / 2.0;
  EXPECT_NEAR(board_feet(LogRule::international, 10.0, 6.0), whole + half, 1e-9);
}

TEST(LogRule, RefusesSizesThatNoLogHas) {
  const double nan = std::nan("");
  const double infinite = std::numeric_limits<double>::infinity();
  for (const LogRule rule : kRules) {
    for (const double d : {-0.1, 100.1, nan, infinite}) {
      const auto result = log_board_feet(rule, Inches{d}, Feet{16.0});
      ASSERT_FALSE(result.has_value());
      EXPECT_EQ(result.error().code, ErrorCode::out_of_range);
      EXPECT_EQ(result.error().where, "small_end");
    }
    for (const double length : {0.0, -8.0, 60.1, nan, infinite}) {
      const auto result = log_board_feet(rule, Inches{12.0}, Feet{length});
      ASSERT_FALSE(result.has_value());
      EXPECT_EQ(result.error().code, ErrorCode::out_of_range);
      EXPECT_EQ(result.error().where, "length");
    }
  }
}

TEST(LogRule, HasANameForBuyersAndAWordForFiles) {
  for (const LogRule rule : kRules) {
    EXPECT_FALSE(name_of(rule).empty());
    EXPECT_EQ(from_word<LogRule>(word_of(rule)), rule);
  }
}

TEST(NearestFive, SendsHalvesUp) {
  // By definition: a half goes up, 12.5 to 15.
  EXPECT_EQ(nearest_5(BoardFeet{12.4}), BoardFeet{10.0});
  EXPECT_EQ(nearest_5(BoardFeet{12.5}), BoardFeet{15.0});
  EXPECT_EQ(nearest_5(BoardFeet{0.0}), BoardFeet{0.0});
}

TEST(DecimalC, RefusesWhatTheTableDoesNotHold) {
  const auto code = [](int d, int length) {
    const auto result = scribner_decimal_c(d, length);
    return result ? std::optional<ErrorCode>{} : std::optional(result.error().code);
  };
  EXPECT_FALSE(code(6, 6));
  EXPECT_FALSE(code(20, 14));
  EXPECT_FALSE(code(40, 16));
  EXPECT_EQ(code(5, 16), ErrorCode::outside_table);
  EXPECT_EQ(code(41, 16), ErrorCode::outside_table);
  EXPECT_EQ(code(21, 14), ErrorCode::outside_table) << "wide logs are told at 16 ft only";
  EXPECT_EQ(code(12, 7), ErrorCode::outside_table);
  EXPECT_EQ(code(12, 4), ErrorCode::outside_table);
  EXPECT_EQ(code(12, 18), ErrorCode::outside_table);
  EXPECT_EQ(code(-1, -16), ErrorCode::outside_table);
}

}  // namespace
}  // namespace oaklight
