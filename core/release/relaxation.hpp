#pragma once

#include <cstdint>
#include <vector>

#include "core/release/search.hpp"

namespace oaklight {

/// Bounds of a search, and what they are reckoned from: which candidates are released so far and
/// which may still be.
class Relaxation {
 public:
  Relaxation(Candidates& candidates, const SearchTask& task);

  /// Whether a candidate may still be released.
  [[nodiscard]] bool open(std::uint32_t c) const {
    return blocked_[c] == 0 && all_.most_light(c) > 0;
  }
  void release(std::uint32_t c);
  /// Takes back the last release.
  void undo_release(std::uint32_t c);

  /// Light that no branch passes with everything before `at` decided and `light` got or hoped for
  /// from what is released.
  [[nodiscard]] std::int64_t bound(std::size_t at, std::int64_t light);
  /// The same, looser, at once.
  [[nodiscard]] std::int64_t simple_bound(std::size_t at, std::int64_t light) const {
    return light + after_[at];
  }

  /// What the released trees themselves use of a guard.
  [[nodiscard]] std::int64_t released_use(std::size_t row) const { return use_[row]; }
  /// Room of a guard if every tree whose removal helps it were taken.
  [[nodiscard]] std::int64_t most_room(std::size_t row) const { return room_[row]; }

 private:
  /// Of a set of rivals, of which one at most is released.
  struct Slot {
    std::int64_t light = 0;
    std::int64_t least = 0;  // of one guard
  };

  void find_cliques();
  void find_rooms();
  void find_shares();
  void find_after();
  void fill_slots(std::size_t at, std::size_t end);
  std::int64_t knapsack(std::size_t at, std::size_t row);

  Candidates& all_;
  const SearchTask& task_;
  std::vector<bool> released_;
  std::vector<int> blocked_;                        // by candidate
  std::vector<std::vector<std::uint32_t>> blocks_;  // by release: candidates that it blocked
  std::vector<std::uint32_t> clique_;               // by place
  std::vector<std::size_t> block_end_;              // by place
  std::vector<std::int64_t> after_, later_;  // by place: light of the rest; of later components
  std::vector<std::int64_t> room_, use_, share_use_;  // by row
  std::vector<std::vector<std::int64_t>> share_;      // by row, candidate: uses this at least
  std::vector<Slot> slots_;                           // by clique
  std::vector<Slot> sorted_;
};

}  // namespace oaklight
