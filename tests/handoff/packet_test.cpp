#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/handoff/tree_cautions.hpp"
#include "tests/handoff/test_tract.hpp"

namespace oaklight {
namespace {

using namespace oaklight::test;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

TEST(Packet, EachReaderGetsTheTreesMarkedForHim) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::logger, Product::sawlog);
  tract.take(tract.tree("2").id, Reader::firewood, Product::firewood);
  tract.take(tract.tree("3").id, Reader::logger, Product::pulpwood);
  const auto logger = packet_for(tract.data, Reader::logger);
  ASSERT_TRUE(logger);
  EXPECT_THAT(tags_of(logger->cut), ElementsAre("1", "3"));
  EXPECT_THAT(tags_of(logger->others), ElementsAre("2"));
  const auto firewood = packet_for(tract.data, Reader::firewood);
  ASSERT_TRUE(firewood);
  EXPECT_THAT(tags_of(firewood->cut), ElementsAre("2"));
  EXPECT_THAT(tags_of(firewood->others), ElementsAre("1", "3"));
}

TEST(Packet, TreesKilledStandingAndGirdledAreNobodysToCut) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::logger, Product::sawlog);
  tract.mark(
      tract.tree("2").id,
      {.verdict = Verdict::kill_standing, .method = Method::girdle, .destination = Reader::logger});
  tract.take(tract.tree("3").id, Reader::logger, Product::none).method = Method::girdle;
  tract.mark(tract.tree("4").id, {.verdict = Verdict::look_again, .destination = Reader::logger});
  tract.take(tract.tree("5").id, Reader::logger, Product::none).destination.reset();
  const auto packet = packet_for(tract.data, Reader::logger);
  ASSERT_TRUE(packet);
  EXPECT_THAT(tags_of(packet->cut), ElementsAre("1"));
  EXPECT_THAT(tags_of(packet->trained), IsEmpty());
  EXPECT_THAT(tags_of(packet->others), ElementsAre("2", "3", "4", "5"));
  std::vector<std::string> reasons;
  for (const PacketTree& tree : packet->others) reasons.push_back(tree.reason);
  EXPECT_THAT(reasons,
              ElementsAre("To be killed standing; must not be felled.",
                          "To be killed standing; must not be felled.",
                          "To be looked at again; nothing is decided.", "On nobody's list yet."));
}

TEST(Packet, KeepsCropTreesFirstAndProposedOnesToo) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::logger, Product::sawlog);
  tract.mark(tract.tree("2").id, {.verdict = Verdict::keep});
  tract.tree("9", kWhiteOak).crop = true;
  WalkTree& oak = tract.tree("10", kWhiteOak);
  oak.crop = true;
  tract.mark(oak.id, {.verdict = Verdict::keep, .reason = "Crop tree."});
  tract.tree("11");
  const auto packet = packet_for(tract.data, Reader::logger);
  ASSERT_TRUE(packet);
  EXPECT_THAT(tags_of(packet->keep), ElementsAre("9", "10", "2"));
  EXPECT_EQ(packet->keep[0].verdict, Verdict::keep);
  EXPECT_THAT(packet->keep[0].reason, HasSubstr("nothing is decided"));
  EXPECT_THAT(tags_of(packet->others), ElementsAre("11")) << "met, never decided";
}

TEST(Packet, AMarkOlderThanWhatIsRecordedSendsNobodyToTheTree) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::logger, Product::sawlog);
  for (const char* tag : {"2", "3", "4", "5"}) {
    tract.take(tract.tree(tag).id, Reader::logger, Product::sawlog);
  }
  EXPECT_EQ(packet_for(tract.data, Reader::logger)->cut.size(), 5U);
  tract.data.walk_trees[1].crop = true;
  tract.data.walk_trees[2].facts.conditions.add(Condition::den);
  tract.data.walk_trees[3].facts.conditions.add(Condition::nest);
  tract.data.walk_trees[4].facts.status = TreeStatus::dead;
  tract.data.marks[1].by_hand = true;  // of a crop tree, even so
  const auto packet = packet_for(tract.data, Reader::logger);
  ASSERT_TRUE(packet);
  EXPECT_THAT(tags_of(packet->cut), ElementsAre("1"));
  EXPECT_THAT(tags_of(packet->trained), IsEmpty());
  EXPECT_THAT(tags_of(packet->others), ElementsAre("2", "3", "4", "5"));
  for (const PacketTree& tree : packet->others) {
    EXPECT_THAT(tree.reason, HasSubstr("changed after it was marked")) << tree.tag;
  }
}

