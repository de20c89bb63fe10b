#pragma once

#include <functional>

#include "core/base/result.hpp"
#include "core/model/mark.hpp"

namespace oaklight {

/// Who takes the trees of a tract one after the other, so that they need not be in memory together.
struct TreeStream {
  /// All that the tract holds but its trees, before the first of them. May come a second time: then
  /// everything begins anew.
  std::function<Status(const TractData& others)> begin;
  /// A tree; plot by plot in order of the plots' ids, and in order of id within a plot.
  std::function<Status(const Tree& tree)> take;
};

}  // namespace oaklight
