// In which order cautions are told, those of the whole job, and the table that they are read from.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/release/caution_subject.hpp"

namespace oaklight {
namespace {

using namespace oaklight::test;
using testing::ElementsAre;
using testing::Not;

TEST(CautionOrder, StopsComeFirstThenExtraCareThenNotesInTableOrder) {
  Subject subject = plain();
  subject.facts.conditions = {Condition::metal, Condition::clump, Condition::v_fork,
                              Condition::lean_15, Condition::crack};
  EXPECT_THAT(codes_of(subject), ElementsAre("CRACK_SPLIT", "LEAN_15", "FORKED", "CLUMP", "METAL"));
}

TEST(CautionOrder, EveryStopIsPrintedAndAtMostThreeOfTheOthers) {
  Subject subject = plain();
  subject.facts.conditions = {Condition::metal,    Condition::clump,     Condition::v_fork,
                              Condition::canker,   Condition::lean_15,   Condition::crack,
                              Condition::conk,     Condition::wire_near, Condition::road_near,
                              Condition::hung_tree};
  const auto codes = codes_of(cautions_for(subject.tree(), shipped()));
  for (const char* stop :
       {"CRACK_SPLIT", "LEAN_15", "ROT_CONK", "POWER_LINE", "ROAD_TRAIL", "HUNG_IN"}) {
    EXPECT_THAT(codes, testing::Contains(stop));
  }
  EXPECT_EQ(codes.size(), 6U + 3U);
  EXPECT_THAT(codes, Not(testing::Contains("METAL"))) << "the note is what is left off";
}

TEST(CautionOrder, WiresRoadsAndBuildingsAreToldFirst) {
  Subject subject = plain();
  ash(subject);
  dead(subject);
  subject.facts.conditions = {Condition::broken_top, Condition::building_near, Condition::road_near,
                              Condition::wire_near};
  const auto codes = codes_of(cautions_for(subject.tree(), shipped()));
  ASSERT_GE(codes.size(), 5U);
  EXPECT_THAT(std::vector<std::string>(codes.begin(), codes.begin() + 5),
              ElementsAre("POWER_LINE", "ROAD_TRAIL", "BUILDING", "DEAD_ASH", "BROKEN_TOP"));
}

TEST(CautionText, NamesTheDeadAshesInReachSoThatTheyCanBeKeptAwayFrom) {
  Subject subject = plain();
  // The nearest is short and too far off to reach; the farthest is tall and reaches.
  subject.facts.height = *TapedLength::from_hundredths(3000, UnitSystem::us);
  subject.around.dead_ashes = {{Feet{150}, Feet{90}, "a tallied tree of plot 12"},
                               {Feet{70}, Feet{30}, "tree 9"},
                               {Feet{20}, Feet{30}, "tree 248"}};
  const auto cautions = cautions_for(subject.tree(), shipped());
  ASSERT_THAT(codes_of(cautions), ElementsAre("NEAR_DEAD_ASH"));
  EXPECT_THAT(cautions[0].text,
              testing::EndsWith(" It is tree 248 and a tallied tree of plot 12."));
  EXPECT_THAT(cautions[0].text, testing::HasSubstr("Keep two tree lengths away"));
  EXPECT_THAT(cautions[0].text, testing::HasSubstr("ask the owner"));
}

TEST(CautionOrder, TwoOfExtraCareAreOneStop) {
  Subject subject = plain();
  subject.facts.conditions = {Condition::clump, Condition::v_fork};
  const auto cautions = cautions_for(subject.tree(), shipped());
  EXPECT_THAT(codes_of(cautions), ElementsAre("MULTI", "FORKED", "CLUMP"));
  EXPECT_EQ(cautions.front().severity, Severity::stop);
}

TEST(CautionOrder, AStopOfItsOwnSaysMoreThanACount) {
  Subject subject = plain();
  subject.facts.conditions = {Condition::clump, Condition::v_fork, Condition::crack};
  EXPECT_THAT(codes_of(subject), ElementsAre("CRACK_SPLIT", "FORKED", "CLUMP"));
}

TEST(JobCautions, TheStartOfADayIsAlwaysThere) {
  const auto codes = codes_of(job_cautions({}, shipped()));
  for (const char* code : {"ALONE", "UNTRAINED", "NO_GEAR", "MINOR", "CREW_CLOSE", "WIND", "STORM",
                           "NO_SIGNAL", "BAD_EXIT", "SNOW_ICE", "HIRE_CHECK", "PERMIT"}) {
    EXPECT_THAT(codes, testing::Contains(code));
  }
  for (const char* code :
       {"OAK_WILT_DATE", "OAK_BARK", "FIREWOOD_MOVE", "ASH_WOOD", "INVASIVE_SEED", "ALB_AREA"}) {
    EXPECT_THAT(codes, Not(testing::Contains(code)));
  }
}

TEST(JobCautions, FactsOfTheJobBringTheirOwn) {
  const auto codes_with = [](JobFacts job) { return codes_of(job_cautions(job, shipped())); };
  EXPECT_THAT(codes_with({.oak_wilt_season = true}), testing::Contains("OAK_WILT_DATE"));
  EXPECT_THAT(codes_with({.keep_trees = true}), testing::Contains("OAK_BARK"));
  EXPECT_THAT(codes_with({.firewood = true}), testing::Contains("FIREWOOD_MOVE"));
  EXPECT_THAT(codes_with({.ash = true}), testing::Contains("ASH_WOOD"));
  EXPECT_THAT(codes_with({.invasive_plants = true}), testing::Contains("INVASIVE_SEED"));
  EXPECT_THAT(codes_with({.state = "OH"}), testing::Contains("ALB_AREA"));
  EXPECT_THAT(codes_with({.state = "WV"}), Not(testing::Contains("ALB_AREA")));
}

TEST(JobCautions, StopsComeFirst) {
  const auto cautions = job_cautions({.keep_trees = true, .firewood = true}, shipped());
  EXPECT_TRUE(std::is_sorted(cautions.begin(), cautions.end(),
                             [](const auto& a, const auto& b) { return a.severity > b.severity; }));
}

TEST(JobCautions, WhatNobodyRecordsIsToBeLookedFor) {
  const auto hazards = hazards_to_look_for(shipped());
  EXPECT_THAT(hazards, testing::Contains("Bent sapling or limb under load"));
  EXPECT_EQ(hazards.size(),
            static_cast<std::size_t>(std::count_if(
                caution_rules().begin(), caution_rules().end(),
                [](const CautionRule& rule) { return rule.use == CautionUse::look; })));
}

TEST(CautionTableFile, IsPlainAndShort) {
  for (const CautionEntry& entry : shipped().entries()) {
    EXPECT_LE(entry.caution.text.size(), 160U) << entry.caution.code;
    EXPECT_LE(entry.observation.size(), 70U) << entry.caution.code;
    for (const char* colour : {" blue", " red ", " orange", " yellow"}) {
      EXPECT_EQ(entry.caution.text.find(colour), std::string::npos)
          << "colours are agreed job by job: " << entry.caution.code;
    }
  }
  EXPECT_EQ(shipped().oldest_reading(), "2026-11");
}

/// The shipped table with one line changed.
std::string edited(std::string_view code, const std::string& line) {
  std::string text = shipped_text();
  const auto start = text.find("\n" + std::string(code) + ",") + 1;
  const auto end = text.find('\n', start) + 1;
  return text.replace(start, end - start, line);
}

TEST(CautionTableFile, RefusesWhatItCannotUseAndSaysWhere) {
  const auto code_of = [](const std::string& text) {
    const auto table = CautionTable::read(text);
    EXPECT_FALSE(table);
    return table ? std::string()
                 : std::string(name_of(table.error().code)) + " " + table.error().where;
  };
  EXPECT_EQ(code_of(edited("DEAD_ASH", "")), "missing_value hazard_cautions.csv");
  EXPECT_EQ(code_of(edited("DEAD_ASH", "DEAD_ASH,o,grave,c,a,s,retrieved,2026-11\n")),
            "not_a_choice hazard_cautions.csv:2:severity");
  EXPECT_EQ(code_of(edited("DEAD_ASH", "DEAD_ASH,o,stop,c,a,s,heard it,2026-11\n")),
            "not_a_choice hazard_cautions.csv:2:evidence");
  EXPECT_EQ(code_of(edited("DEAD_ASH", "DEAD_ASH,o,stop,,a,s,retrieved,2026-11\n")),
            "missing_value hazard_cautions.csv:2:caution");
  EXPECT_EQ(code_of(edited("DEAD_ASH", "ASH_GONE,o,stop,c,a,s,retrieved,2026-11\n")),
            "not_a_choice hazard_cautions.csv:2:code");
  EXPECT_EQ(code_of(edited("DEAD_ASH", "ASH_SICK,o,stop,c,a,s,retrieved,2026-11\n")),
            "duplicate hazard_cautions.csv:3:code");
}

TEST(CautionTableFile, LocalPracticeMaySoftenACaution) {
  const auto table = CautionTable::read(
      edited("SPLIT_SPECIES", "SPLIT_SPECIES,o,note,c,a,s,common practice,2027-01\n"));
  ASSERT_TRUE(table);
  Subject subject = plain();
  ash(subject);
  EXPECT_EQ(every_caution_for(subject.tree(), *table).front().severity, Severity::note);
}

}  // namespace
}  // namespace oaklight
