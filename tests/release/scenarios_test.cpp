// Worked scenarios: invented trees, the answer that a hurried person gives, and the good one.
// Contact is what a person saw looking up. Expected values are the scenarios' own.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/measure/basal_area.hpp"
#include "core/release/guards.hpp"
#include "core/release/objections.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

using test::cards;
using test::cut_tags;
using test::input_of;
using test::released_tags;
using test::verdict_on;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::UnorderedElementsAre;

/// Rules behind the objections to one tree, or to the whole plan ("").
std::vector<std::string> rules_against(const std::vector<Objection>& list, std::string_view tag) {
  std::vector<std::string> rules;
  for (const Objection& objection : list) {
    if (objection.tag != tag) continue;
    rules.insert(rules.end(), objection.rules.begin(), objection.rules.end());
  }
  return rules;
}

// S1. The tree underneath.
constexpr const char* kTreeUnderneath = R"(
  crop O WO 16 dom lc=45
  O iron N 6 below IW 5 over
  O small E 9 below RM 4 over
  O hick N 15 below PH 8 int
  O maple E 19 touches RM 12 co
  O aspen S 20 touches AS 11 co
  O bass W 34 none BW 13 co
)";

TEST(TheTreeUnderneath, OnlyTheTwoThatCrowdItGo) {
  const ReleasePlan plan = recommend(input_of(cards(kTreeUnderneath), 1.0));
  EXPECT_EQ(plan.advice.treatment, Treatment::release);
  EXPECT_THAT(cut_tags(plan), UnorderedElementsAre("maple", "aspen"));
  const TreeVerdict& oak = verdict_on(plan, "O");
  EXPECT_TRUE(oak.released);
  EXPECT_EQ(oak.before->sides_free, 2);
  EXPECT_EQ(oak.after->sides_free, 4);
  EXPECT_EQ(oak.before->open.value, 50.0);
  EXPECT_EQ(oak.after->open.value, 100.0);
}

TEST(TheTreeUnderneath, EachReasonReadsWellAloud) {
  const ReleasePlan plan = recommend(input_of(cards(kTreeUnderneath), 1.0));
  EXPECT_EQ(verdict_on(plan, "maple").reason,
            "Take: its crown touches the white oak O on the east side; without it that side is "
            "free.");
  EXPECT_EQ(verdict_on(plan, "maple").what_would_change_it,
            "If it stayed, the white oak O would have 3 sides free instead of 4.");
  EXPECT_EQ(verdict_on(plan, "aspen").verdict, Verdict::kill_standing);
  EXPECT_EQ(verdict_on(plan, "iron").reason,
            "Keep: it stands under the canopy, takes no light from the white oak O and shades its "
            "stem.");
  EXPECT_EQ(verdict_on(plan, "hick").reason,
            "Keep: its top stays below the crown of the white oak O, so it takes no light.");
  EXPECT_EQ(verdict_on(plan, "O").reason,
            "Keep: crop tree; 4 sides of its crown are free after the work, 2 before.");
  EXPECT_THAT(verdict_on(plan, "maple").rules, Contains("R1.50"));
  EXPECT_THAT(verdict_on(plan, "iron").rules, Contains("R1.56"));
  EXPECT_THAT(verdict_on(plan, "iron").rules, Contains("R2.14"));
  EXPECT_THAT(verdict_on(plan, "hick").rules, Contains("R2.01"));
  EXPECT_THAT(verdict_on(plan, "bass").rules, Contains("R1.51"));
}

TEST(TheTreeUnderneath, NearestFirstIsRefused) {
  const ReleaseInput input = input_of(cards(kTreeUnderneath), 1.0);
  const auto said = objections(input, {{"O"}, {"iron", "small"}});
  EXPECT_THAT(rules_against(said, "iron"), Contains("R1.56"));
  EXPECT_THAT(rules_against(said, "small"), Contains("R1.56"));
  EXPECT_THAT(rules_against(said, "O"), Contains("R1.61"));  // and the oak is not free after it
}

