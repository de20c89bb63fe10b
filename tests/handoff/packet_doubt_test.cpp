#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "core/handoff/tree_cautions.hpp"
#include "tests/handoff/test_tract.hpp"

namespace oaklight {
namespace {

using namespace oaklight::test;
using testing::ElementsAre;
using testing::IsEmpty;

TEST(Packet, AMarkThatNoLongerFitsTheTreeIsNobodysToCut) {
  TestTract tract;
  WalkTree& crop = tract.tree("1");
  tract.take(crop.id, Reader::logger, Product::sawlog);
  crop.crop = true;
  WalkTree& den = tract.tree("2");
  tract.take(den.id, Reader::logger, Product::sawlog);
  den.facts.conditions.add(Condition::den);
  tract.take(tract.tree("3").id, Reader::logger, Product::sawlog);
  const auto packet = packet_for(tract.data, Reader::logger);
  EXPECT_THAT(tags_of(packet->cut), ElementsAre("3"));
  EXPECT_THAT(tags_of(packet->others), ElementsAre("1", "2"));
  EXPECT_TRUE(packet->others.front().reason.starts_with("Look again"));
}

TEST(Packet, MarksOfTwoRuleVersionsAreRefused) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::logger, Product::sawlog).rule_version = "2026.1-aa";
  EXPECT_EQ(packet_for(tract.data, Reader::logger)->rule_versions, "rules 2026.1-aa, cautions 1");
  tract.take(tract.tree("2").id, Reader::logger, Product::sawlog).rule_version = "2026.1-bb";
  const auto packet = packet_for(tract.data, Reader::logger);
  ASSERT_FALSE(packet);
  EXPECT_EQ(packet.error().code, ErrorCode::contradiction);
}

TEST(Packet, ADeadAshThatStaysSaysThatItIsDangerous) {
  TestTract tract;
  WalkTree& ash = tract.tree("9", kWhiteAsh, 14);
  ash.facts.status = TreeStatus::dead;
  tract.mark(ash.id, {.verdict = Verdict::keep, .reason = "Keep: it is dead."});
  tract.take(tract.tree("1").id, Reader::logger, Product::sawlog);
  const auto packet = packet_for(tract.data, Reader::logger);
  ASSERT_EQ(packet->keep.size(), 1U);
  ASSERT_FALSE(packet->keep.front().cautions.empty());
  EXPECT_EQ(packet->keep.front().cautions.front().code, "DEAD_ASH");
}

TEST(Packet, ATreeWithoutAPlaceOnAMappedTractIsForNobodyToCutFromAList) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::logger, Product::sawlog);
  EXPECT_THAT(tags_of(packet_for(tract.data, Reader::logger)->cut), ElementsAre("1"));
  tract.line(LineKind::road, {{Degrees{38.4}, Degrees{-82.3}}, {Degrees{38.41}, Degrees{-82.3}}});
  const auto packet = packet_for(tract.data, Reader::logger);
  EXPECT_THAT(tags_of(packet->trained), ElementsAre("1"));
  EXPECT_EQ(packet->trained.front().cautions.front().code, "NO_PLACE");
}

TEST(Packet, AWorkDayInsideAHoldIsTheFirstThingSaid) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::logger, Product::sawlog);
  PacketOptions options = winter();
  options.work_day = Day{std::chrono::May / 4 / 2027};
  const PacketTables tables{species(), cautions(), seasons()};
  const auto packet = make_packet(tract.data, tables, PacketReader::logger, options);
  ASSERT_TRUE(packet);
  EXPECT_TRUE(packet->before_you_start.front().starts_with("Do not start on the day"))
      << packet->before_you_start.front();
}

TEST(Packet, WithoutAWorkDayTheWorstSeasonIsAssumed) {
  TestTract tract;
  tract.take(tract.tree("1").id, Reader::logger, Product::sawlog);
  PacketOptions options = winter();
  options.work_day = std::nullopt;
  const PacketTables tables{species(), cautions(), seasons()};
  const auto packet = make_packet(tract.data, tables, PacketReader::logger, options);
  ASSERT_TRUE(packet);
  EXPECT_TRUE(packet->season_advice.starts_with("No day for the work was given"));
  const bool told = std::any_of(packet->job_cautions.begin(), packet->job_cautions.end(),
                                [](const Caution& c) { return c.code == "OAK_WILT_DATE"; });
  EXPECT_TRUE(told);
}

}  // namespace
}  // namespace oaklight
