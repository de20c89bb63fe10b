#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>

#include "mobile/desk/disk_room.hpp"
#include "mobile/desk/tract_desk.hpp"

/// What stands above every page of an open tract: its name, undo and redo, and what went wrong.
class DeskViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Workspace owns it")
  Q_PROPERTY(QString title READ title NOTIFY changed)
  Q_PROPERTY(bool demo READ demo NOTIFY changed)
  Q_PROPERTY(bool readOnly READ readOnly NOTIFY changed)
  /// Why nothing more is written to this file; "" while no damage is known.
  Q_PROPERTY(QString damage READ damage NOTIFY changed)
  Q_PROPERTY(QString undoLabel READ undoLabel NOTIFY undoChanged)  ///< "" when nothing is left
  Q_PROPERTY(QString redoLabel READ redoLabel NOTIFY undoChanged)
  /// A tree that is not on disk although a person tallied it; "" when all is saved.
  Q_PROPERTY(QString notSaved READ notSaved NOTIFY notSavedChanged)
  /// Why the last action changed nothing, and how to mend it; "" when there is nothing to say.
  Q_PROPERTY(QString refusal READ refusal NOTIFY refusalChanged)
  /// How little room the disk has; "" while there is enough, and once it was put away.
  Q_PROPERTY(QString lowRoom READ lowRoom NOTIFY lowRoomChanged)

 public:
  DeskViewModel(TractDesk& desk, const DiskRoom& room, QObject* parent = nullptr);

  [[nodiscard]] QString title() const;
  [[nodiscard]] bool demo() const;
  [[nodiscard]] bool readOnly() const;
  [[nodiscard]] QString damage() const;
  [[nodiscard]] QString undoLabel() const;
  [[nodiscard]] QString redoLabel() const;
  [[nodiscard]] QString notSaved() const;
  [[nodiscard]] QString refusal() const { return refusal_; }
  [[nodiscard]] QString lowRoom() const { return low_room_; }

  Q_INVOKABLE void undo();
  Q_INVOKABLE void redo();
  Q_INVOKABLE void retry();
  Q_INVOKABLE void dismissRefusal();
  /// Copies what the damaged file still holds into a new one and opens that.
  Q_INVOKABLE void rescue();
  /// Not told again before it is worse.
  Q_INVOKABLE void dismissLowRoom();
  /// Looks how much room there is.
  void lookAtRoom();

 signals:
  void changed();
  void undoChanged();
  void notSavedChanged();
  void refusalChanged();
  void lowRoomChanged();
  void rescueAsked();

 private:
  void setRefusal(const QString& text);

  TractDesk& desk_;
  const DiskRoom& room_;
  QString refusal_;
  QString low_room_;
  DiskRoom::Level told_ = DiskRoom::Level::enough;  ///< and put away
};
