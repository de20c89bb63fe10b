// Laws that hold for any wood. Woods are invented by seed; the seed is printed on failure.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>
#include <set>

#include "core/measure/basal_area.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_ids.hpp"
#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

constexpr double kSide = 132.0;  // ft; 0.4 acre
constexpr double kAcres = kSide * kSide / 43'560.0;
constexpr std::uint32_t kSeeds = 60;

/// A whole number below `limit`, the same on any library.
std::uint32_t below(std::mt19937& random, std::uint32_t limit) {
  return static_cast<std::uint32_t>((static_cast<std::uint64_t>(random()) * limit) >> 32U);
}

/// A mixed oak wood of about 150 trees an acre.
std::vector<MappedTree> wood(std::uint32_t seed) {
  std::mt19937 random(seed);
  static constexpr int kSpecies[] = {802, 833, 837, 316, 316, 621, 951, 403, 762, 531, 746, 541};
  static constexpr CrownClass kClasses[] = {CrownClass::dominant, CrownClass::codominant,
                                            CrownClass::codominant, CrownClass::intermediate,
                                            CrownClass::overtopped};
  std::vector<MappedTree> map;
  for (std::uint32_t i = 1; i <= 60; ++i) {
    TreeFacts facts{SpeciesCode{kSpecies[below(random, 12)]},
                    test::dbh_in(5.0 + 0.1 * below(random, 130))};
    facts.crown_class = kClasses[below(random, 5)];
    if (below(random, 20) == 0) facts.conditions.add(Condition::den);
    if (below(random, 20) == 0) facts.conditions.add(Condition::conk);
    if (below(random, 20) == 0) facts.status = TreeStatus::dead;
    const double east = kSide / 1e6 * below(random, 1'000'000);
    map.push_back({test::nth_id<TreeId>(i).value, std::to_string(1000 + i), facts, Feet{east},
                   Feet{kSide / 1e6 * below(random, 1'000'000)}});
  }
  return map;
}

/// Input from a map; the stand is what stands on it unless it is told.
ReleaseInput input_of(const std::vector<MappedTree>& map,
                      std::optional<StandDensity> before = std::nullopt) {
  const ReleaseKnowledge& know = test::shipped_knowledge();
  ReleaseInput input{know, graph_from_map(map, Unbounded{}, know.settings.contact), {}, {}, {}};
  std::vector<TreeFacts> facts;
  for (const MappedTree& tree : map) facts.push_back(tree.facts);
  input.stand.before = before ? *before : test::density_of(facts, 1.0 / kAcres);
  input.stand.covered = Acres{kAcres};
  return input;
}

/// A stand so full that no floor is near: for laws that guards would blur.
StandDensity very_full() {
  StandDensity d = test::full_stand();
  const auto more = [](double& figure) { figure *= 10.0; };
  for (StockingSums* sums : {&d.live, &d.guard}) {
    more(sums->trees);
    more(sums->diameters);
    more(sums->squared_diameters);
  }
  for (auto* ba : {&d.ba, &d.ba_oak, &d.ba_white_oak, &d.ba_red_oak}) more(ba->value);
  return d;
}

using Answer = std::map<std::string, Verdict>;
Answer answer_of(const ReleasePlan& plan) {
  Answer answer;
  for (const TreeVerdict& v : plan.trees) answer[v.tag] = v.verdict;
  return answer;
}

std::vector<std::string> texts_of(const ReleasePlan& plan) {
  std::vector<std::string> texts;
  for (const TreeVerdict& v : plan.trees) {
    texts.push_back(v.tag + v.reason + v.what_would_change_it);
    for (const std::string& rule : v.rules) texts.back() += rule;
  }
  return texts;
}

TEST(Laws, TheOrderOfTheInputChangesNothing) {
  for (std::uint32_t seed = 1; seed <= kSeeds; ++seed) {
    auto map = wood(seed);
    const auto first = texts_of(recommend(input_of(map, very_full())));
    std::mt19937 random(seed);
    for (std::size_t i = map.size() - 1; i > 0; --i) {
      std::swap(map[i], map[below(random, static_cast<std::uint32_t>(i + 1))]);
    }
    ASSERT_EQ(texts_of(recommend(input_of(map, very_full()))), first) << "seed " << seed;
  }
}

