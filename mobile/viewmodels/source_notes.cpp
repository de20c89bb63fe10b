#include "mobile/viewmodels/source_notes.hpp"

#include "mobile/viewmodels/stand_words.hpp"

void SourceNotes::setKeys(const QStringList& keys) {
  keys_ = keys;
  std::vector<NoteRow> rows;
  for (const QString& key : keys_) StandWords::addSource(rows, key.toStdString());
  title_ = rows.empty() ? QString() : rows.front().heading;
  note_.set(std::move(rows));
  emit changed();
}