TEST(TheTreeUnderneath, AllWithinFortyFiveFeetIsRefused) {
  const ReleaseInput input = input_of(cards(kTreeUnderneath), 1.0);
  const auto said = objections(input, {{"O"}, {"iron", "small", "hick", "maple", "aspen", "bass"}});
  EXPECT_THAT(rules_against(said, "hick"), Contains("R1.51"));
  EXPECT_THAT(rules_against(said, "bass"), Contains("R6.05"));
  EXPECT_THAT(rules_against(said, "maple"), IsEmpty());
  EXPECT_THAT(rules_against(said, "aspen"), IsEmpty());
  EXPECT_THAT(objections(input, {{"O"}, {"maple", "aspen"}}), IsEmpty());
}

// S2. Two crop trees in contact.
constexpr const char* kTwoInContact = R"(
  crop A WO 15 co
  crop B RO 16 co
  A B E 18 touches
  A maple N 17 touches RM 10 co
  A ash S 16 touches GA 11 co
  B ash S 15 touches
  B aspen E 20 touches AS 12 co
  A bass W 22 none BW 9 int
)";

TEST(TwoCropTreesInContact, BothStayAsOneUnit) {
  const ReleasePlan plan = recommend(input_of(cards(kTwoInContact), 1.0));
  EXPECT_THAT(cut_tags(plan), UnorderedElementsAre("maple", "ash", "aspen"));
  EXPECT_THAT(released_tags(plan), ElementsAre("A", "B"));
  for (const char* tag : {"A", "B"}) {
    const TreeVerdict& oak = verdict_on(plan, tag);
    EXPECT_EQ(oak.after->sides_free, 3) << tag;
    EXPECT_EQ(oak.after->sides_shared, 1) << tag;
    EXPECT_THAT(oak.rules, Contains("R1.64")) << tag;
  }
  EXPECT_EQ(verdict_on(plan, "A").reason,
            "Keep: crop tree; 3 sides of its crown are free after the work, 1 before, and it "
            "shares the east side with the northern red oak B.");
  EXPECT_EQ(verdict_on(plan, "ash").reason,
            "Take: its crown touches the white oak A on the south side and the "
            "northern red oak B on the south side; without it those sides are free.");
}

TEST(TwoCropTreesInContact, CuttingOneForTheOtherIsRefused) {
  const ReleaseInput input = input_of(cards(kTwoInContact), 1.0);
  const auto said = objections(input, {{"A"}, {"B", "maple", "ash"}});
  EXPECT_THAT(rules_against(said, "B"), Contains("R1.65"));
  EXPECT_THAT(rules_against(said, "B"), Contains("R1.64"));
}

TEST(TwoCropTreesInContact, RefusingBothLosesTwoReleasesThatNoRuleForbids) {
  const ReleaseInput input = input_of(cards(kTwoInContact), 1.0);
  EXPECT_THAT(objections(input, {{"A", "B"}, {"maple", "ash", "aspen"}}), IsEmpty());
}

// S3. The den tree in the way. The hickory has a card of its own.
constexpr const char* kDenInTheWay = R"(
  crop O RO 14 co
  crop shag SH 13 co
  O bass S 22 touches BW 19 co den cavity_high
  O maple N 16 touches RM 11 co
  O shag W 19 touches
  O elm E 12 touches EL 9 int
)";

ReleaseInput den_in_the_way() {
  ReleaseInput input = input_of(cards(kDenInTheWay), 1.0);
  input.stand.roost_hickories = TreesPerAcre{6.0};
  return input;
}

