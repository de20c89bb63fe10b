#include "mobile/viewmodels/turns_view_model.hpp"

#include <algorithm>

#include "core/session/plot_work.hpp"
#include "mobile/desk/way.hpp"
#include "mobile/viewmodels/words.hpp"

TurnsViewModel::TurnsViewModel(TractDesk& desk, Settings& settings, QObject* parent)
    : QObject(parent), desk_(desk) {
  connect(&desk, &TractDesk::changed, this, [this](const auto& changes) {
    if (reach_beyond_tally(changes)) emit changed();
  });
  connect(&settings, &Settings::changed, this, &TurnsViewModel::changed);
  begin();
}

std::optional<oaklight::CruiseId> TurnsViewModel::last() const {
  const auto& cruises = desk_.data().cruises;
  return cruises.empty() ? std::nullopt : std::optional(cruises.back().id);
}

void TurnsViewModel::beginWith(std::optional<oaklight::CruiseId> cruise) {
  cruise_ = cruise;
  every_ = cruise ? oaklight::measured_every(desk_.live(), *cruise) : 1;
  problem_.clear();
  emit changed();
}

bool TurnsViewModel::asked() const {
  const oaklight::Cruise* cruise = cruise_ ? desk_.live().find(*cruise_) : nullptr;
  return cruise != nullptr && std::holds_alternative<oaklight::PointDesign>(cruise->design);
}

/// What crews use (common practice), and what this cruise has.
std::vector<int> TurnsViewModel::offered() const {
  std::vector<int> turns{1, 2, 3, 4, 5, 10};
  if (std::ranges::find(turns, every_) == turns.end()) turns.push_back(every_);
  return turns;
}

QStringList TurnsViewModel::options() const {
  QStringList words;
  for (const int every : offered())
    words << (every == 1 ? tr("all points") : tr("1 point in %1").arg(every));
  return words;
}

int TurnsViewModel::chosen() const {
  const auto turns = offered();
  return static_cast<int>(std::ranges::find(turns, every_) - turns.begin());
}

void TurnsViewModel::setChosen(int row) {
  const auto turns = offered();
  if (row < 0 || static_cast<std::size_t>(row) >= turns.size()) return;
  every_ = turns[static_cast<std::size_t>(row)];
  problem_.clear();
  emit changed();
  emit chose();
}

QString TurnsViewModel::now() const {
  const auto cruise = last();
  if (!cruise) return {};
  const int every = oaklight::measured_every(desk_.live(), *cruise);
  return every == 1 ? tr("All points are measured") : tr("1 point in %1 is measured").arg(every);
}

bool TurnsViewModel::left() const {
  const auto cruise = last();
  const oaklight::Cruise* record = cruise ? desk_.live().find(*cruise) : nullptr;
  if (record == nullptr || !std::holds_alternative<oaklight::PointDesign>(record->design))
    return false;
  return !desk_.readOnly() && std::ranges::any_of(desk_.data().plots, [&](const auto& plot) {
    return plot.cruise == *cruise && plot.status == oaklight::PlotStatus::planned;
  });
}

void TurnsViewModel::keep() {
  if (!cruise_) return;
  desk_.submit([this, cruise = *cruise_,
                every = every()] { return oaklight::measure_in_turn(desk_.live(), cruise, every); },
               [this](const oaklight::Status& done) {
                 problem_ = done ? QString() : sentence_of(done.error());
                 emit changed();
                 if (done) emit kept();
               });
}
