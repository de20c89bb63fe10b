// The packets of whoever kills trees standing and of the owner, the ways that every packet prints,
// and the practice record. Expected values are derived from the small tracts made here.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <numbers>

#include "core/handoff/list_gpx.hpp"
#include "core/handoff/list_table.hpp"
#include "core/handoff/owner_part.hpp"
#include "core/handoff/tree_cautions.hpp"
#include "tests/handoff/test_tract.hpp"
#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

using namespace oaklight::test;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

Result<Packet> judged(const TractData& data, PacketReader reader,
                      const PacketOptions& options = winter()) {
  const ReleaseKnowledge& release = shipped_knowledge();
  return make_packet(data, {release.species, cautions(), seasons(), &release}, reader, options);
}

Mark& kill(TestTract& tract, WalkTreeId tree) {
  return tract.mark(tree, {.verdict = Verdict::kill_standing,
                           .method = Method::girdle,
                           .reason = "Crowds a crop tree."});
}

TEST(StandingPacket, ListsTheTreesToKillStandingAndNoOthers) {
  TestTract tract;
  kill(tract, tract.tree("1").id);
  tract.take(tract.tree("2").id, Reader::logger, Product::sawlog);
  tract.take(tract.tree("3").id, Reader::firewood, Product::none).method = Method::girdle;
  tract.mark(tract.tree("4").id, {.verdict = Verdict::keep});
  WalkTree& oak = tract.tree("5", kWhiteOak);
  oak.crop = true;
  kill(tract, oak.id);  // a crop tree since: nobody kills it
  const auto packet = judged(tract.data, PacketReader::standing);
  ASSERT_TRUE(packet) << to_text(packet.error());
  EXPECT_THAT(tags_of(packet->cut), ElementsAre("1", "3"));
  EXPECT_THAT(tags_of(packet->trained), IsEmpty());
  EXPECT_THAT(tags_of(packet->keep), ElementsAre("4"));
  EXPECT_THAT(tags_of(packet->others), ElementsAre("2", "5"));
  EXPECT_THAT(packet->others[0].reason, HasSubstr("must not be girdled"));
  EXPECT_THAT(packet->others[1].reason, HasSubstr("changed after it was marked"));
}

TEST(StandingPacket, BeginsWithTheLabelAndNamesNoDose) {
  TestTract tract;
  kill(tract, tract.tree("1").id);
  const auto packet = judged(tract.data, PacketReader::standing);
  ASSERT_TRUE(packet);
  EXPECT_THAT(packet->before_you_start.front(), HasSubstr("Label first"));
  EXPECT_THAT(packet->before_you_start[1], HasSubstr("licensed"));
  EXPECT_EQ(packet->job_cautions.front().code, "HERB_LABEL");
  for (const char* unit : {" oz", "ounce", "percent solution", " ml", "milliliter", "gallon"}) {
    EXPECT_THAT(packet->list_csv, Not(HasSubstr(unit)));
  }
}

TEST(StandingPacket, SaysOfEachTreeWhetherHerbicideMayBeUsedAndWhy) {
  TestTract tract;
  kill(tract, tract.tree("1").id);
  WalkTree& clump = tract.tree("2");
  clump.facts.conditions.add(Condition::clump);
  kill(tract, clump.id);
  kill(tract, tract.tree("3", kWhiteOak).id);
  const auto packet = judged(tract.data, PacketReader::standing);
  ASSERT_TRUE(packet);
  std::map<std::string, WorkNotes> notes;
  for (const auto* list : {&packet->cut, &packet->trained}) {
    for (const PacketTree& tree : *list) notes[tree.tag] = tree.work.value();
  }
  ASSERT_EQ(notes.size(), 3U);
  EXPECT_TRUE(notes["1"].herbicide);
  EXPECT_THAT(notes["1"].herbicide_words, HasSubstr("label"));
  EXPECT_FALSE(notes["2"].herbicide);
  EXPECT_THAT(notes["2"].herbicide_words, HasSubstr("shares its roots"));
  EXPECT_FALSE(notes["3"].herbicide);
  EXPECT_THAT(notes["3"].herbicide_words, HasSubstr("oak"));
}

TEST(StandingPacket, ATreeBesideARoadIsForATrainedPerson) {
  TestTract tract;
  WalkTree& near = tract.tree("1");
  near.position = at(0, 0);
  kill(tract, near.id);
  WalkTree& far = tract.tree("2");
  far.position = at(0, 2000);
  kill(tract, far.id);
  tract.line(LineKind::road, {at(-500, 40), at(500, 40)});
  const auto packet = judged(tract.data, PacketReader::standing);
  ASSERT_TRUE(packet);
  EXPECT_THAT(tags_of(packet->cut), ElementsAre("2"));
  EXPECT_THAT(tags_of(packet->trained), ElementsAre("1"));
}

