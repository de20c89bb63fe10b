// What holds for the packet of any tract whatever.
#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "tests/handoff/test_tract.hpp"

namespace oaklight {
namespace {

using namespace oaklight::test;

/// A tract of random trees, conditions and marks.
TestTract random_tract(unsigned seed) {
  std::mt19937 random(seed);
  const auto pick = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
  TestTract tract;
  for (int i = 0; i < 60; ++i) {
    constexpr int kKinds[] = {kWhiteOak, kRedMaple, kWhiteAsh};
    WalkTree& tree = tract.tree(std::to_string(i + 1), kKinds[pick(3)], 5 + pick(220) / 10.0);
    if (pick(3) == 0)
      tree.facts.conditions.add(kWords<Condition>[static_cast<std::size_t>(pick(34))].value);
    if (pick(8) == 0) tree.facts.status = TreeStatus::dead;
    if (pick(2) == 0) tree.position = at(pick(20000), pick(20000));
    if (pick(3) == 0) tree.slope = Percent{static_cast<double>(pick(45))};
    if (pick(3) == 0) tree.facts.half_logs = 1 + pick(6);
    tree.crop = pick(6) == 0;
    const WalkTreeId id = tree.id;
    if (pick(10) == 0) continue;
    Mark mark{.verdict = kWords<Verdict>[static_cast<std::size_t>(pick(4))].value,
              .method = kWords<Method>[static_cast<std::size_t>(pick(4))].value,
              .product = kWords<Product>[static_cast<std::size_t>(pick(4))].value,
              .reason = "made up"};
    if (pick(4) != 0) mark.destination = pick(2) == 0 ? Reader::logger : Reader::firewood;
    tract.mark(id, mark);
  }
  tract.line(LineKind::neighbour_line, {at(0, 10000), at(20000, 10000)});
  return tract;
}

TEST(PacketLaws, HoldForRandomTracts) {
  for (unsigned seed = 1; seed <= 40; ++seed) {
    TestTract tract = random_tract(seed);
    for (const Reader reader : {Reader::logger, Reader::firewood}) {
      const auto packet = packet_for(tract.data, reader);
      if (!packet) {
        EXPECT_EQ(packet.error().code, ErrorCode::nothing_marked) << "seed " << seed;
        continue;
      }
      std::vector<std::string> tags;
      for (const auto* list : {&packet->cut, &packet->trained, &packet->keep, &packet->others}) {
        for (const PacketTree& tree : *list) tags.push_back(tree.tag);
      }
      std::sort(tags.begin(), tags.end());
      EXPECT_TRUE(std::adjacent_find(tags.begin(), tags.end()) == tags.end()) << "seed " << seed;
      EXPECT_EQ(tags.size(), tract.data.walk_trees.size()) << "seed " << seed;
      for (const PacketTree& tree : packet->cut) {
        EXPECT_EQ(tree.verdict, Verdict::take) << "seed " << seed;
        EXPECT_NE(tree.method, Method::girdle) << "seed " << seed;
        for (const Caution& caution : tree.cautions) {
          EXPECT_NE(caution.severity, Severity::stop) << "seed " << seed;
          if (reader == Reader::firewood) {
            EXPECT_EQ(caution.severity, Severity::note) << "seed " << seed;
          }
        }
      }
    }
  }
}

TEST(PacketLaws, TheSameTreesInAnotherOrderGiveTheSameBytes) {
  for (unsigned seed = 1; seed <= 10; ++seed) {
    TestTract tract = random_tract(seed);
    const auto first = packet_for(tract.data, Reader::logger);
    ASSERT_TRUE(first) << "seed " << seed;
    std::mt19937 random(seed);
    std::shuffle(tract.data.walk_trees.begin(), tract.data.walk_trees.end(), random);
    std::shuffle(tract.data.marks.begin(), tract.data.marks.end(), random);
    const auto second = packet_for(tract.data, Reader::logger);
    ASSERT_TRUE(second);
    EXPECT_EQ(first->list_csv, second->list_csv) << "seed " << seed;
    EXPECT_EQ(first->list_sha256, second->list_sha256);
  }
}

}  // namespace
}  // namespace oaklight
