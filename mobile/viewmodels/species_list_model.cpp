#include "mobile/viewmodels/species_list_model.hpp"

#include "mobile/viewmodels/words.hpp"

void SpeciesListModel::set(std::vector<const oaklight::Species*> species) {
  if (species == species_) return;
  beginResetModel();
  species_ = std::move(species);
  endResetModel();
  emit countChanged();
}

void SpeciesListModel::retranslate() {
  if (rowCount() > 0) emit dataChanged(index(0), index(rowCount() - 1));
}

const oaklight::Species* SpeciesListModel::at(int row) const {
  return row >= 0 && row < rowCount() ? species_[static_cast<std::size_t>(row)] : nullptr;
}

int SpeciesListModel::rowOf(oaklight::SpeciesCode code) const {
  for (std::size_t row = 0; row < species_.size(); ++row) {
    if (species_[row]->code == code) return static_cast<int>(row);
  }
  return -1;
}

int SpeciesListModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(species_.size());
}

QVariant SpeciesListModel::data(const QModelIndex& index, int role) const {
  const oaklight::Species* species = at(index.row());
  if (species == nullptr) return {};
  switch (role) {
    case NameRole:
    case Qt::DisplayRole:
      return name_of(*species);
    case CellRole:
      return cell_name_of(*species);
    case OtherNamesRole: {
      QStringList names;
      for (const std::string& name : species->local_names) names << QString::fromStdString(name);
      names << QString::fromStdString(species->scientific_name);
      return names.join(QStringLiteral(", "));
    }
    case MastRole:
      return species->mast == oaklight::MastClass::hard;
    default:
      return {};
  }
}

QHash<int, QByteArray> SpeciesListModel::roleNames() const {
  return {{NameRole, "name"},
          {CellRole, "cellName"},
          {OtherNamesRole, "otherNames"},
          {MastRole, "mast"}};
}
