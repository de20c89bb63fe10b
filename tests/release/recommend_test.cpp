#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/release/marks.hpp"
#include "core/release/plan.hpp"
#include "tests/support/set_clock.hpp"
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

ReleasePlan plan_of(const char* text, Goal goal = Goal::mast, double acres = 1.0) {
  return recommend(input_of(cards(text), acres, goal));
}

TEST(FoodTrees, AreSparedWhenTheCropTreeHasItsSidesWithoutThem) {
  const auto plan = plan_of(R"(
    crop O WO 14 co
    O hick N 16 touches PH 10 co
    O maple E 16 touches RM 10 co)");
  EXPECT_THAT(cut_tags(plan), ElementsAre("maple"));
  EXPECT_EQ(verdict_on(plan, "hick").reason,
            "Keep: it feeds animals too, and the white oak O gets its sides without it.");
  EXPECT_EQ(verdict_on(plan, "hick").what_would_change_it,
            "It would go if the white oak O could not have 3 sides free beside it.");
}

TEST(FoodTrees, GoWhenTheyAreNeededTheLeastFoodFirst) {
  // Two of four sides are free; one of beech (rank 8) and hickory (rank 6) must go.
  const auto plan = plan_of(R"(
    crop O WO 14 co
    O beech N 16 touches AB 10 co
    O hick E 16 touches PH 10 co)");
  EXPECT_THAT(cut_tags(plan), ElementsAre("hick"));
  EXPECT_EQ(verdict_on(plan, "O").after->sides_free, 3);
  EXPECT_THAT(verdict_on(plan, "hick").rules, Contains("R1.61"));
}

TEST(FoodTrees, ADiseasedBeechGoesLikeAnyFailingTree) {
  const auto plan = plan_of(R"(
    crop O WO 14 co
    O beech N 16 touches AB 10 co beech_bark)");
  EXPECT_THAT(cut_tags(plan), ElementsAre("beech"));
  EXPECT_THAT(verdict_on(plan, "beech").reason, HasSubstr("beech bark disease"));
}

TEST(Conifers, StayUnlessTheyAreInTheWay) {
  const auto spared = plan_of(R"(
    crop O WO 14 co
    O pine N 16 touches WP 12 co)");
  EXPECT_THAT(cut_tags(spared), IsEmpty());
  EXPECT_THAT(verdict_on(spared, "pine").rules, Contains("R5.31"));
  const auto below = plan_of(R"(
    crop O WO 15 co
    O hem S 13 below HE 8 int)");
  EXPECT_THAT(verdict_on(below, "hem").rules, Contains("R5.31"));
}

TEST(Aspens, BesideACropTreeDieStanding) {
  const auto plan = plan_of(R"(
    crop O RO 14 co
    O a S 18 touches AS 11 co
    O b E 17 touches AS 10 co
    O c E 24 none AS 10 co
    O d W 41 none AS 12 co)");
  EXPECT_THAT(cut_tags(plan), UnorderedElementsAre("a", "b"));
  for (const char* tag : {"a", "b"}) {
    EXPECT_EQ(verdict_on(plan, tag).verdict, Verdict::kill_standing) << tag;
    EXPECT_THAT(verdict_on(plan, tag).rules, Contains("R6.14")) << tag;
  }
  EXPECT_EQ(verdict_on(plan, "c").verdict, Verdict::keep);
  EXPECT_EQ(verdict_on(plan, "d").verdict, Verdict::keep);
}

TEST(Aspens, DieStandingUnderAGrouseGoalToo) {
  ReleaseInput input = input_of(cards(R"(
    crop O RO 14 co
    O a S 18 touches AS 11 co
    O b E 17 touches AS 10 co)"),
                                1.0);
  input.stand.grouse = true;
  EXPECT_THAT(cut_tags(recommend(input)), UnorderedElementsAre("a", "b"));
}

TEST(BankTrees, StayWhenTheCropTreeCanDoWithout) {
  const auto plan = plan_of(R"(
    crop O WO 15 co
    O maple E 18 touches RM 12 co
    O ash W 16 touches WA 10 co bank_tree)");
  EXPECT_THAT(cut_tags(plan), ElementsAre("maple"));
  EXPECT_EQ(verdict_on(plan, "ash").verdict, Verdict::keep);
  EXPECT_THAT(verdict_on(plan, "ash").rules, Contains("R5.41"));
}

TEST(BankTrees, AreKilledStandingAndNotFelledWhenItCannot) {
  const auto plan = plan_of(R"(
    crop O WO 15 co
    O den N 18 touches RM 14 co den
    O bank W 16 touches RM 10 co bank_tree)");
  EXPECT_EQ(verdict_on(plan, "bank").verdict, Verdict::kill_standing);
  EXPECT_THAT(verdict_on(plan, "bank").reason, HasSubstr("the roots hold the bank"));
}

