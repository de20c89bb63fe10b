#include "mobile/viewmodels/chip_list_model.hpp"

#include "mobile/viewmodels/words.hpp"

void ChipListModel::set(std::vector<Chip> chips) {
  beginResetModel();
  chips_ = std::move(chips);
  endResetModel();
}

void ChipListModel::setOn(int row, bool on) {
  if (at(row) == nullptr || at(row)->on == on) return;
  chips_[static_cast<std::size_t>(row)].on = on;
  emit dataChanged(index(row), index(row), {OnRole});
}

const Chip* ChipListModel::at(int row) const {
  return row >= 0 && row < rowCount() ? &chips_[static_cast<std::size_t>(row)] : nullptr;
}

int ChipListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(chips_.size());
}

QVariant ChipListModel::data(const QModelIndex& index, int role) const {
  const Chip* chip = at(index.row());
  if (chip == nullptr) return {};
  switch (role) {
    case LabelRole:
    case Qt::DisplayRole:
      return chip->label;
    case HelpRole:
      return chip->help;
    case GroupRole:
      return form_words(chip->group);
    case FirstRole:
      return index.row() == 0 || at(index.row() - 1)->group != chip->group;
    case OnRole:
      return chip->on;
    default:
      return {};
  }
}

QHash<int, QByteArray> ChipListModel::roleNames() const {
  return {{LabelRole, "label"},
          {HelpRole, "help"},
          {GroupRole, "group"},
          {FirstRole, "first"},
          {OnRole, "on"}};
}
