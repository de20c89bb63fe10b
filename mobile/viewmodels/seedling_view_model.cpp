#include "mobile/viewmodels/seedling_view_model.hpp"

#include <algorithm>

#include "core/session/plot_work.hpp"
#include "mobile/desk/species_order.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::RegenHeight;

namespace {

constexpr std::size_t kMostRows = 14;

RegenHeight height_at(int column) {
  return oaklight::kWords<RegenHeight>[static_cast<std::size_t>(column)].value;
}

}  // namespace

SeedlingViewModel::SeedlingViewModel(TractDesk& desk, CurrentPlot& plot, Settings& settings,
                                     QObject* parent)
    : QAbstractListModel(parent), desk_(desk), plot_(plot), settings_(settings) {
  connect(&plot, &CurrentPlot::changed, this, &SeedlingViewModel::fill);
  connect(&desk, &TractDesk::changed, this, [this] {
    if (!species_.empty()) emit dataChanged(index(0), index(rowCount() - 1), {CountsRole});
  });
  fill();
}

void SeedlingViewModel::fill() {
  beginResetModel();
  const auto* plot = plot_.id() ? desk_.live().find(*plot_.id()) : nullptr;
  species_ = plot == nullptr ? std::vector<const oaklight::Species*>()
                             : tally_order(desk_.live(), desk_.knowledge(), plot->stand,
                                           settings_.tallySet().toStdString(), kMostRows);
  endResetModel();
  emit plotChanged();
}

void SeedlingViewModel::add(oaklight::SpeciesCode code) {
  const auto* species = desk_.knowledge().species().find(code);
  if (species == nullptr || std::ranges::find(species_, species) != species_.end()) return;
  beginInsertRows({}, 0, 0);
  species_.insert(species_.begin(), species);
  endInsertRows();
}

QStringList SeedlingViewModel::heights() const {
  QStringList labels;
  const auto* choices = desk_.knowledge().form.find_choices("regen_height");
  if (choices == nullptr) return labels;
  for (const auto& choice : choices->choices) labels << form_words(choice.label);
  return labels;
}

QString SeedlingViewModel::plotSize() const {
  const auto* plot = plot_.id() ? desk_.live().find(*plot_.id()) : nullptr;
  const auto* cruise = plot == nullptr ? nullptr : desk_.live().find(plot->cruise);
  if (cruise == nullptr || !cruise->regen_area) return {};
  const bool us = std::visit([](const auto& d) { return d.system == oaklight::UnitSystem::us; },
                             cruise->design);
  return QString::number(*cruise->regen_area) +
         (us ? QStringLiteral(" ac") : QStringLiteral(" ha"));
}

int SeedlingViewModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(species_.size());
}

QVariant SeedlingViewModel::data(const QModelIndex& index, int role) const {
  if (!index.isValid() || index.row() >= rowCount()) return {};
  const oaklight::Species& species = *species_[static_cast<std::size_t>(index.row())];
  if (role == NameRole || role == Qt::DisplayRole) return name_of(species);
  if (role != CountsRole || !plot_.id()) return {};
  QStringList counts;
  for (const auto& height : oaklight::kWords<RegenHeight>) {
    const auto count =
        oaklight::regen_count(desk_.live(), {*plot_.id(), species.code, height.value});
    counts << (count ? QString::number(*count) : QStringLiteral("-"));
  }
  return counts;
}

QHash<int, QByteArray> SeedlingViewModel::roleNames() const {
  return {{NameRole, "name"}, {CountsRole, "counts"}};
}

void SeedlingViewModel::more(int row, int height) { step(row, height, 1); }
void SeedlingViewModel::less(int row, int height) { step(row, height, -1); }

void SeedlingViewModel::step(int row, int height, int by) {
  if (!plot_.id() || row < 0 || row >= rowCount()) return;
  const oaklight::SeedlingCell cell{*plot_.id(), species_[static_cast<std::size_t>(row)]->code,
                                    height_at(height)};
  desk_.submit([this, cell, by] {
    const bool none_yet = by < 0 && !oaklight::regen_count(desk_.live(), cell);
    return none_yet ? oaklight::set_regen(desk_.live(), desk_.knowledge(), desk_.ids(), cell, 0)
                    : oaklight::count_regen(desk_.live(), desk_.knowledge(), desk_.ids(), cell, by);
  });
}
