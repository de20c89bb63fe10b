#include "core/base/day.hpp"

#include <gtest/gtest.h>

namespace oaklight {
namespace {

TEST(DayText, ReadsAndWritesIsoDays) {
  const auto day = day_from_text("2026-05-04");
  ASSERT_TRUE(day);
  EXPECT_EQ(*day, std::chrono::May / 4 / 2026);
  EXPECT_EQ(to_text(*day), "2026-05-04");
}

TEST(DayText, KnowsLeapYears) {
  EXPECT_TRUE(day_from_text("2028-02-29"));
  EXPECT_FALSE(day_from_text("2026-02-29"));
  EXPECT_FALSE(day_from_text("2100-02-29"));
}

TEST(DayText, RefusesWhatIsNoDay) {
  for (const char* text : {"", "2026-5-4", "2026-13-01", "2026-00-10", "2026-04-31", "2026/05/04",
                           "04-05-2026", "2026-05-04 ", "20x6-05-04", "2026-0x-04", "0000-01-01"}) {
    const auto day = day_from_text(text);
    ASSERT_FALSE(day) << text;
    EXPECT_EQ(day.error().code, ErrorCode::not_a_choice);
  }
}

TEST(DayText, ReadsDaysOfAnyYear) {
  EXPECT_EQ(*month_day_from_text("12-15"), std::chrono::December / 15);
  EXPECT_TRUE(month_day_from_text("02-29"));
  for (const char* text : {"", "02-30", "13-01", "2-01", "02/01", "0x-01"}) {
    EXPECT_FALSE(month_day_from_text(text)) << text;
  }
}

TEST(DayText, SpeaksToPeople) {
  EXPECT_EQ(words_of(std::chrono::April / 1), "Apr 1");
  EXPECT_EQ(words_of(std::chrono::December / 31), "Dec 31");
}

}  // namespace
}  // namespace oaklight