// Cautions GIRDLE_ASH and GIRDLE_TARGET: what may not be killed standing is not killed standing.
TEST(BankTrees, StayForGoodWhereADeadTreeCouldHurtSomebody) {
  for (const char* bank :
       {"WA 10 co bank_tree", "RM 10 co bank_tree road_near", "RM 10 co bank_tree cavity_high"}) {
    const std::string text = "crop O WO 15 co\nO den N 18 touches RM 14 co den\nO b W 16 touches ";
    const auto plan = plan_of((text + bank).c_str());
    EXPECT_EQ(verdict_on(plan, "b").verdict, Verdict::keep) << bank;
    EXPECT_THAT(verdict_on(plan, "b").rules, Contains("X6.02")) << bank;
  }
}

TEST(Invasives, GoEvenWhereTheyTouchNothing) {
  const auto plan = plan_of(R"(
    crop O WO 14 co
    O maple N 16 touches RM 10 co
    O tree W 30 none TOH 5 int)");
  EXPECT_THAT(cut_tags(plan), UnorderedElementsAre("maple", "tree"));
  EXPECT_THAT(verdict_on(plan, "tree").rules, Contains("R6.23"));
}

TEST(LineTrees, AreNeitherTakenNorReleased) {
  const auto plan = plan_of(R"(
    crop O WO 14 co
    crop L WO 16 dom line_tree
    O maple N 16 touches RM 10 co line_tree
    L other N 16 touches RM 9 co)");
  EXPECT_THAT(cut_tags(plan), IsEmpty());
  EXPECT_THAT(verdict_on(plan, "maple").rules, Contains("X5.01"));
  EXPECT_FALSE(verdict_on(plan, "L").released);
}

TEST(SoundOaks, WithoutACardStayAndCloseTheirSide) {
  const auto plan = plan_of(R"(
    crop O WO 14 co
    O oak N 16 touches RO 13 co
    O maple E 16 touches RM 10 co)");
  EXPECT_THAT(cut_tags(plan), ElementsAre("maple"));
  EXPECT_EQ(verdict_on(plan, "O").after->sides_free, 3);
  EXPECT_THAT(verdict_on(plan, "oak").rules, Contains("R3.39"));
}

TEST(PoorOaks, GoWithTheFaultNamed) {
  const auto plan = plan_of(R"(
    crop O WO 14 co
    O oak N 16 touches RO 9 int)");
  EXPECT_THAT(cut_tags(plan), ElementsAre("oak"));
  EXPECT_EQ(verdict_on(plan, "oak").reason,
            "Take: it is the poorer of two oaks because its crown is below the main canopy, and "
            "its crown touches the white oak O on the north side; without it that side is free.");
}

TEST(Doubt, ALookUpIsAskedForWhereFoodIsTheGoal) {
  const auto plan = plan_of(R"(
    crop O WO 16 co
    O maple N 25 not_looked RM 12 co
    O other E 18 touches RM 10 co)");
  EXPECT_EQ(verdict_on(plan, "maple").verdict, Verdict::look_again);
  EXPECT_THAT(verdict_on(plan, "maple").rules, Contains("R1.55"));
  EXPECT_THAT(verdict_on(plan, "maple").rules, Contains("R2.11"));
  EXPECT_THAT(cut_tags(plan), ElementsAre("other"));
  EXPECT_EQ(verdict_on(plan, "O").after->sides_unknown, 1);
}

TEST(Doubt, CountsAsContactWhereTimberIsTheGoalAndTheNeighbourIsPlain) {
  const auto plan = plan_of(R"(
    crop O WO 16 co
    O maple N 25 not_looked RM 12 co
    O hick E 25 not_looked PH 12 co)",
                            Goal::timber);
  EXPECT_THAT(cut_tags(plan), ElementsAre("maple"));
  EXPECT_THAT(verdict_on(plan, "maple").rules, Contains("R1.54"));
  EXPECT_EQ(verdict_on(plan, "hick").verdict, Verdict::look_again);
}

TEST(Doubt, ASideNobodyLookedAtIsNotAFreeSide) {
  const auto plan = plan_of(R"(
    crop O WO 14 co look=NE
    O maple N 16 touches RM 10 co)");
  EXPECT_THAT(cut_tags(plan), IsEmpty());
  EXPECT_EQ(verdict_on(plan, "O").verdict, Verdict::look_again);
  EXPECT_EQ(verdict_on(plan, "O").reason,
            "Look again: 2 sides can be freed for sure, 3 are needed, and nobody can tell about "
            "the south and west sides.");
  EXPECT_EQ(verdict_on(plan, "maple").verdict, Verdict::look_again);
  EXPECT_EQ(plan.advice.treatment, Treatment::release);
}

