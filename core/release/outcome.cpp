#include "core/release/outcome.hpp"

#include <algorithm>
#include <tuple>

namespace oaklight {
namespace {

constexpr double kSidesPerCrown = 4.0;  // R1.60: a side is a quarter of the crown's edge

/// Whether `a` is the poorer of two candidates: less worth, or later in the order of ties.
bool poorer(const ReleaseProblem& problem, std::uint32_t a, std::uint32_t b) {
  const int wa = problem.worth[a];
  const int wb = problem.worth[b];
  return wa < wb || (wa == wb && a > b);
}

Fate fate_of_fellow(const ReleaseProblem& problem, const Selection& selection,
                    const CrownContact& contact) {
  const std::uint32_t other = contact.neighbour;
  switch (selection.standing[other]) {
    case Standing::released:
      return selection.standing[contact.crop] == Standing::released &&
                     selection.group[other] == selection.group[contact.crop]
                 ? Fate::shares
                 : Fate::stays;
    case Standing::waiting:
      return Fate::stays;
    case Standing::open:
    case Standing::out:
      break;
  }
  const bool may_go = problem.keeps[other] == Keep::no && poorer(problem, other, contact.crop);
  return may_go ? Fate::may_go : Fate::stays;
}

/// How the neighbours of one crown lie on its sides.
struct Around {
  Sides stays, shares, doubt;
  std::vector<std::uint32_t> may_go, go;  // contacts
  Sides optional;                         // sides of may_go
};

Around around(const ReleaseProblem& problem, const Selection& selection, std::uint32_t crop) {
  Around a;
  for (const std::uint32_t i : problem.graph.around(crop)) {
    const Sides sides = problem.graph.contacts()[i].sides;
    switch (fate_of(problem, selection, i)) {
      case Fate::nothing:
        break;
      case Fate::doubt:
        a.doubt.add(sides.empty() ? Sides::all() : sides);
        break;
      case Fate::stays:
        a.stays.add(sides);
        break;
      case Fate::shares:
        a.shares.add(sides);
        break;
      case Fate::may_go:
        a.may_go.push_back(i);
        a.optional.add(sides);
        break;
      case Fate::goes:
        a.go.push_back(i);
        break;
    }
  }
  return a;
}

/// One way to deal with the neighbours that may go: free these sides of all of them.
struct Way {
  std::vector<std::uint32_t> takes;  // contacts
  int spared = 0;                    // of these, trees that were to stay if possible
  int food = 0;                      // food ranks of these
  Sides free, shared, unknown;
  bool reaches = false, might_reach = false;
};

Way way_of(const ReleaseProblem& problem, const Around& a, std::uint32_t crop, Sides wanted) {
  const auto& contacts = problem.graph.contacts();
  Way way;
  Sides left;  // sides that optional neighbours still close
  for (const std::uint32_t i : a.may_go) {
    if (!common(contacts[i].sides, wanted).empty()) {
      way.takes.push_back(i);
      ++way.spared;
      way.food += problem.traits[contacts[i].neighbour].food.rank;
    } else {
      left.add(contacts[i].sides);
    }
  }
  Sides closed = a.stays;
  closed.add(left);
  const Sides looked = problem.graph.trees()[crop].looked;
  Sides seen = looked;  // a side where some neighbour was seen was looked at
  for (const std::uint32_t i : problem.graph.around(crop)) {
    if (crowds(problem.roles[i])) seen.add(contacts[i].sides);
  }
  way.unknown = without(Sides::all(), closed);
  way.unknown = without(way.unknown, without(seen, a.doubt));
  way.shared = without(without(a.shares, closed), way.unknown);
  way.free = without(without(without(Sides::all(), closed), way.unknown), way.shared);
  for (const std::uint32_t i : a.go) {
    if (!without(contacts[i].sides, closed).empty()) way.takes.push_back(i);
  }
  const bool paired = !a.shares.empty();
  const int shared = std::min(way.shared.count(), problem.sides.shared_max);
  const auto enough = [&](int free) {
    return free + shared >= problem.sides.free_min &&
           (!paired || free >= problem.sides.free_in_pair);
  };
  way.reaches = enough(way.free.count());
  way.might_reach = enough(way.free.count() + way.unknown.count());
  return way;
}

/// Sides reached first, then fewest spared trees, then least food, then the order of the trees: not
/// that of the sides, so that a turned map gives the same answer.
bool better(const Way& a, const Way& b) {
  const std::tuple rank_a(!a.reaches, !a.might_reach, a.spared, a.food);
  const std::tuple rank_b(!b.reaches, !b.might_reach, b.spared, b.food);
  return rank_a < rank_b || (rank_a == rank_b && a.takes < b.takes);
}

/// Open edge of a crown on a map, or whose four radii were taped; what nobody looked at is closed.
Percent open_by_arcs(const ReleaseProblem& problem, const std::vector<bool>& gone, Sides unknown,
                     std::uint32_t crop) {
  std::vector<Arc> arcs;
  add_quarters(unknown, arcs);
  for (const std::uint32_t i : problem.graph.around(crop)) {
    const CrownContact& c = problem.graph.contacts()[i];
    if (!crowds(problem.roles[i]) || gone[c.neighbour]) continue;
    problem.graph.add_closed_by(c, arcs);
  }
  return open_share(arcs);
}

}  // namespace

Fate fate_of(const ReleaseProblem& problem, const Selection& selection, std::uint32_t contact) {
  const CrownContact& c = problem.graph.contacts()[contact];
  const Role role = problem.roles[contact];
  if (role == Role::clear) return Fate::nothing;
  if (role == Role::doubt) return Fate::doubt;
  if (selection.held[c.neighbour]) return Fate::stays;
  if (role == Role::fellow) return fate_of_fellow(problem, selection, c);
  if (goes(role)) return Fate::goes;
  return goes_if_needed(role) ? Fate::may_go : Fate::stays;
}

Outcome outcome_of(const ReleaseProblem& problem, const Selection& selection, std::uint32_t crop) {
  const Around a = around(problem, selection, crop);
  std::optional<Way> best;
  // At most sixteen ways: each set of sides that neighbours which may go could be taken from.
  constexpr unsigned kWays = 1U << 4U;
  for (unsigned bits = 0; bits < kWays; ++bits) {
    Sides wanted;
    unsigned bit = 1;
    for (const Side s : kSides) {
      if ((bits & bit) != 0) wanted.add(s);
      bit <<= 1U;
    }
    if (!without(wanted, a.optional).empty()) continue;
    const Way way = way_of(problem, a, crop, wanted);
    if (!best || better(way, *best)) best = way;
  }
  Outcome outcome;
  for (const std::uint32_t i : best->takes) {
    outcome.takes.push_back(problem.graph.contacts()[i].neighbour);
  }
  outcome.free = best->free;
  outcome.shared = best->shared;
  outcome.unknown = best->unknown;
  outcome.reaches = best->reaches;
  outcome.might_reach = best->might_reach;
  return outcome;
}

CrownSides crown_sides(const ReleaseProblem& problem, const Selection& selection,
                       const std::vector<bool>& gone, std::uint32_t crop,
                       std::optional<std::uint32_t> still_there) {
  CrownSides sides;
  Sides doubt;
  Sides seen = problem.graph.trees()[crop].looked;
  for (const std::uint32_t i : problem.graph.around(crop)) {
    const CrownContact& c = problem.graph.contacts()[i];
    const Role role = problem.roles[i];
    if (role == Role::clear) continue;
    if (crowds(role)) seen.add(c.sides);  // a side where a neighbour was seen was looked at
    if (gone[c.neighbour] && still_there != c.neighbour) continue;
    switch (fate_of(problem, selection, i)) {
      case Fate::doubt:
        doubt.add(c.sides.empty() ? Sides::all() : c.sides);
        break;
      case Fate::shares:
        sides.shared.add(c.sides);
        break;
      default:
        sides.closed.add(c.sides);
    }
  }
  sides.unknown = without(without(Sides::all(), sides.closed), without(seen, doubt));
  sides.shared = without(without(sides.shared, sides.closed), sides.unknown);
  sides.free = without(without(without(Sides::all(), sides.closed), sides.unknown), sides.shared);
  return sides;
}

Light light_of(const ReleaseProblem& problem, const Selection& selection,
               const std::vector<bool>& gone, std::uint32_t crop) {
  const CrownSides sides = crown_sides(problem, selection, gone, crop);
  Light light;
  light.sides_free = sides.free.count();
  light.sides_shared = sides.shared.count();
  light.sides_unknown = sides.unknown.count();
  if (problem.graph.source() == ReleaseGraph::Source::map) {
    light.open =
        open_by_arcs(problem, gone, {}, crop);  // what the map does not show closes nothing
  } else if (problem.graph.edges().crowns.count(crop) > 0) {
    light.open = open_by_arcs(problem, gone, sides.unknown, crop);
  } else {
    light.open = percent(light.sides_free / kSidesPerCrown);
  }
  return light;
}

Sides common(Sides a, Sides b) {
  Sides both;
  for (const Side s : kSides) {
    if (a.has(s) && b.has(s)) both.add(s);
  }
  return both;
}

Sides without(Sides a, Sides b) {
  Sides rest;
  for (const Side s : kSides) {
    if (a.has(s) && !b.has(s)) rest.add(s);
  }
  return rest;
}

}  // namespace oaklight