TEST(TheDenTreeInTheWay, DenAndHickoryAreNeverListed) {
  const ReleasePlan plan = recommend(den_in_the_way());
  EXPECT_THAT(cut_tags(plan), UnorderedElementsAre("maple", "elm"));
  EXPECT_EQ(verdict_on(plan, "bass").verdict, Verdict::keep);
  EXPECT_EQ(verdict_on(plan, "bass").reason,
            "Keep: it is a den tree, though it closes the south side of the northern red oak O.");
  EXPECT_THAT(verdict_on(plan, "bass").rules, Contains("R5.08"));
  EXPECT_EQ(verdict_on(plan, "shag").verdict, Verdict::keep);
}

TEST(TheDenTreeInTheWay, OakAndHickoryArePairedAndTheOakReachesThreeOfFour) {
  const ReleasePlan plan = recommend(den_in_the_way());
  const TreeVerdict& oak = verdict_on(plan, "O");
  EXPECT_TRUE(oak.released);
  EXPECT_EQ(oak.after->sides_free, 2);  // north and east; south stays closed on purpose
  EXPECT_EQ(oak.after->sides_shared, 1);
  const TreeVerdict& hickory = verdict_on(plan, "shag");
  EXPECT_TRUE(hickory.released);
  EXPECT_EQ(hickory.after->sides_free, 3);
  EXPECT_THAT(verdict_on(plan, "elm").rules, Contains("R1.57"));
}

TEST(TheDenTreeInTheWay, CuttingTheDenOrTheHickoryIsRefused) {
  const auto said = objections(den_in_the_way(), {{"O"}, {"bass", "shag", "maple", "elm"}});
  EXPECT_THAT(rules_against(said, "bass"), Contains("R5.08"));
  EXPECT_THAT(rules_against(said, "shag"), Contains("R5.20"));
}

TEST(TheDenTreeInTheWay, AmongPlentyOfHickoriesTheOneWithoutACardMayGo) {
  // 16 an acre is the limit of rule R5.20; the hickory here has no card, so it is no crop tree.
  ReleaseInput input = input_of(cards(R"(
    crop O RO 14 co
    O bass S 22 touches BW 19 co den
    O bank E 12 touches EL 9 int nest
    O shag W 19 touches SH 13 co)"),
                                1.0);
  input.stand.roost_hickories = TreesPerAcre{16.0};
  EXPECT_THAT(cut_tags(recommend(input)), IsEmpty());
  input.stand.roost_hickories = TreesPerAcre{17.0};
  EXPECT_THAT(verdict_on(recommend(input), "shag").rules, Not(Contains("R5.20")));
}

// S4. One third is not the same as the floor: a fifth-acre plot with 33 trees. Each oak has two
// neighbours; that each closes two sides is ours.
constexpr const char* kSixOaks = R"(
  crop C1 WO 15 co
  crop C2 WO 16 co
  crop C3 WO 14 co
  crop C4 WO 14 co
  crop C5 WO 13 co
  crop C6 WO 12 co
  C1 c1a N|E 18 touches RM 10 co
  C1 c1b S|W 18 touches BW 11 co
  C2 c2a N|E 18 touches RM 10 co
  C2 c2b S|W 18 touches BW 11 co
  C3 c3a N|E 18 touches RM 10 co
  C3 c3b S|W 18 touches BW 10 co
  C4 c4a N|E 18 touches RM 10 co
  C4 c4b S|W 18 touches AS 9 co
  C5 c5a N|E 18 touches AS 10 co
  C5 c5b S|W 18 touches RM 8 co
  C6 c6a N|E 17 touches RM 9 co
  C6 c6b S|W 17 touches BW 9 co
)";
/// The 15 trees that touch no crop tree, chosen so that the plot has the figures of the scenario.
constexpr const char* kOthers =
    "YP 6, YP 7, YP 7, YP 7, YP 8, YP 8, YP 8, YP 8, YP 10, YP 10, YP 10, YP 10, YP 11, YP 12, "
    "YP 13";
constexpr double kPlotAcres = 0.2;

