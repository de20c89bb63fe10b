#include "mobile/items/picture_item.hpp"

#include <QPainter>

namespace {

constexpr double kMmPerPoint = 25.4 / 72.0;

oaklight::Palette palette_of(Settings::Light light) {
  switch (light) {
    case Settings::Light::Bright:
      return oaklight::Palette::bright;
    case Settings::Light::Night:
      return oaklight::Palette::night;
    case Settings::Light::Day:
      break;
  }
  return oaklight::Palette::day;
}

}  // namespace

PictureItem::PictureItem(QQuickItem* parent) : QQuickPaintedItem(parent) { setAntialiasing(true); }

void PictureItem::setPicture(const Picture& picture) {
  if (picture_ == picture) return;
  picture_ = picture;
  redraw();
  emit pictureChanged();
}

void PictureItem::setTheme(Theme* theme) {
  if (theme_ == theme) return;
  if (theme_ != nullptr) disconnect(theme_, nullptr, this, nullptr);
  theme_ = theme;
  if (theme_ != nullptr) connect(theme_, &Theme::changed, this, &PictureItem::redraw);
  redraw();
  emit themeChanged();
}

void PictureItem::setMetric(bool metric) {
  if (metric_ == metric) return;
  metric_ = metric;
  redraw();
  emit pictureChanged();
}

double PictureItem::pixelsPerPoint() const {
  return theme_ == nullptr ? 1.0 : theme_->mm(kMmPerPoint);
}

QPointF PictureItem::inDrawing(QPointF item) const { return item / pixelsPerPoint(); }
double PictureItem::lengthInDrawing(double pixels) const { return pixels / pixelsPerPoint(); }

void PictureItem::redraw() {
  drawing_.reset();
  update();
}

void PictureItem::geometryChange(const QRectF& now, const QRectF& before) {
  QQuickPaintedItem::geometryChange(now, before);
  if (now.size() != before.size()) redraw();
}

void PictureItem::paint(QPainter* painter) {
  if (theme_ == nullptr || picture_.isEmpty()) return;
  const double scale = pixelsPerPoint();
  if (!drawing_) {
    const auto units = metric_ ? oaklight::UnitSystem::metric : oaklight::UnitSystem::us;
    drawing_ = picture_.draw({size() / scale, theme_->body() / scale, units});
  }
  painter->scale(scale, scale);
  oaklight::paint(*drawing_, *painter, palette_of(theme_->light()));
}
