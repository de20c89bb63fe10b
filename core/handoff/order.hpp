#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "core/model/place.hpp"

namespace oaklight {

/// Order in which people read tags: "B2" before "B10", "b2" after "B2".
[[nodiscard]] bool tag_before(std::string_view a, std::string_view b);

/// A stop on a walk.
struct Stop {
  std::string_view tag;
  std::optional<Position> position;
};

/// An order in which to walk: from the stop nearest to `start` always on to the nearest one that is
/// left; without a start, from the first tag. Stops without a position come last, by tag.
///
/// returns  indices into `stops`, each once; the same whatever order the stops come in
[[nodiscard]] std::vector<std::size_t> walking_order(const std::vector<Stop>& stops,
                                                     std::optional<Position> start);

}  // namespace oaklight