TEST(Laws, TheOrderOfCardsChangesNothing) {
  auto on_cards = test::cards(R"(
    crop A WO 15 co
    crop B RO 16 co
    crop C WO 15 co
    A B E 18 touches
    A m1 N 17 touches RM 10 co
    A m2 S 16 touches GA 11 co
    B m2 S 15 touches
    B m3 E 20 touches AS 12 co
    C m3 W 15 touches
    C m4 N 15 touches PH 9 co
    C m5 S 15 touches AB 9 co)");
  const auto first = texts_of(recommend(test::input_of(on_cards, 1.0)));
  std::mt19937 random(5);
  for (int round = 0; round < 20; ++round) {
    for (std::size_t i = on_cards.trees.size() - 1; i > 0; --i) {
      std::swap(on_cards.trees[i],
                on_cards.trees[below(random, static_cast<std::uint32_t>(i + 1))]);
    }
    for (std::size_t i = on_cards.contacts.size() - 1; i > 0; --i) {
      std::swap(on_cards.contacts[i],
                on_cards.contacts[below(random, static_cast<std::uint32_t>(i + 1))]);
    }
    ASSERT_EQ(texts_of(recommend(test::input_of(on_cards, 1.0))), first);
  }
}

TEST(Laws, ShiftingTheMapChangesNothing) {
  for (std::uint32_t seed = 1; seed <= kSeeds; ++seed) {
    auto map = wood(seed);
    const Answer first = answer_of(recommend(input_of(map)));
    for (MappedTree& tree : map) {
      tree.east += Feet{512.0};
      tree.north -= Feet{1024.0};
    }
    ASSERT_EQ(answer_of(recommend(input_of(map))), first) << "seed " << seed;
  }
}

TEST(Laws, AQuarterTurnOfTheMapChangesNothing) {
  for (std::uint32_t seed = 1; seed <= kSeeds; ++seed) {
    auto map = wood(seed);
    const Answer first = answer_of(recommend(input_of(map)));
    for (int quarter = 0; quarter < 3; ++quarter) {
      for (MappedTree& tree : map) tree = {tree.id, tree.tag, tree.facts, tree.north, -tree.east};
      ASSERT_EQ(answer_of(recommend(input_of(map))), first) << "seed " << seed;
    }
  }
}

TEST(Laws, AnyTurnLeavesContactsAndOpenShareOfTheCrownsAsTheyWere) {
  // Which of four sides a neighbour stands on depends on where north is; how much of the edge it
  // closes does not.
  for (std::uint32_t seed = 1; seed <= kSeeds; ++seed) {
    auto map = wood(seed);
    const ReleasePlan first = recommend(input_of(map));
    const double angle = 0.1 + 0.1 * seed;
    for (MappedTree& tree : map) {
      const double e = tree.east.value;
      const double n = tree.north.value;
      tree.east = Feet{e * std::cos(angle) + n * std::sin(angle)};
      tree.north = Feet{n * std::cos(angle) - e * std::sin(angle)};
    }
    const ReleasePlan turned = recommend(input_of(map));
    for (std::size_t i = 0; i < first.trees.size(); ++i) {
      if (!first.trees[i].before || !turned.trees[i].before) continue;
      ASSERT_NEAR(first.trees[i].before->open.value, turned.trees[i].before->open.value, 1e-8)
          << "seed " << seed;
    }
  }
}

TEST(Laws, AnOvertoppedTreeMoreChangesNoCut) {
  for (std::uint32_t seed = 1; seed <= kSeeds; ++seed) {
    auto map = wood(seed);
    const auto first = test::cut_tags(recommend(input_of(map, very_full())));
    std::mt19937 random(seed + 1000);
    TreeFacts facts{SpeciesCode{701}, test::dbh_in(4)};
    facts.crown_class = CrownClass::overtopped;
    map.push_back({test::nth_id<TreeId>(9999).value, "0999", facts,
                   Feet{kSide / 1e6 * below(random, 1'000'000)},
                   Feet{kSide / 1e6 * below(random, 1'000'000)}});
    ASSERT_EQ(test::cut_tags(recommend(input_of(map, very_full()))), first) << "seed " << seed;
  }
}