ReleaseInput six_oaks() {
  const test::ShortCards on_cards = cards(kSixOaks);
  std::vector<TreeFacts> all;
  for (const WalkTree& tree : on_cards.trees) all.push_back(tree.facts);
  for (const test::ShortTree& tree : test::trees(kOthers)) all.push_back(tree.facts);
  ReleaseInput input = input_of(on_cards, kPlotAcres);
  input.stand.before = test::density_of(all, 1.0 / kPlotAcres);
  return input;
}

double stocking_of(const StandDensity& d) { return upland_oak_stocking(d.guard).value; }

const GuardState& guard(const std::vector<GuardState>& list, std::string_view rule) {
  static const GuardState kNone;
  for (const GuardState& g : list) {
    if (g.rule == rule) return g;
  }
  ADD_FAILURE() << "no guard " << rule;
  return kNone;
}

TEST(OneThirdIsNotTheFloor, ThePlotHasTheFiguresOfTheScenario) {
  const StandDensity before = *six_oaks().stand.before;
  EXPECT_NEAR(before.live.trees, 165.0, 1e-9);
  EXPECT_NEAR(before.ba.value, 98.4, 0.05);
  EXPECT_NEAR(stocking_of(before), 84.9, 0.05);
  EXPECT_NEAR(quadratic_mean_diameter(before.ba, TreesPerAcre{before.live.trees}).value, 10.5,
              0.05);
}

TEST(OneThirdIsNotTheFloor, FiveAreReleasedAndTheSixthWaits) {
  const ReleasePlan plan = recommend(six_oaks());
  EXPECT_THAT(released_tags(plan), ElementsAre("C1", "C2", "C3", "C4", "C5"));
  EXPECT_EQ(cut_tags(plan).size(), 10U);
  EXPECT_NEAR(plan.after->live.trees, 115.0, 1e-9);
  EXPECT_NEAR(plan.after->ba.value, 71.5, 0.05);
  EXPECT_NEAR(stocking_of(*plan.after), 61.1, 0.05);
  EXPECT_NEAR(guard(plan.guards, "R4.11").after, 27.3, 0.1);  // printed from rounded basal areas
  for (const GuardState& g : plan.guards) EXPECT_TRUE(g.holds) << g.rule;
  EXPECT_EQ(verdict_on(plan, "C6").reason,
            "Keep: a good crop tree that waits for the next entry; released too, it would leave "
            "stocking at 57 %, and the floor is 60 %.");
  EXPECT_THAT(verdict_on(plan, "C6").rules, Contains("R4.16"));
  EXPECT_EQ(
      verdict_on(plan, "c6a").reason,
      "Keep: its crown touches the white oak C6 on the north and east sides, but that tree is not "
      "released this time.");
  EXPECT_EQ(
      verdict_on(plan, "c6a").what_would_change_it,
      "It would go if the white oak C6 were released. What saves it is the guard on stocking: "
      "that release would leave 57 %, and the floor is 60.");
  EXPECT_THAT(verdict_on(plan, "c6a").rules, Contains("R4.01"));
}

TEST(OneThirdIsNotTheFloor, SixAreRejectedOnStockingAndNotOnBasalArea) {
  const std::vector<GuardState> full = recommend(six_oaks()).guards_of_full_plan;
  EXPECT_FALSE(guard(full, "R4.01").holds);
  EXPECT_FALSE(guard(full, "R4.03").holds);
  EXPECT_NEAR(guard(full, "R4.01").after, 57.0, 0.05);
  EXPECT_TRUE(guard(full, "R4.09").holds);
  EXPECT_NEAR(guard(full, "R4.09").after, 67.1, 0.05);
  EXPECT_TRUE(guard(full, "R4.11").holds);
  EXPECT_NEAR(guard(full, "R4.11").after, 31.8, 0.05);
}

