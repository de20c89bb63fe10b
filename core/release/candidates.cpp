#include "core/release/candidates.hpp"

#include <algorithm>
#include <numeric>

namespace oaklight {
namespace {

constexpr std::int64_t kSidesOfCrown = 4;
constexpr int kLargestListed = 3;           // trees of a unit up to which ways are listed
constexpr std::uint32_t kHeld = 1U << 31U;  // marks a held oak in a key

void sort_out(Candidates::Trees& list) {
  std::sort(list.begin(), list.end());
  list.erase(std::unique(list.begin(), list.end()), list.end());
}

/// Sets that are joined pair by pair.
class Sets {
 public:
  explicit Sets(std::size_t size) : parent_(size) {
    std::iota(parent_.begin(), parent_.end(), std::uint32_t{0});
  }
  std::uint32_t find(std::uint32_t i) {
    while (parent_[i] != i) i = parent_[i] = parent_[parent_[i]];
    return i;
  }
  /// The smaller number stands for the set.
  void join(std::uint32_t a, std::uint32_t b) {
    a = find(a);
    b = find(b);
    parent_[std::max(a, b)] = std::min(a, b);
  }

 private:
  std::vector<std::uint32_t> parent_;
};

}  // namespace

Candidates::Candidates(const ReleaseProblem& problem, std::vector<bool> holdable)
    : problem_(problem),
      holdable_(std::move(holdable)),
      number_(problem.graph.trees().size(), static_cast<std::uint32_t>(problem.ranked.size())),
      meets_(size()),
      fellows_(size()),
      holds_(size()),
      rivals_(size()),
      known_(size()),
      ways_(size()),
      most_(size(), 0),
      scratch_(problem.graph.trees().size()) {
  for (std::uint32_t c = 0; c < size(); ++c) number_[tree(c)] = c;
  find_meetings();
  for (std::uint32_t c = 0; c < size(); ++c) find_ways(c);
  for (std::uint32_t c = 0; c < size(); ++c) find_rivals(c);
}

bool Candidates::thin(std::uint32_t c) const {
  return problem_.graph.trees()[tree(c)].facts.dbh.inches() < problem_.sides.thin_below;
}

void Candidates::find_meetings() {
  for (std::uint32_t c = 0; c < size(); ++c) {
    for (const std::uint32_t i : problem_.graph.around(tree(c))) {
      const CrownContact& contact = problem_.graph.contacts()[i];
      if (holdable_[contact.neighbour]) holds_[c].push_back(contact.neighbour);
      const std::uint32_t other = number_[contact.neighbour];
      if (other == size()) continue;
      const bool fellow = problem_.roles[i] == Role::fellow;
      if (fellow) fellows_[c].push_back(other);
      if (!fellow && !contact.will_meet) continue;
      meets_[c].push_back(other);
      meets_[other].push_back(c);
    }
  }
  for (auto* lists : {&meets_, &fellows_, &holds_}) {
    for (Trees& list : *lists) sort_out(list);
  }
}

Candidates::Trees Candidates::unit_of(std::uint32_t c, const std::vector<bool>& released) const {
  Trees unit{c};
  for (std::size_t i = 0; i < unit.size(); ++i) {  // grows while it is walked
    for (const std::uint32_t other : meets_[unit[i]]) {
      if (released[other] && std::find(unit.begin(), unit.end(), other) == unit.end()) {
        unit.push_back(other);
      }
    }
  }
  return unit;
}

bool Candidates::fits(const Trees& unit) const {
  const bool all_thin =
      std::all_of(unit.begin(), unit.end(), [&](std::uint32_t c) { return thin(c); });
  const int most = all_thin ? problem_.sides.group_max_thin : problem_.sides.group_max;
  return static_cast<int>(unit.size()) <= most;
}

const LocalOutcome& Candidates::outcome(std::uint32_t c, const std::vector<bool>& released,
                                        const std::vector<bool>* held) {
  key_.clear();
  for (const std::uint32_t other : fellows_[c]) {
    if (released[other]) key_.push_back(tree(other));
  }
  if (held != nullptr) {
    for (const std::uint32_t oak : holds_[c]) {
      if ((*held)[oak] && (number_[oak] == size() || !released[number_[oak]]))
        key_.push_back(oak | kHeld);
    }
  }
  return outcome_with(c, key_);
}

/// key  released fellows, then oaks held with a mark
const LocalOutcome& Candidates::outcome_with(std::uint32_t c, const Trees& key) {
  const auto found = known_[c].find(key);
  if (found != known_[c].end()) return found->second;
  scratch_.standing[tree(c)] = Standing::released;
  for (const std::uint32_t entry : key) {
    if ((entry & kHeld) != 0) {
      scratch_.held[entry & ~kHeld] = true;
    } else {
      scratch_.standing[entry] = Standing::released;
    }
  }
  // All released trees of the scratch have the same group: those that meet are one unit.
  Outcome outcome = outcome_of(problem_, scratch_, tree(c));
  scratch_.standing[tree(c)] = Standing::open;
  for (const std::uint32_t entry : key) {
    if ((entry & kHeld) != 0) {
      scratch_.held[entry & ~kHeld] = false;
    } else {
      scratch_.standing[entry] = Standing::open;
    }
  }
  const int counted = outcome.free.count() + std::min(outcome.shared.count(), sides().shared_max);
  LocalOutcome local{outcome.reaches, outcome.might_reach,
                     std::int64_t{problem_.worth[tree(c)]} * counted, std::move(outcome.takes)};
  sort_out(local.takes);
  return known_[c].emplace(key, std::move(local)).first->second;
}

void Candidates::find_ways(std::uint32_t c) {
  const std::int64_t all = kSidesOfCrown * problem_.worth[tree(c)];
  const int most = largest_unit(c);
  const auto try_way = [&](const Trees& key) {
    const LocalOutcome& way = outcome_with(c, key);
    if (!way.reaches) return;
    ways_[c].push_back(&way);
    most_[c] = std::max(most_[c], way.light);
  };
  try_way({});
  const Trees& fellows = fellows_[c];
  for (std::size_t i = 0; i < fellows.size() && most >= 2; ++i) {
    try_way({tree(fellows[i])});
    for (std::size_t j = i + 1; j < fellows.size() && most >= 3; ++j) {
      try_way({tree(fellows[i]), tree(fellows[j])});
    }
  }
  // Larger units, or fewer sides than a held oak leaves: no list of ways, so the loosest bound.
  if (most > kLargestListed || (beside_holdable(c) && sides().free_min < kSidesOfCrown - 1)) {
    most_[c] = all;
  }
}

int Candidates::largest_unit(std::uint32_t c) const {
  const SideSettings& s = sides();
  return thin(c) ? std::max(s.group_max, s.group_max_thin) : s.group_max;
}

bool Candidates::ways_are_all(std::uint32_t c) const {
  return !beside_holdable(c) && largest_unit(c) <= kLargestListed;
}

void Candidates::find_rivals(std::uint32_t c) {
  const auto key_with = [&](std::uint32_t a, std::uint32_t b) {
    const bool fellow = std::binary_search(fellows_[a].begin(), fellows_[a].end(), b);
    return fellow ? Trees{tree(b)} : Trees{};
  };
  for (const std::uint32_t other : meets_[c]) {
    if (sides().group_max > 2 || (thin(c) && thin(other))) continue;  // a third may join them
    if (fits({c, other}) && outcome_with(c, key_with(c, other)).reaches &&
        outcome_with(other, key_with(other, c)).reaches) {
      continue;
    }
    rivals_[c].push_back(other);
  }
}

std::vector<Candidates::Trees> Candidates::components() const {
  Sets sets(size());
  std::vector<std::uint32_t> taker(problem_.graph.trees().size(),
                                   static_cast<std::uint32_t>(size()));
  for (std::uint32_t c = 0; c < size(); ++c) {
    for (const std::uint32_t other : meets_[c]) sets.join(c, other);
    for (const std::uint32_t i : problem_.graph.around(tree(c))) {
      if (!crowds(problem_.roles[i])) continue;
      std::uint32_t& first = taker[problem_.graph.contacts()[i].neighbour];
      if (first == size()) first = c;
      sets.join(c, first);
    }
  }
  std::vector<Trees> components;
  std::vector<std::uint32_t> place(size(), 0);
  for (std::uint32_t c = 0; c < size(); ++c) {
    if (sets.find(c) == c) {
      place[c] = static_cast<std::uint32_t>(components.size());
      components.emplace_back();
    }
    components[place[sets.find(c)]].push_back(c);
  }
  return components;
}

}  // namespace oaklight
