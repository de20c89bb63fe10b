#include "mobile/viewmodels/stand_list_model.hpp"

#include <algorithm>
#include <iterator>

void StandListModel::set(std::vector<StandRow> rows) {
  // Rows of stands that were there before stay, so that nothing jumps under a finger.
  const std::size_t kept = std::min(rows.size(), rows_.size());
  const bool same =
      std::equal(rows.begin(), rows.begin() + static_cast<std::ptrdiff_t>(kept), rows_.begin(),
                 [](const auto& a, const auto& b) { return a.id == b.id; });
  if (!same || rows.size() < rows_.size()) {
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
    return;
  }
  for (std::size_t i = 0; i < kept; ++i) {
    if (rows[i] == rows_[i]) continue;
    rows_[i] = std::move(rows[i]);
    const QModelIndex changed = index(static_cast<int>(i));
    emit dataChanged(changed, changed);
  }
  if (rows.size() == kept) return;
  beginInsertRows({}, static_cast<int>(kept), static_cast<int>(rows.size()) - 1);
  rows_.insert(rows_.end(),
               std::make_move_iterator(rows.begin() + static_cast<std::ptrdiff_t>(kept)),
               std::make_move_iterator(rows.end()));
  endInsertRows();
}

const StandRow* StandListModel::at(int row) const {
  if (row < 0 || row >= static_cast<int>(rows_.size())) return nullptr;
  return &rows_[static_cast<std::size_t>(row)];
}

int StandListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant StandListModel::data(const QModelIndex& index, int role) const {
  const StandRow* row = at(index.row());
  if (row == nullptr) return {};
  return role == NameRole ? row->name : role == FactsRole ? row->facts : QVariant();
}

QHash<int, QByteArray> StandListModel::roleNames() const {
  return {{NameRole, "name"}, {FactsRole, "facts"}};
}

QString StandListModel::nameAt(int row) const {
  return at(row) == nullptr ? QString() : at(row)->name;
}
QString StandListModel::areaAt(int row) const {
  return at(row) == nullptr ? QString() : at(row)->area;
}
QString StandListModel::walkedAt(int row) const {
  return at(row) == nullptr ? QString() : at(row)->walked;
}
int StandListModel::goalAt(int row) const { return at(row) == nullptr ? 0 : at(row)->goal; }