TEST(Packet, TreesForATrainedFellerAddUpApart) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::logger, Product::pulpwood);
  WalkTree& cracked = tract.tree("2", kRedMaple, 8);
  cracked.facts.conditions.add(Condition::crack);
  tract.take(cracked.id, Reader::logger, Product::pulpwood);
  const auto packet = packet_for(tract.data, Reader::logger);
  ASSERT_TRUE(packet);
  EXPECT_EQ(packet->totals.at(0).trees, 1);
  ASSERT_EQ(packet->totals_if_cleared.size(), 1U);
  EXPECT_EQ(packet->totals_if_cleared[0].trees, 1);
  // University of New Hampshire cord table at 8 in: 0.12 cords.
  EXPECT_EQ(packet->totals_if_cleared[0].cords, Cords{0.12});
  for (Mark& mark : tract.data.marks) mark.destination = Reader::firewood;
  EXPECT_TRUE(packet_for(tract.data, Reader::firewood)->totals_if_cleared.empty())
      << "nobody clears trees for a firewood cutter";
}

TEST(Packet, TheLaterMarkOfATreeIsTheDecision) {
  TestTract tract;
  const WalkTreeId tree = tract.tree("1").id;
  tract.take(tree, Reader::logger, Product::sawlog);
  tract.mark(tree, {.verdict = Verdict::keep, .by_hand = true});
  tract.take(tract.tree("2").id, Reader::logger, Product::sawlog);
  for (int turn = 0; turn < 2; ++turn) {
    const auto packet = packet_for(tract.data, Reader::logger);
    ASSERT_TRUE(packet);
    EXPECT_THAT(tags_of(packet->keep), ElementsAre("1"));
    std::reverse(tract.data.marks.begin(), tract.data.marks.end());
  }
}

TEST(Packet, ATreeWithAStopIsForATrainedFeller) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::logger, Product::sawlog);
  WalkTree& cracked = tract.tree("2");
  cracked.facts.conditions.add(Condition::crack);
  tract.take(cracked.id, Reader::logger, Product::pulpwood);
  const auto packet = packet_for(tract.data, Reader::logger);
  ASSERT_TRUE(packet);
  EXPECT_THAT(tags_of(packet->cut), ElementsAre("1"));
  EXPECT_THAT(tags_of(packet->trained), ElementsAre("2"));
  EXPECT_EQ(packet->trained[0].cautions.at(0).code, "CRACK_SPLIT");
  EXPECT_THAT(packet->before_you_start, testing::Contains(HasSubstr("1 marked tree needs")));
}

TEST(Packet, PageOneNamesWhatIsDangerousOnThisVeryList) {
  TestTract tract;
  WalkTree& ash = tract.tree("1", kWhiteAsh);
  ash.facts.dieback = Percent{70};
  tract.take(ash.id, Reader::logger, Product::pulpwood);
  WalkTree& vines = tract.tree("2");
  vines.facts.conditions.add(Condition::vines_across);
  tract.take(vines.id, Reader::logger, Product::pulpwood);
  WalkTree& sound = tract.tree("3");
  tract.take(sound.id, Reader::logger, Product::sawlog);
  WalkTree& leans = tract.tree("4");  // stays, so that it is no danger of the list
  leans.facts.conditions.add(Condition::lean_15);
  tract.mark(leans.id, {.verdict = Verdict::keep, .reason = "Feeds wildlife."});
  const auto packet = packet_for(tract.data, Reader::logger);
  ASSERT_TRUE(packet);
  const auto said = std::ranges::find_if(packet->before_you_start, [](const std::string& line) {
    return line.starts_with("STOP at these trees");
  });
  ASSERT_NE(said, packet->before_you_start.end());
  EXPECT_THAT(*said, HasSubstr("dead or mostly dead (1)"));
  EXPECT_THAT(*said, HasSubstr("link this tree to others (2)"));
  EXPECT_EQ(said->find("Leans"), std::string::npos) << *said;
}

