// Worked scenarios, fourth part: method and herbicide. Invented trees; expected values are the
// scenarios' own. S7, S8 and S10 are here whole, and so is the bank tree of S11.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/release/work_job.hpp"

namespace oaklight {
namespace {

using namespace oaklight::test;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::UnorderedElementsAre;

// S7. Herbicide through the roots.
constexpr const char* kJoinedRoots = R"(
  crop O BO 13 co
  O oak E 14 touches BO 10 co lc=20
  O maple S 15 touches RM 9 co
)";

TEST(HerbicideThroughTheRoots, TheOakIsFelledOrGirdledTwiceWithoutAny) {
  Job job(kJoinedRoots);
  EXPECT_THAT(cut_tags(job.plan()), UnorderedElementsAre("oak", "maple"));
  const WorkAdvice oak = job.advice("oak");
  EXPECT_FALSE(oak.herbicide);
  for (const Way way : oak.ways) {
    EXPECT_TRUE(way == Way::fell || way == Way::machine_fell || way == Way::girdle);
  }
  EXPECT_THAT(oak.ways, Contains(Way::fell));
  EXPECT_THAT(oak.ways, Contains(Way::girdle));
  EXPECT_THAT(oak.way_words, HasSubstr("two saw cuts round the stem, about 1 in deep and 6 to 12"));
}

TEST(HerbicideThroughTheRoots, TheMapleStumpMayBeTreated) {
  Job job(kJoinedRoots);
  const WorkAdvice maple = job.advice("maple");
  EXPECT_TRUE(maple.herbicide);
  EXPECT_EQ(maple.ways.front(), Way::fell);
  EXPECT_THAT(maple.herbicide_words, HasSubstr("15 minutes"));
  EXPECT_THAT(maple.herbicide_words, HasSubstr("label"));
}

TEST(HerbicideThroughTheRoots, TreatingBothStumpsIsRefusedForTheOak) {
  Job job(kJoinedRoots);
  EXPECT_THAT(job.against("oak", {.way = Way::fell, .herbicide = true}), Contains("R6.35"));
  EXPECT_THAT(job.against("maple", {.way = Way::fell, .herbicide = true}), IsEmpty());
}

TEST(HerbicideThroughTheRoots, ACropTreeOfItsKindWithinFiftyFeetForbidsItForAnySpecies) {
  const auto at = [](double feet) {
    const TreeFacts facts = test::trees("PH 9 co").front().facts;
    static const Surroundings kNothing;
    const ReleaseKnowledge& know = test::shipped_knowledge();
    return work_advice({.facts = facts,
                        .species = know.species.find(facts.species),
                        .verdict = Verdict::take,
                        .around = kNothing,
                        .kin = Feet{feet}},
                       know.settings);
  };
  EXPECT_FALSE(at(0.0).herbicide);  // nobody measured
  EXPECT_FALSE(at(49.9).herbicide);
  EXPECT_THAT(at(49.9).rules, Contains("R6.50"));
  EXPECT_TRUE(at(50.0).herbicide);
  EXPECT_THAT(at(99.9).herbicide_words, HasSubstr("With care"));
  EXPECT_THAT(at(100.0).herbicide_words, Not(HasSubstr("With care")));
}

// S8. Clump and twin.
constexpr const char* kClump = R"(
  crop A RO 7 co clump v_fork
  A high N 1 touches RO 6.5 co clump high_joint
  A twin E 1 touches RO 5 co clump v_fork
)";
constexpr const char* kTwins = R"(
  crop A WO 9.5 co clump v_fork
  A twin E 1 touches WO 9 co clump v_fork
)";

TEST(ClumpAndTwin, TheSproutFromHighUpGoesAndTheTightTwinStays) {
  Job job(kClump);
  EXPECT_THAT(cut_tags(job.plan()), ElementsAre("high"));
  EXPECT_THAT(verdict_on(job.plan(), "high").rules, Contains("R6.60"));
  EXPECT_THAT(verdict_on(job.plan(), "twin").rules, Contains("R6.62"));
  EXPECT_EQ(verdict_on(job.plan(), "A").after->sides_free, 4);
  EXPECT_FALSE(job.advice("high").herbicide);
}

TEST(ClumpAndTwin, LeavingOneStemIsRefused) {
  Job job(kClump);
  const auto said = objections(job.input(), {{"A"}, {"high", "twin"}});
  EXPECT_THAT(rules_against(said, "twin"), Contains("R6.62"));
  EXPECT_THAT(rules_against(said, "high"), IsEmpty());
}

TEST(ClumpAndTwin, TheTwinsAreOneCrownAndNothingIsCut) {
  Job job(kTwins);
  EXPECT_THAT(cut_tags(job.plan()), IsEmpty());
  const auto said = objections(job.input(), {{"A"}, {"twin"}});
  EXPECT_THAT(rules_against(said, "twin"), Contains("R6.62"));
}

TEST(ClumpAndTwin, TwinsThatBothWearATagAreOneUnit) {
  Job job(R"(
    crop A WO 9.5 co clump v_fork
    crop B WO 9 co clump v_fork
    A B E 1 touches)");
  EXPECT_THAT(cut_tags(job.plan()), IsEmpty());
  EXPECT_THAT(released_tags(job.plan()), ElementsAre("A", "B"));
}

