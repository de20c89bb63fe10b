#pragma once

#include <QtQml/qqmlregistration.h>
#include <QQuickPaintedItem>
#include <optional>

#include "mobile/items/picture.hpp"
#include "mobile/look/theme.hpp"

/// Shows a Picture by the code that prints it. Sizes on paper are points, so the same letters are
/// as large on this screen as the theme's.
class PictureItem : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(Picture picture READ picture WRITE setPicture NOTIFY pictureChanged)
  Q_PROPERTY(Theme* theme READ theme WRITE setTheme NOTIFY themeChanged)
  Q_PROPERTY(bool metric READ metric WRITE setMetric NOTIFY pictureChanged)
  Q_PROPERTY(QString words READ words NOTIFY pictureChanged)

 public:
  explicit PictureItem(QQuickItem* parent = nullptr);

  [[nodiscard]] const Picture& picture() const { return picture_; }
  void setPicture(const Picture& picture);
  [[nodiscard]] Theme* theme() const { return theme_; }
  void setTheme(Theme* theme);
  [[nodiscard]] bool metric() const { return metric_; }
  void setMetric(bool metric);
  [[nodiscard]] QString words() const { return picture_.words(); }

  void paint(QPainter* painter) override;

  /// The point of the drawing, in its own points, that lies under a point of this item.
  Q_INVOKABLE [[nodiscard]] QPointF inDrawing(QPointF item) const;
  /// A length on the screen, in the drawing's points.
  Q_INVOKABLE [[nodiscard]] double lengthInDrawing(double pixels) const;

 signals:
  void pictureChanged();
  void themeChanged();

 protected:
  void geometryChange(const QRectF& now, const QRectF& before) override;

 private:
  void redraw();
  [[nodiscard]] double pixelsPerPoint() const;

  Picture picture_;
  Theme* theme_ = nullptr;
  bool metric_ = false;
  std::optional<oaklight::Drawing> drawing_;
};
