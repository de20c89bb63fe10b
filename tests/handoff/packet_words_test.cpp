#include "core/handoff/packet_words.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/handoff/test_tract.hpp"

namespace oaklight {
namespace {

using namespace oaklight::test;
using testing::Contains;
using testing::HasSubstr;
using testing::Not;

std::string fact(const Tract& tract, std::string_view label) {
  for (const PacketFact& f : emergency_facts(tract)) {
    if (f.label.find(label) != std::string::npos) return f.text;
  }
  return "no such label";
}

TEST(EmergencyFacts, GiveTheLandingTwiceInWgs84) {
  Tract tract;
  tract.name = "Laurel Run";
  tract.county = "Cabell County";
  tract.state = "WV";
  tract.landing = Position{Degrees{38.4012}, Degrees{-82.3345}};
  EXPECT_EQ(fact(tract, "Call 911"), "Laurel Run, Cabell County, WV");
  EXPECT_EQ(fact(tract, "WGS 84"), "38.40120, -82.33450");
  // Derived: 0.4012 deg is 24.072 minutes, 0.3345 deg is 20.070 minutes.
  EXPECT_EQ(fact(tract, "degrees and minutes"), "38° 24.072' N, 82° 20.070' W");
}

TEST(EmergencyFacts, SayWhatNobodyRecorded) {
  for (const PacketFact& f : emergency_facts({})) EXPECT_EQ(f.text, "not recorded") << f.label;
}

TEST(BeforeYouStart, TheDangerOfFellingComesFirst) {
  for (const PacketReader reader : {PacketReader::logger, PacketReader::firewood}) {
    const auto says = before_you_start({.reader = reader, .cautions_read_on = "2026-11"});
    EXPECT_THAT(says.at(0), HasSubstr("Felling trees kills"));
    EXPECT_THAT(says.at(1), HasSubstr("does not say that any tree is safe"));
    EXPECT_THAT(says, Contains(HasSubstr("second adult")));
    EXPECT_THAT(says, Contains(HasSubstr("in doubt")));
    EXPECT_THAT(says, Contains(HasSubstr("local codes, the label")));
    EXPECT_THAT(says, Contains(HasSubstr("2026-11")));
  }
}

TEST(BeforeYouStart, InventedDataSaySoBeforeAllElse) {
  EXPECT_THAT(before_you_start({.demo = true}).at(0), HasSubstr("Invented data"));
}

TEST(BeforeYouStart, NamesTheDangersOfTheTreesOnThisVeryList) {
  const auto says =
      before_you_start({.on_list = {{"Ash that is dead", Severity::stop, {"7", "12"}},
                                    {"Ground 15 to 35 percent",
                                     Severity::extra_care,
                                     {"1", "2", "3", "4", "5", "6", "7", "8"}},
                                    {"Leans more than 15 degrees", Severity::stop, {"9"}}}});
  const auto stop = std::ranges::find(says,
                                      "STOP at these trees of this very list: Ash that is dead (7, "
                                      "12); Leans more than 15 degrees (9).");
  ASSERT_NE(stop, says.end());
  EXPECT_EQ(*(stop + 1),
            "Take care at these: Ground 15 to 35 percent (1, 2, 3, 4, 5, 6 and 2 more).");
  EXPECT_THAT(*(stop - 1), HasSubstr("Never cut alone"));
}

TEST(BeforeYouStart, DoubtsAboutLinesAndPlacesAreTold) {
  EXPECT_THAT(before_you_start({}), Contains(HasSubstr("No property line is on the map")));
  EXPECT_THAT(before_you_start({.lines = true}), Contains(HasSubstr("not confirmed")));
  const auto sure = before_you_start({.lines = true, .lines_confirmed = true});
  EXPECT_THAT(sure, Not(Contains(HasSubstr("property line"))));
  EXPECT_THAT(sure, Not(Contains(HasSubstr("place on the map"))));
  EXPECT_THAT(before_you_start({.unplaced = 1}), Contains(HasSubstr("1 listed tree has no place")));
  EXPECT_THAT(before_you_start({.unplaced = 4}),
              Contains(HasSubstr("4 listed trees have no place")));
}

TEST(SeasonWords, NameEachIssueOnceAndTheDayThatIsClear) {
  const auto windows = windows_of(seasons(), "KY");
  const std::string may = season_advice(windows, true, Day{std::chrono::May / 4 / 2026}, Day{});
  EXPECT_THAT(may, HasSubstr("oak wilt risk, bat active season, bat active near cave, "
                             "bird nesting, bark slip wound risk"));
  EXPECT_THAT(may, HasSubstr("2026-11-15"));
  EXPECT_THAT(may, HasSubstr("Check with your state agency"));
  EXPECT_THAT(may, Not(HasSubstr("state is not recorded")));
}

TEST(SeasonWords, InWinterSayWhenTheNextHoldBegins) {
  const auto windows = windows_of(seasons(), "");
  const std::string january =
      season_advice(windows, false, Day{std::chrono::January / 9 / 2027}, Day{});
  EXPECT_THAT(january, HasSubstr("none of our dates"));
  EXPECT_THAT(january, HasSubstr("begins on 2027-04-01"));
  EXPECT_THAT(january, HasSubstr("The state is not recorded"));
}

TEST(SeasonWords, SayThatNoDayForTheWorkWasGiven) {
  const auto windows = windows_of(seasons(), "WV");
  const std::string text =
      season_advice(windows, true, std::nullopt, Day{std::chrono::December / 1 / 2026});
  EXPECT_THAT(text, HasSubstr("No day for the work was given"));
  EXPECT_THAT(text, HasSubstr("2026-12-01"));
}

TEST(SeasonWords, HoldsAreListedBeforeTheRestAndKeepTheirEvidence) {
  const auto notes = season_notes(windows_of(seasons(), "WV"));
  ASSERT_GE(notes.size(), 6U);
  EXPECT_EQ(notes[0].issue, "oak wilt risk");
  EXPECT_EQ(notes[0].from_to, "Apr 1 - Jul 31");
  EXPECT_EQ(notes[0].evidence, "from memory");
  EXPECT_EQ(notes.back().issue, "hunting season");
}

}  // namespace
}  // namespace oaklight
