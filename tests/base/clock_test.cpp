#include "core/base/clock.hpp"

#include <gtest/gtest.h>

#include <ctime>

namespace oaklight {
namespace {

// Derived: days counted by hand from 1970-01-01.
TEST(UtcText, HasThreeDecimalsAndAZ) {
  EXPECT_EQ(utc_text(0), "1970-01-01T00:00:00.000Z");
  EXPECT_EQ(utc_text(1), "1970-01-01T00:00:00.001Z");
  EXPECT_EQ(utc_text(86'399'999), "1970-01-01T23:59:59.999Z");
  EXPECT_EQ(utc_text(86'400'000), "1970-01-02T00:00:00.000Z");
}

// RFC 9562 appendix A.6 gives both forms of this moment.
TEST(UtcText, AgreesWithAPublishedMoment) {
  EXPECT_EQ(utc_text(0x017F22E279B0), "2022-02-22T19:22:22.000Z");
}

TEST(UtcText, KnowsLeapYears) {
  constexpr std::int64_t kDay = 86'400'000;
  EXPECT_EQ(utc_text((10'957 + 59) * kDay), "2000-02-29T00:00:00.000Z") << "2000 is a leap year";
  EXPECT_EQ(utc_text((10'957 + 60) * kDay), "2000-03-01T00:00:00.000Z");
}

TEST(UtcText, GoesBackBeforeTheEpoch) { EXPECT_EQ(utc_text(-1), "1969-12-31T23:59:59.999Z"); }

TEST(SystemClock, AgreesWithTheLibraryToASecond) {
  SystemClock clock;
  const auto before = static_cast<std::int64_t>(std::time(nullptr)) * 1000;
  const std::int64_t now = clock.now_ms();
  const auto after = static_cast<std::int64_t>(std::time(nullptr)) * 1000;
  EXPECT_GE(now, before - 1000);
  EXPECT_LE(now, after + 1000);
}

}  // namespace
}  // namespace oaklight
