#include "mobile/items/touch_field.hpp"

#include <QLineF>
#include <QVariant>

namespace {

// Row T14 of tests/app/field_rows.md.
constexpr quint64 kRainMs = 30;
constexpr quint64 kPalmMs = 3000;
constexpr qsizetype kSleevePoints = 3;

}  // namespace

TouchField::TouchField(QQuickItem* parent) : QQuickItem(parent) {
  setAcceptedMouseButtons(Qt::LeftButton);
  setAcceptTouchEvents(true);
}

void TouchField::setSpeciesCells(QQuickItem* cells) {
  species_cells_ = cells;
  emit cellsChanged();
}
void TouchField::setClassCells(QQuickItem* cells) {
  class_cells_ = cells;
  emit cellsChanged();
}
void TouchField::setSlip(double slip) {
  slip_ = slip;
  emit cellsChanged();
}

/// The index of the cell there; -1 when there is none.
int TouchField::cellAt(QQuickItem* cells, QPointF at) const {
  if (cells == nullptr || !cells->isVisible()) return -1;
  const QPointF scene = mapToScene(at);
  for (const QQuickItem* cell : cells->childItems()) {
    const QVariant index = cell->property("index");
    if (index.isValid() && cell->isVisible() && cell->contains(cell->mapFromScene(scene)))
      return index.toInt();
  }
  return -1;
}

bool TouchField::moved(QPointF at) const { return QLineF(pressed_at_, at).length() > slip_; }

void TouchField::press(QPointF at, quint64 time) {
  pressed_at_ = at;
  pressed_time_ = time;
  slid_ = false;
  species_ = cellAt(species_cells_, at);
  down_ = true;
  setKeepMouseGrab(true);
  setKeepTouchGrab(true);
  const int touched = species_ >= 0 ? -1 : cellAt(class_cells_, at);
  emit downChanged();
  point(touched);
}

void TouchField::move(QPointF at) {
  slid_ = slid_ || moved(at);
  // Where the class field opens under the finger, the place of the press means the species still.
  const bool counts = species_ < 0 || slid_;
  point(counts ? cellAt(class_cells_, at) : -1);
}

void TouchField::lift(QPointF at, quint64 time) {
  if (!down_) return;
  slid_ = slid_ || moved(at);
  const int species = species_;
  const bool slid = slid_;
  const bool by_touch = finger_ >= 0;  // a mouse has neither drops nor palms
  const quint64 held = time - pressed_time_;
  const bool brief = by_touch && held < kRainMs && !slid;
  const bool rested = by_touch && held > kPalmMs && !slid;
  const bool counts = species < 0 || slid;
  const int touched = counts ? cellAt(class_cells_, at) : -1;
  const bool same_species = species >= 0 && (!slid || cellAt(species_cells_, at) == species);
  cancel();
  if (brief || rested) return;
  if (touched >= 0) {
    emit chosen(species, touched);
  } else if (same_species) {
    emit tappedSpecies(species);
  }
}

void TouchField::point(int dbhClass) {
  pointed_class_ = dbhClass;
  emit pointedChanged();
  if (down_) emit pointedAt(species_, dbhClass);
}

void TouchField::cancel() {
  if (!down_) return;
  down_ = false;
  finger_ = -1;
  species_ = -1;
  setKeepMouseGrab(false);
  setKeepTouchGrab(false);
  point(-1);
  emit downChanged();
  emit dropped();
}

void TouchField::touchEvent(QTouchEvent* event) {
  event->accept();
  if (event->type() == QEvent::TouchCancel || event->points().size() >= kSleevePoints)
    return cancel();
  for (const QEventPoint& point : event->points()) {
    if (point.state() == QEventPoint::Pressed && !down_) {
      finger_ = point.id();
      press(point.position(), event->timestamp());
    } else if (down_ && point.id() == finger_) {
      if (point.state() == QEventPoint::Updated) move(point.position());
      if (point.state() == QEventPoint::Released) lift(point.position(), event->timestamp());
    }
  }
}

void TouchField::mousePressEvent(QMouseEvent* event) {
  if (!down_) press(event->position(), event->timestamp());
}
void TouchField::mouseMoveEvent(QMouseEvent* event) {
  if (down_) move(event->position());
}
void TouchField::mouseReleaseEvent(QMouseEvent* event) {
  lift(event->position(), event->timestamp());
}
void TouchField::mouseUngrabEvent() { cancel(); }
void TouchField::touchUngrabEvent() { cancel(); }
