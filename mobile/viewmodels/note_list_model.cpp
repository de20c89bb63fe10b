#include "mobile/viewmodels/note_list_model.hpp"

void NoteListModel::set(std::vector<NoteRow> rows) {
  if (rows == rows_) return;
  beginResetModel();
  rows_ = std::move(rows);
  endResetModel();
}

int NoteListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant NoteListModel::data(const QModelIndex& index, int role) const {
  if (index.row() < 0 || index.row() >= rowCount()) return {};
  const NoteRow& row = rows_[static_cast<std::size_t>(index.row())];
  if (role == HeadingRole) return row.heading;
  if (role == TextRole || role == Qt::DisplayRole) return row.text;
  return {};
}

QHash<int, QByteArray> NoteListModel::roleNames() const {
  return {{HeadingRole, "heading"}, {TextRole, "words"}};
}
