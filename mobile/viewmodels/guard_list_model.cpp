#include "mobile/viewmodels/guard_list_model.hpp"

#include <algorithm>

#include "core/base/number_text.hpp"

using oaklight::GuardState;
using oaklight::GuardView;

namespace {

QString figure(double value) { return QString::fromStdString(oaklight::number_text(value, 1)); }

/// What the whole bar stands for: room above the largest of the figures.
double full_of(const GuardState& guard) {
  constexpr double kHeadroom = 1.2;
  const double most = std::max({guard.limit, guard.before, guard.after});
  return most > 0.0 ? most * kHeadroom : 1.0;
}

}  // namespace

void GuardListModel::set(std::vector<GuardView> guards) {
  const bool resized = guards.size() != guards_.size();
  if (resized) beginResetModel();
  guards_ = std::move(guards);
  if (resized) {
    endResetModel();
  } else if (!guards_.empty()) {
    emit dataChanged(index(0), index(rowCount() - 1));
  }
  emit countChanged();
}

int GuardListModel::calm() const {
  return static_cast<int>(std::ranges::count_if(
      guards_, [](const GuardView& view) { return view.state.holds && !view.near_limit; }));
}

int GuardListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(guards_.size());
}

QVariant GuardListModel::data(const QModelIndex& index, int role) const {
  if (index.row() < 0 || index.row() >= rowCount()) return {};
  const GuardView& view = guards_[static_cast<std::size_t>(index.row())];
  const GuardState& guard = view.state;
  switch (role) {
    case WordsRole:
    case Qt::DisplayRole:
      return (guard.floor ? tr("%1: %2 now, %3 after; floor %4 %5")
                          : tr("%1: %2 now, %3 after; ceiling %4 %5"))
          .arg(QString::fromStdString(guard.name), figure(guard.before), figure(guard.after),
               figure(guard.limit), QString::fromStdString(guard.unit));
    case StateRole:
      return !guard.holds      ? QStringLiteral("broken")
             : view.near_limit ? QStringLiteral("near")
                               : QStringLiteral("holds");
    case StateWordsRole:
      return !guard.holds ? tr("BROKEN") : view.near_limit ? tr("Near its limit") : tr("Holds");
    case ShareRole:
      return std::clamp(guard.after / full_of(guard), 0.0, 1.0);
    case LimitRole:
      return std::clamp(guard.limit / full_of(guard), 0.0, 1.0);
    case RuleRole:
      return QString::fromStdString(guard.rule);
    default:
      return {};
  }
}

QHash<int, QByteArray> GuardListModel::roleNames() const {
  return {{WordsRole, "words"}, {StateRole, "standing"}, {StateWordsRole, "stateWords"},
          {ShareRole, "share"}, {LimitRole, "limit"},    {RuleRole, "rule"}};
}