TEST(Packet, AFirewoodCutterGetsOnlyWhatACarefulBeginnerCouldTouch) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::firewood, Product::firewood);
  WalkTree& forked = tract.tree("2");
  forked.facts.conditions.add(Condition::v_fork);
  tract.take(forked.id, Reader::firewood, Product::firewood);
  tract.take(tract.tree("3", kRedMaple, 18).id, Reader::firewood, Product::firewood);
  WalkTree& steep = tract.tree("4");
  steep.slope = Percent{20};
  tract.take(steep.id, Reader::firewood, Product::firewood);
  tract.take(tract.tree("5").id, Reader::firewood, Product::firewood).method = Method::machine_fell;
  WalkTree& wired = tract.tree("6");
  wired.facts.conditions.add(Condition::metal);  // a note, no danger to the hand that fells
  tract.take(wired.id, Reader::firewood, Product::firewood);
  const auto packet = packet_for(tract.data, Reader::firewood);
  ASSERT_TRUE(packet);
  EXPECT_THAT(tags_of(packet->cut), ElementsAre("1", "6"));
  EXPECT_THAT(tags_of(packet->trained), ElementsAre("2", "3", "4", "5"));

  for (Mark& mark : tract.data.marks) mark.destination = Reader::logger;
  EXPECT_EQ(packet_for(tract.data, Reader::logger)->cut.size(), 6U)
      << "with extra care a logger may cut them";
}

TEST(Packet, FirewoodHasTheEasyTreesFirst) {
  TestTract tract;
  const auto add = [&](const char* tag, double dbh, std::optional<Percent> slope) {
    WalkTree& tree = tract.tree(tag, kRedMaple, dbh);
    tree.slope = slope;
    tract.take(tree.id, Reader::firewood, Product::firewood);
  };
  add("1", 14, Percent{5});
  add("2", 8, std::nullopt);
  add("3", 9, Percent{0});
  add("4", 9, Percent{0});
  const auto packet = packet_for(tract.data, Reader::firewood);
  EXPECT_THAT(tags_of(packet->cut), ElementsAre("3", "4", "1"));
  EXPECT_THAT(tags_of(packet->trained), ElementsAre("2"))
      << "a slope that nobody recorded is not level ground";
}

TEST(Packet, TheLoggerWalksFromTheLandingStandByStand) {
  TestTract tract;
  const StandId b = tract.stand("B");
  tract.data.tract.landing = at(0, 0);
  const auto add = [&](const char* tag, Position place, std::optional<StandId> stand) {
    WalkTree& tree = tract.tree(tag);
    tree.position = place;
    if (stand) tree.stand = *stand;
    tract.take(tree.id, Reader::logger, Product::sawlog);
  };
  add("1", at(900, 0), std::nullopt);
  add("2", at(50, 0), b);
  add("3", at(300, 0), std::nullopt);
  add("4", at(10, 0), b);
  EXPECT_THAT(tags_of(packet_for(tract.data, Reader::logger)->cut),
              ElementsAre("3", "1", "4", "2"));
}