TEST(Laws, EveryPlanKeepsItsPromises) {
  std::size_t released = 0;
  std::size_t taken = 0;
  for (std::uint32_t seed = 1; seed <= kSeeds; ++seed) {
    const auto map = wood(seed);
    const ReleaseInput input = input_of(map);
    const ReleasePlan plan = recommend(input);
    const SideSettings& sides = input.knowledge.settings.sides;
    for (std::size_t i = 0; i < plan.trees.size(); ++i) {
      const TreeVerdict& v = plan.trees[i];
      const TreeFacts& facts = input.graph.trees()[i].facts;
      const bool cut = v.verdict == Verdict::take || v.verdict == Verdict::kill_standing;
      if (cut) {
        ++taken;
        ASSERT_FALSE(v.released) << "seed " << seed;
        ASSERT_FALSE(facts.conditions.has(Condition::den)) << "seed " << seed;
        ASSERT_EQ(facts.status, TreeStatus::live) << "seed " << seed;
        ASSERT_NE(facts.crown_class, CrownClass::overtopped) << "seed " << seed;
      }
      if (!v.released) continue;
      ++released;
      const int counted = v.after->sides_free + std::min(v.after->sides_shared, sides.shared_max);
      ASSERT_GE(counted, sides.free_min) << "seed " << seed << " " << v.tag;
      if (v.after->sides_shared > 0) {
        ASSERT_GE(v.after->sides_free, sides.free_in_pair);
      }
      ASSERT_GE(v.after->open.value, v.before->open.value) << "seed " << seed;
    }
    for (const GuardState& g : plan.guards) {
      if (plan.advice.treatment == Treatment::release) {
        ASSERT_TRUE(g.holds) << "seed " << seed << " " << g.rule;
      }
    }
  }
  EXPECT_GT(released, 100U) << "the woods are too poor to show anything";
  EXPECT_GT(taken, 100U);
}

TEST(Laws, EveryTreeTakenFreesASideOfAReleasedTree) {
  for (std::uint32_t seed = 1; seed <= kSeeds; ++seed) {
    const auto map = wood(seed);
    const ReleaseInput input = input_of(map);
    const ReleasePlan plan = recommend(input);
    for (std::size_t i = 0; i < plan.trees.size(); ++i) {
      const Verdict verdict = plan.trees[i].verdict;
      if (verdict != Verdict::take && verdict != Verdict::kill_standing) continue;
      bool touches = false;
      for (const std::uint32_t c : input.graph.towards(i)) {
        const CrownContact& contact = input.graph.contacts()[c];
        touches = touches ||
                  (contact.closeness == Closeness::touching && plan.trees[contact.crop].released);
      }
      ASSERT_TRUE(touches) << "seed " << seed << " " << plan.trees[i].tag;
    }
  }
}

TEST(Laws, TakingAListedTreeFirstLeavesTheRestOfTheListAsItWas) {
  std::size_t tried = 0;
  for (std::uint32_t seed = 1; seed <= kSeeds; ++seed) {
    const auto map = wood(seed);
    const ReleaseInput input = input_of(map, very_full());
    const auto first = test::cut_tags(recommend(input));
    for (const std::string& tag : first) {
      // A food tree taken for one crop tree may have kept another from its sides; only trees that
      // go anyway leave the rest as it was.
      auto rest = map;
      const auto tree =
          std::find_if(rest.begin(), rest.end(), [&](const MappedTree& t) { return t.tag == tag; });
      const int fia = tree->facts.species.fia;
      if (fia != 316 && fia != 621 && fia != 951) continue;
      rest.erase(tree);
      auto expected = first;
      std::erase(expected, tag);
      ASSERT_EQ(test::cut_tags(recommend(input_of(rest, very_full()))), expected)
          << "seed " << seed << " without " << tag;
      if (++tried % 5 == 0) break;  // a few for each wood
    }
  }
  EXPECT_GT(tried, 60U);
}

TEST(Laws, AHigherFloorNeverReleasesMore) {
  std::vector<ReleaseKnowledge> floors;
  for (const double floor : {50.0, 60.0, 70.0, 80.0, 90.0}) {
    floors.push_back(test::knowledge_with({{"R4.01", {floor}}}));
  }
  for (std::uint32_t seed = 1; seed <= kSeeds; ++seed) {
    ReleaseInput input = input_of(wood(seed));
    std::size_t last = input.graph.trees().size();
    for (const ReleaseKnowledge& floor : floors) {
      input.knowledge = floor;
      const std::size_t released = test::released_tags(recommend(input)).size();
      ASSERT_LE(released, last) << "seed " << seed;
      last = released;
    }
  }
}

}  // namespace
}  // namespace oaklight
