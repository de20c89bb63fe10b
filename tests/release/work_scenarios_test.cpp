// Worked scenarios, third part: season, hazard, method and herbicide. Invented trees; expected
// values are the scenarios' own. S3 and S6 have their first half beside this file, S5, S7, S8, S10
// are here whole, and so is the bank tree of S11.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/base/embedded.hpp"
#include "core/release/work_site.hpp"
#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

using test::cards;
using test::cut_tags;
using test::input_of;
using test::released_tags;
using test::rules_against;
using test::verdict_on;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::UnorderedElementsAre;
using namespace std::chrono_literals;

/// The windows of a state whose issue begins so; without the rows for another part of it.
std::vector<SeasonWindow> windows(std::string_view state, std::string_view issue,
                                  std::string_view other_part = "") {
  std::string_view csv;
  for (const EmbeddedFile& file : embedded_forms()) {
    if (file.path == "season_windows.csv") csv = file.text;
  }
  auto table = read_seasons(csv);
  EXPECT_TRUE(table);
  std::erase_if(*table, [&](const SeasonWindow& w) {
    return !other_part.empty() && w.where.find(other_part) != std::string::npos;
  });
  std::vector<SeasonWindow> mine = windows_of(*table, state);
  std::erase_if(mine, [&](const SeasonWindow& w) { return !w.issue.starts_with(issue); });
  EXPECT_FALSE(mine.empty());
  return mine;
}

/// A plan with all that the work on it is judged by.
class Job {
 public:
  explicit Job(std::string_view text, Goal goal = Goal::mast)
      : cards_(cards(text)), input_(input_of(cards_, 1.0, goal)), around_(cards_.trees.size()) {}

  ReleaseInput& input() { return input_; }
  Surroundings& around(std::string_view tag) {
    for (std::size_t i = 0; i < cards_.trees.size(); ++i) {
      if (cards_.trees[i].tag == tag) return around_[i];
    }
    throw std::invalid_argument("no such tag");
  }
  const ReleasePlan& plan() {
    plan_ = recommend(input_);
    return plan_;
  }

  WorkAdvice advice(std::string_view tag) {
    return work_advice(case_of(tag), input_.knowledge.settings);
  }
  std::vector<std::string> against(const std::string& tag, const WorkOrder& order,
                                   std::span<const SeasonWindow> season = {}) {
    return rules_against(
        work_objections(case_of(tag), tag, order, season, input_.knowledge.settings), tag);
  }
  DayAdvice day(std::string_view tag, Way way, std::span<const SeasonWindow> season, Day day) {
    return day_advice(season, work_kind(case_of(tag), way), day);
  }

 private:
  WorkCase case_of(std::string_view tag) {
    plan();
    const auto all = work_cases({cards_.trees, around_, cards_.contacts}, plan_, input_);
    for (std::size_t i = 0; i < all.size(); ++i) {
      if (plan_.trees[i].tag == tag) return all[i];
    }
    throw std::invalid_argument("no such tag");
  }

  test::ShortCards cards_;
  ReleaseInput input_;
  std::vector<Surroundings> around_;
  ReleasePlan plan_;
};

// S3. The den tree in the way, planned for July in the range of the Indiana bat.
TEST(TheDenTreeInJuly, TheDateIsRefusedAndOctoberIsNamed) {
  Job job(R"(
    crop O RO 14 co
    crop shag SH 13 co
    O bass S 22 touches BW 19 co den cavity_high
    O maple N 16 touches RM 11 co
    O shag W 19 touches
    O elm E 12 touches EL 9 int)");
  const auto bats = windows("IN", "bat_active_season");
  const DayAdvice july = job.day("maple", Way::fell, bats, 2026y / 7 / 10);
  EXPECT_FALSE(july.held_by.empty());
  EXPECT_EQ(july.earliest, Day(2026y / 10 / 1));
  EXPECT_TRUE(job.day("maple", Way::fell, bats, 2027y / 3 / 31).held_by.empty());
  EXPECT_FALSE(job.day("maple", Way::fell, bats, 2027y / 4 / 1).held_by.empty());
  EXPECT_THAT(job.against("maple", {.day = 2026y / 7 / 10}, bats), Contains("R5.22"));
  EXPECT_THAT(job.against("maple", {.day = 2026y / 10 / 1}, bats), IsEmpty());
}

// S5. Right trees, wrong month: Wisconsin, north of the tension zone, 20 May.
constexpr const char* kWrongMonth = R"(
  crop O RO 15 co
  O pin N 18 touches NPO 10 co db=20
  O maple S 17 touches RM 11 co
  O bass E 19 touches BW 12 co
)";
constexpr Day kMay20 = 2026y / 5 / 20;

/// The oak wilt windows for felling north of the tension zone.
std::vector<SeasonWindow> northern_wisconsin() {
  auto wilt = windows("WI", "oak_wilt_", "south");
  std::erase_if(wilt, [](const SeasonWindow& w) { return w.issue == "oak_wilt_prune_hold"; });
  EXPECT_EQ(wilt.size(), 2U);
  return wilt;
}

TEST(RightTreesWrongMonth, TheDateIsRefusedUntilOctoberOrWithAWarningUntilMidJuly) {
  Job job(kWrongMonth);
  for (const char* tag : {"maple", "bass"}) {
    const DayAdvice may = job.day(tag, Way::fell, northern_wisconsin(), kMay20);
    EXPECT_FALSE(may.held_by.empty()) << tag;
    EXPECT_EQ(may.earliest, Day(2026y / 10 / 1)) << tag;
    EXPECT_EQ(may.with_warning, Day(2026y / 7 / 16)) << tag;
  }
  EXPECT_TRUE(job.day("maple", Way::fell, northern_wisconsin(), 2027y / 4 / 14).held_by.empty());
  EXPECT_FALSE(job.day("maple", Way::fell, northern_wisconsin(), 2027y / 4 / 15).held_by.empty());
}

