#include "mobile/viewmodels/plot_list_model.hpp"

#include <QCoreApplication>
#include <algorithm>

using oaklight::PlotStatus;

QString name_of(const oaklight::LiveTract& live, const oaklight::Plot& plot) {
  const oaklight::Stand* stand = live.find(plot.stand);
  return QCoreApplication::translate("Plot", "%1, plot %2")
      .arg(stand == nullptr ? QString() : QString::fromStdString(stand->name),
           QString::fromStdString(plot.label));
}

QString status_words(PlotStatus status) {
  switch (status) {
    case PlotStatus::planned:
      return QCoreApplication::translate("Plot", "to do");
    case PlotStatus::measured:
      return QCoreApplication::translate("Plot", "done");
    case PlotStatus::empty:
      return QCoreApplication::translate("Plot", "empty");
    case PlotStatus::skipped:
      return QCoreApplication::translate("Plot", "skipped");
  }
  return {};
}

QString icon_of(PlotStatus status) {
  return QStringLiteral("plot_") + QString::fromStdString(std::string(oaklight::word_of(status)));
}

void PlotListModel::set(std::vector<PlotRow> rows) {
  const bool same = std::ranges::equal(rows, rows_, {}, &PlotRow::id, &PlotRow::id);
  if (!same) {
    beginResetModel();
    rows_ = std::move(rows);
    endResetModel();
    return;
  }
  for (std::size_t i = 0; i < rows.size(); ++i) {
    if (rows[i] == rows_[i]) continue;
    rows_[i] = std::move(rows[i]);
    const QModelIndex changed = index(static_cast<int>(i));
    emit dataChanged(changed, changed);
  }
}

void PlotListModel::retell() {
  if (!rows_.empty()) emit dataChanged(index(0), index(static_cast<int>(rows_.size()) - 1));
}

const PlotRow* PlotListModel::at(int row) const {
  if (row < 0 || row >= static_cast<int>(rows_.size())) return nullptr;
  return &rows_[static_cast<std::size_t>(row)];
}

int PlotListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(rows_.size());
}

QVariant PlotListModel::data(const QModelIndex& index, int role) const {
  const PlotRow* row = at(index.row());
  if (row == nullptr) return {};
  switch (role) {
    case NameRole:
      return row->name;
    case StatusRole:
      return status_words(row->status);
    case MarkRole:
      return icon_of(row->status);
    case DetailRole:
      return row->detail;
    case ChosenRole:
      return row->chosen;
    default:
      return {};
  }
}

QHash<int, QByteArray> PlotListModel::roleNames() const {
  return {{NameRole, "name"},
          {StatusRole, "status"},
          {MarkRole, "mark"},
          {DetailRole, "detail"},
          {ChosenRole, "chosen"}};
}
