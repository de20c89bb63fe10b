#include "mobile/items/share_bar.hpp"

#include <QPainter>

ShareBar::ShareBar(QQuickItem* parent) : QQuickPaintedItem(parent) {
  connect(this, &ShareBar::changed, this, [this] { update(); });
}

void ShareBar::paint(QPainter* painter) {
  const QRectF whole(QPointF(), size());
  painter->fillRect(whole, ground_);
  painter->fillRect(QRectF(0.0, 0.0, width() * share_, height()), fill_);
  painter->fillRect(QRectF(width() * limit_ - line_ / 2.0, 0.0, line_, height()), ink_);
  painter->setPen(QPen(ink_, 1.0));
  painter->drawRect(whole.adjusted(0.5, 0.5, -0.5, -0.5));
}
