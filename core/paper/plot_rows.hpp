#pragma once

#include <span>
#include <vector>

#include "core/paper/map_scene.hpp"

namespace oaklight {

/// Plots of one stand in rows: marks with their labels.
struct PlotRows {
  QString title;
  std::vector<const MapPlot*> plots;
};

/// One plot as it was drawn.
struct DrawnPlot {
  PlotId plot;
  QPointF at;
  double radius = 0.0;
};

/// How high the rows are at this width.
double plot_rows_height(std::span<const PlotRows> stands, double width);

/// Draws as many rows as the strip holds, the stand of the next plot first; where some are left
/// over the last line says how many.
std::vector<DrawnPlot> draw_plot_rows(Drawing& drawing, const QRectF& strip,
                                      std::span<const PlotRows> stands);

}  // namespace oaklight
