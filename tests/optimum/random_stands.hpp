#pragma once

#include <cmath>
#include <memory>
#include <random>
#include <string>

#include "core/measure/stocking.hpp"
#include "core/release/groundwork.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_ids.hpp"
#include "tests/support/trees.hpp"

namespace oaklight::test {

/// A whole number below `limit`, the same on any library.
inline std::uint32_t below(std::mt19937& random, std::uint32_t limit) {
  return static_cast<std::uint32_t>((static_cast<std::uint64_t>(random()) * limit) >> 32U);
}

/// An invented stand of `count` mapped trees, 120 to 300 an acre, many of them oaks.
struct RandomStand {
  ReleaseInput input;
  std::vector<MappedTree> map;
  double acres = 0.0;
};

inline std::vector<MappedTree> random_map(std::mt19937& random, std::uint32_t count, double side) {
  static constexpr int kSpecies[] = {802, 802, 833, 833, 837, 832, 316, 316, 621,
                                     951, 403, 762, 531, 746, 541, 261, 341, 999};
  static constexpr CrownClass kClasses[] = {CrownClass::dominant,     CrownClass::codominant,
                                            CrownClass::codominant,   CrownClass::codominant,
                                            CrownClass::intermediate, CrownClass::overtopped};
  const bool thin = below(random, 4) == 0;  // a young stand: units of three
  std::vector<MappedTree> map;
  for (std::uint32_t i = 1; i <= count; ++i) {
    const double dbh = thin ? 4.0 + 0.1 * below(random, 50) : 5.0 + 0.1 * below(random, 130);
    TreeFacts facts{SpeciesCode{kSpecies[below(random, 18)]}, dbh_in(dbh)};
    facts.crown_class = kClasses[below(random, 6)];
    if (below(random, 15) == 0) facts.conditions.add(Condition::den);
    if (below(random, 8) == 0) facts.conditions.add(Condition::conk);
    if (below(random, 25) == 0) facts.status = TreeStatus::dead;
    if (below(random, 3) == 0) facts.live_crown = Percent{20.0 + below(random, 40)};
    map.push_back({nth_id<TreeId>(i).value, std::to_string(1000 + i), facts,
                   Feet{side / 1e6 * below(random, 1'000'000)},
                   Feet{side / 1e6 * below(random, 1'000'000)}});
  }
  return map;
}

inline double side_of(double acres) { return std::sqrt(acres * 43'560.0); }

/// A stand of these trees, all of which its figures are of.
inline RandomStand stand_of(std::vector<MappedTree> map, double acres, const MapBounds& bounds) {
  const ReleaseKnowledge& know = shipped_knowledge();
  RandomStand stand{{know, {}, {}, {}, {}}, std::move(map), acres};
  stand.input.graph = graph_from_map(stand.map, bounds, know.settings.contact);
  std::vector<TreeFacts> facts;
  for (const MappedTree& tree : stand.map) facts.push_back(tree.facts);
  stand.input.stand.before = density_of(facts, 1.0 / acres);
  stand.input.stand.covered = Acres{acres};
  return stand;
}

/// The stand of a seed: 5 to 60 trees; every second one has floors that bind.
inline RandomStand random_stand(std::uint32_t seed, std::uint32_t least = 5,
                                std::uint32_t most = 60) {
  std::mt19937 random(seed);
  const std::uint32_t count = least + below(random, most - least + 1);
  const double per_acre = 120.0 + below(random, 180);
  const double acres = count / per_acre;
  const double side = side_of(acres);
  std::vector<MappedTree> map = random_map(random, count, side);
  const bool edge = below(random, 4) == 0;  // sides that look out of the map are not known
  RandomStand stand = stand_of(
      std::move(map), acres,
      edge ? MapBounds{BoxBounds{Feet{0.0}, Feet{0.0}, Feet{side}, Feet{side}}} : Unbounded{});
  if (below(random, 3) == 0) stand.input.stand.goal = Goal::timber;
  return stand;
}

/// Floors and ceilings near what the stand holds; or (seed even) so far that none binds, but for
/// the balance of the oaks in every second one of these.
inline void set_guards(ReleaseProblem& problem, std::uint32_t seed) {
  if (!problem.guards) return;
  std::mt19937 random(seed + 77'777);
  Guards& g = *problem.guards;
  const auto part = [&](double from, double to) {
    return from + (to - from) * 0.001 * below(random, 1001);
  };
  if (seed % 2 == 0) {
    g.limits = {};
    g.limits.removal_max = Percent{1000.0};
    g.counts.max = TreesPerAcre{1e4};
    g.counts.crowns_max = Percent{1e4};
    if (seed % 4 == 0) g.limits.oak_group_min = Percent{part(20.0, 60.0)};
    return;
  }
  const double stocking = upland_oak_stocking(g.before.guard).value;
  g.limits.stocking_floor = Percent{stocking * part(0.4, 0.95)};
  g.limits.b_line = Percent{stocking * part(0.4, 0.95)};
  g.limits.ba_floor = SquareFeetPerAcre{g.before.ba.value * part(0.4, 0.95)};
  g.limits.removal_max = Percent{part(5.0, 50.0)};
  g.limits.oak_group_min = Percent{part(10.0, 45.0)};
  g.limits.oak_min = Percent{part(20.0, 60.0)};
  g.counts.max = TreesPerAcre{part(10.0, 60.0)};
  g.counts.crowns_max = Percent{part(20.0, 100.0)};
}

}  // namespace oaklight::test
