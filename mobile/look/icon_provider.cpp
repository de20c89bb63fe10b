#include "mobile/look/icon_provider.hpp"

#include <QFile>
#include <QPainter>
#include <QSvgRenderer>

QImage IconProvider::requestImage(const QString& id, QSize* size, const QSize& wanted) {
  const QString name = id.section(QLatin1Char('/'), 0, 0);
  const QString colour = id.section(QLatin1Char('/'), 1, 1);
  QFile file(QStringLiteral(":/qt/qml/Oaklight/assets/icons/%1.svg").arg(name));
  const int side = wanted.width() > 0 ? wanted.width() : 48;
  QImage image(side, side, QImage::Format_ARGB32_Premultiplied);
  image.fill(Qt::transparent);
  if (size != nullptr) *size = image.size();
  if (!file.open(QIODevice::ReadOnly)) return image;
  QSvgRenderer drawing(file.readAll().replace("currentColor", "#" + colour.toLatin1()));
  QPainter painter(&image);
  drawing.render(&painter, QRectF(0, 0, side, side));
  return image;
}
