#include "core/base/number_text.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace oaklight {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

// Expected texts: derived from the rule "half away from zero on the decimal a person wrote".
TEST(NumberText, RoundsHalfAwayFromZeroOnTheDecimalValue) {
  EXPECT_EQ(number_text(2.675, 2), "2.68") << "in binary it is a little less than 2.675";
  EXPECT_EQ(number_text(1.005, 2), "1.01");
  EXPECT_EQ(number_text(0.05, 1), "0.1");
  EXPECT_EQ(number_text(0.5, 0), "1");
  EXPECT_EQ(number_text(2.5, 0), "3");
  EXPECT_EQ(number_text(-2.5, 0), "-3");
  EXPECT_EQ(number_text(-0.05, 1), "-0.1");
  EXPECT_EQ(number_text(0.0499999, 1), "0.0");
}

TEST(NumberText, CarriesThroughTheNines) {
  EXPECT_EQ(number_text(999.95, 1), "1000.0");
  EXPECT_EQ(number_text(9.5, 0), "10");
  EXPECT_EQ(number_text(0.999, 2), "1.00");
  EXPECT_EQ(number_text(-99.999, 2), "-100.00");
}

TEST(NumberText, HasExactlyTheDecimalsAskedFor) {
  EXPECT_EQ(number_text(12.0, 1), "12.0");
  EXPECT_EQ(number_text(12.0, 0), "12");
  EXPECT_EQ(number_text(0.125, 5), "0.12500");
  EXPECT_EQ(number_text(1e15, 2), "1000000000000000.00");
}

TEST(NumberText, NeverPrintsMinusZero) {
  EXPECT_EQ(number_text(-0.0, 1), "0.0");
  EXPECT_EQ(number_text(-0.04, 1), "0.0");
  EXPECT_EQ(number_text(-0.4, 0), "0");
}

TEST(NumberText, IsEmptyForWhatIsNoNumber) {
  EXPECT_EQ(number_text(std::nan(""), 1), "");
  EXPECT_EQ(number_text(kInfinity, 1), "");
  EXPECT_EQ(number_text(-kInfinity, 1), "");
}

TEST(NumberText, HoldsTheLargestAndSmallestDoubles) {
  EXPECT_EQ(number_text(std::numeric_limits<double>::max(), 0).size(), 309U);
  EXPECT_EQ(number_text(std::numeric_limits<double>::denorm_min(), 3), "0.000");
}

TEST(NumberText, ReadsBackEveryTenthOfARange) {
  for (std::int32_t tenths = -50'000; tenths <= 50'000; ++tenths) {
    const std::string text = number_text(tenths / 10.0, 1);
    ASSERT_EQ(scaled_from_text(text, 1).value(), tenths) << text;
  }
}

TEST(GroupedText, PartsThousandsForPeople) {
  EXPECT_EQ(grouped_text(0.0, 0), "0");
  EXPECT_EQ(grouped_text(999.0, 0), "999");
  EXPECT_EQ(grouped_text(1000.0, 0), "1,000");
  EXPECT_EQ(grouped_text(12430.46, 1), "12,430.5");
  EXPECT_EQ(grouped_text(-123456.0, 0), "-123,456");
  EXPECT_EQ(grouped_text(1234567.0, 2), "1,234,567.00");
  EXPECT_EQ(grouped_text(999999.5, 0), "1,000,000");
  EXPECT_EQ(grouped_text(std::nan(""), 0), "");
}

template <class T>
ErrorCode refusal(const Result<T>& result) {
  EXPECT_FALSE(result.has_value());
  if (result) return ErrorCode::io_failed;
  EXPECT_FALSE(result.error().what.empty());
  EXPECT_FALSE(result.error().fix.empty());
  return result.error().code;
}

TEST(WholeFromText, ReadsDigitsWithASign) {
  EXPECT_EQ(whole_from_text("0").value(), 0);
  EXPECT_EQ(whole_from_text("-12").value(), -12);
  EXPECT_EQ(whole_from_text("9223372036854775807").value(),
            std::numeric_limits<std::int64_t>::max());
}

TEST(WholeFromText, RefusesAnythingElse) {
  for (const char* text : {"", "-", "+5", " 5", "5 ", "5.0", "1e3", "0x10", "five"}) {
    EXPECT_EQ(refusal(whole_from_text(text)), ErrorCode::not_a_number) << text;
  }
  EXPECT_EQ(refusal(whole_from_text("9223372036854775808")), ErrorCode::out_of_range);
}

TEST(NumberFromText, ReadsAPlainDecimal) {
  EXPECT_EQ(number_from_text("12.3").value(), 12.3);
  EXPECT_EQ(number_from_text("-0.5").value(), -0.5);
  EXPECT_EQ(number_from_text(".5").value(), 0.5);
  EXPECT_EQ(number_from_text("7.").value(), 7.0);
}

TEST(NumberFromText, RefusesAnythingElse) {
  for (const char* text : {"", "-", ".", "-.", "1,5", "1e5", "nan", "inf", "-inf", "+1", " 1", "1 ",
                           "1.2.3", "--1", "0x1p3", "12.3in"}) {
    EXPECT_EQ(refusal(number_from_text(text)), ErrorCode::not_a_number) << text;
  }
  EXPECT_EQ(refusal(number_from_text(std::string(400, '9'))), ErrorCode::not_a_number)
      << "larger than any double";
}

TEST(ScaledFromText, CountsExactly) {
  EXPECT_EQ(scaled_from_text("12.3", 1).value(), 123);
  EXPECT_EQ(scaled_from_text("12", 1).value(), 120);
  EXPECT_EQ(scaled_from_text("12.30", 1).value(), 123);
  EXPECT_EQ(scaled_from_text(".5", 1).value(), 5);
  EXPECT_EQ(scaled_from_text("-0.05", 2).value(), -5);
  EXPECT_EQ(scaled_from_text("7.", 2).value(), 700);
  EXPECT_EQ(scaled_from_text("7.0", 0).value(), 7);
  EXPECT_EQ(scaled_from_text("214748364.7", 1).value(), std::numeric_limits<std::int32_t>::max());
}

TEST(ScaledFromText, RefusesMoreDecimalsThanTheInstrumentShows) {
  EXPECT_EQ(refusal(scaled_from_text("12.34", 1)), ErrorCode::out_of_range);
  EXPECT_EQ(refusal(scaled_from_text("0.5", 0)), ErrorCode::out_of_range);
}

TEST(ScaledFromText, RefusesWhatDoesNotFit) {
  EXPECT_EQ(refusal(scaled_from_text("214748364.8", 1)), ErrorCode::out_of_range);
  EXPECT_EQ(refusal(scaled_from_text("-300000000", 1)), ErrorCode::out_of_range);
  EXPECT_EQ(refusal(scaled_from_text("99999999999999999999", 1)), ErrorCode::out_of_range);
}

TEST(ScaledFromText, RefusesWhatIsNoDecimal) {
  for (const char* text : {"", "-", ".", "12,3", "1e2", "twelve", "12.3.4", "nan"}) {
    EXPECT_EQ(refusal(scaled_from_text(text, 1)), ErrorCode::not_a_number) << text;
  }
}

}  // namespace
}  // namespace oaklight
