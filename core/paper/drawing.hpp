#pragma once

#include <QPainterPath>
#include <QPointF>
#include <QRectF>
#include <optional>
#include <variant>
#include <vector>

#include "core/paper/text.hpp"

class QPainter;

namespace oaklight {

/// A pen in points. Dashes are lengths on and off, in points; empty is a solid line.
struct Stroke {
  double width = 1.0;
  Ink ink = Ink::black;
  std::vector<double> dashes = {};
  bool round = false;  ///< round ends instead of flat ones
};

struct TextItem {
  QPointF baseline;  ///< left end of the baseline
  QString text;
  TextStyle style;
};

struct PathItem {
  QPainterPath path;
  std::optional<Ink> fill;
  std::optional<Stroke> stroke;
  std::optional<QRectF> clip;
};

using DrawingItem = std::variant<TextItem, PathItem>;

/// What is on a page or a map, as values in points: laid out once, painted on any device, and open
/// to tests.
class Drawing {
 public:
  void text(QPointF baseline, const QString& words, const TextStyle& style);
  /// The same, ending at the given point.
  void text_ending(QPointF baseline, const QString& words, const TextStyle& style);
  void text_centred(QPointF baseline, const QString& words, const TextStyle& style);
  void fill(const QPainterPath& path, Ink ink, std::optional<QRectF> clip = std::nullopt);
  void outline(const QPainterPath& path, const Stroke& stroke,
               std::optional<QRectF> clip = std::nullopt);
  /// A disc, as one touch of a round pen: many of them stay small in a file.
  void dot(QPointF centre, double radius, Ink ink);
  /// Ground and edge in one.
  void shape(const QPainterPath& path, Ink ground, const Stroke& edge);
  void fill_rect(const QRectF& rect, Ink ink);
  void outline_rect(const QRectF& rect, const Stroke& stroke);
  void line(QPointF from, QPointF to, const Stroke& stroke);
  void append(const Drawing& other);
  void add(DrawingItem item) { items_.push_back(std::move(item)); }

  [[nodiscard]] const std::vector<DrawingItem>& items() const { return items_; }

 private:
  std::vector<DrawingItem> items_;
};

/// The room that an item takes: for text from ascent to descent, for a path what is left of it
/// inside its clip.
QRectF box_of(const DrawingItem& item);

/// The same drawing, larger or smaller by a factor above 0: letters, pens and dashes with it.
Drawing scaled(const Drawing& drawing, double factor);

/// Paints in the painter's own units: scale the painter so that one unit is a point on paper, or
/// as large as a finger needs on a screen. The painter's state is left as it was. What lies under
/// the drawing is the caller's: fill it with ground_of(palette).
void paint(const Drawing& drawing, QPainter& painter, Palette palette = Palette::paper);

}  // namespace oaklight
