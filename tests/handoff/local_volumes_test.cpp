// Volumes of the lists where the tract has its own table. Expected values are derived from the
// tables made here: by hand, they run straight between their lines.
#include <gmock/gmock.h>

#include "core/measure/cords.hpp"
#include "core/measure/tree_volume.hpp"
#include "tests/handoff/test_tract.hpp"

namespace oaklight {
namespace {

using namespace oaklight::test;
using testing::HasSubstr;
using testing::Not;
using testing::StrEq;

LocalNumbersPtr mill_table(const char* rule = "international") {
  LocalNumbers local;
  local.volumes.log_rule = rule;
  local.volumes.source = "the invented mill";
  local.volumes.rows = {{kWhiteOak, Inches{10}, 40.0, 0.10},
                        {kWhiteOak, Inches{20}, 240.0, 0.60},
                        {std::nullopt, Inches{6}, std::nullopt, 0.04},
                        {std::nullopt, Inches{12}, std::nullopt, 0.16}};
  return std::make_shared<const LocalNumbers>(local);
}

Packet packet_with(const TractData& data, PacketReader reader, const LocalNumbersPtr& local) {
  return make_packet(data, {species(), cautions(), seasons(), nullptr, local}, reader, winter())
      .value();
}

/// A sawlog oak of 15 in with two logs, a maple of 9 in and one of 14 in for pulpwood.
TractData three_trees() {
  TestTract tract;
  WalkTree& oak = tract.tree("1", kWhiteOak, 15.0);
  oak.facts.half_logs = 4;
  tract.take(oak.id, Reader::logger, Product::sawlog);
  tract.take(tract.tree("2", kRedMaple, 9.0).id, Reader::logger, Product::pulpwood);
  tract.take(tract.tree("3", kRedMaple, 14.0).id, Reader::logger, Product::pulpwood);
  return tract.data;
}

const PacketTree& tagged(const Packet& packet, const std::string& tag) {
  return *std::ranges::find(packet.cut, tag, &PacketTree::tag);
}

TEST(LocalVolumesOfLists, GoBeforeTheBookWithinTheTable) {
  const TractData data = three_trees();
  const Packet packet = packet_with(data, PacketReader::logger, mill_table());
  EXPECT_EQ(tagged(packet, "1").board_feet, BoardFeet{140});  // by hand: halfway 40 to 240
  EXPECT_EQ(tagged(packet, "2").cords, Cords{0.10});          // by hand: halfway 0.04 to 0.16
  // Beyond the lines of its species the book holds.
  const Packet book = packet_with(data, PacketReader::logger, {});
  EXPECT_EQ(tagged(packet, "3").cords, tagged(book, "3").cords);
  EXPECT_NE(tagged(book, "1").board_feet, BoardFeet{140});
  EXPECT_THAT(packet.volumes_by,
              StrEq("Volumes of 2 trees by the local table [local_volume] and of 1 by the book."));
  EXPECT_THAT(packet.list_csv, HasSubstr("140"));
  EXPECT_EQ(packet.totals.front().board_feet, BoardFeet{140}) << "sums of what is printed";
}

TEST(LocalVolumesOfLists, ATableByAnotherRuleTellsNoBoardFeet) {
  const TractData data = three_trees();
  const Packet packet = packet_with(data, PacketReader::logger, mill_table("doyle"));
  const Packet book = packet_with(data, PacketReader::logger, {});
  EXPECT_EQ(tagged(packet, "1").board_feet, tagged(book, "1").board_feet);
  EXPECT_EQ(tagged(packet, "2").cords, Cords{0.10}) << "cords are of no rule";
}

TEST(LocalVolumesOfLists, ATreeOnWhichNoLogWasSeenHoldsNone) {
  TractData data = three_trees();
  data.walk_trees.front().facts.half_logs = 0;
  const Packet packet = packet_with(data, PacketReader::logger, mill_table());
  const Packet book = packet_with(data, PacketReader::logger, {});
  EXPECT_EQ(tagged(packet, "1").board_feet, tagged(book, "1").board_feet);
}

TEST(LocalVolumesOfLists, WhoseTableItIsConcernsTheOwner) {
  const TractData data = three_trees();
  const auto volumes = [&](PacketReader reader) {
    return packet_with(data, reader, mill_table()).volumes_by;
  };
  EXPECT_THAT(volumes(PacketReader::owner), HasSubstr("the invented mill"));
  EXPECT_THAT(volumes(PacketReader::logger), Not(HasSubstr("the invented mill")));
}

TEST(LocalVolumesOfLists, NothingIsSaidWhereNoTableIsInForce) {
  const TractData data = three_trees();
  for (const LocalNumbersPtr& local :
       {LocalNumbersPtr(), std::make_shared<const LocalNumbers>(LocalNumbers{})}) {
    EXPECT_EQ(packet_with(data, PacketReader::logger, local).volumes_by, "");
  }
}

}  // namespace
}  // namespace oaklight
