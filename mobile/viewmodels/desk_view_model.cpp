#include "mobile/viewmodels/desk_view_model.hpp"

#include "mobile/viewmodels/words.hpp"

DeskViewModel::DeskViewModel(TractDesk& desk, const DiskRoom& room, QObject* parent)
    : QObject(parent), desk_(desk), room_(room) {
  connect(&desk, &TractDesk::changed, this, [this] {
    setRefusal({});
    lookAtRoom();
    emit changed();
  });
  connect(&desk, &TractDesk::damageFound, this, &DeskViewModel::changed);
  connect(&desk, &TractDesk::undoStateChanged, this, &DeskViewModel::undoChanged);
  connect(&desk, &TractDesk::notSavedChanged, this, &DeskViewModel::notSavedChanged);
  connect(&desk, &TractDesk::refused, this,
          [this](const oaklight::Error& error) { setRefusal(sentence_of(error)); });
  lookAtRoom();
}

QString DeskViewModel::title() const {
  const QString name = QString::fromStdString(desk_.data().tract.name);
  return name.isEmpty() ? tr("Unnamed tract") : name;
}
bool DeskViewModel::demo() const { return desk_.data().tract.demo; }
bool DeskViewModel::readOnly() const { return desk_.readOnly(); }
QString DeskViewModel::damage() const {
  return desk_.damage() ? sentence_of(*desk_.damage()) : QString();
}
QString DeskViewModel::undoLabel() const {
  return QString::fromStdString(desk_.undoState().undo.value_or(""));
}
QString DeskViewModel::redoLabel() const {
  return QString::fromStdString(desk_.undoState().redo.value_or(""));
}
QString DeskViewModel::notSaved() const {
  return desk_.notSaved() ? sentence_of(*desk_.notSaved()) : QString();
}

void DeskViewModel::undo() { desk_.undo(); }
void DeskViewModel::redo() { desk_.redo(); }
void DeskViewModel::retry() { desk_.retry(); }
void DeskViewModel::rescue() { emit rescueAsked(); }
void DeskViewModel::dismissRefusal() { setRefusal({}); }

void DeskViewModel::dismissLowRoom() {
  told_ = room_.level();
  lookAtRoom();
}

void DeskViewModel::lookAtRoom() {
  if (room_.level() == DiskRoom::Level::enough) told_ = DiskRoom::Level::enough;
  const QString text = room_.level() > told_ ? room_.warning() : QString();
  if (low_room_ == text) return;
  low_room_ = text;
  emit lowRoomChanged();
}

void DeskViewModel::setRefusal(const QString& text) {
  if (refusal_ == text) return;
  refusal_ = text;
  emit refusalChanged();
}
