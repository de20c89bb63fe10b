#include "core/release/search.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/release/relaxation.hpp"

namespace oaklight {
namespace {

constexpr std::int64_t kTakeCost = std::int64_t{1} << 36U;  // above any sum of squared diameters
constexpr std::int64_t kHoldCost = std::int64_t{1} << 54U;

class Search {
 public:
  Search(Candidates& candidates, const SearchTask& task)
      : all_(candidates),
        task_(task),
        rows_(task.rows),
        relaxation_(candidates, task),
        released_(candidates.size(), false),
        held_(candidates.problem().graph.trees().size(), false),
        fixed_(held_.size(), false),
        wanted_(held_.size(), 0),
        ends_(task.order.size()) {
    if (rows_ != nullptr) used_.assign(rows_->size(), 0);
    find_ends();
  }

  SearchResult run() {
    if (!within_guards()) {  // broken before anything is released
      result_.finished = true;
      return std::move(result_);
    }
    result_.bound = relaxation_.bound(0, 0);
    try_starts();
    node(0, 0);
    result_.finished = !stopped_;
    if (result_.finished) result_.bound = result_.score.light;
    return std::move(result_);
  }

 private:
  /// A released tree's outcome is known once the last of its fellows is decided.
  void find_ends() {
    std::vector<std::size_t> place(all_.size(), 0);
    for (std::size_t i = 0; i < task_.order.size(); ++i) place[task_.order[i]] = i;
    for (const std::uint32_t c : task_.order) {
      std::size_t last = place[c];
      for (const std::uint32_t other : all_.meets(c)) last = std::max(last, place[other]);
      ends_[last].push_back(c);
    }
  }

  /// A start that is allowed is what every branch must beat or equal.
  void try_starts() {
    for (const auto& start : task_.starts) {
      for (const std::uint32_t c : start) released_[c] = true;
      leaf();
      for (const std::uint32_t c : start) released_[c] = false;
    }
    // So that the first of several equals is found in the order of search, whatever the start was.
    if (result_.found) ++result_.score.cost;
  }

  void node(std::size_t at, std::int64_t light) {
    if (stopped_ || ++nodes_ > task_.nodes) {
      stopped_ = true;
      return;
    }
    if (!may_beat({relaxation_.simple_bound(at, light), taken_cost_})) return;
    if (!may_beat({relaxation_.bound(at, light), taken_cost_})) return;
    if (at == task_.order.size()) {
      leaf();
      return;
    }
    const std::uint32_t c = task_.order[at];
    if (relaxation_.open(c)) {
      released_[c] = true;
      if (all_.fits(all_.unit_of(c, released_))) {
        relaxation_.release(c);
        descend(at, light + all_.most_light(c));
        relaxation_.undo_release(c);
      }
      released_[c] = false;
    }
    descend(at, light);
  }

  /// Books what is certain once the candidate at this place is decided, and goes on.
  void descend(std::size_t at, std::int64_t light) {
    const std::size_t mark = booked_.size();
    bool fine = true;
    for (const std::uint32_t c : ends_[at]) {
      if (!released_[c]) continue;
      const LocalOutcome& outcome = all_.outcome(c, released_);
      fine = outcome.reaches;
      if (!fine) break;
      if (all_.beside_holdable(c)) continue;  // may yet give and take less
      light += outcome.light - all_.most_light(c);
      for (const std::uint32_t tree : outcome.takes) book(tree);
    }
    if (fine && within_guards()) node(at + 1, light);
    while (booked_.size() > mark) unbook();
  }

  void book(std::uint32_t tree) {
    booked_.push_back(tree);
    if (wanted_[tree]++ > 0) return;
    taken_cost_ += cost_of(tree);
    if (rows_ == nullptr) return;
    for (std::size_t r = 0; r < rows_->size(); ++r) {
      used_[r] += std::max<std::int64_t>(0, (*rows_)[r].take[tree]);
    }
  }

  void unbook() {
    const std::uint32_t tree = booked_.back();
    booked_.pop_back();
    if (--wanted_[tree] > 0) return;
    taken_cost_ -= cost_of(tree);
    if (rows_ == nullptr) return;
    for (std::size_t r = 0; r < rows_->size(); ++r) {
      used_[r] -= std::max<std::int64_t>(0, (*rows_)[r].take[tree]);
    }
  }

