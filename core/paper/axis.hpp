#pragma once

#include <QRectF>
#include <QString>
#include <vector>

#include "core/paper/drawing.hpp"

namespace oaklight {

/// A run of numbers along one edge of a chart: from 0 or more up to a round number.
struct Axis {
  double from = 0.0;
  double to = 1.0;
  double step = 1.0;

  /// Rounds `to` up so that at most `count` steps of 1, 2, 2.5 or 5 times a power of ten hold
  /// `most`.
  static Axis holding(double most, int count);
  [[nodiscard]] int decimals() const;  ///< that its ticks need
  [[nodiscard]] std::vector<double> ticks() const;
};

/// A chart's field: x to the right, y up.
struct ChartField {
  QRectF box;
  Axis x, y;

  [[nodiscard]] double at_x(double value) const;
  [[nodiscard]] double at_y(double value) const;
  [[nodiscard]] QPointF at(double x_value, double y_value) const;
};

/// What the numbers along the left edge need.
double axis_width(const Axis& axis);
inline constexpr double kAxisHeight = 32.0;  ///< of the numbers below and their title
inline constexpr double kAxisTitle = 16.0;   ///< of the title above the left edge

/// Hairlines across the field, numbers along the left edge, and the title above it.
void draw_y_axis(Drawing& drawing, const ChartField& field, const QString& title);
/// The base line, ticks, numbers that have room, and the title below them.
/// ticks    values with their words
void draw_x_axis(Drawing& drawing, const ChartField& field,
                 const std::vector<std::pair<double, QString>>& ticks, const QString& title);

}  // namespace oaklight
