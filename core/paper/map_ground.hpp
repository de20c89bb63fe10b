#pragma once

#include <QPainterPath>
#include <QPointF>
#include <span>

#include "core/paper/map.hpp"

namespace oaklight {

/// What lies under the marks of a map: stands, lines, the walk, the outline that is being drawn.
void draw_map_ground(Drawing& drawing, const MapScene& scene, const MapView& view);

/// A line on the ground as the map shows it.
[[nodiscard]] QPainterPath path_on_map(std::span<const QPointF> ground, const MapView& view);

}  // namespace oaklight