TEST(StandingPacket, IsRefusedWhereNoTreeIsToBeKilled) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::logger, Product::sawlog);
  const auto packet = judged(tract.data, PacketReader::standing);
  ASSERT_FALSE(packet);
  EXPECT_EQ(packet.error().code, ErrorCode::nothing_marked);
  EXPECT_THAT(packet.error().what, HasSubstr("killed standing"));
}

TEST(FirewoodPacket, NamesTheFirewoodThatABeginnerMustNotTouch) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::firewood, Product::firewood);
  WalkTree& cracked = tract.tree("2");
  cracked.facts.conditions.add(Condition::crack);
  tract.take(cracked.id, Reader::logger, Product::firewood);
  tract.take(tract.tree("3").id, Reader::logger, Product::firewood);  // sent to the logger by hand
  tract.take(tract.tree("4").id, Reader::logger, Product::sawlog);
  const auto packet = judged(tract.data, PacketReader::firewood);
  ASSERT_TRUE(packet);
  EXPECT_THAT(tags_of(packet->cut), ElementsAre("1"));
  EXPECT_THAT(tags_of(packet->trained), ElementsAre("2"));
  EXPECT_THAT(tags_of(packet->others), ElementsAre("3", "4"));
  EXPECT_THAT(packet->before_you_start, testing::Contains(HasSubstr("1 tree is listed")));
}

TEST(EveryPacket, AWayThatTheRulesForbidIsAStop) {
  TestTract tract;
  WalkTree& bank = tract.tree("1");
  bank.facts.conditions.add(Condition::bank_tree);  // R5.41: never felled
  tract.take(bank.id, Reader::logger, Product::pulpwood).by_hand = true;
  tract.take(tract.tree("2").id, Reader::logger, Product::pulpwood);
  const auto packet = judged(tract.data, PacketReader::logger);
  ASSERT_TRUE(packet);
  EXPECT_THAT(tags_of(packet->cut), ElementsAre("2"));
  ASSERT_THAT(tags_of(packet->trained), ElementsAre("1"));
  EXPECT_EQ(packet->trained[0].cautions.front().severity, Severity::stop);
  EXPECT_EQ(packet->trained[0].cautions.front().code, "NOT_THIS_WAY");
}

TEST(EveryPacket, SaysWhenTheSeasonHoldsTheWork) {
  TestTract tract;
  WalkTree& oak = tract.tree("9", kWhiteOak);
  oak.crop = true;
  const WalkTreeId crop = oak.id;
  const WalkTreeId maple = tract.tree("1").id;
  tract.contact(crop, maple);
  tract.take(maple, Reader::logger, Product::pulpwood);
  PacketOptions may = winter();
  may.work_day = std::chrono::May / 4 / 2027;
  const auto packet = judged(tract.data, PacketReader::logger, may);
  ASSERT_TRUE(packet);
  ASSERT_EQ(packet->cut.size() + packet->trained.size(), 1U);
  const PacketTree& tree = packet->cut.empty() ? packet->trained[0] : packet->cut[0];
  EXPECT_TRUE(tree.work->held);
  EXPECT_THAT(tree.work->when, HasSubstr("oak wilt"));
  EXPECT_FALSE(judged(tract.data, PacketReader::logger)->cut[0].work->held) << "in December";
}

TEST(EveryPacket, GroupTotalsAddUpToTheTotals) {
  TestTract tract;
  const StandId b = tract.stand("B");
  for (int i = 0; i < 20; ++i) {
    WalkTree& tree = tract.tree(std::to_string(i), i % 3 == 0 ? kTreeOfHeaven : kRedMaple, 7.3 + i);
    if (i % 2 == 0) tree.stand = b;
    tree.facts.half_logs = 2;
    tract.take(tree.id, Reader::logger, i % 2 == 0 ? Product::sawlog : Product::firewood);
  }
  const auto packet = judged(tract.data, PacketReader::logger);
  ASSERT_TRUE(packet);
  for (const auto* groups : {&packet->by_species, &packet->by_stand}) {
    for (const ProductTotal& total : packet->totals) {
      int trees = 0;
      double board_feet = 0.0;
      long hundredths = 0;
      for (const GroupTotal& group : *groups) {
        if (group.total.product != total.product) continue;
        trees += group.total.trees;
        if (group.total.board_feet) board_feet += group.total.board_feet->value;
        if (group.total.cords) hundredths += std::lround(group.total.cords->value * 100);
      }
      EXPECT_EQ(trees, total.trees);
      EXPECT_EQ(board_feet, total.board_feet ? total.board_feet->value : 0.0);
      EXPECT_EQ(hundredths, total.cords ? std::lround(total.cords->value * 100) : 0);
    }
  }
}

