#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QStringList>

#include "mobile/viewmodels/note_list_model.hpp"

/// How figures are made, by the keys of their notes: what the table of sources says, and nothing of
/// a tract. A sheet makes its own.
class SourceNotes : public QObject {
  Q_OBJECT
  QML_ELEMENT
  Q_PROPERTY(QList<QString> keys READ keys WRITE setKeys NOTIFY changed)
  Q_PROPERTY(QString title READ title NOTIFY changed)  ///< the name of the first figure
  Q_PROPERTY(NoteListModel* note READ note CONSTANT)

 public:
  explicit SourceNotes(QObject* parent = nullptr) : QObject(parent) {}

  [[nodiscard]] QStringList keys() const { return keys_; }
  void setKeys(const QStringList& keys);
  [[nodiscard]] QString title() const { return title_; }
  [[nodiscard]] NoteListModel* note() { return &note_; }

 signals:
  void changed();

 private:
  QStringList keys_;
  QString title_;
  NoteListModel note_;
};
