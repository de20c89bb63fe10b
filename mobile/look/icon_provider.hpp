#pragma once

#include <QQuickImageProvider>

/// Our icons in any colour and size: "image://icon/undo/1a1a17" is assets/icons/undo.svg in that
/// colour. A name that does not exist gives an empty picture.
class IconProvider : public QQuickImageProvider {
 public:
  IconProvider() : QQuickImageProvider(QQuickImageProvider::Image) {}
  QImage requestImage(const QString& id, QSize* size, const QSize& wanted) override;
};