/// One stand of ten acres, all walked: one tenth-acre plot with two maples of 12.0 in and an oak of
/// 16.0 in; the walk takes five such maples and kills five standing.
TestTract measured_tract() {
  TestTract tract;
  tract.data.stands.front().acres = Acres{10};
  tract.data.stands.front().walked = Acres{10};
  const CruiseId cruise = nth_id<CruiseId>(500);
  tract.data.cruises.push_back({.id = cruise, .name = "c", .design = FixedDesign{.area = 0.1}});
  for (std::uint32_t p = 0; p < 2; ++p) {
    const PlotId plot = nth_id<PlotId>(510 + p);
    tract.data.plots.push_back({.id = plot,
                                .stand = tract.data.stands.front().id,
                                .cruise = cruise,
                                .label = std::to_string(p + 1),
                                .status = PlotStatus::measured});
    const auto add = [&](std::uint32_t n, int fia, double dbh) {
      tract.data.trees.push_back(
          {.id = nth_id<TreeId>(520 + 10 * p + n),
           .plot = plot,
           .facts = {.species = {fia}, .dbh = dbh_in(dbh), .crown_class = CrownClass::codominant}});
    };
    add(0, kRedMaple, 12.0);
    add(1, kRedMaple, 12.0);
    add(2, kWhiteOak, 16.0);
  }
  WalkTree& oak = tract.tree("900", kWhiteOak, 16.0);
  oak.crop = true;
  const WalkTreeId crop = oak.id;
  tract.mark(crop, {.verdict = Verdict::keep, .reason = "Crop tree."});
  for (int i = 1; i <= 10; ++i) {
    const WalkTreeId maple = tract.tree(std::to_string(i), kRedMaple, 12.0).id;
    tract.contact(crop, maple).seen = Seen::touches;
    if (i <= 5) tract.take(maple, Reader::logger, Product::pulpwood);
    if (i > 5) kill(tract, maple);
  }
  return tract;
}

TEST(OwnerPacket, ListsAllThatGoWithWhoseListItIsOn) {
  const auto packet = judged(measured_tract().data, PacketReader::owner);
  ASSERT_TRUE(packet) << to_text(packet.error());
  EXPECT_EQ(packet->cut.size() + packet->trained.size(), 10U);
  EXPECT_THAT(tags_of(packet->keep), ElementsAre("900"));
  const ListTable table = list_table(*packet);
  int logger = 0;
  int standing = 0;
  for (const auto& row : table.rows) {
    const std::string to = text_of(row[table.column("goes_to")]);
    logger += to == "logger" ? 1 : 0;
    standing += to == "standing" ? 1 : 0;
  }
  EXPECT_EQ(logger, 5);
  EXPECT_EQ(standing, 5);
}

// Before: 2 maples and 1 oak on a tenth acre are 20 and 10 trees an acre. Removed: 10 trees on 10
// acres, one an acre. Basal area of 12 in is pi / 4 ft2, of 16 in pi / 4 (16 / 12)^2 ft2.
TEST(PracticeRecord, IsBeforeRemovedAndAfterByTwoInchClass) {
  const auto packet = judged(measured_tract().data, PacketReader::owner);
  ASSERT_TRUE(packet);
  ASSERT_TRUE(packet->owner);
  ASSERT_EQ(packet->owner->stands.size(), 1U);
  const PracticeRecord& record = packet->owner->stands[0].record;
  EXPECT_EQ(record.felled, 5);
  EXPECT_EQ(record.killed_standing, 5);
  EXPECT_EQ(record.crop_trees, 1);
  EXPECT_THAT(record.kept_kinds, ElementsAre("white oak"));
  EXPECT_THAT(record.main_kinds, ElementsAre("red maple", "white oak"));
  ASSERT_EQ(record.classes.size(), 2U);
  const double foot = std::numbers::pi / 4.0;
  const PracticeClass& maples = record.classes[0];
  EXPECT_EQ(maples.dbh_class, DbhClass{12});
  EXPECT_NEAR(maples.before->value, 20.0, 1e-9);
  EXPECT_EQ(maples.removed_trees, 10);
  EXPECT_NEAR(maples.removed->value, 1.0, 1e-12);
  EXPECT_NEAR(maples.removed_ba->value, foot, 1e-9);
  EXPECT_NEAR(maples.after->value, 19.0, 1e-9);
  EXPECT_NEAR(maples.after_ba->value, 19.0 * foot, 1e-9);
  const PracticeClass& oaks = record.classes[1];
  EXPECT_EQ(oaks.dbh_class, DbhClass{16});
  EXPECT_EQ(oaks.removed_trees, 0);
  EXPECT_NEAR(oaks.after->value, 10.0, 1e-9);
  EXPECT_NEAR(record.all.after->value, 29.0, 1e-9);
  EXPECT_NEAR(record.all.after_ba->value, foot * (19.0 + 10.0 * 16.0 / 9.0), 1e-9);
  EXPECT_NEAR(record.qmd_removed->value, 12.0, 1e-9);
  EXPECT_NEAR(record.qmd_after->value, 12.0 * std::sqrt((19.0 + 160.0 / 9.0) / 29.0), 1e-9);
  EXPECT_NEAR(packet->owner->stands[0].after->ba.value, record.all.after_ba->value, 1e-9)
      << "the owner's figures and the record agree";
}

