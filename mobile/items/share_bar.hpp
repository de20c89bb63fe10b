#pragma once

#include <QtQml/qqmlregistration.h>
#include <QColor>
#include <QQuickPaintedItem>

/// A bar that is full at 1, with a line where its limit is. The part past the limit, or short of
/// it, is told in words beside the bar.
class ShareBar : public QQuickPaintedItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(double share MEMBER share_ NOTIFY changed)
  Q_PROPERTY(double limit MEMBER limit_ NOTIFY changed)
  Q_PROPERTY(QColor ground MEMBER ground_ NOTIFY changed)
  Q_PROPERTY(QColor fill MEMBER fill_ NOTIFY changed)
  Q_PROPERTY(QColor ink MEMBER ink_ NOTIFY changed)
  Q_PROPERTY(double line MEMBER line_ NOTIFY changed)  ///< width of the limit's line, pixels

 public:
  explicit ShareBar(QQuickItem* parent = nullptr);
  void paint(QPainter* painter) override;

 signals:
  void changed();

 private:
  double share_ = 0.0;
  double limit_ = 0.0;
  double line_ = 2.0;
  QColor ground_, fill_, ink_;
};
