// The second half of Elimination: the best choice within limits, by labels.
#include <algorithm>
#include <array>
#include <limits>

#include "core/release/elimination.hpp"

namespace oaklight {
namespace {

constexpr std::size_t kMostLimits = 4;
constexpr std::int64_t kNever = std::numeric_limits<std::int64_t>::min() / 64;
constexpr std::uint32_t kNone = 0xffffffffU;

/// A half-made choice.
struct Label {
  std::int64_t value = 0, gain = 0;
  std::array<std::int64_t, kMostLimits> use{};
  std::uint32_t made = kNone;  // how it was made
};
using Labels = std::vector<Label>;

}  // namespace

class LabelSearch {
 public:
  LabelSearch(const Elimination& e, std::span<const std::int64_t> values, const Budget& budget)
      : e_(e), values_(values), budget_(budget), limits_(budget.rooms.size()) {
    for (const auto& uses : budget.uses) {
      only_more_.push_back(
          std::all_of(uses.begin(), uses.end(), [](auto use) { return use >= 0; }));
    }
  }

  Elimination::Outcome run(std::vector<std::uint8_t>& chosen) {
    if (limits_ > kMostLimits) return Elimination::Outcome::too_many;
    find_outside();
    kept_.resize(e_.steps_.size());
    Labels whole{Label{}};
    std::int64_t later = roots_;
    for (std::uint32_t s = 0; s < e_.steps_.size(); ++s) {
      if (!walk(s)) return Elimination::Outcome::too_many;
      if (!e_.steps_[s].scope.empty()) continue;
      later -= e_.tables_[e_.steps_[s].table];
      whole = crossed(whole, kept_[s].front(), later);
      thin(whole);
      kept_[s].clear();
      if (whole.size() + labels_ > budget_.most_labels) return Elimination::Outcome::too_many;
      if (whole.empty()) return Elimination::Outcome::none;
    }
    return best_of(whole, chosen);
  }

 private:
  /// A label is a state of a variable, or two labels together.
  struct Made {
    std::uint32_t left = kNone, right = kNone;
    std::uint32_t variable = 0;
    std::uint8_t state = 0;
  };

  /// For each entry of each table, the best that all else can add to it.
  void find_outside() {
    roots_ = 0;
    for (const auto& step : e_.steps_) {
      if (step.scope.empty()) roots_ += e_.tables_[step.table];
    }
    outside_.assign(e_.tables_.size(), kNever);
    std::vector<std::uint8_t> at;
    std::vector<std::size_t> places;
    for (std::size_t s = e_.steps_.size(); s-- > 0;) {
      const auto& step = e_.steps_[s];
      if (step.scope.empty()) outside_[step.table] = roots_ - e_.tables_[step.table];
      e_.begin(step, at, places);
      for (std::size_t entry = 0; entry < step.entries; ++entry) {
        for (std::size_t state = 0; state < e_.states_[step.variable]; ++state) {
          if (!e_.barred(step, state, at)) hand_down(step, state, entry, places);
        }
        e_.advance(step, at, places);
      }
    }
  }

  void hand_down(const Elimination::Step& step, std::size_t state, std::size_t entry,
                 const std::vector<std::size_t>& places) {
    std::int64_t sum = outside_[step.table + entry] + values_[e_.first_[step.variable] + state];
    for (std::size_t w = 0; w < places.size(); ++w) {
      sum += e_.tables_[places[w] + state * step.walks[w].own];
    }
    for (std::size_t w = 0; w < places.size(); ++w) {
      const std::size_t place = places[w] + state * step.walks[w].own;
      outside_[place] = std::max({outside_[place], sum - e_.tables_[place], kNever});
    }
  }

  bool allowed(const Label& label) const {
    for (std::size_t r = 0; r < limits_; ++r) {
      if (only_more_[r] && label.use[r] > budget_.rooms[r]) return false;
    }
    return true;
  }

  /// Every pair of one label each that may still become the best; `rest`: most that is to come.
  Labels crossed(const Labels& a, const Labels& b, std::int64_t rest) {
    Labels all;
    for (const Label& x : a) {
      for (const Label& y : b) {
        Label both{x.value + y.value, x.gain + y.gain, {}, kNone};
        if (both.value + rest < budget_.least_value) continue;
        for (std::size_t r = 0; r < limits_; ++r) both.use[r] = x.use[r] + y.use[r];
        if (!allowed(both)) continue;
        both.made = static_cast<std::uint32_t>(made_.size());
        made_.push_back({x.made, y.made, 0, 0});
        all.push_back(both);
      }
      if (all.size() > budget_.most_labels) break;
    }
    return all;
  }

