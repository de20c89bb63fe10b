#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QRectF>

/// How a room for touch cells is shared between species and classes, so that no cell is smaller
/// than a finger. Where both do not fit side by side, the classes open over the species.
class TallyLayout : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(double width MEMBER width_ WRITE setWidth NOTIFY changed)
  Q_PROPERTY(double height MEMBER height_ WRITE setHeight NOTIFY changed)
  Q_PROPERTY(
      double touch MEMBER touch_ WRITE setTouch NOTIFY changed)   ///< the least side of a cell
  Q_PROPERTY(double gap MEMBER gap_ WRITE setGap NOTIFY changed)  ///< between the two fields
  Q_PROPERTY(bool mirrored MEMBER mirrored_ WRITE setMirrored NOTIFY changed)  ///< left hand
  Q_PROPERTY(bool over READ over NOTIFY changed)  ///< classes open over the species
  Q_PROPERTY(QRectF speciesRect READ speciesRect NOTIFY changed)
  Q_PROPERTY(QRectF classRect READ classRect NOTIFY changed)
  Q_PROPERTY(int speciesColumns READ speciesColumns NOTIFY changed)
  Q_PROPERTY(int classColumns READ classColumns NOTIFY changed)
  Q_PROPERTY(int speciesRoom READ speciesRoom NOTIFY changed)  ///< cells, without "other"
  Q_PROPERTY(int classRoom READ classRoom NOTIFY changed)      ///< cells, without the way back

 public:
  explicit TallyLayout(QObject* parent = nullptr) : QObject(parent) {}

  void setWidth(double width);
  void setHeight(double height);
  void setTouch(double touch);
  void setGap(double gap);
  void setMirrored(bool mirrored);

  [[nodiscard]] bool over() const { return over_; }
  [[nodiscard]] QRectF speciesRect() const { return species_.rect; }
  [[nodiscard]] QRectF classRect() const { return classes_.rect; }
  [[nodiscard]] int speciesColumns() const { return species_.columns; }
  [[nodiscard]] int classColumns() const { return classes_.columns; }
  [[nodiscard]] int speciesRoom() const { return species_.columns * species_.rows - 1; }
  [[nodiscard]] int classRoom() const { return classes_.columns * classes_.rows - (over_ ? 1 : 0); }

 signals:
  void changed();

 private:
  struct Field {
    QRectF rect;
    int columns = 1;
    int rows = 1;
  };
  void arrange();
  [[nodiscard]] Field fieldIn(const QRectF& rect) const;

  double width_ = 0.0;
  double height_ = 0.0;
  double touch_ = 1.0;
  double gap_ = 0.0;
  bool mirrored_ = false;
  bool over_ = false;
  Field species_;
  Field classes_;
};