TEST(Packet, TotalsAreTheSumsOfWhatTheListPrints) {
  TestTract tract;
  for (int i = 0; i < 12; ++i) {
    WalkTree& saw = tract.tree("S" + std::to_string(i), kRedMaple, 12.3 + i * 0.4);
    saw.facts.half_logs = 2 + i % 3;
    tract.take(saw.id, Reader::logger, Product::sawlog);
    tract.take(tract.tree("P" + std::to_string(i), kRedMaple, 5.1 + i * 0.7).id, Reader::logger,
               Product::pulpwood);
  }
  tract.take(tract.tree("nolog", kRedMaple, 13).id, Reader::logger, Product::sawlog);
  tract.take(tract.tree("thin", kRedMaple, 4).id, Reader::logger, Product::pulpwood);
  tract.take(tract.tree("cull", kRedMaple, 9).id, Reader::logger, Product::none);
  const auto packet = packet_for(tract.data, Reader::logger);
  ASSERT_TRUE(packet);
  ASSERT_EQ(packet->totals.size(), 3U);
  double board_feet = 0.0;
  long hundredths = 0;
  for (const PacketTree& tree : packet->cut) {
    if (tree.board_feet) {
      EXPECT_EQ(tree.board_feet->value, std::round(tree.board_feet->value));
      board_feet += tree.board_feet->value;
    }
    if (tree.cords) hundredths += std::lround(tree.cords->value * 100);
  }
  const auto total = [&](Product product) {
    return *std::find_if(packet->totals.begin(), packet->totals.end(),
                         [&](const ProductTotal& t) { return t.product == product; });
  };
  EXPECT_EQ(total(Product::sawlog).trees, 13);
  EXPECT_EQ(total(Product::sawlog).board_feet->value, board_feet);
  EXPECT_EQ(total(Product::sawlog).without_volume, 1);
  EXPECT_EQ(total(Product::sawlog).cords, std::nullopt);
  EXPECT_EQ(total(Product::pulpwood).trees, 13);
  EXPECT_EQ(std::lround(total(Product::pulpwood).cords->value * 100), hundredths);
  EXPECT_EQ(total(Product::pulpwood).without_volume, 1);
  EXPECT_EQ(total(Product::none).trees, 1);
  EXPECT_EQ(total(Product::none).without_volume, 1);
}

TEST(Packet, NoVolumeAtAllIsNothingAndNotZero) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::logger, Product::sawlog);
  const auto packet = packet_for(tract.data, Reader::logger);
  ASSERT_TRUE(packet);
  EXPECT_EQ(packet->totals.at(0).board_feet, std::nullopt);
  EXPECT_EQ(packet->totals.at(0).without_volume, 1);
}

TEST(Packet, RefusesWhenNothingIsMarkedForTheReader) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::logger, Product::sawlog);
  const auto packet = packet_for(tract.data, Reader::firewood);
  ASSERT_FALSE(packet);
  EXPECT_EQ(packet.error().code, ErrorCode::nothing_marked);
  EXPECT_THAT(packet.error().what, HasSubstr("firewood"));
}

TEST(Packet, RefusesDataThatPointNowhere) {
  TestTract strange;
  strange.take(strange.tree("7", 1).id, Reader::logger, Product::sawlog);
  const auto species_error = packet_for(strange.data, Reader::logger);
  ASSERT_FALSE(species_error);
  EXPECT_EQ(species_error.error().code, ErrorCode::unknown_species);
  EXPECT_EQ(species_error.error().where, "walk_tree/7/species");

  TestTract homeless;
  homeless.take(homeless.tree("7").id, Reader::logger, Product::sawlog);
  homeless.data.stands.clear();
  EXPECT_EQ(packet_for(homeless.data, Reader::logger).error().where, "walk_tree/7/stand");

  TestTract lost;
  lost.take(nth_id<WalkTreeId>(999), Reader::logger, Product::sawlog);
  EXPECT_EQ(packet_for(lost.data, Reader::logger).error().code, ErrorCode::unknown_reference);
}

TEST(Packet, InSummerARoostTreeIsAStopAndSoItIsWhenTheDayIsNotKnown) {
  TestTract tract;
  WalkTree& shaggy = tract.tree("1");
  shaggy.facts.conditions.add(Condition::roost_bark);
  tract.take(shaggy.id, Reader::logger, Product::sawlog);
  EXPECT_EQ(packet_for(tract.data, Reader::logger)->cut.size(), 1U);
  PacketOptions summer = winter();
  summer.work_day = std::chrono::June / 10 / 2027;
  EXPECT_EQ(packet_for(tract.data, Reader::logger, summer)->trained.size(), 1U);
  PacketOptions some_day = winter();
  some_day.work_day.reset();
  EXPECT_EQ(packet_for(tract.data, Reader::logger, some_day)->trained.size(), 1U);
}