TEST(RightTreesWrongMonth, CuttingAllThreeIsRefusedByTheOakWiltWindow) {
  Job job(kWrongMonth);
  for (const char* tag : {"pin", "maple", "bass"}) {
    EXPECT_THAT(job.against(tag, {.day = kMay20}, northern_wisconsin()), Contains("R6.71")) << tag;
  }
}

TEST(RightTreesWrongMonth, AMachineForTheMapleAndBasswoodAloneIsRefusedTooBesideAnOak) {
  Job job(kWrongMonth);
  for (const char* tag : {"maple", "bass"}) {
    EXPECT_THAT(job.against(tag, {.way = Way::machine_fell, .day = kMay20}, northern_wisconsin()),
                Contains("R6.71"))
        << tag;
  }
}

TEST(RightTreesWrongMonth, KillingTheMapleStandingByHandWoundsNoOak) {
  Job job(kWrongMonth);
  EXPECT_THAT(job.against("maple", {.way = Way::girdle, .day = kMay20}, northern_wisconsin()),
              IsEmpty());
  EXPECT_THAT(job.against("pin", {.way = Way::girdle, .day = kMay20}, northern_wisconsin()),
              Contains("R6.71"));
}

TEST(RightTreesWrongMonth, AColdSpringNeedsItsReasonInWriting) {
  Job job(kWrongMonth);
  const auto wilt = northern_wisconsin();
  EXPECT_THAT(job.against("maple", {.day = kMay20}, wilt), Contains("R6.80"));
  EXPECT_THAT(
      job.against("maple",
                  {.day = kMay20, .written_reason = "Cold spring; agency forester agreed."}, wilt),
      IsEmpty());
}

TEST(RightTreesWrongMonth, TheStandIsInTheTopClassOfRisk) {
  StandDensity stand = test::full_stand();
  const WorkSettings& work = test::shipped_knowledge().settings.work;
  stand.ba_oak = SquareFeetPerAcre{48.0};
  EXPECT_THAT(oak_wilt_words(stand, work), HasSubstr("48 ft2/ac of oak this stand is in the high"));
  EXPECT_THAT(oak_wilt_words(stand, work), HasSubstr("15 minutes"));
  EXPECT_THAT(oak_wilt_words(stand, work), HasSubstr("72 hours"));
  stand.ba_oak = SquareFeetPerAcre{35.0};
  EXPECT_THAT(oak_wilt_words(stand, work), HasSubstr("the middle class"));
  stand.ba_oak = SquareFeetPerAcre{15.0};
  EXPECT_THAT(oak_wilt_words(stand, work), HasSubstr("the lowest class"));
}

// S6. The dead ash: 75 ft tall, 12 ft from the crop tree.
constexpr const char* kDeadAsh = R"(
  crop O WO 14 co ht=75
  O dead E 12 touches WA 14 dead lean_10 ht=75
  O maple N 15 touches RM 10 co ht=75
  O ash W 17 touches WA 9 int db=40 ht=75
)";

Job dead_ash_job() {
  Job job(kDeadAsh);
  job.around("maple").dead_ashes = {{Feet{19.2}, Feet{75.0}, "dead"}};
  job.around("ash").dead_ashes = {{Feet{29.0}, Feet{75.0}, "dead"}};
  return job;
}

TEST(TheDeadAshInReach, FellingItByHandIsRefused) {
  Job job(kDeadAsh);
  job.plan();
  EXPECT_THAT(job.against("dead", {.way = Way::fell}), Not(IsEmpty()));
  // Also where somebody decided to take it: machine or not at all.
  TreeFacts facts = test::trees("WA 14 dead").front().facts;
  const Surroundings nothing;
  const ReleaseKnowledge& know = test::shipped_knowledge();
  const WorkCase taken{.facts = facts,
                       .species = know.species.find(facts.species),
                       .verdict = Verdict::take,
                       .around = nothing};
  EXPECT_THAT(work_advice(taken, know.settings).ways, ElementsAre(Way::machine_fell, Way::leave));
  EXPECT_THAT(
      rules_against(work_objections(taken, "dead", {.way = Way::fell}, {}, know.settings), "dead"),
      Contains("R6.16"));
}

TEST(TheDeadAshInReach, TheMapleIsBlockedWhileTheHazardIsOpen) {
  Job job = dead_ash_job();
  const WorkAdvice maple = job.advice("maple");
  EXPECT_THAT(maple.open, ElementsAre("a dead ash (dead) stands within 150 ft"));
  EXPECT_THAT(maple.ways, ElementsAre(Way::machine_fell, Way::leave));
  EXPECT_THAT(job.against("maple", {.way = Way::fell}), Contains("R5.15"));
  EXPECT_THAT(job.against("ash", {.way = Way::fell}), Contains("R5.15"));
  EXPECT_THAT(job.against("maple", {.way = Way::machine_fell}), IsEmpty());
  job.around("maple").dead_ashes.clear();  // gone
  EXPECT_EQ(job.advice("maple").ways.front(), Way::fell);
}

TEST(TheDeadAshInReach, OneJustBeyondTwoLengthsBlocksNothing) {
  Job job(kDeadAsh);
  job.around("maple").dead_ashes = {{Feet{150.0}, Feet{75.0}, "far"}};
  EXPECT_FALSE(job.advice("maple").open.empty());
  job.around("maple").dead_ashes = {{Feet{150.5}, Feet{75.0}, "far"}};
  EXPECT_TRUE(job.advice("maple").open.empty());
}

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