TEST(ClumpAndTwin, WhereTimberIsTheGoalTwinsAreNoCropTree) {
  Job job(kTwins, Goal::timber);
  EXPECT_THAT(released_tags(job.plan()), IsEmpty());
  EXPECT_THAT(rules_against(objections(job.input(), {{"A"}, {}}), "A"), Contains("R1.09"));
}

TEST(ClumpAndTwin, NoHerbicideOnAnySprout) {
  Job job(kClump);
  EXPECT_THAT(job.against("high", {.way = Way::fell, .herbicide = true}), Not(IsEmpty()));
  // A maple of a clump: its own kind or not, the roots are one.
  const TreeFacts facts = test::trees("RM 6 co clump").front().facts;
  const Surroundings nothing;
  const ReleaseKnowledge& know = test::shipped_knowledge();
  const WorkAdvice maple = work_advice({.facts = facts,
                                        .species = know.species.find(facts.species),
                                        .verdict = Verdict::take,
                                        .around = nothing},
                                       know.settings);
  EXPECT_FALSE(maple.herbicide);
  EXPECT_THAT(maple.rules, Contains("R6.50"));
}

// S10. Aspen, oak and grouse.
constexpr const char* kAspen = R"(
  crop O RO 14 co
  O south S 18 touches AS 11 co
  O east E 17 touches AS 10 co
  O clear E 24 none AS 10 co
  O far W 41 none AS 12 co
)";

Job grouse_job() {
  Job job(kAspen);
  job.input().stand.grouse = true;
  return job;
}

TEST(AspenOakAndGrouse, TheTwoThatTouchAreDoubleGirdledAndTheRestStay) {
  Job job = grouse_job();
  EXPECT_THAT(cut_tags(job.plan()), UnorderedElementsAre("south", "east"));
  for (const char* tag : {"south", "east"}) {
    const WorkAdvice aspen = job.advice(tag);
    EXPECT_EQ(aspen.ways.front(), Way::girdle) << tag;
    EXPECT_THAT(aspen.ways, Not(Contains(Way::fell))) << tag;
    EXPECT_FALSE(aspen.herbicide) << tag;
    EXPECT_THAT(aspen.rules, Contains("R6.31")) << tag;
  }
  for (const char* tag : {"clear", "far"}) {
    EXPECT_EQ(verdict_on(job.plan(), tag).verdict, Verdict::keep) << tag;
  }
}

TEST(AspenOakAndGrouse, FellingAllFourIsRefused) {
  Job job = grouse_job();
  const auto said = objections(job.input(), {{"O"}, {"south", "east", "clear", "far"}});
  EXPECT_THAT(rules_against(said, "clear"), Contains("R1.51"));
  EXPECT_THAT(rules_against(said, "far"), Contains("R1.51"));
  for (const char* tag : {"south", "east"}) {
    EXPECT_THAT(job.against(tag, {.way = Way::fell}), Contains("R6.14")) << tag;
  }
}

TEST(AspenOakAndGrouse, SparingAllAspenLeavesTheOakShort) {
  Job job = grouse_job();
  EXPECT_THAT(rules_against(objections(job.input(), {{"O"}, {}}), "O"), Contains("R1.61"));
}

TEST(AspenOakAndGrouse, HerbicideIsRefusedBecauseTheCloneIsOneRoot) {
  Job job = grouse_job();
  EXPECT_THAT(job.against("south", {.way = Way::frill, .herbicide = true}), Contains("R6.50"));
}

// S11. Stream, cherry, hemlock: the bank tree, and the zone along the stream.
TEST(TheStreamBank, TheAshIsLeftOrGirdledAndNeverFelledAcross) {
  Job job(R"(
    crop O WO 15 co
    crop cherry BC 12 co
    O cherry N 20 touches
    O maple E 18 touches RM 12 co
    O hem S 13 below HE 8 int
    O ash W 16 touches WA 10 co bank_tree)");
  job.input().stand.ba_by_species[SpeciesCode{762}] = SquareFeetPerAcre{4.4};
  job.around("ash").stream = Feet{15.0};
  job.around("maple").stream = Feet{45.0};
  EXPECT_THAT(cut_tags(job.plan()), ElementsAre("maple"));
  for (const Way way : job.advice("ash").ways) {
    EXPECT_TRUE(way == Way::leave || way == Way::girdle);
  }
  EXPECT_THAT(job.against("ash", {.way = Way::fell}), Contains("R5.41"));
  const WorkAdvice maple = job.advice("maple");
  EXPECT_EQ(maple.ways.front(), Way::fell);
  EXPECT_THAT(maple.ways, Not(Contains(Way::machine_fell)));
  EXPECT_FALSE(maple.herbicide);
  EXPECT_THAT(maple.way_words, HasSubstr("no machine comes within 50 ft"));
  EXPECT_THAT(job.against("maple", {.way = Way::machine_fell}), Contains("R5.39"));
}

TEST(TheStreamBank, OutsideTheZoneAMachineMayCome) {
  Job job("crop O WO 15 co\nO maple E 18 touches RM 12 co");
  job.around("maple").stream = Feet{50.0};
  EXPECT_THAT(job.advice("maple").ways, Contains(Way::machine_fell));
  job.around("maple").slope = Percent{36.0};
  EXPECT_THAT(job.advice("maple").ways, Not(Contains(Way::machine_fell)));
  EXPECT_THAT(job.advice("maple").rules, Contains("R4.30"));
}

}  // namespace
}  // namespace oaklight
