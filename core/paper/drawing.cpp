#include "core/paper/drawing.hpp"

#include <QPainter>
#include <QTransform>

namespace oaklight {
namespace {

QPen pen_of(const Stroke& stroke, Palette palette) {
  QPen pen(colour_of(stroke.ink, palette));
  pen.setWidthF(stroke.width);
  pen.setCapStyle(stroke.round ? Qt::RoundCap : Qt::FlatCap);
  pen.setJoinStyle(Qt::RoundJoin);
  if (!stroke.dashes.empty()) {
    QList<qreal> pattern;  // Qt counts dashes in widths of the pen
    for (const double dash : stroke.dashes) pattern.append(dash / stroke.width);
    pen.setDashPattern(pattern);
  }
  return pen;
}

void paint_item(const TextItem& item, QPainter& painter, Palette palette) {
  painter.save();
  painter.translate(item.baseline);
  const double size = item.style.points / kFontPixels;
  painter.scale(size, size);
  painter.setFont(font_of(item.style));
  painter.setPen(colour_of(item.style.ink, palette));
  painter.drawText(QPointF(0.0, 0.0), item.text);
  painter.restore();
}

void paint_item(const PathItem& item, QPainter& painter, Palette palette) {
  if (item.clip) {
    painter.save();
    painter.setClipRect(*item.clip, Qt::IntersectClip);
  }
  painter.setBrush(item.fill ? QBrush(colour_of(*item.fill, palette)) : QBrush(Qt::NoBrush));
  painter.setPen(item.stroke ? pen_of(*item.stroke, palette) : QPen(Qt::NoPen));
  painter.drawPath(item.path);
  if (item.clip) painter.restore();
}

TextItem scaled_item(TextItem item, double factor) {
  item.baseline *= factor;
  item.style.points *= factor;
  return item;
}

PathItem scaled_item(PathItem item, double factor) {
  const QTransform larger = QTransform::fromScale(factor, factor);
  item.path = larger.map(item.path);
  if (item.clip) item.clip = larger.mapRect(*item.clip);
  if (item.stroke) {
    item.stroke->width *= factor;
    for (double& dash : item.stroke->dashes) dash *= factor;
  }
  return item;
}

}  // namespace

void Drawing::text(QPointF baseline, const QString& words, const TextStyle& style) {
  if (!words.isEmpty()) items_.emplace_back(TextItem{baseline, words, style});
}

void Drawing::text_ending(QPointF baseline, const QString& words, const TextStyle& style) {
  text(baseline - QPointF(text_width(words, style), 0.0), words, style);
}

void Drawing::text_centred(QPointF baseline, const QString& words, const TextStyle& style) {
  text(baseline - QPointF(text_width(words, style) / 2.0, 0.0), words, style);
}

void Drawing::fill(const QPainterPath& path, Ink ink, std::optional<QRectF> clip) {
  items_.emplace_back(PathItem{path, ink, std::nullopt, clip});
}

void Drawing::outline(const QPainterPath& path, const Stroke& stroke, std::optional<QRectF> clip) {
  items_.emplace_back(PathItem{path, std::nullopt, stroke, clip});
}

void Drawing::dot(QPointF centre, double radius, Ink ink) {
  constexpr double kTouch = 0.01;  // some painters skip a line of no length
  line(centre, centre + QPointF(kTouch, 0.0), {2.0 * radius, ink, {}, true});
}

void Drawing::shape(const QPainterPath& path, Ink ground, const Stroke& edge) {
  items_.emplace_back(PathItem{path, ground, edge, std::nullopt});
}

void Drawing::fill_rect(const QRectF& rect, Ink ink) {
  QPainterPath path;
  path.addRect(rect);
  fill(path, ink);
}

void Drawing::outline_rect(const QRectF& rect, const Stroke& stroke) {
  QPainterPath path;
  path.addRect(rect);
  outline(path, stroke);
}

void Drawing::line(QPointF from, QPointF to, const Stroke& stroke) {
  QPainterPath path(from);
  path.lineTo(to);
  outline(path, stroke);
}

void Drawing::append(const Drawing& other) {
  items_.insert(items_.end(), other.items_.begin(), other.items_.end());
}

QRectF box_of(const DrawingItem& item) {
  if (const auto* text = std::get_if<TextItem>(&item)) {
    const double ascent = ascent_of(text->style);
    return {text->baseline.x(), text->baseline.y() - ascent, text_width(text->text, text->style),
            leading_of(text->style)};
  }
  const auto& path = std::get<PathItem>(item);
  const double half = path.stroke ? path.stroke->width / 2.0 : 0.0;
  const QRectF box = path.path.boundingRect().adjusted(-half, -half, half, half);
  return path.clip ? box.intersected(*path.clip) : box;
}

Drawing scaled(const Drawing& drawing, double factor) {
  Drawing out;
  for (const DrawingItem& item : drawing.items()) {
    std::visit([&](const auto& each) { out.add(scaled_item(each, factor)); }, item);
  }
  return out;
}

void paint(const Drawing& drawing, QPainter& painter, Palette palette) {
  painter.save();
  for (const DrawingItem& item : drawing.items()) {
    std::visit([&](const auto& each) { paint_item(each, painter, palette); }, item);
  }
  painter.restore();
}

}  // namespace oaklight
