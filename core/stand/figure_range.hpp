#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/sample/cruise_estimate.hpp"
#include "core/stand/stand_stocking.hpp"

namespace oaklight {

/// A figure that was worked out beyond what its source covers, or from too little.
struct OutOfRange {
  std::string_view key;  ///< of its source note
  std::string words;     ///< what is beyond, one sentence without its full stop
};

/// All that must be said beside the figures of an area, in the order of source_notes(): few plots,
/// mean diameters and species beyond the stocking guide, trees beyond the tables of board feet and
/// cords, heights beyond the local curve.
///
/// stocking  of the same area; nullptr: not told
/// source    the limits of core/measure/stocking.hpp, tree_volume.hpp and cords.hpp
[[nodiscard]] std::vector<OutOfRange> out_of_range(const AreaEstimate& area,
                                                   const StandStocking* stocking);

/// What must be said of the stocking alone; "" within the guide.
[[nodiscard]] std::string beyond_guide(const StandStocking& stocking);

}  // namespace oaklight
