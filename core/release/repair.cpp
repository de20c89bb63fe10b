#include "core/release/repair.hpp"

#include <algorithm>

namespace oaklight {
namespace {

class Repair {
 public:
  Repair(Candidates& candidates, const std::vector<GuardRow>& rows)
      : all_(candidates),
        rows_(rows),
        released_(candidates.size(), false),
        booked_(candidates.size(), nullptr),
        wanted_(candidates.problem().graph.trees().size(), 0),
        used_(rows.size(), 0) {}

  std::vector<std::uint32_t> run(const std::vector<std::uint32_t>& from) {
    for (const std::uint32_t c : from) released_[c] = true;
    for (const std::uint32_t c : from) book(c);
    for (std::size_t r = worst(); r < rows_.size(); r = worst()) {
      if (!relieve(r)) return {};
    }
    for (const std::uint32_t c : by_light_for_use(from)) add(c);
    for (std::uint32_t c = 0; c < all_.size(); ++c) add(c);
    std::vector<std::uint32_t> left;
    for (std::uint32_t c = 0; c < all_.size(); ++c) {
      if (released_[c]) left.push_back(c);
    }
    return left;
  }

 private:
  void count(std::uint32_t c, int sign) {
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      used_[r] += sign * rows_[r].release[all_.tree(c)];
    }
    for (const std::uint32_t tree : booked_[c]->takes) {
      const bool was = wanted_[tree] > 0;
      wanted_[tree] += sign;
      if (was == (wanted_[tree] > 0)) continue;
      for (std::size_t r = 0; r < rows_.size(); ++r) used_[r] += sign * rows_[r].take[tree];
    }
  }
  void book(std::uint32_t c) {
    booked_[c] = &all_.outcome(c, released_);
    count(c, +1);
  }
  void unbook(std::uint32_t c) {
    if (booked_[c] == nullptr) return;
    count(c, -1);
    booked_[c] = nullptr;
  }

  bool holds(std::size_t r) const { return used_[r] <= rows_[r].room; }

  /// The guard passed by most, in parts of what is used; rows_.size() when all hold.
  std::size_t worst() const {
    std::size_t found = rows_.size();
    double most = 0.0;
    for (std::size_t r = 0; r < rows_.size(); ++r) {
      if (holds(r)) continue;
      const double over = static_cast<double>(used_[r] - rows_[r].room) /
                          std::max(1.0, static_cast<double>(used_[r]));
      if (found < rows_.size() && over <= most) continue;
      most = over;
      found = r;
    }
    return found;
  }

  /// What a released tree uses of a guard by itself.
  double use(std::size_t r, std::uint32_t c) const {
    std::int64_t sum = rows_[r].release[all_.tree(c)];
    for (const std::uint32_t tree : booked_[c]->takes) {
      sum += rows_[r].take[tree] / std::max(1, wanted_[tree]);
    }
    return static_cast<double>(sum);
  }

  /// Drops until this guard holds; false when nothing released uses any of it.
  bool relieve(std::size_t r) {
    std::vector<std::pair<double, std::uint32_t>> order;
    for (std::uint32_t c = 0; c < all_.size(); ++c) {
      if (!released_[c] || use(r, c) <= 0.0) continue;
      order.emplace_back(static_cast<double>(booked_[c]->light) / use(r, c), c);
    }
    std::sort(order.begin(), order.end());
    bool any = false;
    for (const auto& entry : order) {
      if (holds(r)) return true;
      if (!released_[entry.second]) continue;
      drop(entry.second);
      any = true;
    }
    return any;
  }

  /// Drops a tree, and those of its unit that cannot do without it.
  void drop(std::uint32_t c) {
    std::vector<std::uint32_t> look{c};
    while (!look.empty()) {
      const std::uint32_t next = look.back();
      look.pop_back();
      if (!released_[next]) continue;
      unbook(next);
      if (next != c && all_.outcome(next, released_).reaches) {
        book(next);
        continue;
      }
      released_[next] = false;
      look.insert(look.end(), all_.meets(next).begin(), all_.meets(next).end());
    }
  }

  /// Releases a tree if every guard and its unit allow it.
  void add(std::uint32_t c) {
    if (released_[c] || all_.most_light(c) == 0) return;
    released_[c] = true;
    const Candidates::Trees unit = all_.unit_of(c, released_);
    const bool fits = all_.fits(unit) && std::all_of(unit.begin(), unit.end(), [&](auto member) {
                        return all_.outcome(member, released_).reaches;
                      });
    if (!fits) {
      released_[c] = false;
      return;
    }
    for (const std::uint32_t member : unit) unbook(member);
    for (const std::uint32_t member : unit) book(member);
    if (worst() == rows_.size()) return;
    for (const std::uint32_t member : unit) unbook(member);
    released_[c] = false;
    for (const std::uint32_t member : unit) {
      if (member != c) book(member);
    }
  }

  /// Those dropped, first the ones whose whole crown costs least of all guards together.
  std::vector<std::uint32_t> by_light_for_use(const std::vector<std::uint32_t>& from) {
    std::vector<std::pair<double, std::uint32_t>> order;
    for (const std::uint32_t c : from) {
      if (released_[c]) continue;
      const LocalOutcome& outcome = all_.outcome(c, released_);
      double sum = 1e-9;
      for (const GuardRow& row : rows_) {
        std::int64_t own = row.release[all_.tree(c)];
        for (const std::uint32_t tree : outcome.takes) own += row.take[tree];
        sum += static_cast<double>(own) / std::max(1.0, static_cast<double>(row.room));
      }
      order.emplace_back(-static_cast<double>(outcome.light) / std::max(1e-9, sum), c);
    }
    std::sort(order.begin(), order.end());
    std::vector<std::uint32_t> list;
    for (const auto& entry : order) list.push_back(entry.second);
    return list;
  }

  Candidates& all_;
  const std::vector<GuardRow>& rows_;
  std::vector<bool> released_;
  std::vector<const LocalOutcome*> booked_;
  std::vector<int> wanted_;
  std::vector<std::int64_t> used_;
};

}  // namespace

std::vector<std::uint32_t> repaired(Candidates& candidates, const std::vector<GuardRow>& rows,
                                    const std::vector<std::uint32_t>& from) {
  return Repair(candidates, rows).run(from);
}

}  // namespace oaklight