  bool no_better(const Label& x, const Label& than) const {
    for (std::size_t r = 0; r < limits_; ++r) {
      if (x.use[r] < than.use[r]) return false;
    }
    return x.gain <= than.gain;
  }

  /// Leaves out what another label gains no less than and uses no more.
  void thin(Labels& labels) const {
    if (labels.size() < 2) return;
    std::stable_sort(labels.begin(), labels.end(), [](const Label& a, const Label& b) {
      return a.gain > b.gain || (a.gain == b.gain && a.use < b.use);
    });
    Labels left;
    for (const Label& label : labels) {
      // The one that gains least above it uses least where there is one limit only.
      const bool needless =
          limits_ == 1 ? !left.empty() && no_better(label, left.back())
                       : std::any_of(left.begin(), left.end(),
                                     [&](const Label& kept) { return no_better(label, kept); });
      if (!needless) left.push_back(label);
    }
    labels = std::move(left);
  }

  /// The labels of each entry of one step. False: too many.
  bool walk(std::uint32_t s) {
    const auto& step = e_.steps_[s];
    std::vector<std::uint8_t> at;
    std::vector<std::size_t> places;
    e_.begin(step, at, places);
    kept_[s].resize(step.entries);
    for (std::size_t entry = 0; entry < step.entries; ++entry) {
      for (std::size_t state = 0; state < e_.states_[step.variable]; ++state) {
        if (e_.barred(step, state, at)) continue;
        add_state(step, state, entry, places, kept_[s][entry]);
      }
      thin(kept_[s][entry]);
      labels_ += kept_[s][entry].size();
      if (labels_ > budget_.most_labels || made_.size() > kMostMade) return false;
      e_.advance(step, at, places);
    }
    for (const auto& walk : step.walks) {
      for (const Labels& list : kept_[walk.from]) labels_ -= list.size();
      kept_[walk.from].clear();
      kept_[walk.from].shrink_to_fit();
    }
    return true;
  }

  void add_state(const Elimination::Step& step, std::size_t state, std::size_t entry,
                 const std::vector<std::size_t>& places, Labels& list) {
    const std::size_t own = e_.first_[step.variable] + state;
    std::int64_t rest = outside_[step.table + entry];
    for (std::size_t w = 0; w < places.size(); ++w) {
      rest += e_.tables_[places[w] + state * step.walks[w].own];
    }
    if (rest + values_[own] < budget_.least_value) return;
    Label first{values_[own], budget_.gain[own], {}, static_cast<std::uint32_t>(made_.size())};
    for (std::size_t r = 0; r < limits_; ++r) first.use[r] = budget_.uses[r][own];
    made_.push_back({kNone, kNone, step.variable, static_cast<std::uint8_t>(state)});
    Labels some{first};
    for (std::size_t w = 0; w < places.size(); ++w) {
      const auto& walk = step.walks[w];
      const std::size_t place = places[w] + state * walk.own;
      rest -= e_.tables_[place];
      some = crossed(some, kept_[walk.from][place - walk.table], rest);
      thin(some);
    }
    list.insert(list.end(), some.begin(), some.end());
  }

  Elimination::Outcome best_of(const Labels& whole, std::vector<std::uint8_t>& chosen) const {
    const Label* best = nullptr;
    for (const Label& label : whole) {
      bool fits = true;
      for (std::size_t r = 0; r < limits_; ++r) fits = fits && label.use[r] <= budget_.rooms[r];
      if (fits && (best == nullptr || label.gain > best->gain)) best = &label;
    }
    if (best == nullptr) return Elimination::Outcome::none;
    chosen.assign(e_.size(), 0);
    std::vector<std::uint32_t> open{best->made};
    while (!open.empty()) {
      const std::uint32_t next = open.back();
      open.pop_back();
      if (next == kNone) continue;
      const Made& made = made_[next];
      if (made.left == kNone && made.right == kNone) {
        chosen[made.variable] = made.state;
      } else {
        open.push_back(made.left);
        open.push_back(made.right);
      }
    }
    return Elimination::Outcome::found;
  }

  static constexpr std::size_t kMostMade = 40'000'000;

  const Elimination& e_;
  std::span<const std::int64_t> values_;
  const Budget& budget_;
  const std::size_t limits_;
  std::vector<bool> only_more_;  // by limit: no state gives any of it back
  std::vector<std::int64_t> outside_;
  std::int64_t roots_ = 0;
  std::vector<std::vector<Labels>> kept_;  // by step, then by entry
  std::vector<Made> made_;
  std::size_t labels_ = 0;
};

Elimination::Outcome Elimination::best_within(std::span<const std::int64_t> values,
                                              const Budget& budget,
                                              std::vector<std::uint8_t>& chosen) const {
  return LabelSearch(*this, values, budget).run(chosen);
}

}  // namespace oaklight