  bool within_guards() const {
    if (rows_ == nullptr) return true;
    for (std::size_t r = 0; r < rows_->size(); ++r) {
      if (used_[r] + relaxation_.released_use(r) > relaxation_.most_room(r)) return false;
    }
    return true;
  }

  std::int64_t cost_of(std::uint32_t tree) const {
    const double dbh = all_.problem().graph.trees()[tree].facts.dbh.inches().value;
    const std::int64_t tenths = std::llround(10.0 * dbh);
    return kTakeCost + tenths * tenths;
  }

  bool may_beat(const Score& score) const { return !result_.found || score.beats(result_.score); }

  /// All candidates are decided.
  void leaf() {
    std::vector<std::uint32_t> chosen;
    for (const std::uint32_t c : task_.order) {
      if (released_[c]) chosen.push_back(c);
    }
    hold(chosen, 0);
  }

  /// Ranks the choice with the oaks held so far; where a guard is broken, tries to hold one more.
  void hold(const std::vector<std::uint32_t>& chosen, std::int64_t holds) {
    if (holds > 0 && (stopped_ || ++nodes_ > task_.nodes)) {
      stopped_ = true;
      return;
    }
    Score score{0, holds * kHoldCost};
    std::vector<std::uint32_t> taken;
    for (const std::uint32_t c : chosen) {
      const LocalOutcome& outcome = all_.outcome(c, released_, &held_);
      if (!outcome.reaches || !all_.fits(all_.unit_of(c, released_))) return;
      score.light += outcome.light;
      taken.insert(taken.end(), outcome.takes.begin(), outcome.takes.end());
    }
    std::sort(taken.begin(), taken.end());
    taken.erase(std::unique(taken.begin(), taken.end()), taken.end());
    for (const std::uint32_t tree : taken) score.cost += cost_of(tree);
    if (result_.found && score.light < result_.score.light) return;
    if (allowed(chosen, taken)) {
      if (may_beat(score)) keep(score, chosen);
      return;
    }
    hold_one_more(chosen, taken, holds);
  }

  void hold_one_more(const std::vector<std::uint32_t>& chosen,
                     const std::vector<std::uint32_t>& taken, std::int64_t holds) {
    std::vector<std::uint32_t> tried;
    for (const std::uint32_t tree : taken) {
      if (!all_.holdable(tree) || fixed_[tree]) continue;
      held_[tree] = true;
      hold(chosen, holds + 1);
      held_[tree] = false;
      fixed_[tree] = true;  // from here on it goes
      tried.push_back(tree);
    }
    for (const std::uint32_t tree : tried) fixed_[tree] = false;
  }

  bool allowed(const std::vector<std::uint32_t>& chosen,
               const std::vector<std::uint32_t>& taken) const {
    if (rows_ == nullptr) return true;
    return std::all_of(rows_->begin(), rows_->end(), [&](const GuardRow& row) {
      std::int64_t sum = 0;
      for (const std::uint32_t c : chosen) sum += row.release[all_.tree(c)];
      for (const std::uint32_t tree : taken) sum += row.take[tree];
      return sum <= row.room;
    });
  }

  void keep(const Score& score, const std::vector<std::uint32_t>& chosen) {
    result_.found = true;
    result_.score = score;
    result_.released = chosen;
    result_.held.clear();
    for (std::uint32_t tree = 0; tree < held_.size(); ++tree) {
      if (held_[tree]) result_.held.push_back(tree);
    }
  }

  Candidates& all_;
  const SearchTask& task_;
  const std::vector<GuardRow>* rows_;
  Relaxation relaxation_;
  std::vector<bool> released_;      // by candidate
  std::vector<bool> held_, fixed_;  // by tree
  std::vector<int> wanted_;
  std::vector<std::vector<std::uint32_t>>
      ends_;  // by place: candidates whose outcome is known then
  std::vector<std::uint32_t> booked_;
  std::vector<std::int64_t> used_;
  std::int64_t taken_cost_ = 0;
  std::int64_t nodes_ = 0;
  bool stopped_ = false;
  SearchResult result_;
};

}  // namespace

SearchResult search(Candidates& candidates, const SearchTask& task) {
  return Search(candidates, task).run();
}

}  // namespace oaklight
