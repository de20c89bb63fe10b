#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

#include "core/release/plan.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_ids.hpp"
#include "tests/support/trees.hpp"

namespace oaklight::test {

constexpr double kTreesPerAcre = 165.0;  // of 4 in and more: an invented, fully stocked oak wood

/// A whole number below `limit`, the same on any library.
inline std::uint32_t wood_draw(std::mt19937& random, std::uint32_t limit) {
  return static_cast<std::uint32_t>((static_cast<std::uint64_t>(random()) * limit) >> 32U);
}

/// A number from 0 to 1, in millionths.
inline double wood_part(std::mt19937& random) { return 1e-6 * wood_draw(random, 1'000'000); }

inline SpeciesCode random_species(std::mt19937& random) {
  struct Share {
    int fia;
    std::uint32_t of_hundred;
  };
  static constexpr Share kMix[] = {{802, 12}, {833, 9}, {837, 6}, {832, 6}, {316, 21},
                                   {621, 11}, {403, 7}, {407, 3}, {318, 7}, {531, 6},
                                   {762, 4},  {541, 3}, {951, 3}, {746, 2}};
  std::uint32_t draw = wood_draw(random, 100);
  for (const Share& share : kMix) {
    if (draw < share.of_hundred) return SpeciesCode{share.fia};
    draw -= share.of_hundred;
  }
  return SpeciesCode{802};
}

/// Thick trees stand in the canopy, thin ones mostly below.
inline CrownClass random_class(std::mt19937& random, double dbh) {
  const std::uint32_t draw = wood_draw(random, 100);
  if (dbh >= 15.0) return draw < 35 ? CrownClass::dominant : CrownClass::codominant;
  if (dbh >= 10.0) {
    return draw < 75 ? CrownClass::codominant : CrownClass::intermediate;
  }
  return draw < 20 ? CrownClass::codominant
                   : (draw < 55 ? CrownClass::intermediate : CrownClass::overtopped);
}

/// A square wood of `count` trees, invented by seed: many thin trees and few thick ones, each
/// anywhere; tagged strip by strip, as somebody who maps a wood goes through it.
inline std::vector<MappedTree> mapped_wood(std::uint32_t count, std::uint32_t seed) {
  std::mt19937 random(seed);
  const double side = std::sqrt(count / kTreesPerAcre * 43'560.0);
  std::vector<MappedTree> map;
  map.reserve(count);
  for (std::uint32_t i = 1; i <= count; ++i) {
    const double dbh = 4.0 + 0.1 * std::round(220.0 * std::pow(wood_part(random), 2.2));
    TreeFacts facts{random_species(random), dbh_in(dbh)};
    facts.crown_class = random_class(random, dbh);
    if (wood_draw(random, 40) == 0) facts.conditions.add(Condition::den);
    if (wood_draw(random, 25) == 0) facts.conditions.add(Condition::conk);
    if (wood_draw(random, 25) == 0) facts.status = TreeStatus::dead;
    if (wood_draw(random, 3) == 0) facts.live_crown = Percent{25.0 + wood_draw(random, 40)};
    const Feet east{side * wood_part(random)};
    map.push_back({nth_id<TreeId>(i).value, "", facts, east, Feet{side * wood_part(random)}});
  }
  constexpr double kStrip = 66.0;  // ft, one chain
  std::sort(map.begin(), map.end(), [](const MappedTree& a, const MappedTree& b) {
    return std::pair(std::floor(a.east.value / kStrip), a.north.value) <
           std::pair(std::floor(b.east.value / kStrip), b.north.value);
  });
  for (std::size_t i = 0; i < map.size(); ++i) map[i].tag = std::to_string(10'000'001 + i);
  return map;
}

/// What the plan of a whole mapped wood is made from: the stand is what stands on the map.
inline ReleaseInput input_of_wood(const std::vector<MappedTree>& map) {
  const ReleaseKnowledge& know = shipped_knowledge();
  const double acres = static_cast<double>(map.size()) / kTreesPerAcre;
  ReleaseInput input{know, graph_from_map(map, Unbounded{}, know.settings.contact), {}, {}, {}, {}};
  std::vector<TreeFacts> facts;
  facts.reserve(map.size());
  for (const MappedTree& tree : map) facts.push_back(tree.facts);
  input.stand.before = density_of(facts, 1.0 / acres);
  input.stand.covered = Acres{acres};
  return input;
}

}  // namespace oaklight::test