TEST(Packet, InOakWiltSeasonTheJobWaits) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::logger, Product::sawlog);
  const auto codes = [](const Packet& packet) {
    std::vector<std::string> list;
    for (const Caution& caution : packet.job_cautions) list.push_back(caution.code);
    return list;
  };
  EXPECT_THAT(codes(*packet_for(tract.data, Reader::logger)),
              testing::Not(testing::Contains("OAK_WILT_DATE")));
  PacketOptions some_day = winter();
  some_day.work_day.reset();
  EXPECT_THAT(codes(*packet_for(tract.data, Reader::logger, some_day)),
              testing::Contains("OAK_WILT_DATE"))
      << "the work may fall into it, though today does not";
  PacketOptions may = winter();
  may.work_day = std::chrono::May / 4 / 2027;
  const auto packet = packet_for(tract.data, Reader::logger, may);
  EXPECT_THAT(codes(*packet), testing::Contains("OAK_WILT_DATE"));
  EXPECT_THAT(packet->season_advice, HasSubstr("The first day clear of all of them is 2027-11-15"));
}

TEST(Packet, TheJobsCautionsFollowFromTheData) {
  TestTract tract;
  tract.take(tract.tree("1", kWhiteAsh).id, Reader::logger, Product::firewood);
  tract.tree("2", kTreeOfHeaven);
  tract.mark(tract.tree("3", kWhiteOak).id, {.verdict = Verdict::keep});
  const auto packet = packet_for(tract.data, Reader::logger);
  ASSERT_TRUE(packet);
  std::vector<std::string> codes;
  for (const Caution& c : packet->job_cautions) codes.push_back(c.code);
  for (const char* code : {"ASH_WOOD", "INVASIVE_SEED", "OAK_BARK", "FIREWOOD_MOVE"}) {
    EXPECT_THAT(codes, testing::Contains(code));
  }
}

TEST(Destinations, GoByProductAndByWhatABeginnerMayTouch) {
  TestTract tract;
  const auto take = [&](const char* tag, Product product, Conditions conditions) {
    WalkTree& tree = tract.tree(tag);
    tree.facts.conditions = conditions;
    tract.take(tree.id, Reader::logger, product).destination.reset();
  };
  take("1", Product::sawlog, {});
  take("2", Product::firewood, {});
  take("3", Product::firewood, {Condition::lean_10});
  take("4", Product::none, {});
  take("5", Product::firewood, {});
  tract.data.marks.back().destination = Reader::logger;  // by hand
  take("6", Product::firewood, {});
  tract.data.marks.back().verdict = Verdict::kill_standing;
  take("7", Product::firewood, {});
  tract.data.marks.back().method = Method::girdle;
  const auto marks = with_destinations(tract.data, {species(), cautions(), seasons()}, winter());
  ASSERT_TRUE(marks);
  std::vector<std::optional<Reader>> destinations;
  for (const Mark& mark : *marks) destinations.push_back(mark.destination);
  EXPECT_THAT(destinations,
              ElementsAre(Reader::logger, Reader::firewood, Reader::logger, Reader::logger,
                          Reader::logger, std::nullopt, std::nullopt));
}

TEST(Packet, NeighboursTakeTheirPlaceFromTheCard) {
  TestTract tract;
  WalkTree& oak = tract.tree("1", kWhiteOak);
  oak.crop = true;
  oak.position = at(0, 0);
  const WalkTreeId crop = oak.id;
  const WalkTreeId maple = tract.tree("2").id;
  Contact& contact = tract.contact(crop, maple);
  contact.azimuth = Degrees{180};
  contact.distance = tape_ft(20);
  tract.take(maple, Reader::logger, Product::sawlog);
  tract.line(LineKind::neighbour_line, {at(-900, -150), at(900, -150)});
  const auto packet = packet_for(tract.data, Reader::logger);
  ASSERT_EQ(packet->trained.size(), 1U);
  EXPECT_EQ(packet->trained[0].cautions.at(0).code, "NEAR_LINE");
  EXPECT_NEAR(local_feet(kHill, *packet->trained[0].position).north.value, -20, 1e-3);
}

}  // namespace
}  // namespace oaklight
