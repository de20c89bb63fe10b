#include "core/release/cautions.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>

#include "core/base/csv_text.hpp"

namespace oaklight {
namespace {

using testing::ElementsAre;
using testing::Not;

std::string shipped_text() {
  std::ifstream in(OAKLIGHT_SOURCE_DIR "/forms/hazard_cautions.csv", std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

const CautionTable& shipped() {
  static const CautionTable kTable = [] {
    auto table = CautionTable::read(shipped_text());
    EXPECT_TRUE(table) << to_text(table.error());
    return *table;
  }();
  return kTable;
}

/// A live red maple of 12 in on level ground with nothing near it, to be felled outside the bat
/// season: no caution applies until a test changes something.
struct Subject {
  Species species;
  TreeFacts facts;
  Surroundings around;
  TreePlan plan{Method::fell, false};

  [[nodiscard]] TreeCase tree() const { return {facts, species, around, plan}; }
};

Dbh inches(double dbh) {
  return *Dbh::from_tenths(static_cast<std::int32_t>(dbh * 10.0 + 0.5), UnitSystem::us);
}

Subject plain() {
  Subject subject{.species = {}, .facts = {.species = {316}, .dbh = inches(12)}, .around = {}};
  subject.around.slope = Percent{0};
  subject.species.scientific_name = "Acer rubrum";
  return subject;
}

std::vector<std::string> codes_of(const std::vector<Caution>& cautions) {
  std::vector<std::string> codes;
  for (const Caution& caution : cautions) codes.push_back(caution.code);
  return codes;
}

std::vector<std::string> codes_of(const Subject& subject) {
  return codes_of(every_caution_for(subject.tree(), shipped()));
}

using Change = void (*)(Subject&);

template <Condition condition>
void show(Subject& s) {
  s.facts.conditions.add(condition);
}
/// With a sound crown, as somebody saw.
void ash(Subject& s) {
  s.species.scientific_name = "Fraxinus americana";
  s.facts.dieback = Percent{0};
}
void white_oak(Subject& s) { s.species.scientific_name = "Quercus alba"; }
void dead(Subject& s) { s.facts.status = TreeStatus::dead; }

/// One rule: a tree to which it applies, and one just short of it.
struct RuleTest {
  const char* code;
  Change applies;
  Change just_short;
};

// Cut-offs: columns applies_when and source of forms/hazard_cautions.csv.
const std::vector<RuleTest> kRuleTests = {
    {"DEAD_ASH",
     [](Subject& s) {
       ash(s);
       s.facts.dieback = Percent{50.1};
     },
     [](Subject& s) {
       ash(s);
       s.facts.dieback = Percent{50};
       s.facts.live_crown = Percent{20};  // of its height: says nothing about a dying crown
     }},
    {"DEAD_ASH",
     [](Subject& s) {
       ash(s);
       dead(s);
     },
     dead},
    {"ASH_SICK",
     [](Subject& s) {
       ash(s);
       s.facts.dieback = Percent{10};
     },
     [](Subject& s) {
       ash(s);
       s.facts.dieback = Percent{9};
     }},
    {"ASH_SICK",
     [](Subject& s) {
       ash(s);
       show<Condition::borer_signs>(s);
     },
     show<Condition::borer_signs>},
    {"ASH_UNSEEN",
     [](Subject& s) {
       ash(s);
       s.facts.dieback = std::nullopt;
     },
     ash},
    {"NO_SLOPE", [](Subject& s) { s.around.slope = std::nullopt; }, [](Subject&) {}},
    {"NO_PLACE", [](Subject& s) { s.around.unplaced = true; }, [](Subject&) {}},
    {"DEAD_TREE", dead,
     [](Subject& s) {
       ash(s);
       dead(s);
     }},
    {"BROKEN_TOP", show<Condition::broken_top>, show<Condition::dead_top>},
    {"WIDOWMAKER", show<Condition::loose_limb>, show<Condition::dead_top>},
    {"WIDOWMAKER", [](Subject& s) { s.around.loose_limb_beside = true; }, [](Subject&) {}},
    {"DEAD_TOP", show<Condition::dead_top>, show<Condition::broken_top>},
    {"LOOSE_BARK", show<Condition::roost_bark>, show<Condition::beech_bark>},
    {"CAVITY_BUTT", show<Condition::cavity_low>, show<Condition::cavity_high>},
    {"CAVITY_HIGH", show<Condition::cavity_high>, show<Condition::cavity_low>},
    {"CAVITY_HIGH", show<Condition::den>,
     [](Subject& s) {
       s.facts.conditions = {Condition::den, Condition::cavity_low};
     }},
    {"ROT_CONK", show<Condition::conk>, show<Condition::canker>},
    {"ROOT_LIFT", show<Condition::root_lift>, show<Condition::basal_wound>},
    {"CRACK_SPLIT", show<Condition::crack>, show<Condition::lightning>},
    {"CANKER_HINGE", show<Condition::canker>, show<Condition::conk>},
    {"CANKER_HINGE", show<Condition::basal_wound>, show<Condition::epicormic>},
    {"FIRE_LIGHTNING", show<Condition::lightning>, show<Condition::crack>},
    {"LEAN_10", show<Condition::lean_10>, show<Condition::lean_15>},
    {"LEAN_15", show<Condition::lean_15>, show<Condition::lean_10>},
    {"FORKED", show<Condition::v_fork>, show<Condition::crooked>},
    {"FORKED", show<Condition::u_fork>, show<Condition::clump>},
    {"CLUMP", show<Condition::clump>, show<Condition::v_fork>},
    {"VINES_TIED", show<Condition::vines_across>, show<Condition::vines>},
    {"VINES_OWN", show<Condition::vines>,
     [](Subject& s) {
       s.facts.conditions = {Condition::vines, Condition::vines_across};
     }},
    {"HUNG_IN", show<Condition::hung_tree>, show<Condition::loose_limb>},
    {"DBH_24", [](Subject& s) { s.facts.dbh = inches(24.0); },
     [](Subject& s) { s.facts.dbh = inches(23.9); }},
    {"DBH_18", [](Subject& s) { s.facts.dbh = inches(18.0); },
     [](Subject& s) { s.facts.dbh = inches(17.9); }},
    {"DBH_18", [](Subject& s) { s.facts.dbh = inches(23.9); },
     [](Subject& s) { s.facts.dbh = inches(24.0); }},
    {"SPLIT_SPECIES", ash, white_oak},
    {"SPLIT_SPECIES", [](Subject& s) { s.species.scientific_name = "Carya glabra"; },
     [](Subject& s) { s.species.scientific_name = "Tilia americana"; }},
    {"SPLIT_SPECIES", [](Subject& s) { s.species.scientific_name = "Prunus serotina"; },
     [](Subject& s) { s.species.scientific_name = "Betula lenta"; }},
    {"SPLIT_SPECIES", [](Subject& s) { s.species.scientific_name = "Robinia pseudoacacia"; },
     [](Subject& s) { s.species.scientific_name = "Gleditsia triacanthos"; }},
    {"METAL", show<Condition::metal>, show<Condition::line_tree>},
    {"LINE_TREE", show<Condition::line_tree>, show<Condition::metal>},
    {"SHAGBARK", [](Subject& s) { s.species.scientific_name = "Carya ovata"; },
     [](Subject& s) { s.species.scientific_name = "Carya cordiformis"; }},
    {"NEST", show<Condition::nest>, show<Condition::den>},
    {"OAK_WILTED",
     [](Subject& s) {
       white_oak(s);
       show<Condition::wilt>(s);
     },
     show<Condition::wilt>},
    {"BAT_TREE",
     [](Subject& s) {
       s.plan.bats_may_roost = true;
       show<Condition::roost_bark>(s);
     },
     show<Condition::roost_bark>},
    {"BAT_TREE",
     [](Subject& s) {
       s.plan.bats_may_roost = true;
       s.facts.live_crown = Percent{9};
     },
     [](Subject& s) {
       s.plan.bats_may_roost = true;
       s.facts.live_crown = Percent{10};
     }},
    {"BAT_TREE",
     [](Subject& s) {
       s.plan.bats_may_roost = true;
       dead(s);
     },
     [](Subject& s) { s.plan.bats_may_roost = true; }},
    {"DEN_TREE", show<Condition::den>,
     [](Subject& s) {
       s.facts.conditions = {Condition::den, Condition::road_near};
     }},
    {"NEAR_DEAD_ASH",
     [](Subject& s) {
       s.around.dead_ashes = {{Feet{200}, std::nullopt}};
     },
     [](Subject& s) {
       s.around.dead_ashes = {{Feet{200.1}, std::nullopt}};
     }},
    {"HUNG_NEAR",
     [](Subject& s) {
       s.around.hung_trees = {{Feet{200}, std::nullopt}};
     },
     [](Subject& s) {
       s.around.hung_trees = {{Feet{200.1}, std::nullopt}};
     }},
    {"SLOPE_35", [](Subject& s) { s.around.slope = Percent{35.1}; },
     [](Subject& s) { s.around.slope = Percent{35}; }},
    {"SLOPE_15", [](Subject& s) { s.around.slope = Percent{15}; },
     [](Subject& s) { s.around.slope = Percent{14.9}; }},
    {"SLOPE_15", [](Subject& s) { s.around.slope = Percent{35}; },
     [](Subject& s) { s.around.slope = Percent{35.1}; }},
    {"POWER_LINE", show<Condition::wire_near>, show<Condition::road_near>},
    {"POWER_LINE", [](Subject& s) { s.around.power_line = Feet{200}; },
     [](Subject& s) { s.around.power_line = Feet{201}; }},
    {"ROAD_TRAIL", show<Condition::road_near>, show<Condition::wire_near>},
    {"ROAD_TRAIL", [](Subject& s) { s.around.way = Feet{200}; },
     [](Subject& s) { s.around.way = Feet{201}; }},
    {"BUILDING", show<Condition::building_near>, show<Condition::road_near>},
    {"STREAM", [](Subject& s) { s.around.stream = Feet{49.9}; },
     [](Subject& s) { s.around.stream = Feet{50}; }},
    {"STREAM", show<Condition::bank_tree>, [](Subject&) {}},
    {"NEAR_LINE", [](Subject& s) { s.around.unconfirmed_line = Feet{199.9}; },
     [](Subject& s) { s.around.unconfirmed_line = Feet{200}; }},
    {"GIRDLE_TARGET",
     [](Subject& s) {
       s.plan.method = Method::girdle;
       show<Condition::building_near>(s);
     },
     show<Condition::building_near>},
    {"GIRDLE_ASH",
     [](Subject& s) {
       s.plan.method = Method::girdle;
       ash(s);
     },
     ash},
    {"GIRDLE_HOLLOW",
     [](Subject& s) {
       s.plan.method = Method::girdle;
       show<Condition::conk>(s);
     },
     show<Condition::conk>},
    {"GIRDLE_HOLLOW",
     [](Subject& s) {
       s.plan.method = Method::girdle;
       show<Condition::cavity_high>(s);
     },
     [](Subject& s) { s.plan.method = Method::girdle; }},
    {"GIRDLE_DEPTH", [](Subject& s) { s.plan.method = Method::girdle; },
     [](Subject& s) { s.plan.method = Method::machine_fell; }},
    {"MULTI",
     [](Subject& s) {
       s.facts.conditions = {Condition::lean_10, Condition::v_fork};
     },
     show<Condition::lean_10>},
};

TEST(CautionRules, ApplyToTheirTreeAndNotToOneJustShortOfIt) {
  for (const RuleTest& test : kRuleTests) {
    Subject yes = plain();
    test.applies(yes);
    EXPECT_THAT(codes_of(yes), testing::Contains(test.code));
    Subject no = plain();
    test.just_short(no);
    EXPECT_THAT(codes_of(no), Not(testing::Contains(test.code)));
  }
}

TEST(CautionRules, EachRuleOfATreeHasATest) {
  std::set<std::string_view> tested;
  for (const RuleTest& test : kRuleTests) tested.insert(test.code);
  for (const CautionRule& rule : caution_rules()) {
    if (rule.use == CautionUse::tree) {
      EXPECT_TRUE(tested.contains(rule.code)) << rule.code;
    }
  }
}

TEST(CautionRules, ASoundTreeInTheOpenHasNone) { EXPECT_TRUE(codes_of(plain()).empty()); }

TEST(CautionRules, EachCodeOfTheTableHasOneRuleOrAReason) {
  std::set<std::string_view> ruled;
  for (const CautionRule& rule : caution_rules()) {
    EXPECT_TRUE(ruled.insert(rule.code).second) << rule.code << " has two rules";
    const bool needs_reason = rule.use == CautionUse::look || rule.use == CautionUse::unused;
    EXPECT_EQ(needs_reason, !rule.reason.empty()) << rule.code;
  }
  std::set<std::string_view> listed;
  for (const CautionEntry& entry : shipped().entries()) listed.insert(entry.caution.code);
  EXPECT_EQ(ruled, listed);
  EXPECT_EQ(listed.size(),
            89U);  // 86 as read in November 2026, and 3 of ours for what nobody recorded
}

TEST(CautionRules, TallTreesReachFartherAndTheTallerOfTwoCounts) {
  Subject subject = plain();
  subject.facts.height = *TapedLength::from_hundredths(7340, UnitSystem::us);
  // Derived: two lengths of 73.4 ft are 146.8 ft, rounded up to 147.
  subject.around.way = Feet{147};
  EXPECT_THAT(codes_of(subject), ElementsAre("ROAD_TRAIL"));
  subject.around.way = Feet{147.5};
  EXPECT_THAT(codes_of(subject), ElementsAre());
  subject.around.dead_ashes = {{Feet{180}, Feet{95}}};
  EXPECT_THAT(codes_of(subject), ElementsAre("NEAR_DEAD_ASH"));
  subject.around.dead_ashes = {{Feet{180}, Feet{60}}};
  EXPECT_THAT(codes_of(subject), ElementsAre());
}

// Scenario: trees of 75 ft; the dead ash closes a circle of 150 ft to work by hand.
TEST(CautionRules, TheDeadAshBlocksTheMapleBesideIt) {
  Subject maple = plain();
  maple.facts.height = *TapedLength::from_hundredths(7500, UnitSystem::us);
  maple.around.dead_ashes = {{Feet{12}, Feet{75}}};
  EXPECT_EQ(cautions_for(maple.tree(), shipped()).front().severity, Severity::stop);
  EXPECT_EQ(two_lengths(Feet{75}), Feet{150});
  EXPECT_EQ(two_lengths(std::nullopt), Feet{200});
}

TEST(CautionRules, LimitsAreTheUsersToChange) {
  Subject subject = plain();
  subject.facts.dbh = inches(16);
  TreeCase tree = subject.tree();
  tree.limits.large = Inches{16};
  EXPECT_THAT(codes_of(every_caution_for(tree, shipped())), ElementsAre("DBH_18"));
}

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
