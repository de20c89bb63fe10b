#include "mobile/viewmodels/figure_list_model.hpp"

void FigureListModel::set(std::vector<FigureRow> rows) {
  if (rows == rows_) return;
  if (rows.size() == rows_.size()) {
    rows_ = std::move(rows);
    emit dataChanged(index(0), index(rowCount() - 1));
    return;
  }
  beginResetModel();
  rows_ = std::move(rows);
  endResetModel();
}

const FigureRow* FigureListModel::at(int row) const {
  return row >= 0 && row < rowCount() ? &rows_[static_cast<std::size_t>(row)] : nullptr;
}

int FigureListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant FigureListModel::data(const QModelIndex& index, int role) const {
  const FigureRow* row = at(index.row());
  if (row == nullptr) return {};
  switch (role) {
    case NameRole:
    case Qt::DisplayRole:
      return row->name;
    case ValueRole:
      return row->value;
    case UnitRole:
      return row->unit;
    case ErrorRole:
      return row->error;
    case RemarkRole:
      return row->remark;
    case SpokenRole: {
      QStringList parts{row->name + QStringLiteral(": ") + row->value + QLatin1Char(' ') +
                        row->unit};
      if (!row->error.isEmpty()) parts << row->error;
      if (!row->remark.isEmpty()) parts << row->remark;
      return parts.join(QStringLiteral(". "));
    }
    default:
      return {};
  }
}

QHash<int, QByteArray> FigureListModel::roleNames() const {
  return {{NameRole, "name"},   {ValueRole, "value"},   {UnitRole, "unit"},
          {ErrorRole, "error"}, {RemarkRole, "remark"}, {SpokenRole, "spoken"}};
}