TEST(PracticeRecord, ADashStandsWhereAfterCannotBeTold) {
  TestTract tract = measured_tract();
  tract.data.stands.front().walked.reset();
  const auto unwalked = judged(tract.data, PacketReader::owner);
  ASSERT_TRUE(unwalked);
  EXPECT_EQ(unwalked->owner->stands[0].record.all.after, std::nullopt);
  EXPECT_EQ(unwalked->owner->stands[0].record.all.removed_trees, 10) << "still counted";
  tract.data.stands.front().walked = Acres{0.1};  // 100 trees an acre marked where 20 stand
  const auto too_many = judged(tract.data, PacketReader::owner);
  ASSERT_TRUE(too_many);
  EXPECT_EQ(too_many->owner->stands[0].record.classes[0].after, std::nullopt);
  tract.data.plots.clear();
  tract.data.trees.clear();
  tract.data.cruises.clear();
  const auto unmeasured = judged(tract.data, PacketReader::owner);
  ASSERT_TRUE(unmeasured);
  EXPECT_EQ(unmeasured->owner->stands[0].record.all.before, std::nullopt);
}

TEST(PracticeRecord, CsvHasALineForEachClassAndOneForAll) {
  const auto packet = judged(measured_tract().data, PacketReader::owner);
  ASSERT_TRUE(packet);
  const std::string text = practice_record_csv({packet->owner->stands[0].record});
  EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 4);
  EXPECT_THAT(text,
              HasSubstr("A,10.0,10.0,12,11.0,13.0,20.0,0.0,15.7,0.0,10,1.0,0.8,19.0,14.9\r\n"));
  EXPECT_THAT(text, HasSubstr("A,10.0,10.0,all,,,30.0,"));
}

TEST(ListTable, TextIsCleanAndFiguresAreAsPrinted) {
  EXPECT_EQ(clean_text("a\xFF"
                       "b\x01\tc\n"),
            "a\xEF\xBF\xBD"
            "b\xEF\xBF\xBD\tc\n");
  EXPECT_EQ(clean_text("\xF0\x9F\x8C\xB3"), "\xF0\x9F\x8C\xB3");
  EXPECT_EQ(clean_text("\xF0\x9F\x8C"), "\xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD");
  EXPECT_EQ(printed_value({12.449, 1}), 12.4);
  EXPECT_EQ(text_of(ListNumber{0.005, 2}), "0.01") << "halves away from zero";
}

TEST(Gpx, LeavesOutTreesWithoutAPositionAndSaysHowMany) {
  TestTract tract;
  WalkTree& placed = tract.tree("1");
  placed.position = at(0, 0);
  tract.take(placed.id, Reader::logger, Product::pulpwood);
  tract.take(tract.tree("2").id, Reader::logger, Product::pulpwood);
  const auto packet = judged(tract.data, PacketReader::logger);
  ASSERT_TRUE(packet);
  EXPECT_EQ(placed_trees(*packet), 1U);
  const std::string gpx = list_gpx(*packet);
  EXPECT_THAT(gpx, HasSubstr("1 trees with a position; 1 without one"));
  EXPECT_THAT(gpx, HasSubstr("<name>1</name>"));
  EXPECT_THAT(gpx, Not(HasSubstr("<name>2</name>")));
}

}  // namespace
}  // namespace oaklight