TEST(Doubt, OneUnknownSideDoesNotStopARelease) {
  const auto plan = plan_of(R"(
    crop O WO 14 co look=NES
    O maple N 16 touches RM 10 co)");
  EXPECT_THAT(released_tags(plan), ElementsAre("O"));
  EXPECT_EQ(verdict_on(plan, "O").after->sides_unknown, 1);
}

TEST(Doubt, AMissingCrownClassAsksForASecondLookAtTreeAndNeighbour) {
  const auto plan = plan_of(R"(
    crop O WO 14
    O maple N 16 touches RM 10 co
    crop P WO 14 co
    P oak N 16 touches RO 10)");
  EXPECT_EQ(verdict_on(plan, "O").verdict, Verdict::look_again);
  EXPECT_EQ(verdict_on(plan, "maple").verdict, Verdict::look_again);
  EXPECT_THAT(verdict_on(plan, "maple").reason, HasSubstr("not settled"));
  EXPECT_EQ(verdict_on(plan, "oak").verdict, Verdict::look_again);
}

TEST(Pairs, ThreeThickTreesInARowAreTooMany) {
  const auto row = [](double dbh) {
    const std::string size = std::to_string(dbh);
    return "crop A WO " + size + " dom\ncrop B WO " + size + " co\ncrop C WO " + size +
           " co\nA B E 10 touches\nB C E 10 touches";
  };
  // The third may stay unreleased or be the side that the unit keeps closed, but never in the unit.
  const auto thick = plan_of(row(9).c_str());
  EXPECT_EQ(released_tags(thick).size(), 2U);
  // Under 8 in three may be one unit, but B in the middle has two sides shared, and one counts: its
  // two free sides and one shared are three.
  const auto thin = plan_of(row(7).c_str());
  EXPECT_EQ(released_tags(thin).size(), 3U);
}

TEST(Pairs, AreNotMadeWhereATreeLacksTwoSidesOfItsOwn) {
  const auto plan = plan_of(R"(
    crop A WO 15 co
    crop B BO 12 co
    A B E 18 touches
    B d1 N 16 touches BW 19 co den
    B d2 E 16 touches BW 19 co den)");
  EXPECT_THAT(released_tags(plan), ElementsAre("A"));
  EXPECT_THAT(verdict_on(plan, "B").reason, HasSubstr("cannot be released as a pair"));
  EXPECT_THAT(cut_tags(plan), IsEmpty());  // A has three sides without it
}

TEST(Pairs, ThePoorerOfTwoGoesOnlyWhenTheBetterNeedsItsSide) {
  const auto plan = plan_of(R"(
    crop A WO 15 co
    crop B BO 12 co
    A B E 18 touches
    A d0 W 18 touches BW 19 co den
    B d1 N 16 touches BW 19 co den
    B d2 E 16 touches BW 19 co den)");
  EXPECT_THAT(released_tags(plan), ElementsAre("A"));
  EXPECT_THAT(cut_tags(plan), ElementsAre("B"));
  EXPECT_THAT(verdict_on(plan, "B").reason, HasSubstr("poorer of two good trees"));
}

TEST(ScarceSpecies, GivesWayOnlyToABetterTreeOfItsOwnKind) {
  ReleaseInput input = input_of(cards(R"(
    crop O WO 14 co
    O hick N 16 touches PH 10 co
    O den E 16 touches BW 19 co den
    O bank S 16 touches BW 8 co)"),
                                1.0);
  input.stand.ba_by_species[SpeciesCode{403}] = SquareFeetPerAcre{2.0};
  input.stand.ba_by_species[SpeciesCode{951}] = SquareFeetPerAcre{2.0};
  const auto plan = recommend(input);
  // Hard mast beside hard mast may go, but then the basswood must stay and two sides stay closed.
  EXPECT_EQ(verdict_on(plan, "bank").verdict, Verdict::keep);
  EXPECT_THAT(verdict_on(plan, "bank").rules, Contains("R5.32"));
  EXPECT_FALSE(verdict_on(plan, "O").released);
  input.stand.ba_by_species[SpeciesCode{951}] = SquareFeetPerAcre{20.0};
  EXPECT_THAT(cut_tags(recommend(input)), UnorderedElementsAre("bank", "hick"));
}

TEST(UnmeasuredStands, ListNothingToCut) {
  ReleaseInput input = input_of(cards(R"(
    crop O WO 14 co
    O maple N 16 touches RM 10 co)"),
                                1.0);
  input.stand.before.reset();
  const auto plan = recommend(input);
  EXPECT_EQ(plan.advice.treatment, Treatment::measure_first);
  EXPECT_THAT(cut_tags(plan), IsEmpty());
  EXPECT_EQ(verdict_on(plan, "maple").verdict, Verdict::look_again);
  EXPECT_THAT(verdict_on(plan, "maple").reason, HasSubstr("its crown touches the white oak O"));
  EXPECT_TRUE(plan.guards.empty());
  EXPECT_FALSE(plan.after.has_value());
}

