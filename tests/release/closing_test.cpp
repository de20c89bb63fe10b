// When the crown of a released tree should be looked at again.

#include "core/release/closing.hpp"

#include <gtest/gtest.h>

#include "core/measure/crown_width.hpp"
#include "tests/support/trees.hpp"

namespace oaklight::test {
namespace {

YearSettings years_of(const ReleaseKnowledge& knowledge) {
  return YearSettings::from(knowledge.rules).value();
}
YearSettings years() { return years_of(shipped_knowledge()); }

TEST(Closing, AGapOfTenFeetClosesInFiveToTenYears) {
  // Trimble and Tryon 1966, as rule R1.86 states it (from memory).
  const YearsRange range = years_to_close(Feet{10.0}, years());
  EXPECT_DOUBLE_EQ(range.soonest, 5.0);
  EXPECT_DOUBLE_EQ(range.latest, 10.0);
}

TEST(Closing, WithThreeFreeSidesTheNarrowestGapDecides) {
  const Sides free{Side::north, Side::east, Side::south};
  const std::vector<OpenedGap> gaps = {{{Side::north}, Inches{12.0}}, {{Side::east}, Inches{8.0}}};
  const auto look = years_until_look(free, gaps, years());
  ASSERT_TRUE(look.has_value());
  // Derived: a tree of 8 in left twice its crowded crown radius, which closes at 0.5 to 1 ft a year
  // from both edges.
  const double gap = 2.0 * crowded_crown_radius(Inches{8.0}).value;
  EXPECT_NEAR(look->soonest, gap / 2.0, 1e-12);
  EXPECT_NEAR(look->latest, gap, 1e-12);
}

TEST(Closing, WithFourFreeSidesTwoHaveToClose) {
  const std::vector<OpenedGap> gaps = {{{Side::north}, Inches{12.0}}, {{Side::east}, Inches{8.0}}};
  const auto look = years_until_look(Sides::all(), gaps, years());
  ASSERT_TRUE(look.has_value());
  EXPECT_NEAR(look->soonest, crowded_crown_radius(Inches{12.0}).value, 1e-12);
}

TEST(Closing, OfTwoNeighboursOnOneSideTheThinnerLeavesTheGap) {
  const Sides free{Side::north, Side::east, Side::south};
  const std::vector<OpenedGap> gaps = {{{Side::north}, Inches{14.0}}, {{Side::north}, Inches{6.0}}};
  EXPECT_NEAR(years_until_look(free, gaps, years())->soonest,
              crowded_crown_radius(Inches{6.0}).value, 1e-12);
}

TEST(Closing, IsNotKnownForSidesThatNothingStoodOn) {
  const std::vector<OpenedGap> one = {{{Side::north}, Inches{12.0}}};
  EXPECT_FALSE(years_until_look(Sides::all(), one, years()).has_value());
  EXPECT_FALSE(years_until_look(Sides{Side::east, Side::south, Side::west}, one, years()));
}

TEST(Closing, TwoFreeSidesOrFewerAreLookedAtNow) {
  EXPECT_DOUBLE_EQ(years_until_look({Side::north, Side::east}, {}, years())->latest, 0.0);
  EXPECT_DOUBLE_EQ(years_until_look({}, {}, years())->latest, 0.0);
}

TEST(Closing, FollowsTheRulesOfTheTract) {
  const auto slower = years_of(knowledge_with({{"R1.85", {0.25, 0.5}}, {"R1.87", {1}}}));
  EXPECT_DOUBLE_EQ(years_to_close(Feet{10.0}, slower).latest, 20.0);
  EXPECT_FALSE(years_until_look({Side::north, Side::east}, {}, slower).has_value());
  const auto never = years_of(knowledge_with({{"R1.85", {0, 0}}}));
  const std::vector<OpenedGap> one = {{{Side::north}, Inches{12.0}}};
  EXPECT_FALSE(years_until_look({Side::north, Side::east, Side::south}, one, never).has_value());
}

TEST(Closing, RefusesARuleThatIsASlipOfTheKeyboard) {
  // Judgement: nothing here is beyond 1,000 years, feet or sides.
  const auto settings = [](int years) {
    const std::string text =
        R"({"rules_for": "release", "version": "1", "rules": [{"id": "R1.80", "rule": "Lag.", "value": [)" +
        std::to_string(years) +
        R"(], "unit": "years", "status": "common practice", "source": "invented",
           "editable": true}]})";
    RuleBook book = RuleBook::from_json(text, "rules").value();
    book.add_missing(shipped_knowledge().rules);
    return YearSettings::from(book);
  };
  EXPECT_DOUBLE_EQ(settings(1000).value().lag_years, 1000.0);
  EXPECT_EQ(settings(1001).error().code, ErrorCode::out_of_range);
  EXPECT_EQ(settings(1001).error().where, "rules/R1.80");
}

TEST(Closing, NamesItsRules) {
  for (const char* id : kClosingRules) {
    EXPECT_NE(shipped_knowledge().rules.find(id), nullptr) << id;
  }
}

}  // namespace
}  // namespace oaklight::test
