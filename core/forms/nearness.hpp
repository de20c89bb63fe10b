#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/place.hpp"

namespace oaklight {

/// The middle of positions: the median of each degree, so that one stray cannot pull it away.
/// Nothing without positions.
std::optional<Position> middle_of(const std::vector<Position>& positions);

/// Whether two positions can be of one tract: within half a degree, some 30 miles.
bool is_near(const Position& a, const Position& b);

/// What may have gone wrong with a position that should lie near the middle, as advice.
std::string stray_advice(const Position& stray, const Position& middle);

}  // namespace oaklight