TEST(OneThirdIsNotTheFloor, ReleasingAllSixIsRefusedByNameOfTheGuard) {
  std::vector<std::string> all;
  for (int i = 1; i <= 6; ++i) {
    all.push_back("c" + std::to_string(i) + "a");
    all.push_back("c" + std::to_string(i) + "b");
  }
  const auto said = objections(six_oaks(), {{"C1", "C2", "C3", "C4", "C5", "C6"}, all});
  EXPECT_THAT(rules_against(said, ""), ElementsAre("R4.01", "R4.03"));
}

TEST(OneThirdIsNotTheFloor, OneNeighbourEachFreesNobody) {
  const auto said = objections(six_oaks(), {{"C1", "C2", "C3", "C4", "C5", "C6"},
                                            {"c1a", "c2a", "c3a", "c4a", "c5a", "c6a"}});
  for (const char* oak : {"C1", "C2", "C3", "C4", "C5", "C6"}) {
    EXPECT_THAT(rules_against(said, oak), ElementsAre("R1.61", "R1.73")) << oak;
  }
}

struct WorkedRow {
  const char* label;
  double stocking_floor;
  std::size_t released;
  double trees, ba, stocking, removed;
};
/// The scenario's table: what is left when the floor asks for more. The share removed is printed
/// from rounded basal areas, so it is known to a tenth only.
constexpr WorkedRow kRows[] = {
    {"all_six", 50, 6, 105, 67.1, 57.0, 31.8},
    {"without_c6", 60, 5, 115, 71.5, 61.1, 27.3},
    {"without_c6_c5", 63, 4, 125, 75.9, 65.2, 22.9},
    // The scenario drops oaks by rank and leaves three here, 69.6 % (the test below). A fourth has
    // room when the dearest one waits instead: more light within the same floor. Derived: the best
    // of the 64 sets of six oaks.
    {"four_others", 67, 4, 125, 78.54, 67.09, 20.18},
};
class FloorTable : public testing::TestWithParam<WorkedRow> {};
TEST_P(FloorTable, EachFloorLeavesWhatTheTableSays) {
  const WorkedRow& row = GetParam();
  ReleaseInput input = six_oaks();
  input.knowledge =
      test::knowledge_with({{"R4.01", {row.stocking_floor}}, {"R4.03", {row.stocking_floor}}});
  const ReleasePlan plan = recommend(input);
  EXPECT_EQ(released_tags(plan).size(), row.released);
  EXPECT_NEAR(plan.after->live.trees, row.trees, 1e-9);
  EXPECT_NEAR(plan.after->ba.value, row.ba, 0.05);
  EXPECT_NEAR(stocking_of(*plan.after), row.stocking, 0.05);
  EXPECT_NEAR(guard(plan.guards, "R4.11").after, row.removed, 0.1);
}
INSTANTIATE_TEST_SUITE_P(Worked, FloorTable, testing::ValuesIn(kRows),
                         [](const auto& row) { return std::string(row.param.label); });

TEST(OneThirdIsNotTheFloor, ThreeByRankLeaveWhatTheTableSays) {
  const ReleaseInput input = six_oaks();
  const std::vector<Traits> traits = traits_of(input);
  CutTally cut;
  for (std::size_t i = 0; i < traits.size(); ++i) {
    const ReleaseTree& tree = input.graph.trees()[i];
    const bool goes = tree.tag[0] == 'c' && tree.tag[1] <= '3';
    if (goes) cut.take(tree.facts, traits[i], 1.0);
  }
  const StandDensity after =
      density_after({*input.stand.before, *input.stand.covered, Goal::mast, {}, {}}, cut);
  EXPECT_NEAR(after.live.trees, 135, 1e-9);
  EXPECT_NEAR(after.ba.value, 80.9, 0.05);
  EXPECT_NEAR(stocking_of(after), 69.6, 0.05);
  EXPECT_NEAR(100.0 * (1.0 - after.ba / input.stand.before->ba), 17.8, 0.1);
}

}  // namespace
}  // namespace oaklight
