#include "core/release/guard_prices.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>

#include "core/release/repair.hpp"

namespace oaklight {
namespace {

constexpr int kRounds = 3;
constexpr int kPasses = 4;  // over the guards
constexpr int kDoublings = 40;
constexpr int kHalvings = 16;
constexpr double kNear = 2e-4;             // of the light: plans so near each other end the halving
constexpr std::size_t kMostProven = 3000;  // candidates
constexpr std::int64_t kSlack = 1 << 20;   // for the rounding of sums of prices

constexpr std::int64_t kTiePrice = std::int64_t{1} << 14U;

/// A plan at some prices, with what it uses of each guard.
struct Trial {
  PricedPlan plan;
  std::int64_t light = 0;
  std::vector<std::int64_t> use;  // by row
};

class Pricing {
 public:
  Pricing(Candidates& candidates, PricedPlans& plans, const std::vector<GuardRow>& rows)
      : all_(candidates),
        plans_(plans),
        rows_(rows),
        price_(rows.size(), 0.0),
        bound_(std::numeric_limits<std::int64_t>::max()) {
    prices_.take.assign(all_.problem().graph.trees().size(), 0);
    prices_.release.assign(all_.size(), 0);
    ties_ = tie_prices(all_);
    for (std::uint32_t tree = 0; tree < ties_.take.size(); ++tree) {
      tie_sum_ += ties_.take[tree] + (all_.holdable(tree) ? kHoldTie : 0);
    }
    find_parts();
  }

  BoundedPlan run() {
    Trial high = trial();
    Trial low = high;
    raise_all(low, high);
    // Where several guards bind, the first price was found before the others were known.
    for (int round = 0; round < kRounds && priced() > 1; ++round) {
      for (std::size_t r = 0; r < rows_.size(); ++r) {
        if (price_[r] <= 0.0) continue;
        price_[r] = 0.0;
        high = trial();
        low = high;
        if (high.use[r] > rows_[r].room) raise(r, low, high);
      }
      raise_all(low, high);
    }
    BoundedPlan best;
    best.bound = bound_;
    if (worst(high) == rows_.size()) {
      merge(high, low, best);
    } else {
      best.released = repaired(all_, rows_, high.plan.released);
    }
    if (best.held.empty()) best.released = repaired(all_, rows_, best.released);  // what still fits
    best.light = gain_of(best, false);
    if (known_ && known_->light > best.light) {
      best.released = known_->plan.released;
      best.held = known_->plan.held;
      best.light = known_->light;
    }
    if (best.light < best.bound && all_.size() <= kMostProven) prove(best);
    return best;
  }

 private:
  void raise_all(Trial& low, Trial& high) {
    for (int pass = 0; pass < kPasses; ++pass) {
      const std::size_t r = worst(high);
      if (r == rows_.size()) break;
      raise(r, low, high);
    }
  }

  std::ptrdiff_t priced() const {
    return std::count_if(price_.begin(), price_.end(), [](double price) { return price > 0.0; });
  }

  /// The light of a plan; or what it gains, in kLightUnit: less for each tree taken, so that ties
  /// are decided.
  std::int64_t gain_of(const BoundedPlan& plan, bool ties) {
    std::vector<bool> flags(all_.size(), false);
    for (const std::uint32_t c : plan.released) flags[c] = true;
    std::vector<bool> held(prices_.take.size(), false);
    for (const std::uint32_t oak : plan.held) held[oak] = true;
    std::vector<bool> booked(prices_.take.size(), false);
    std::int64_t gain = 0;
    for (const std::uint32_t c : plan.released) {
      const LocalOutcome& outcome = all_.outcome(c, flags, &held);
      gain += outcome.light * (ties ? kLightUnit : 1);
      for (const std::uint32_t tree : outcome.takes) {
        if (ties && !booked[tree]) gain -= ties_.take[tree];
        booked[tree] = true;
      }
    }
    if (ties) gain -= kHoldTie * static_cast<std::int64_t>(plan.held.size());
    return gain;
  }

