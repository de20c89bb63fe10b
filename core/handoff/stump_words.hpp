#pragma once

#include <string>

#include "core/base/number_text.hpp"
#include "core/handoff/stump_check.hpp"

namespace oaklight {

/// "12.4 in (11.6 to 13.1)", or without the ends where they read the same.
template <class Q>
std::string between_text(const Between<Q>& value, int decimals, const std::string& unit = "") {
  const std::string low = grouped_text(value.low.value, decimals);
  const std::string high = grouped_text(value.high.value, decimals);
  const std::string likely = grouped_text(value.likely.value, decimals) + unit;
  return low == high ? likely : likely + " (" + low + " to " + high + ")";
}

}  // namespace oaklight
