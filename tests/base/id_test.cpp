#include "core/base/id.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <random>
#include <set>

#include "tests/support/set_clock.hpp"

namespace oaklight {
namespace {

using test::SetClock;

constexpr std::int64_t kVectorMs = 1'645'557'742'000;  // 2022-02-22T19:22:22Z
constexpr std::string_view kVector = "017f22e2-79b0-7cc3-98c4-dc0c0c07398f";

IdSource::Random seeded() {
  return [engine = std::mt19937_64(20260504)]() mutable { return engine(); };
}

Uuid id(std::string_view text) { return uuid_from_text(text).value(); }

// RFC 9562, appendix A.6: time 2022-02-22T19:22:22Z, rand_a CC3, rand_b 18C4DC0C0C07398F.
TEST(IdSource, MakesTheVectorOfTheStandard) {
  SetClock clock(kVectorMs);
  IdSource source(clock, [] { return std::uint64_t{0x18C4DC0C0C07398F}; });
  source.resume_after(id("017f22e2-79b0-7cc2-8000-000000000000"));
  EXPECT_EQ(to_text(source.next()), kVector);
}

TEST(IdSource, MarksVersionSevenAndTheStandardVariant) {
  SetClock clock(kVectorMs);
  for (const std::uint64_t noise : {std::uint64_t{0}, std::numeric_limits<std::uint64_t>::max()}) {
    IdSource source(clock, [noise] { return noise; });
    const Uuid made = source.next();
    EXPECT_EQ(made.bytes[6] >> 4, 7);
    EXPECT_EQ(made.bytes[8] >> 6, 2);
  }
}

/// Makes ids while the clock is set by step, and expects each to be greater than the one before.
template <class Step>
void expect_rising(SetClock& clock, IdSource& source, int count, Step step) {
  Uuid last{};
  for (int i = 0; i < count; ++i) {
    step(i);
    const Uuid made = source.next();
    ASSERT_GT(made, last) << "id " << i << " at " << clock.ms;
    ASSERT_GT(to_text(made), to_text(last)) << "text must sort like the id";
    last = made;
  }
}

TEST(IdSource, RisesWithinOneMillisecond) {
  SetClock clock(kVectorMs);
  IdSource source(clock, seeded());
  expect_rising(clock, source, 10'000, [](int) {});
}

TEST(IdSource, RisesWhenThePersonSetsTheClockBack) {
  for (const std::int64_t back : {1'000LL, 3'600'000LL, 86'400'000LL}) {
    SetClock clock(kVectorMs);
    IdSource source(clock, seeded());
    expect_rising(clock, source, 1'000, [&](int i) {
      ++clock.ms;
      if (i == 500) clock.ms -= back;
    });
  }
}

// GNSS week counters roll over on 2038-11-20 (from memory) and throw a receiver back 19.6 years.
TEST(IdSource, RisesWhenTheClockFallsBackByYears) {
  SetClock clock(2'173'824'000'000);
  IdSource source(clock, seeded());
  expect_rising(clock, source, 1'000, [&](int i) {
    if (i == 500) clock.ms -= 1024LL * 7 * 86'400'000;
  });
}

// A tablet whose battery died may start before 1970.
TEST(IdSource, RisesFromAClockBeforeTheEpoch) {
  SetClock clock(-86'400'000);
  IdSource source(clock, seeded());
  expect_rising(clock, source, 100, [&](int i) {
    if (i == 50) clock.ms = kVectorMs;
  });
}

TEST(IdSource, FollowsTheClockAgainOnceItHasCaughtUp) {
  SetClock clock(kVectorMs);
  IdSource source(clock, seeded());
  source.next();
  clock.ms -= 1'000;
  source.next();
  clock.ms += 5'000;
  const Uuid made = source.next();
  std::int64_t ms = 0;
  for (int i = 0; i < 6; ++i) ms = (ms << 8) | made.bytes[static_cast<std::size_t>(i)];
  EXPECT_EQ(ms, kVectorMs + 4'000);
}

TEST(IdSource, RisesAfterARestartUnderAClockSetBack) {
  SetClock clock(kVectorMs);
  IdSource before(clock, seeded());
  Uuid last;
  for (int i = 0; i < 5'000; ++i) last = before.next();
  clock.ms -= 86'400'000;
  IdSource after(clock, seeded());
  after.resume_after(last);
  EXPECT_GT(after.next(), last);
}

TEST(IdSource, IsNotThrownBackByAnOlderId) {
  SetClock clock(kVectorMs);
  IdSource source(clock, seeded());
  const Uuid first = source.next();
  source.resume_after(id("00000000-0001-7000-8000-000000000000"));
  EXPECT_GT(source.next(), first);
}

TEST(IdSource, CarriesAFullCounterIntoTheTime) {
  SetClock clock(kVectorMs);
  IdSource source(clock, [] { return std::uint64_t{0}; });
  source.resume_after(id("017f22e2-79b0-7fff-8000-000000000000"));
  EXPECT_EQ(to_text(source.next()), "017f22e2-79b1-7000-8000-000000000000");
}

TEST(IdSource, OfTwoTabletsNeverMeets) {
  SetClock clock(kVectorMs);
  IdSource one(clock, system_random());
  IdSource other(clock, system_random());
  std::set<Uuid> all;
  for (int i = 0; i < 2'000; ++i) {
    EXPECT_TRUE(all.insert(one.next()).second);
    EXPECT_TRUE(all.insert(other.next()).second);
  }
}

TEST(Uuid, ReadsBackItsOwnText) {
  EXPECT_EQ(to_text(id(kVector)), kVector);
  EXPECT_EQ(to_text(Uuid{}), "00000000-0000-0000-0000-000000000000");
  EXPECT_TRUE(id("00000000-0000-0000-0000-000000000000").is_nil());
  EXPECT_FALSE(id(kVector).is_nil());
}

TEST(Uuid, RefusesOtherText) {
  for (const std::string_view text :
       {"", "017f22e2", "017f22e2-79b0-7cc3-98c4-dc0c0c07398",
        "017f22e2-79b0-7cc3-98c4-dc0c0c07398ff", "017F22E2-79B0-7CC3-98C4-DC0C0C07398F",
        "017f22e2-79b0-7cc3-98c4+dc0c0c07398f", "017f22e279b0-7cc3-98c4-dc0c0c07398f0",
        "g17f22e2-79b0-7cc3-98c4-dc0c0c07398f", "{17f22e2-79b0-7cc3-98c4-dc0c0c07398}"}) {
    const auto result = uuid_from_text(text);
    ASSERT_FALSE(result.has_value()) << text;
    EXPECT_EQ(result.error().code, ErrorCode::not_a_choice);
    EXPECT_NE(result.error().what.find(text), std::string::npos) << "the message shows the text";
  }
}

// An id of one kind must not land in the place of another.
using PlotNumber = Id<struct PlotNumberTag>;
using TreeNumber = Id<struct TreeNumberTag>;
static_assert(!std::convertible_to<PlotNumber, TreeNumber>);
static_assert(!std::constructible_from<TreeNumber, PlotNumber>);
static_assert(!std::equality_comparable_with<PlotNumber, TreeNumber>);

}  // namespace
}  // namespace oaklight
