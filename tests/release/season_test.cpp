#include "core/release/season.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>
#include "tests/support/places.hpp"

namespace oaklight {
namespace {

using std::chrono::April;
using std::chrono::August;
using std::chrono::December;
using std::chrono::February;
using std::chrono::January;
using std::chrono::July;
using std::chrono::March;
using std::chrono::May;
using std::chrono::November;
using std::chrono::October;

constexpr std::string_view kHeader =
    "issue,states,where,use,start_mmdd,end_mmdd,note,source,evidence,read_on\n";

std::string shipped_text() {
  std::ifstream in(test::source_path("forms/season_windows.csv"), std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

std::vector<SeasonWindow> shipped() {
  auto table = read_seasons(shipped_text());
  EXPECT_TRUE(table) << to_text(table.error());
  return *table;
}

SeasonWindow window(MonthDay first, MonthDay last) {
  return {.issue = "x", .states = {"*"}, .where = "", .first = first, .last = last};
}

std::vector<SeasonWindow> with_issue(const std::vector<SeasonWindow>& windows,
                                     std::string_view beginning) {
  std::vector<SeasonWindow> found;
  std::copy_if(windows.begin(), windows.end(), std::back_inserter(found),
               [&](const SeasonWindow& w) { return w.issue.starts_with(beginning); });
  return found;
}

std::set<std::string> wheres(const std::vector<SeasonWindow>& windows) {
  std::set<std::string> texts;
  for (const SeasonWindow& w : windows) texts.insert(w.where);
  return texts;
}

TEST(SeasonWindow, HoldsFromItsFirstDayToItsLast) {
  const SeasonWindow spring = window(April / 15, July / 31);
  EXPECT_FALSE(holds_on(spring, April / 14 / 2026));
  EXPECT_TRUE(holds_on(spring, April / 15 / 2026));
  EXPECT_TRUE(holds_on(spring, July / 31 / 2026));
  EXPECT_FALSE(holds_on(spring, August / 1 / 2026));
}

TEST(SeasonWindow, MayRunOverTheNewYear) {
  const SeasonWindow winter = window(December / 15, July / 15);
  EXPECT_TRUE(holds_on(winter, December / 15 / 2026));
  EXPECT_TRUE(holds_on(winter, December / 31 / 2026));
  EXPECT_TRUE(holds_on(winter, January / 1 / 2027));
  EXPECT_TRUE(holds_on(winter, July / 15 / 2027));
  EXPECT_FALSE(holds_on(winter, July / 16 / 2027));
  EXPECT_FALSE(holds_on(winter, December / 14 / 2027));
}

TEST(SeasonWindow, OneThatEndsWithFebruaryHoldsOnItsLeapDay) {
  const SeasonWindow hunting = window(October / 1, February / 28);
  EXPECT_TRUE(holds_on(hunting, February / 29 / 2028));
  EXPECT_FALSE(holds_on(hunting, March / 1 / 2028));
  EXPECT_FALSE(holds_on(hunting, March / 1 / 2027));
}

TEST(SeasonWindow, OneThatBeginsInMarchLeavesTheLeapDayFree) {
  EXPECT_FALSE(holds_on(window(March / 1, October / 15), February / 29 / 2028));
}

TEST(SeasonWindow, AWindowOfOneDayIsThatDay) {
  const SeasonWindow day = window(May / 4, May / 4);
  EXPECT_TRUE(holds_on(day, May / 4 / 2026));
  EXPECT_FALSE(holds_on(day, May / 5 / 2026));
}

TEST(SeasonDates, TheNextClearDayMayBeToday) {
  const std::vector windows = {window(April / 1, July / 31)};
  EXPECT_EQ(next_clear_day(windows, March / 31 / 2026), March / 31 / 2026);
  EXPECT_EQ(next_clear_day(windows, April / 1 / 2026), August / 1 / 2026);
}

TEST(SeasonDates, TheNextClearDayPassesOverTheNewYearAndTheLeapDay) {
  const std::vector windows = {window(November / 1, February / 28)};
  EXPECT_EQ(next_clear_day(windows, December / 24 / 2027), March / 1 / 2028);
  EXPECT_EQ(next_clear_day(windows, December / 24 / 2026), March / 1 / 2027);
}

TEST(SeasonDates, WindowsThatTouchAreOneSpan) {
  const std::vector windows = {window(April / 1, July / 15), window(July / 16, October / 14)};
  EXPECT_EQ(next_clear_day(windows, May / 20 / 2026), October / 15 / 2026);
}

TEST(SeasonDates, AYearWithoutAClearDayHasNone) {
  const std::vector windows = {window(January / 1, December / 31)};
  EXPECT_EQ(next_clear_day(windows, May / 20 / 2026), std::nullopt);
  EXPECT_EQ(next_held_day({}, May / 20 / 2026), std::nullopt);
}

TEST(SeasonDates, TheNextHeldDayIsWhereTheClearSpanEnds) {
  const std::vector windows = {window(April / 1, July / 31)};
  EXPECT_EQ(next_held_day(windows, November / 15 / 2026), April / 1 / 2027);
}

TEST(SeasonTable, AStateHasItsOwnRowsAndElseTheDefault) {
  const auto table = shipped();
  EXPECT_THAT(wheres(with_issue(windows_of(table, "OH"), "oak_wilt_risk")),
              testing::ElementsAre("OH statewide"));
  EXPECT_THAT(wheres(with_issue(windows_of(table, "WV"), "bat_active_season")),
              testing::ElementsAre("WV"));
  EXPECT_THAT(wheres(with_issue(windows_of(table, "VT"), "oak_wilt_risk")),
              testing::ElementsAre("eastern states"));
  EXPECT_THAT(wheres(with_issue(windows_of(table, ""), "bat_active_season")),
              testing::ElementsAre("eastern states"));
}

// Two rows for either side of Wisconsin's tension zone: April 1 and April 15 to July 15. Which side
// a tract lies on is not recorded, so the wider one holds (derived from the rows).
TEST(SeasonTable, OfTwoPartsOfAStateTheStricterHolds) {
  const auto wilt = with_issue(windows_of(shipped(), "WI"), "oak_wilt_risk");
  ASSERT_EQ(wilt.size(), 1U);
  EXPECT_EQ(wilt[0].first, April / 1);
  EXPECT_THAT(wilt[0].where, testing::HasSubstr("stricter"));
}

TEST(SeasonTable, ACountyInTheTableSettlesWhichPartOfAStateGoverns) {
  auto table = shipped();
  for (SeasonWindow& w : table) {
    if (w.where == "WI north of tension zone") w.states = {"WI", "WI/Oneida"};
  }
  const auto north = with_issue(windows_of(table, "WI", "Oneida County"), "oak_wilt_risk");
  ASSERT_EQ(north.size(), 1U);
  EXPECT_EQ(north[0].first, April / 15);
  EXPECT_EQ(north[0].where, "WI north of tension zone");
  const auto other = with_issue(windows_of(table, "WI", "Dane"), "oak_wilt_risk");
  ASSERT_EQ(other.size(), 1U);
  EXPECT_EQ(other[0].first, April / 1);
  // Other issues of the state stay as they are.
  EXPECT_EQ(with_issue(windows_of(table, "WI", "Oneida"), "oak_wilt_lower_risk").size(), 1U);
}

TEST(SeasonTable, AStateMayHaveTwoRowsOfOneIssue) {
  EXPECT_EQ(with_issue(windows_of(shipped(), "IN"), "bat_active_season").size(), 2U);
}

/// The day on which everything that holds cutting back in a state is over.
std::optional<Day> clear_day(std::string_view state, Day from) {
  return next_clear_day(windows_of(windows_of(shipped(), state), SeasonUse::hold), from);
}

// Derived by hand from the rows of forms/season_windows.csv.
TEST(SeasonTable, SaysWhenCuttingMayStart) {
  EXPECT_EQ(clear_day("WV", May / 4 / 2026), November / 15 / 2026);  // bats to Nov 14
  EXPECT_EQ(clear_day("OH", May / 4 / 2026), October / 15 / 2026);   // oak wilt to Oct 14
  EXPECT_EQ(clear_day("KY", May / 4 / 2026), November / 15 / 2026);  // bats near caves to Nov 14
  EXPECT_EQ(clear_day("", May / 4 / 2026), November / 15 / 2026);    // default bats to Nov 14
  EXPECT_EQ(clear_day("WV", December / 1 / 2026), December / 1 / 2026);
  EXPECT_EQ(
      next_held_day(windows_of(windows_of(shipped(), "WV"), SeasonUse::hold), December / 1 / 2026),
      April / 1 / 2027);
}

// One span clears every oak wilt and bat row of the table: November 16 to the end of February.
TEST(SeasonTable, LateNovemberToFebruaryIsClearEverywhere) {
  for (const SeasonWindow& w : windows_of(shipped(), SeasonUse::hold)) {
    for (const Day day : {Day{November / 16 / 2026}, Day{January / 15 / 2028},
                          Day{February / 28 / 2027}, Day{February / 29 / 2028}}) {
      EXPECT_FALSE(holds_on(w, day)) << w.where << " " << to_text(day);
    }
  }
}

// Scenario: Wisconsin north of the tension zone, planned 20 May. Refused; with the lower risk class
// obeyed the earliest day is 1 October, without it 16 July.
TEST(SeasonTable, RightTreesInTheWrongMonthWaitForAutumn) {
  auto table = shipped();
  std::erase_if(table, [](const SeasonWindow& w) { return w.where.find("south") != w.where.npos; });
  const auto oak_wilt = with_issue(windows_of(table, "WI"), "oak_wilt");
  EXPECT_EQ(next_clear_day(oak_wilt, May / 20 / 2026), October / 1 / 2026);
  EXPECT_EQ(next_clear_day(with_issue(oak_wilt, "oak_wilt_risk"), May / 20 / 2026),
            July / 16 / 2026);
}

// Scenario: Indiana, planned July. Refused until 1 October by the agency's guideline for hazard
// trees.
TEST(SeasonTable, BatsInIndianaLeaveInOctober) {
  const auto bats = with_issue(windows_of(shipped(), "IN"), "bat_active_season");
  EXPECT_EQ(next_clear_day(bats, July / 10 / 2026), October / 1 / 2026);
}

TEST(SeasonTable, EveryRowSaysHowItIsFoundedAndWhenItWasRead) {
  for (const SeasonWindow& w : shipped()) {
    EXPECT_FALSE(w.source.empty()) << w.where;
    EXPECT_EQ(w.read_on.size(), 7U) << w.where;
  }
}

TEST(SeasonTable, RefusesRowsItCannotKeepAndSaysWhere) {
  struct Bad {
    const char* row;
    ErrorCode code;
    const char* where;
  };
  for (const Bad& bad : {
           Bad{"x,Ohio,w,hold,04-01,07-31,n,s,retrieved,2026-11\n", ErrorCode::not_a_choice,
               "season_windows.csv:2:states"},
           Bad{"x,OH,w,maybe,04-01,07-31,n,s,retrieved,2026-11\n", ErrorCode::not_a_choice,
               "season_windows.csv:2:use"},
           Bad{"x,OH,w,hold,04-31,07-31,n,s,retrieved,2026-11\n", ErrorCode::not_a_choice,
               "season_windows.csv:2:start_mmdd"},
           Bad{"x,OH,w,hold,04-01,,n,s,retrieved,2026-11\n", ErrorCode::not_a_choice,
               "season_windows.csv:2:end_mmdd"},
           Bad{"x,OH,w,hold,04-01,07-31,n,s,heard it,2026-11\n", ErrorCode::not_a_choice,
               "season_windows.csv:2:evidence"},
           Bad{"x,OH,w,hold,04-01,07-31,n,,retrieved,2026-11\n", ErrorCode::missing_value,
               "season_windows.csv:2:source"},
           Bad{"x,OH\n", ErrorCode::bad_csv, "season_windows.csv:2"},
       }) {
    const auto table = read_seasons(std::string(kHeader) + bad.row);
    ASSERT_FALSE(table) << bad.row;
    EXPECT_EQ(table.error().code, bad.code) << bad.row;
    EXPECT_EQ(table.error().where, bad.where) << bad.row;
  }
  EXPECT_FALSE(read_seasons("issue,where\n"));
}

TEST(SeasonText, ASpanIsSaidInWords) {
  EXPECT_EQ(span_text(window(December / 15, July / 15)), "Dec 15 - Jul 15");
}

}  // namespace
}  // namespace oaklight
