#include "mobile/viewmodels/species_search_view_model.hpp"

#include "mobile/desk/species_order.hpp"

SpeciesSearchViewModel::SpeciesSearchViewModel(const oaklight::SpeciesTable& table, QObject* parent)
    : QObject(parent), table_(table) {
  found_.set(species_search(table_, {}));
}

void SpeciesSearchViewModel::setText(const QString& text) {
  if (text_ == text) return;
  text_ = text;
  found_.set(species_search(table_, text_.toStdString()));
  emit textChanged();
}

std::optional<oaklight::SpeciesCode> SpeciesSearchViewModel::codeAt(int row) const {
  const oaklight::Species* species = found_.at(row);
  return species == nullptr ? std::nullopt : std::optional(species->code);
}
