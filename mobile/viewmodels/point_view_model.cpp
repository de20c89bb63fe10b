#include "mobile/viewmodels/point_view_model.hpp"

#include <algorithm>

#include "core/session/plot_work.hpp"
#include "mobile/desk/way.hpp"
#include "mobile/viewmodels/plot_list_model.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::PlotTask;

PointViewModel::PointViewModel(TractDesk& desk, Settings& settings, QObject* parent)
    : QObject(parent), desk_(desk) {
  connect(&desk, &TractDesk::changed, this, [this](const auto& changes) {
    if (!reach_beyond_tally(changes)) return;
    problem_.clear();
    emit changed();
  });
  connect(&desk, &TractDesk::damageFound, this, &PointViewModel::changed);
  connect(&settings, &Settings::changed, this, &PointViewModel::changed);
}

void PointViewModel::of(std::optional<oaklight::PlotId> plot) {
  if (plot_ == plot) return;
  plot_ = plot;
  problem_.clear();
  emit changed();
}

const oaklight::Plot* PointViewModel::plot() const {
  return plot_ ? desk_.live().find(*plot_) : nullptr;
}

bool PointViewModel::isPoint() const {
  const oaklight::Plot* here = plot();
  const oaklight::Cruise* cruise = here == nullptr ? nullptr : desk_.live().find(here->cruise);
  return cruise != nullptr && std::holds_alternative<oaklight::PointDesign>(cruise->design);
}

bool PointViewModel::counting() const {
  return isPoint() && oaklight::taken_at(*plot()).task == PlotTask::count;
}

QString PointViewModel::kind() const {
  if (!isPoint() || oaklight::measured_every(desk_.live(), plot()->cruise) == 1) return {};
  return counting() ? tr("Count point") : tr("Measure point");
}

QString PointViewModel::plotName() const {
  return plot() == nullptr ? QString() : name_of(desk_.live(), *plot());
}

bool PointViewModel::may() const {
  return isPoint() && !desk_.readOnly() && plot()->status != oaklight::PlotStatus::skipped;
}

std::vector<oaklight::SpeciesCount> PointViewModel::lines() const {
  if (!counting()) return {};
  auto counted = oaklight::taken_at(*plot()).counted;
  std::ranges::reverse(counted);  // they are kept in the order in which they were first met
  return counted;
}

QStringList PointViewModel::counted() const {
  QStringList words;
  for (const auto& one : lines()) {
    const oaklight::Species* species = desk_.knowledge().species().find(one.species);
    words << tr("%1: %2")
                 .arg(species == nullptr ? QString::number(one.species.fia) : name_of(*species))
                 .arg(one.stems);
  }
  return words;
}

QStringList PointViewModel::countedLately() const {
  constexpr qsizetype kRoom = 3;  // as many trees stand beside the tally
  return counted().first(std::min(kRoom, counted().size()));
}

void PointViewModel::makeCounting(bool counting) {
  if (!plot_) return;
  submit(
      [this, plot = *plot_, counting] {
        return oaklight::set_task(desk_.live(), plot,
                                  counting ? PlotTask::count : PlotTask::measure);
      },
      true);
}

void PointViewModel::count(int row, bool more) {
  const auto all = lines();
  if (!plot_ || row < 0 || static_cast<std::size_t>(row) >= all.size()) return;
  submit(
      [this, plot = *plot_, species = all[static_cast<std::size_t>(row)].species, more] {
        return oaklight::count_tree(desk_.live(), desk_.knowledge(), plot, species, more ? 1 : -1);
      },
      false);
}

void PointViewModel::submit(TractDesk::Maker make, bool tell) {
  desk_.submit(std::move(make), [this, tell](const oaklight::Status& done) {
    problem_ = done ? QString() : sentence_of(done.error());
    emit changed();
    if (done && tell) emit taken();
  });
}
