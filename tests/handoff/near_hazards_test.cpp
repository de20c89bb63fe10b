// What is left out because it is far is held against a walk over every pair.
#include "core/handoff/near_hazards.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <random>

#include "core/handoff/surroundings.hpp"
#include "tests/handoff/test_tract.hpp"

namespace oaklight {
namespace {

using namespace oaklight::test;

/// A walk of trees in a square, some without a place, some dead ashes; cards of up to ten trees.
TestTract random_walk(unsigned seed, double side_feet, Position middle) {
  std::mt19937 random(seed);
  const auto part = [&] { return static_cast<double>(random() % 10'000U) / 10'000.0; };
  TestTract tract;
  std::vector<WalkTreeId> ids;
  for (int i = 0; i < 150; ++i) {
    WalkTree& tree = tract.tree(std::to_string(i), random() % 5 == 0 ? kWhiteAsh : kRedMaple);
    ids.push_back(tree.id);
    if (random() % 4 != 0) {
      tree.position =
          position_from_local(middle, {Feet{side_feet * part()}, Feet{side_feet * part()}});
    }
    if (random() % 3 == 0) tree.facts.status = TreeStatus::dead;
    if (random() % 3 == 0) tree.facts.height = tape_ft(40 + static_cast<int>(random() % 100U));
  }
  for (std::size_t i = 1; i < ids.size(); ++i) {
    const std::size_t crop = i - i % 10;
    if (crop == i) continue;
    Contact& contact = tract.contact(ids[crop], ids[i]);
    if (random() % 3 != 0) contact.distance = tape_ft(static_cast<int>(random() % 60U));
  }
  return tract;
}

/// What each card tells of the trees on it: how far from its crop tree.
using Cards = std::map<WalkTreeId, std::map<WalkTreeId, std::optional<Feet>>>;

Cards cards_of(const TractData& data) {
  Cards cards;
  for (const Contact& contact : data.contacts) {
    cards[contact.crop][contact.crop] = Feet{0};
    cards[contact.crop][contact.neighbour] =
        contact.distance ? std::optional(contact.distance->feet()) : std::nullopt;
  }
  return cards;
}

/// The least that a card which holds both tells.
std::optional<Feet> by_cards(const Cards& cards, WalkTreeId a, WalkTreeId b) {
  std::optional<Feet> least;
  for (const auto& [crop, card] : cards) {
    if (!card.contains(a) || !card.contains(b)) continue;
    const auto to_a = card.at(a);
    const auto to_b = card.at(b);
    const Feet apart{to_a && to_b ? std::fabs(to_a->value - to_b->value) : 0.0};
    least = least ? std::min(*least, apart) : apart;
  }
  return least;
}

std::vector<NearTree> by_every_pair(const TractData& data, const Cards& cards,
                                    const WalkTree& tree) {
  std::vector<NearTree> near;
  const auto height = [](const WalkTree& t) {
    return t.facts.height ? std::optional(t.facts.height->feet()) : std::nullopt;
  };
  for (const WalkTree& other : data.walk_trees) {
    if (other.id == tree.id || !is_dead_ash(other.facts, *species().find(other.facts.species)))
      continue;
    const auto apart = tree.position && other.position
                           ? std::optional(leg_between(*tree.position, *other.position).distance)
                           : by_cards(cards, tree.id, other.id);
    if (apart && *apart <= std::max(two_lengths(height(tree)), two_lengths(height(other))))
      near.push_back({*apart, height(other), "tree " + other.tag});
  }
  return near;
}

void expect_same(const TestTract& tract, const std::string& where) {
  const auto found = surroundings_of(tract.data, tract.data.walk_trees, species());
  const Cards cards = cards_of(tract.data);
  std::size_t seen = 0;
  for (std::size_t i = 0; i < found.size(); ++i) {
    const auto wanted = by_every_pair(tract.data, cards, tract.data.walk_trees[i]);
    ASSERT_EQ(found[i].dead_ashes.size(), wanted.size()) << where << " tree " << i;
    for (std::size_t k = 0; k < wanted.size(); ++k) {
      EXPECT_EQ(found[i].dead_ashes[k].name, wanted[k].name) << where;
      EXPECT_EQ(found[i].dead_ashes[k].distance, wanted[k].distance) << where;
      EXPECT_EQ(found[i].dead_ashes[k].height, wanted[k].height) << where;
    }
    seen += wanted.size();
  }
  EXPECT_GT(seen, 10U) << where << ": nothing was near, so nothing was tested";
}

TEST(NearHazards, AreThoseOfAWalkOverEveryPair) {
  for (unsigned seed = 1; seed <= 12; ++seed) {
    // From all in reach of each other to hardly any.
    const double side = 200.0 * seed;
    expect_same(random_walk(seed, side, kHill), "seed " + std::to_string(seed));
  }
}

TEST(NearHazards, AreFoundAcrossTheDateLineAndFarNorth) {
  expect_same(random_walk(20, 700, {Degrees{51.2}, Degrees{179.999}}), "date line");
  expect_same(random_walk(21, 700, {Degrees{-0.001}, Degrees{-0.001}}), "where signs change");
  expect_same(random_walk(22, 700, {Degrees{78.5}, Degrees{15.0}}), "far north");
  expect_same(random_walk(23, 700, {Degrees{89.999}, Degrees{15.0}}), "the pole");
}

TEST(NearHazards, ATallTreeIsSeenFartherThanAShortOne) {
  TestTract tract;
  tract.tree("1").position = at(0, 0);
  WalkTree& ash = tract.tree("2", kWhiteAsh);
  ash.position = at(0, 239);
  ash.facts.status = TreeStatus::dead;
  const auto near = [&] {
    return surroundings_of(tract.data, tract.data.walk_trees, species()).front().dead_ashes.size();
  };
  EXPECT_EQ(near(), 0U) << "two lengths of 100 ft, as nobody measured either";
  tract.data.walk_trees[1].facts.height = tape_ft(120);
  EXPECT_EQ(near(), 1U);
  tract.data.walk_trees[1].facts.height = tape_ft(90);
  tract.data.walk_trees[0].facts.height = tape_ft(125);
  EXPECT_EQ(near(), 1U) << "the taller one sets the distance";
}

}  // namespace
}  // namespace oaklight