  /// Looks at every plan that may still be better than the best one known, at the prices that gave
  /// the least bound. Guards that had no price come in as they are broken.
  void prove(BoundedPlan& best) {
    price_ = best_price_;
    Trial last = trial();
    double room = 0.0;
    std::vector<const GuardRow*> guards;
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      if (price_[r] <= 0.0) continue;
      room += price_[r] * static_cast<double>(rows_[r].room);
      guards.push_back(&rows_[r]);
    }
    const auto slack = static_cast<double>(kSlack) + static_cast<double>(prices_.take.size());
    for (std::size_t round = 0; round < rows_.size(); ++round) {
      const double least = static_cast<double>(gain_of(best, true)) - room - slack;
      PricedPlan plan;
      const auto outcome =
          plans_.best_within(ties_, guards, static_cast<std::int64_t>(least), plan);
      if (outcome == Elimination::Outcome::too_many) return;
      if (outcome == Elimination::Outcome::none) break;  // the plan known is the best
      const Trial found = used(std::move(plan));
      const std::size_t broken = worst(found);
      if (broken == rows_.size()) {
        best.released = found.plan.released;
        best.held = found.plan.held;
        best.light = found.light;
        break;
      }
      if (std::find(guards.begin(), guards.end(), &rows_[broken]) != guards.end()) return;
      guards.push_back(&rows_[broken]);
    }
    best.bound = best.light;
  }

  void find_parts() {
    part_.assign(all_.size(), 0);
    std::uint32_t part = 0;
    for (const Candidates::Trees& trees : all_.components()) {
      for (const std::uint32_t c : trees) part_[c] = part;
      ++part;
    }
    parts_ = part;
  }

  void set_prices() {
    const auto whole = [](double price) { return static_cast<std::int64_t>(std::floor(price)); };
    for (std::size_t tree = 0; tree < prices_.take.size(); ++tree) {
      double price = 0.0;
      for (std::size_t r = 0; r < rows_.size(); ++r) {
        if (price_[r] > 0.0) price += price_[r] * static_cast<double>(rows_[r].take[tree]);
      }
      prices_.take[tree] = whole(price) + ties_.take[tree];
    }
    for (std::uint32_t c = 0; c < all_.size(); ++c) {
      double price = 0.0;
      for (std::size_t r = 0; r < rows_.size(); ++r) {
        if (price_[r] > 0.0)
          price += price_[r] * static_cast<double>(rows_[r].release[all_.tree(c)]);
      }
      prices_.release[c] = whole(price);
    }
  }

  /// The best plan at the prices of now; books the bound that they give.
  Trial trial() {
    set_prices();
    Trial t = used(plans_.best(prices_));
    double room = 0.0;
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      room += price_[r] * static_cast<double>(rows_[r].room);
    }
    // Of what a plan gains, ties and the rounding of prices have taken this much at most.
    const double most =
        (static_cast<double>(t.plan.value) + room + static_cast<double>(tie_sum_ + kSlack)) /
        static_cast<double>(kLightUnit);
    const auto bound = static_cast<std::int64_t>(std::floor(most));
    if (bound < bound_) {
      bound_ = bound;
      best_price_ = price_;
    }
    if (worst(t) == rows_.size() && (!known_ || t.light > known_->light)) known_ = t;
    return t;
  }

