#include "mobile/viewmodels/stump_list_model.hpp"

#include <algorithm>

void StumpListModel::set(std::vector<StumpRow> rows) {
  beginResetModel();
  rows_ = std::move(rows);
  endResetModel();
}

const StumpRow* StumpListModel::at(int row) const {
  if (row < 0 || row >= rowCount()) return nullptr;
  return &rows_[static_cast<std::size_t>(row)];
}

const StumpRow* StumpListModel::find(oaklight::WalkTreeId id) const {
  const auto found = std::ranges::find(rows_, id, &StumpRow::id);
  return found == rows_.end() ? nullptr : &*found;
}

int StumpListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant StumpListModel::data(const QModelIndex& index, int role) const {
  const StumpRow* row = at(index.row());
  if (row == nullptr) return {};
  switch (role) {
    case TagRole:
      return row->tag;
    case TreeRole:
    case Qt::DisplayRole:
      return row->tree;
    case IconRole:
      return row->icon;
    case StateRole:
      return row->state;
    case DetailRole:
      return row->detail;
    default:
      return {};
  }
}

QHash<int, QByteArray> StumpListModel::roleNames() const {
  return {{TagRole, "tag"},
          {TreeRole, "tree"},
          {IconRole, "shape"},
          {StateRole, "finding"},
          {DetailRole, "detail"}};
}