TEST(Refusals, WhenNotEvenTheBestTreeCanBeSparedNothingIsTaken) {
  ReleaseInput input = input_of(cards(R"(
    crop O WO 14 co
    O maple N 16 touches RM 18.5 co
    O tree W 30 none TOH 5 int)"),
                                0.05);  // 20 trees an acre of 18.5 in: 37 of 110 ft2
  const auto plan = recommend(input);
  EXPECT_EQ(plan.advice.treatment, Treatment::no_gain);
  EXPECT_THAT(cut_tags(plan), IsEmpty());
  EXPECT_THAT(plan.advice.rules, Contains("R4.11"));
}

TEST(Refusals, WhenNoTreeReachesItsSidesNothingIsTaken) {
  const auto plan = plan_of(R"(
    crop O WO 14 co
    O d1 N 16 touches BW 19 co den
    O d2 E 16 touches BW 19 co den
    O maple S 16 touches RM 10 co)");
  EXPECT_EQ(plan.advice.treatment, Treatment::no_gain);
  EXPECT_THAT(cut_tags(plan), IsEmpty());
}

TEST(Steps, AreLoggedInTheOrderOfDecisions) {
  const auto plan = plan_of("crop O WO 14 co\nO maple N 16 touches RM 10 co");
  std::vector<std::string> names;
  for (const StepLog& step : plan.steps) {
    names.push_back(step.step);
    EXPECT_THAT(step.lines, Not(IsEmpty())) << step.step;
  }
  EXPECT_THAT(names, ElementsAre("right job", "keep list", "crop trees", "pairs", "competitors",
                                 "cut list", "stand test", "sides after", "verdicts"));
}

TEST(Verdicts, EachHasAReasonRulesOfTheBookAndWhatWouldChangeIt) {
  const auto plan = plan_of(R"(
    crop A WO 15 co lc=45
    crop B WO 14 co look=NE
    crop C BO 14
    crop D RO 16 co conk
    A bc N 17 touches BC 10 co
    A wp E 17 touches WP 11 co
    A rm S 16 touches RM 10 co
    A bank W 15 touches WA 10 co bank_tree
    B x N 17 not_looked RM 10 co
    B y E 24 not_looked RM 10 co
    C z S 17 touches RM 9 int
    D q S 17 touches RM 9 int
    A snag S 20 none WA 14 dead)");
  const RuleBook& rules = test::shipped_knowledge().rules;
  for (const TreeVerdict& v : plan.trees) {
    EXPECT_TRUE(v.reason.ends_with(".")) << v.tag;
    EXPECT_FALSE(v.what_would_change_it.empty()) << v.tag;
    EXPECT_THAT(v.rules, Not(IsEmpty())) << v.tag;
    for (const std::string& id : v.rules) EXPECT_NE(rules.find(id), nullptr) << id;
  }
}

TEST(Marks, CarryMethodProductReasonAndRuleVersion) {
  const ReleaseInput input = input_of(cards(R"(
    crop O WO 14 co
    O maple N 16 touches RM 12 co
    O aspen E 16 touches AS 10 co
    O ash S 16 touches WA 9 co db=60)"),
                                      1.0);
  const ReleasePlan plan = recommend(input);
  test::SetClock clock(0);
  IdSource ids(clock, [] { return std::uint64_t{0}; });
  const std::vector<Mark> marks = to_marks(plan, input, ids);
  ASSERT_EQ(marks.size(), plan.trees.size());
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const Mark& mark = marks[i];
    EXPECT_EQ(mark.tree.value, plan.trees[i].tree);
    EXPECT_EQ(mark.reason, plan.trees[i].reason);
    EXPECT_EQ(mark.rule_version, test::shipped_knowledge().rules.version());
    EXPECT_FALSE(mark.by_hand);
    if (plan.trees[i].tag == "maple") {
      EXPECT_EQ(mark.method, Method::fell);
      EXPECT_EQ(mark.product, Product::sawlog);
    } else if (plan.trees[i].tag == "aspen") {
      EXPECT_EQ(mark.method, Method::girdle);
      EXPECT_EQ(mark.product, Product::none);
    } else if (plan.trees[i].tag == "ash") {
      EXPECT_EQ(mark.method, Method::machine_fell);  // over half of the crown dead
    } else {
      EXPECT_EQ(mark.method, Method::none);
    }
  }
}

}  // namespace
}  // namespace oaklight
