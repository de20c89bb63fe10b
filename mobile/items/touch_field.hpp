#pragma once

#include <QtQml/qqmlregistration.h>
#include <QPointer>
#include <QQuickItem>

/// Where trees are tallied by touch: cells of species and cells of classes, and one finger at a
/// time that presses a species, slides to a class and lifts, or taps one after the other.
///
/// A second contact while one is down makes nothing; three at once are a wet sleeve and cancel. A
/// contact under 30 ms is a drop of rain; one that rests for over 3 s without moving is a palm.
class TouchField : public QQuickItem {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QQuickItem* speciesCells READ speciesCells WRITE setSpeciesCells NOTIFY cellsChanged)
  Q_PROPERTY(QQuickItem* classCells READ classCells WRITE setClassCells NOTIFY cellsChanged)
  /// How far a finger slips while it means to stay, pixels.
  Q_PROPERTY(double slip READ slip WRITE setSlip NOTIFY cellsChanged)
  Q_PROPERTY(bool down READ down NOTIFY downChanged)
  Q_PROPERTY(int pressedSpecies READ pressedSpecies NOTIFY downChanged)
  Q_PROPERTY(int pointedClass READ pointedClass NOTIFY pointedChanged)

 public:
  explicit TouchField(QQuickItem* parent = nullptr);

  [[nodiscard]] QQuickItem* speciesCells() const { return species_cells_; }
  void setSpeciesCells(QQuickItem* cells);
  [[nodiscard]] QQuickItem* classCells() const { return class_cells_; }
  void setClassCells(QQuickItem* cells);
  [[nodiscard]] double slip() const { return slip_; }
  void setSlip(double slip);
  [[nodiscard]] bool down() const { return down_; }
  [[nodiscard]] int pressedSpecies() const { return down_ ? species_ : -1; }
  [[nodiscard]] int pointedClass() const { return pointed_class_; }

 signals:
  void cellsChanged();
  void downChanged();
  /// The finger is over a class, having begun on a species (-1: on the class field).
  void pointedAt(int species, int dbhClass);
  void pointedChanged();
  /// It was lifted over a class: one tree.
  void chosen(int species, int dbhClass);
  /// It was lifted where it was pressed, on a species.
  void tappedSpecies(int species);
  /// It was lifted where it means nothing, or does not count.
  void dropped();

 protected:
  void touchEvent(QTouchEvent* event) override;
  void mousePressEvent(QMouseEvent* event) override;
  void mouseMoveEvent(QMouseEvent* event) override;
  void mouseReleaseEvent(QMouseEvent* event) override;
  void mouseUngrabEvent() override;
  void touchUngrabEvent() override;

 private:
  void press(QPointF at, quint64 time);
  void move(QPointF at);
  void lift(QPointF at, quint64 time);
  void cancel();
  void point(int dbhClass);
  [[nodiscard]] int cellAt(QQuickItem* cells, QPointF at) const;
  [[nodiscard]] bool moved(QPointF at) const;

  QPointer<QQuickItem> species_cells_;
  QPointer<QQuickItem> class_cells_;
  double slip_ = 10.0;
  bool down_ = false;
  bool slid_ = false;
  int finger_ = -1;  ///< id of the touch point that counts
  int species_ = -1;
  int pointed_class_ = -1;
  QPointF pressed_at_;
  quint64 pressed_time_ = 0;  ///< of the event, ms: a busy program makes no drop of a finger
};
