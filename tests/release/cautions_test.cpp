// Which cautions hold for which tree.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "tests/release/caution_subject.hpp"

namespace oaklight {
namespace {

using namespace oaklight::test;
using testing::ElementsAre;
using testing::Not;

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

}  // namespace
}  // namespace oaklight
