// Worked scenarios, third part: season and hazard. Invented trees; expected values are the
// scenarios' own. S3 and S6 have their first half beside this file, S5 is here whole.
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
using namespace std::chrono_literals;

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

}  // namespace
}  // namespace oaklight
