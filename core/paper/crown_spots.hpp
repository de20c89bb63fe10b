#pragma once

#include <QPointF>
#include <optional>
#include <vector>

#include "core/paper/crown_chart.hpp"

namespace oaklight {

/// Where a neighbour is drawn, in feet east and north of the crop tree.
struct CrownSpot {
  QPointF off;
  bool measured = false;  ///< azimuth and distance were read
};

/// One foot that way, east and north. bearing in degrees from true north
QPointF towards(double bearing);

/// Places for all neighbours of a card, in their order: as read; in the middle of the side where
/// only that is known, beside one another where several share it; at a distance that fits what was
/// seen where none was taped. Nothing for a neighbour of no known side or azimuth.
std::vector<std::optional<CrownSpot>> spots_of(const CrownCard& card);

}  // namespace oaklight
