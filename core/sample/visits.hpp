#pragma once

#include <set>
#include <string_view>
#include <utility>

#include "core/model/mark.hpp"

namespace oaklight {

/// A cruise in one stand.
using VisitsLeftOut = std::set<std::pair<StandId, CruiseId>>;

/// Visits that do not count towards how a stand stands now, since another cruise went, or is going,
/// to the same plots.
///
/// Two cruises of one stand are visits to the same plots when they share a plot label and have
/// different days. The later one counts once any of its plots was visited, and the earlier one
/// until then. Cruises without a day are never told apart here.
///
/// source   definition
[[nodiscard]] VisitsLeftOut visits_left_out(const TractData& data);

/// The same tract as it was before the newest visit: the plots of the newest begun visit to each
/// stand that was visited twice are taken out, with their trees and seedlings.
[[nodiscard]] TractData before_newest_visit(const TractData& data);

/// The same tract with the plots of one cruise only. Empty plots lists when none has that name.
[[nodiscard]] TractData of_cruise(const TractData& data, std::string_view name);

}  // namespace oaklight