  Trial used(PricedPlan plan) const {
    Trial t{std::move(plan), 0, std::vector<std::int64_t>(rows_.size(), 0)};
    for (const std::int64_t light : t.plan.light) t.light += light;
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      for (const std::uint32_t tree : t.plan.taken) t.use[r] += rows_[r].take[tree];
      for (const std::uint32_t c : t.plan.released) t.use[r] += rows_[r].release[all_.tree(c)];
    }
    return t;
  }

  double over(const Trial& t, std::size_t r) const {
    return static_cast<double>(t.use[r] - rows_[r].room) /
           std::max(1.0, std::fabs(static_cast<double>(t.use[r])));
  }

  /// The guard broken by most; rows_.size() when all hold.
  std::size_t worst(const Trial& t) const {
    std::size_t found = rows_.size();
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      if (t.use[r] <= rows_[r].room) continue;
      if (found == rows_.size() || over(t, r) > over(t, found)) found = r;
    }
    return found;
  }

  /// Raises the price of one guard until the best plan keeps within it, just so.
  void raise(std::size_t r, Trial& low, Trial& high) {
    low = high;
    double from = price_[r];
    const double all = std::max(1.0, std::fabs(static_cast<double>(low.use[r])));
    double step = 0.5 * static_cast<double>(std::max<std::int64_t>(1, low.light)) *
                  static_cast<double>(kLightUnit) / all;
    for (int i = 0; i < kDoublings; ++i, step *= 2.0) {
      price_[r] = from + step;
      high = trial();
      if (high.use[r] <= rows_[r].room) break;
      from = price_[r];
      low = high;
    }
    double to = price_[r];
    for (int i = 0; i < kHalvings && low.use[r] > rows_[r].room; ++i) {
      const auto apart = static_cast<double>(low.light - high.light);
      if (all_.size() > kMostProven && apart <= kNear * static_cast<double>(low.light)) break;
      const double before = over(low, r);
      const double after = over(high, r);
      // Where a straight line between the two meets the limit; every third time the middle.
      double share = before > after ? before / (before - after) : 0.5;
      share = i % 3 == 2 ? 0.5 : std::clamp(share, 0.02, 0.98);
      price_[r] = from + (to - from) * share;
      if (!(price_[r] > from && price_[r] < to)) break;
      Trial middle = trial();
      if (middle.use[r] <= rows_[r].room) {
        to = price_[r];
        high = std::move(middle);
      } else {
        from = price_[r];
        low = std::move(middle);
      }
    }
    price_[r] = to;
  }

  /// What the plans differ by in one part of the wood.
  struct Change {
    std::int64_t light = 0;
    std::vector<std::int64_t> use;
    std::uint32_t part = 0;
  };

  void add(const Trial& t, std::int64_t sign, std::vector<Change>& changes) {
    for (std::size_t i = 0; i < t.plan.released.size(); ++i) {
      Change& change = changes[part_[t.plan.released[i]]];
      change.light += sign * t.plan.light[i];
      for (std::size_t r = 0; r < rows_.size(); ++r) {
        change.use[r] += sign * rows_[r].release[all_.tree(t.plan.released[i])];
      }
    }
    for (std::size_t i = 0; i < t.plan.taken.size(); ++i) {
      Change& change = changes[part_[t.plan.taken_by[i]]];
      for (std::size_t r = 0; r < rows_.size(); ++r) {
        change.use[r] += sign * rows_[r].take[t.plan.taken[i]];
      }
    }
  }

  /// The plan `high` with as many parts of `low` as the guards allow.
  void merge(const Trial& high, const Trial& low, BoundedPlan& plan) {
    std::vector<Change> changes(parts_);
    for (std::uint32_t p = 0; p < parts_; ++p) {
      changes[p] = {0, std::vector<std::int64_t>(rows_.size(), 0), p};
    }
    add(low, +1, changes);
    add(high, -1, changes);
    std::vector<const Change*> order;
    for (const Change& change : changes) {
      if (change.light > 0) order.push_back(&change);
    }
    const auto gain = [&](const Change& change) {
      double cost = 1e-9;
      for (std::size_t r = 0; r < rows_.size(); ++r) {
        cost += price_[r] * static_cast<double>(change.use[r]);
      }
      return static_cast<double>(change.light) / std::max(cost, 1e-9);
    };
    std::stable_sort(order.begin(), order.end(),
                     [&](const Change* a, const Change* b) { return gain(*a) > gain(*b); });
    std::vector<std::int64_t> use = high.use;
    std::vector<bool> from_low(parts_, false);
    for (const Change* change : order) {
      bool fits = true;
      for (std::size_t r = 0; r < rows_.size(); ++r) {
        fits = fits && use[r] + change->use[r] <= rows_[r].room;
      }
      if (!fits) continue;
      from_low[change->part] = true;
      for (std::size_t r = 0; r < rows_.size(); ++r) use[r] += change->use[r];
    }
    for (const bool is_low : {false, true}) {
      const PricedPlan& from = is_low ? low.plan : high.plan;
      for (const std::uint32_t c : from.released) {
        if (from_low[part_[c]] == is_low) plan.released.push_back(c);
      }
      for (std::size_t i = 0; i < from.held.size(); ++i) {
        if (from_low[part_[from.held_by[i]]] == is_low) plan.held.push_back(from.held[i]);
      }
    }
    std::sort(plan.released.begin(), plan.released.end());
  }

  Candidates& all_;
  PricedPlans& plans_;
  const std::vector<GuardRow>& rows_;
  std::vector<double> price_;  // of each row, in kLightUnit a point for one of its whole numbers
  std::vector<double> best_price_;  // of the least bound
  std::optional<Trial> known_;      // the best that every guard allows
  Prices prices_, ties_;
  std::int64_t tie_sum_ = 0;
  std::int64_t bound_;
  std::vector<std::uint32_t> part_;  // by candidate
  std::uint32_t parts_ = 0;
};

}  // namespace

Prices tie_prices(const Candidates& candidates) {
  const auto& trees = candidates.problem().graph.trees();
  Prices ties{std::vector<std::int64_t>(trees.size(), 0),
              std::vector<std::int64_t>(candidates.size(), 0)};
  for (std::size_t i = 0; i < trees.size(); ++i) {
    const std::int64_t tenths = std::llround(10.0 * trees[i].facts.dbh.inches().value);
    ties.take[i] = kTiePrice + tenths * tenths / 16;
  }
  return ties;
}

BoundedPlan priced_plan(Candidates& candidates, PricedPlans& plans,
                        const std::vector<GuardRow>& rows) {
  return Pricing(candidates, plans, rows).run();
}

}  // namespace oaklight
