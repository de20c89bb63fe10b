#pragma once

#include <set>

#include "core/release/choose.hpp"

namespace oaklight::test {

/// The rule of outcome.hpp written a second time, for tests: sides are bits, sets are std::set.
struct LocalRule {
  const ReleaseProblem& p;
  using Set = std::set<std::uint32_t>;
  struct Answer {
    bool reaches = false;
    std::int64_t points = 0;
    Set takes;
  };

  static unsigned bits(Sides sides) {
    unsigned all = 0;
    for (const Side s : kSides) all |= sides.has(s) ? 1U << static_cast<unsigned>(s) : 0U;
    return all;
  }
  static int count(unsigned sides) { return __builtin_popcount(sides); }

  bool candidate(std::uint32_t tree) const { return p.worth[tree] > 0; }

  /// released  candidates released, crop among them
  Answer of(std::uint32_t crop, const Set& released, const Set& held) const {
    constexpr unsigned kAll = 15;
    unsigned stays = 0;
    unsigned shares = 0;
    unsigned doubt = 0;
    unsigned seen = bits(p.graph.trees()[crop].looked);
    std::vector<std::uint32_t> go, may;  // contacts
    for (const std::uint32_t i : p.graph.around(crop)) {
      const CrownContact& c = p.graph.contacts()[i];
      const unsigned on = bits(c.sides);
      const Role role = p.roles[i];
      const std::uint32_t n = c.neighbour;
      if (role == Role::clear) continue;
      if (role == Role::doubt) {
        doubt |= on == 0 ? kAll : on;
        continue;
      }
      seen |= on;
      const bool poorer = p.worth[n] < p.worth[crop] || (p.worth[n] == p.worth[crop] && n > crop);
      if (held.count(n) > 0 || role == Role::kept || role == Role::sound_oak) {
        stays |= on;
      } else if (role == Role::fellow && released.count(n) > 0) {
        shares |= on;
      } else if (role == Role::fellow && !(poorer && p.keeps[n] == Keep::no)) {
        stays |= on;
      } else if (role == Role::fellow || role == Role::bank || role == Role::food_tree ||
                 role == Role::conifer) {
        may.push_back(i);
      } else {
        go.push_back(i);
      }
    }
    // Each set of sides from which all that may go is taken.
    std::optional<Answer> best;
    std::tuple<bool, bool, int, int, std::vector<std::uint32_t>> best_rank;
    for (unsigned wanted = 0; wanted <= kAll; ++wanted) {
      unsigned closed = stays;
      std::vector<std::uint32_t> takes;
      int food = 0;
      for (const std::uint32_t i : may) {
        const unsigned on = bits(p.graph.contacts()[i].sides);
        if ((on & wanted) != 0) {
          takes.push_back(i);
          food += p.traits[p.graph.contacts()[i].neighbour].food.rank;
        } else {
          closed |= on;
        }
      }
      const int spared = static_cast<int>(takes.size());
      const unsigned unknown = kAll & ~closed & (~seen | doubt);
      const unsigned shared = shares & ~closed & ~unknown;
      const unsigned open = kAll & ~closed & ~unknown & ~shared;
      for (const std::uint32_t i : go) {
        if ((bits(p.graph.contacts()[i].sides) & ~closed) != 0) takes.push_back(i);
      }
      const int more = std::min(count(shared), p.sides.shared_max);
      const auto enough = [&](int free) {
        return free + more >= p.sides.free_min && (shares == 0 || free >= p.sides.free_in_pair);
      };
      const bool reaches = enough(count(open));
      const std::tuple rank(!reaches, !enough(count(open) + count(unknown)), spared, food, takes);
      if (best && !(rank < best_rank)) continue;
      best_rank = rank;
      best = Answer{reaches, std::int64_t{p.worth[crop]} * (count(open) + more), {}};
      for (const std::uint32_t i : takes) best->takes.insert(p.graph.contacts()[i].neighbour);
    }
    return *best;
  }

  /// Candidates that touch as fellows, seen from crop.
  Set fellows(std::uint32_t crop) const {
    Set list;
    for (const std::uint32_t i : p.graph.around(crop)) {
      if (p.roles[i] == Role::fellow) list.insert(p.graph.contacts()[i].neighbour);
    }
    return list;
  }
  /// Pairs of candidates that meet, both ways.
  std::set<std::pair<std::uint32_t, std::uint32_t>> meetings() const {
    std::set<std::pair<std::uint32_t, std::uint32_t>> pairs;
    for (std::size_t i = 0; i < p.graph.contacts().size(); ++i) {
      const CrownContact& c = p.graph.contacts()[i];
      if (!candidate(c.crop) || !candidate(c.neighbour)) continue;
      if (p.roles[i] != Role::fellow && !c.will_meet) continue;
      pairs.insert({c.crop, c.neighbour});
      pairs.insert({c.neighbour, c.crop});
    }
    return pairs;
  }
  bool thin(std::uint32_t tree) const {
    return p.graph.trees()[tree].facts.dbh.inches() < p.sides.thin_below;
  }
};

}  // namespace oaklight::test
