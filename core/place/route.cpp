#include "core/place/route.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "core/place/seeded_draw.hpp"

namespace oaklight {
namespace {

constexpr double kFar = std::numeric_limits<double>::infinity();
/// Less than this is rounding and no gain, feet.
constexpr double kNoGain = 1e-7;

/// A tour with place 0 in front; the way from the last place back to it belongs to it.
using Places = std::vector<std::size_t>;

double length_of(const WalkCosts& costs, const Places& places) {
  double sum = 0.0;
  for (std::size_t i = 0; i < places.size(); ++i) {
    sum += costs.feet(places[i], places[(i + 1) % places.size()]);
  }
  return sum;
}

Places nearest_neighbours(const WalkCosts& costs, std::size_t first) {
  Places places = {0};
  std::vector<bool> been(costs.places(), false);
  been[0] = true;
  std::size_t next = first;
  while (true) {
    been[next] = true;
    places.push_back(next);
    const std::size_t here = next;
    double least = kFar;
    for (std::size_t i = 0; i < costs.places(); ++i) {
      if (!been[i] && costs.feet(here, i) < least) {
        least = costs.feet(here, i);
        next = i;
      }
    }
    if (next == here) return places;
  }
}

/// Turns a run of places round where that is shorter. Whether anything was.
bool two_opt(const WalkCosts& costs, Places& p) {
  bool better = false;
  const std::size_t n = p.size();
  for (std::size_t i = 0; i + 1 < n; ++i) {
    for (std::size_t j = i + 2; j < n; ++j) {
      const std::size_t after = p[(j + 1) % n];
      if (after == p[i]) continue;
      const double gain = costs.feet(p[i], p[i + 1]) + costs.feet(p[j], after) -
                          costs.feet(p[i], p[j]) - costs.feet(p[i + 1], after);
      if (gain <= kNoGain) continue;
      std::reverse(p.begin() + static_cast<std::ptrdiff_t>(i) + 1,
                   p.begin() + static_cast<std::ptrdiff_t>(j) + 1);
      better = true;
    }
  }
  return better;
}

/// Takes a run of one to three places out and puts it in elsewhere, either way round. Place 0 stays
/// in front.
bool or_opt(const WalkCosts& costs, Places& p) {
  const std::size_t n = p.size();
  for (std::size_t run = 1; run <= 3 && run + 2 <= n; ++run) {
    for (std::size_t i = 1; i + run <= n; ++i) {
      const std::size_t before = p[i - 1];
      const std::size_t first = p[i];
      const std::size_t last = p[i + run - 1];
      const std::size_t after = p[(i + run) % n];
      const double saved =
          costs.feet(before, first) + costs.feet(last, after) - costs.feet(before, after);
      if (saved <= kNoGain) continue;
      for (std::size_t j = 0; j < n; ++j) {
        if (j + 1 >= i && j < i + run) continue;  // where it stands already
        const std::size_t left = p[j];
        const std::size_t right = p[(j + 1) % n];
        const double gap = costs.feet(left, right);
        const double as_is = costs.feet(left, first) + costs.feet(last, right) - gap;
        const double turned = costs.feet(left, last) + costs.feet(first, right) - gap;
        if (std::min(as_is, turned) >= saved - kNoGain) continue;
        Places moved(p.begin() + static_cast<std::ptrdiff_t>(i),
                     p.begin() + static_cast<std::ptrdiff_t>(i + run));
        if (turned < as_is) std::ranges::reverse(moved);
        p.erase(p.begin() + static_cast<std::ptrdiff_t>(i),
                p.begin() + static_cast<std::ptrdiff_t>(i + run));
        const std::size_t at = j < i ? j + 1 : j + 1 - run;
        p.insert(p.begin() + static_cast<std::ptrdiff_t>(at), moved.begin(), moved.end());
        return true;
      }
    }
  }
  return false;
}

void improve(const WalkCosts& costs, Places& places) {
  while (two_opt(costs, places) || or_opt(costs, places)) {
  }
}

/// Cuts a tour into four and joins the middle parts the other way about: a step that neither
/// exchange can take back at once.
Places shaken(const Places& places, SeededDraw& draw) {
  std::size_t cuts[3];
  for (std::size_t& cut : cuts) {
    cut = 1 + static_cast<std::size_t>(draw.uniform() * static_cast<double>(places.size() - 1));
  }
  std::ranges::sort(cuts);
  Places out(places.begin(), places.begin() + static_cast<std::ptrdiff_t>(cuts[0]));
  const auto add = [&](std::size_t from, std::size_t to) {
    out.insert(out.end(), places.begin() + static_cast<std::ptrdiff_t>(from),
               places.begin() + static_cast<std::ptrdiff_t>(to));
  };
  add(cuts[1], cuts[2]);
  add(cuts[0], cuts[1]);
  add(cuts[2], places.size());
  return out;
}

Tour tour_of(const WalkCosts& costs, const Places& places) {
  Tour tour;
  tour.order.assign(places.begin() + 1, places.end());
  tour.length = Feet{length_of(costs, places)};
  return tour;
}

/// The shortest tree over places 1 .. n - 1 and the two shortest ways from place 0, with weights
/// added at each place.
struct OneTree {
  double cost = 0.0;
  std::vector<int> ways;  ///< that meet at each place
};
OneTree one_tree(const WalkCosts& costs, const std::vector<double>& weight) {
  const std::size_t n = costs.places();
  const auto feet = [&](std::size_t a, std::size_t b) {
    return costs.feet(a, b) + weight[a] + weight[b];
  };
  OneTree tree{0.0, std::vector<int>(n, 0)};
  std::vector<double> near(n, kFar);
  std::vector<std::size_t> from(n, 1);
  std::vector<bool> in(n, false);
  near[1] = 0.0;
  for (std::size_t step = 1; step < n; ++step) {
    std::size_t next = 0;
    for (std::size_t i = 1; i < n; ++i) {
      if (!in[i] && (next == 0 || near[i] < near[next])) next = i;
    }
    in[next] = true;
    if (step > 1) {
      tree.cost += near[next];
      ++tree.ways[next];
      ++tree.ways[from[next]];
    }
    for (std::size_t i = 1; i < n; ++i) {
      if (!in[i] && feet(next, i) < near[i]) {
        near[i] = feet(next, i);
        from[i] = next;
      }
    }
  }
  std::vector<std::size_t> others(n - 1);
  std::iota(others.begin(), others.end(), std::size_t{1});
  std::ranges::partial_sort(others, others.begin() + 2,
                            [&](std::size_t a, std::size_t b) { return feet(0, a) < feet(0, b); });
  for (std::size_t k = 0; k < 2; ++k) {
    tree.cost += feet(0, others[k]);
    ++tree.ways[0];
    ++tree.ways[others[k]];
  }
  return tree;
}

}  // namespace

Tour exact_tour(const WalkCosts& costs) {
  const std::size_t stops = costs.places() - 1;
  const std::size_t sets = std::size_t{1} << stops;
  // best[set][last]: the shortest way from place 0 through the set that ends at `last`.
  std::vector<double> best(sets * stops, kFar);
  std::vector<std::size_t> before(sets * stops, 0);
  for (std::size_t i = 0; i < stops; ++i) {
    best[(std::size_t{1} << i) * stops + i] = costs.feet(0, i + 1);
  }
  for (std::size_t set = 1; set < sets; ++set) {
    for (std::size_t last = 0; last < stops; ++last) {
      const double so_far = best[set * stops + last];
      if (so_far == kFar) continue;
      for (std::size_t next = 0; next < stops; ++next) {
        if ((set >> next & 1U) != 0) continue;
        const std::size_t grown = (set | std::size_t{1} << next) * stops + next;
        const double feet = so_far + costs.feet(last + 1, next + 1);
        if (feet < best[grown]) {
          best[grown] = feet;
          before[grown] = last;
        }
      }
    }
  }
  Places places = {0};
  std::size_t set = sets - 1;
  std::size_t last = 0;
  for (std::size_t i = 1; i < stops; ++i) {
    const auto whole = [&](std::size_t end) {
      return best[set * stops + end] + costs.feet(end + 1, 0);
    };
    if (whole(i) < whole(last)) last = i;
  }
  for (std::size_t left = stops; left > 0; --left) {
    places.push_back(last + 1);
    const std::size_t from = before[set * stops + last];
    set &= ~(std::size_t{1} << last);
    last = from;
  }
  std::reverse(places.begin() + 1, places.end());
  Tour tour = tour_of(costs, places);
  tour.bound = tour.length;
  tour.exact = true;
  return tour;
}

Tour improved_tour(const WalkCosts& costs) {
  const std::size_t n = costs.places();
  Places best;
  double least = kFar;
  const auto keep = [&](const Places& places) {
    const double length = length_of(costs, places);
    if (length < least - kNoGain) {
      least = length;
      best = places;
    }
  };
  const std::size_t starts = std::min<std::size_t>(n - 1, 4);
  for (std::size_t i = 0; i < starts; ++i) {
    Places places = nearest_neighbours(costs, 1 + i * (n - 1) / starts);
    improve(costs, places);
    keep(places);
  }
  // Any seed will do; a fixed one gives the same walk on every machine.
  SeededDraw draw(1971);
  const int shakes = n < 60 ? 200 : 40;
  for (int i = 0; i < shakes && n > 8; ++i) {
    Places places = shaken(best, draw);
    improve(costs, places);
    keep(places);
  }
  Tour tour = tour_of(costs, best);
  tour.bound = tour_bound(costs, tour.length);
  return tour;
}

Feet tour_bound(const WalkCosts& costs, Feet length) {
  const std::size_t n = costs.places();
  if (n < 4) return length;  // there is one tour only
  std::vector<double> weight(n, 0.0);
  double most = 0.0;
  double share = 2.0;
  int idle = 0;
  for (int round = 0; round < 400 && share > 1e-4; ++round) {
    const OneTree tree = one_tree(costs, weight);
    // In a tour two ways meet at each place, so the weights add twice their sum to every tour.
    const double bound = tree.cost - 2.0 * std::accumulate(weight.begin(), weight.end(), 0.0);
    if (bound > most + kNoGain) {
      most = bound;
      idle = 0;
    } else if (++idle == 10) {
      share /= 2.0;
      idle = 0;
    }
    double off = 0.0;
    for (const int ways : tree.ways) off += (ways - 2) * (ways - 2);
    if (off == 0.0) break;  // the tree is a tour
    const double step = share * (length.value - bound) / off;
    if (!(step > 0.0)) break;
    for (std::size_t i = 0; i < n; ++i) weight[i] += step * (tree.ways[i] - 2);
  }
  return Feet{std::min(most, length.value)};
}

Tour short_tour(const WalkCosts& costs) {
  if (costs.places() < 2) return {{}, Feet{0.0}, Feet{0.0}, true};
  return costs.places() <= kExactStops + 1 ? exact_tour(costs) : improved_tour(costs);
}

}  // namespace oaklight
