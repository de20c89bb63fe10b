#pragma once

#include <cstdint>
#include <vector>

#include "core/release/outcome.hpp"

namespace oaklight {

/// One guard as a linear constraint over the trees taken and the crop trees released:
/// sum of take + sum of release <= room. Whole numbers, so that no order of adding changes a sum.
struct GuardRow {
  std::vector<std::int64_t> take;     ///< by tree
  std::vector<std::int64_t> release;  ///< by tree
  std::int64_t room = 0;              ///< negative when the guard is broken before anything is cut
};

/// The guards of the problem with `taken_anyway` booked already; none when the stand is not
/// measured. A choice within these rows holds all guards of check_guards, to its rounding.
[[nodiscard]] std::vector<GuardRow> guard_rows(const ReleaseProblem& problem);

}  // namespace oaklight
