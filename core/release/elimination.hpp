#pragma once

#include <cstdint>
#include <span>
#include <vector>

namespace oaklight {

/// What the states of an Elimination gain and use beside their values, and what may be used.
struct Budget {
  std::vector<std::int64_t> gain;               ///< by state, as values are
  std::vector<std::vector<std::int64_t>> uses;  ///< by limit, then by state
  std::vector<std::int64_t> rooms;              ///< by limit
  std::int64_t least_value = 0;  ///< choices of a lower total value are not looked for
  std::size_t most_labels = 0;   ///< half-made choices kept before it gives up
};

/// Variables with few states each, a value for each state, and pairs of states that exclude each
/// other. Finds the states of the greatest total value exactly, by eliminating one variable after
/// the other (dynamic programming): quick where the pairs leave only narrow sets between them, as
/// neighbours in a wood do. The order of elimination is found once; values may change and be solved
/// again.
class Elimination {
 public:
  /// states  of each variable, 1 or more
  explicit Elimination(std::vector<std::uint8_t> states);

  /// Forbids a pair of states of two different variables. Pairs may be forbidden twice.
  void forbid(std::uint32_t a, std::uint32_t state_a, std::uint32_t b, std::uint32_t state_b);

  /// Fixes the order. Call once, after the last forbid.
  ///
  /// limit    entries of the largest table; what is wider is cut apart, and solve() is then a bound
  /// returns  whether solve() is exact
  bool prepare(std::size_t limit);

  [[nodiscard]] std::size_t size() const { return states_.size(); }
  /// Where the values of a variable's states begin in the values given to solve().
  [[nodiscard]] std::size_t first(std::uint32_t variable) const { return first_[variable]; }
  [[nodiscard]] std::size_t value_count() const { return first_.back(); }

  /// values   one for each state of each variable
  /// chosen   the state of each variable, filled in; allowed, and the best when exact
  /// returns  the greatest total; when not exact, one that no choice passes
  std::int64_t solve(std::span<const std::int64_t> values, std::vector<std::uint8_t>& chosen);

  enum class Outcome { found, none, too_many };
  /// Of the choices whose total value is at least budget.least_value and that keep within every
  /// room, the one with the greatest gain: all half-made choices that may still become it are
  /// carried along, less those that another one gains more than and uses no more (labels).
  ///
  /// values  those of the last solve()
  /// chosen  filled in when found
  [[nodiscard]] Outcome best_within(std::span<const std::int64_t> values, const Budget& budget,
                                    std::vector<std::uint8_t>& chosen) const;

 private:
  friend class LabelSearch;
  struct Edge {
    std::uint32_t a, b;       // a < b
    std::uint32_t table = 0;  // into forbidden_, [state_a * states_b + state_b]
  };
  /// How a step looks into a table that it received while it walks over its scope.
  struct Walk {
    std::size_t table = 0;
    std::uint32_t from = 0;  // step that made it
    std::size_t own = 0;     // stride of the step's variable
    std::vector<std::size_t> strides;
  };
  /// Pairs of the step's variable with one of its scope.
  struct Bar {
    std::size_t place = 0;  // in the scope
    std::size_t table = 0;  // in forbidden_
    std::size_t own = 0, other = 0;
  };
  struct Step {
    std::uint32_t variable = 0;
    std::vector<std::uint32_t> scope;  // variables left, in order
    std::vector<Bar> bars;
    std::vector<Walk> walks;
    std::size_t table = 0, entries = 1;
  };

  void add_walks();
  void add_bars(std::uint32_t at);
  [[nodiscard]] bool barred(const Step& step, std::size_t state,
                            const std::vector<std::uint8_t>& at) const {
    for (const Bar& bar : step.bars) {
      if (forbidden_[bar.table + state * bar.own + at[bar.place] * bar.other] != 0) return true;
    }
    return false;
  }
  void run(const Step& step, std::span<const std::int64_t> values);
  /// Goes to the next set of states of a step's scope and moves the places in received tables.
  void advance(const Step& step, std::vector<std::uint8_t>& at,
               std::vector<std::size_t>& places) const;
  void begin(const Step& step, std::vector<std::uint8_t>& at,
             std::vector<std::size_t>& places) const;

  std::vector<std::uint8_t> states_;
  std::vector<std::size_t> first_;
  std::vector<Edge> edges_;
  std::vector<std::vector<std::pair<std::uint32_t, std::uint32_t>>> around_;  // (other, edge)
  std::vector<std::uint8_t> forbidden_;
  std::vector<Step> steps_;
  std::vector<std::uint32_t> step_of_;  // by variable
  std::vector<std::int64_t> tables_;
  std::vector<std::uint8_t> at_;  // scratch
  std::vector<std::size_t> places_;
};

}  // namespace oaklight
