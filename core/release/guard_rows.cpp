#include "core/release/guard_rows.hpp"

#include <algorithm>
#include <cmath>

#include "core/measure/stocking.hpp"

namespace oaklight {
namespace {

constexpr double kScale = 1e12;     // whole numbers of a row in one of its unit
constexpr double kSlack = 5e-10;    // half of what check_guards allows for rounding
constexpr double kSomeLeft = 1e-6;  // share of the oaks that counts as "some are left"
constexpr double kLargest = 9e5;    // x kScale and a few million trees still fits 64 bits

std::int64_t whole(double value) {
  return std::llround(std::clamp(value, -kLargest, kLargest) * kScale);
}

/// What one tree takes from the stand, an acre.
struct Share {
  double stocking = 0.0, ba = 0.0, oak = 0.0, white = 0.0, red = 0.0, crowns = 0.0;
};

class Rows {
 public:
  Rows(const ReleaseProblem& problem, const Guards& guards) : problem_(problem), guards_(guards) {
    const double acres = guards.covered.value;
    for (std::uint32_t i = 0; i < problem.graph.trees().size(); ++i) {
      const TreeFacts& facts = problem.graph.trees()[i].facts;
      CutTally own;
      own.take(facts, problem.traits[i], 1.0);
      own.release(facts, 1.0);
      shares_.push_back({upland_oak_stocking(own.counted).value / acres, own.ba.value / acres,
                         own.ba_oak.value / acres, own.ba_white_oak.value / acres,
                         own.ba_red_oak.value / acres, crown_competition(own.crops).value / acres});
    }
  }

  std::vector<GuardRow> rows() {
    const StandDensity& before = guards_.before;
    const GuardSettings& limits = guards_.limits;
    const double stocking = upland_oak_stocking(before.guard).value;
    const double floor = std::max(limits.stocking_floor.value, limits.b_line.value);
    add_take(stocking - floor + kSlack, [](const Share& s) { return s.stocking; });
    const double ba = before.ba.value;
    add_take(ba - limits.ba_floor.value + kSlack, [](const Share& s) { return s.ba; });
    // Share removed, in percent: all of nothing is 0 %.
    const double part = ba > 0.0 ? 100.0 / ba : 0.0;
    add_take(limits.removal_max.value + kSlack, [&](const Share& s) { return part * s.ba; });
    const double acres = guards_.covered.value;
    add_release(guards_.counts.max.value + kSlack, [&](const Share&) { return 1.0 / acres; });
    add_release(guards_.counts.crowns_max.value + kSlack, [](const Share& s) { return s.crowns; });
    add_balance();
    return std::move(rows_);
  }

 private:
  template <class Of>
  void add_take(double room, Of of) {
    GuardRow row = empty_row();
    for (std::size_t i = 0; i < shares_.size(); ++i) row.take[i] = whole(of(shares_[i]));
    row.room = whole(room);
    for (const std::uint32_t tree : problem_.taken_anyway) {
      row.room -= row.take[tree];
      row.take[tree] = 0;
    }
    rows_.push_back(std::move(row));
  }

  template <class Of>
  void add_release(double room, Of of) {
    GuardRow row = empty_row();
    for (std::size_t i = 0; i < shares_.size(); ++i) {
      if (problem_.worth[i] > 0) row.release[i] = whole(of(shares_[i]));
    }
    row.room = whole(room);
    rows_.push_back(std::move(row));
  }

  /// part - P(taken) >= limit x (total - T(taken)), so P - limit x T <= part - limit x total; and
  /// some of the total is left, or no share could be told.
  template <class Part, class Total>
  void add_share(double part, double total, double limit, Part part_of, Total total_of) {
    constexpr double kNoise = 1e-12;
    add_take(std::max(0.0, part - limit * total) + kNoise,
             [&](const Share& s) { return part_of(s) - limit * total_of(s); });
    if (limit > 0.0) add_take(total * (1.0 - kSomeLeft), total_of);
  }

  void add_balance() {
    const StandDensity& before = guards_.before;
    const double oaks = before.ba_oak.value;
    const double ba = before.ba.value;
    const auto oak = [](const Share& s) { return s.oak; };
    if (before.ba_white_oak.value > 0.0 && before.ba_red_oak.value > 0.0) {
      const double least = fraction(guards_.limits.oak_group_min);
      const double white = before.ba_white_oak.value;
      const double red = before.ba_red_oak.value;
      add_share(
          white, oaks, std::min(white / oaks, least), [](const Share& s) { return s.white; }, oak);
      add_share(
          red, oaks, std::min(red / oaks, least), [](const Share& s) { return s.red; }, oak);
    }
    const double least = fraction(guards_.limits.oak_min);
    if (guards_.goal == Goal::mast && ba > 0.0 && oaks / ba >= least) {
      add_share(oaks, ba, least, oak, [](const Share& s) { return s.ba; });
    }
  }

  GuardRow empty_row() const {
    const std::vector<std::int64_t> none(shares_.size(), 0);
    return {none, none, 0};
  }

  const ReleaseProblem& problem_;
  const Guards& guards_;
  std::vector<Share> shares_;
  std::vector<GuardRow> rows_;
};

}  // namespace

std::vector<GuardRow> guard_rows(const ReleaseProblem& problem) {
  if (!problem.guards) return {};
  return Rows(problem, *problem.guards).rows();
}

}  // namespace oaklight
