#include "core/release/relaxation.hpp"

#include <algorithm>
#include <limits>

namespace oaklight {

Relaxation::Relaxation(Candidates& candidates, const SearchTask& task)
    : all_(candidates),
      task_(task),
      released_(candidates.size(), false),
      blocked_(candidates.size(), 0) {
  find_cliques();
  find_rooms();
  find_shares();
  find_after();
}

/// Each candidate joins the first set of which it rivals all.
void Relaxation::find_cliques() {
  constexpr std::uint32_t kNone = std::numeric_limits<std::uint32_t>::max();
  std::vector<std::uint32_t> home(all_.size(), kNone);
  std::vector<std::vector<std::uint32_t>> members;
  for (const std::uint32_t c : task_.order) {
    const auto& rivals = all_.rivals(c);
    std::uint32_t best = static_cast<std::uint32_t>(members.size());
    for (const std::uint32_t rival : rivals) {
      const std::uint32_t q = home[rival];
      if (q < best && std::all_of(members[q].begin(), members[q].end(), [&](std::uint32_t m) {
            return std::binary_search(rivals.begin(), rivals.end(), m);
          })) {
        best = q;
      }
    }
    if (best == members.size()) members.emplace_back();
    members[best].push_back(c);
    home[c] = best;
    clique_.push_back(best);
  }
  slots_.resize(members.size());
}

void Relaxation::find_rooms() {
  if (task_.rows == nullptr) return;
  std::vector<bool> may_go(all_.problem().graph.trees().size(), false);
  for (const std::uint32_t c : task_.order) {
    for (const std::uint32_t i : all_.problem().graph.around(all_.tree(c))) {
      may_go[all_.problem().graph.contacts()[i].neighbour] = true;
    }
  }
  for (const GuardRow& row : *task_.rows) {
    std::int64_t room = row.room;
    for (std::size_t tree = 0; tree < may_go.size(); ++tree) {
      if (may_go[tree]) room -= std::min<std::int64_t>(0, row.take[tree]);
    }
    room_.push_back(room);
  }
  use_.assign(room_.size(), 0);
  share_use_.assign(room_.size(), 0);
}

/// A tree that several may take is shared out among them, so that the shares of those released
/// never add up to more than is taken.
void Relaxation::find_shares() {
  if (task_.rows == nullptr) return;
  std::vector<std::int64_t> takers(all_.problem().graph.trees().size(), 0);
  std::vector<std::uint32_t> trees;
  for (const std::uint32_t c : task_.order) {
    if (!all_.ways_are_all(c)) continue;
    trees.clear();
    for (const LocalOutcome* way : all_.ways(c)) {
      trees.insert(trees.end(), way->takes.begin(), way->takes.end());
    }
    std::sort(trees.begin(), trees.end());
    trees.erase(std::unique(trees.begin(), trees.end()), trees.end());
    for (const std::uint32_t tree : trees) ++takers[tree];
  }
  for (const GuardRow& row : *task_.rows) {
    std::vector<std::int64_t> shares(all_.size(), 0);
    for (const std::uint32_t c : task_.order) {
      std::int64_t least = std::numeric_limits<std::int64_t>::max();
      for (const LocalOutcome* way : all_.ways(c)) {
        std::int64_t sum = 0;
        for (const std::uint32_t tree : way->takes) {
          if (takers[tree] > 0) sum += std::max<std::int64_t>(0, row.take[tree]) / takers[tree];
        }
        least = std::min(least, sum);
      }
      const bool known = all_.ways_are_all(c) && !all_.ways(c).empty();
      shares[c] = (known ? least : 0) + row.release[all_.tree(c)];
    }
    share_.push_back(std::move(shares));
  }
}

void Relaxation::find_after() {
  const std::size_t count = task_.order.size();
  after_.assign(count + 1, 0);
  later_.assign(count + 1, 0);
  block_end_.assign(count + 1, count);
  std::fill(slots_.begin(), slots_.end(), Slot{});
  std::int64_t light = 0;  // of this component, from here on; no set spans two components
  for (std::size_t at = count; at-- > 0;) {
    const bool last = at + 1 == count || task_.blocks[at + 1] != task_.blocks[at];
    block_end_[at] = last ? at + 1 : block_end_[at + 1];
    later_[at] = last ? after_[at + 1] : later_[at + 1];
    if (last) light = 0;
    Slot& slot = slots_[clique_[at]];
    const std::int64_t most = all_.most_light(task_.order[at]);
    light += std::max<std::int64_t>(0, most - slot.light);
    slot.light = std::max(slot.light, most);
    const bool whole = at == 0 || task_.blocks[at - 1] != task_.blocks[at];
    const bool known = whole && !task_.best_of.empty();
    after_[at] = later_[at] + (known ? std::min(light, task_.best_of[task_.blocks[at]]) : light);
  }
}

/// The best that is still open in each set of rivals, at places at .. end.
void Relaxation::fill_slots(std::size_t at, std::size_t end) {
  std::fill(slots_.begin(), slots_.end(), Slot{});
  for (std::size_t i = at; i < end; ++i) {
    const std::uint32_t c = task_.order[i];
    if (!open(c)) continue;
    Slot& slot = slots_[clique_[i]];
    slot.light = std::max(slot.light, all_.most_light(c));
  }
}

void Relaxation::release(std::uint32_t c) {
  released_[c] = true;
  std::vector<std::uint32_t> blocked = all_.rivals(c);
  Candidates::Trees unit = all_.unit_of(c, released_);
  const std::size_t members = unit.size();
  for (std::size_t i = 0; i < members; ++i) {
    for (const std::uint32_t other : all_.meets(unit[i])) {
      if (released_[other]) continue;
      unit.push_back(other);
      if (!all_.fits(unit)) blocked.push_back(other);
      unit.pop_back();
    }
  }
  for (const std::uint32_t other : blocked) ++blocked_[other];
  blocks_.push_back(std::move(blocked));
  for (std::size_t r = 0; r < room_.size(); ++r) {
    use_[r] += (*task_.rows)[r].release[all_.tree(c)];
    share_use_[r] += share_[r][c];
  }
}

void Relaxation::undo_release(std::uint32_t c) {
  released_[c] = false;
  for (const std::uint32_t other : blocks_.back()) --blocked_[other];
  blocks_.pop_back();
  for (std::size_t r = 0; r < room_.size(); ++r) {
    use_[r] -= (*task_.rows)[r].release[all_.tree(c)];
    share_use_[r] -= share_[r][c];
  }
}

std::int64_t Relaxation::bound(std::size_t at, std::int64_t light) {
  if (at == task_.order.size()) return light;
  fill_slots(at, block_end_[at]);
  std::int64_t rest = 0;
  for (const Slot& slot : slots_) rest += slot.light;
  rest = std::min(rest + later_[at], after_[at]);
  for (std::size_t r = 0; r < room_.size(); ++r) rest = std::min(rest, knapsack(at, r));
  return light + rest;
}

/// Light of the candidates left within what is left of one guard, parts of trees allowed.
std::int64_t Relaxation::knapsack(std::size_t at, std::size_t row) {
  constexpr std::int64_t kNone = std::numeric_limits<std::int64_t>::max();
  std::fill(slots_.begin(), slots_.end(), Slot{0, kNone});
  for (std::size_t i = at; i < task_.order.size(); ++i) {
    const std::uint32_t c = task_.order[i];
    if (!open(c)) continue;
    Slot& slot = slots_[clique_[i]];
    slot.light = std::max(slot.light, all_.most_light(c));
    slot.least = std::min(slot.least, share_[row][c]);
  }
  sorted_.clear();
  std::int64_t least = 0;
  for (const Slot& slot : slots_) {
    if (slot.light == 0) continue;
    sorted_.push_back(slot);
    least += slot.least;
  }
  std::int64_t room = std::max<std::int64_t>(0, room_[row] - share_use_[row]);
  if (least <= room) return kNone;
  // What uses nothing goes first, however little light it gives.
  const auto ratio = [](const Slot& s) {
    return s.least > 0 ? static_cast<double>(s.light) / static_cast<double>(s.least)
                       : std::numeric_limits<double>::infinity();
  };
  std::sort(sorted_.begin(), sorted_.end(),
            [&](const Slot& a, const Slot& b) { return ratio(a) > ratio(b); });
  std::int64_t light = 0;
  for (const Slot& slot : sorted_) {
    if (slot.least > room) {
      const double part = static_cast<double>(room) / static_cast<double>(slot.least);
      return light + static_cast<std::int64_t>(part * static_cast<double>(slot.light)) + 1;
    }
    light += slot.light;
    room -= slot.least;
  }
  return light;
}

}  // namespace oaklight
