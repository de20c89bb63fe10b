#include "mobile/viewmodels/walk_view_model.hpp"

#include <algorithm>

#include "core/session/plot_work.hpp"

using oaklight::Plot;
using oaklight::PlotId;
using oaklight::PlotStatus;
using oaklight::Status;
using oaklight::WalkStop;

WalkViewModel::WalkViewModel(TractDesk& desk, CurrentPlot& plot, Settings& settings,
                             const DiskRoom& room, Locator& locator, QObject* parent)
    : QObject(parent),
      desk_(desk),
      current_(plot),
      room_(room),
      locator_(locator),
      way_(locator, settings, desk.clock()),
      centre_(desk, locator, settings),
      route_(desk, locator, way_, settings),
      point_(desk, settings) {
  connect(&desk, &TractDesk::changed, this, &WalkViewModel::follow);
  connect(&desk, &TractDesk::damageFound, this, &WalkViewModel::changed);
  connect(&settings, &Settings::changed, this, [this] {
    plots_.retell();
    stale_ = true;
    if (shown_) refresh();
  });
  connect(&locator, &Locator::moved, this, &WalkViewModel::move);
  connect(&route_, &RouteViewModel::ordered, this, &WalkViewModel::chooseNext);
  refresh();
}

void WalkViewModel::show(bool shown) {
  if (shown_ != shown) locator_.want(shown);
  shown_ = shown;
  if (shown_ && stale_) refresh();
}

/// The way to the same plot from where the person is now: a goal that changed underfoot would lead
/// in circles.
void WalkViewModel::move() {
  if (!shown_) return;
  if (!stop_) return refresh();
  const auto way = oaklight::way_to(desk_.live(), stop_->plot, startOfWay().from);
  if (!way) return refresh();
  stop_ = *way;
  lead();
  emit changed();
}

WayStart WalkViewModel::startOfWay() const {
  const auto& here = locator_.here();
  return way_start(desk_.live(), stood_, here ? std::optional(here->at) : std::nullopt);
}

std::optional<WalkStop> WalkViewModel::nextStop(const oaklight::WalkFrom& from) const {
  for (const PlotId id : route_.order()) {
    const Plot* plot = desk_.live().find(id);
    if (plot == nullptr || plot->status != PlotStatus::planned) continue;
    if (const auto way = oaklight::way_to(desk_.live(), id, from)) return *way;
  }
  return oaklight::next_stop(desk_.live(), std::nullopt, from);
}

void WalkViewModel::lead() {
  const Plot* to = plot();
  way_.lead(stop_ ? stop_->leg : std::nullopt, to == nullptr ? std::nullopt : to->position);
  centre_.of(target());
  point_.of(target());
}

void WalkViewModel::follow(const std::vector<oaklight::Change>& changes) {
  if (!reach_beyond_tally(changes)) return;
  for (const oaklight::Change& change : changes) {
    const Plot* plot = std::get_if<Plot>(&change);
    const bool here = plot != nullptr && current_.id() == plot->id;
    const bool visited =
        here && (plot->status == PlotStatus::measured || plot->status == PlotStatus::empty);
    if (visited) stand(plot->id);
  }
  stale_ = true;
  if (shown_) refresh();
}

/// From here the way goes on, so what was chosen before is over.
void WalkViewModel::stand(PlotId plot) {
  stood_ = plot;
  if (chosen_ == plot) chosen_.reset();
}

void WalkViewModel::refresh() {
  stale_ = false;
  const WayStart start = startOfWay();
  stop_.reset();
  if (chosen_) {
    const auto way = oaklight::way_to(desk_.live(), *chosen_, start.from);
    if (way)
      stop_ = *way;
    else
      chosen_.reset();
  }
  if (!stop_) stop_ = nextStop(start.from);
  lead();
  listPlots();
  emit changed();
}

void WalkViewModel::listPlots() {
  const oaklight::LiveTract& live = desk_.live();
  const auto from = startOfWay().from;
  const bool sampled = std::ranges::any_of(live.data().plots, [](const Plot& plot) {
    return oaklight::taken_at(plot).task == oaklight::PlotTask::count;
  });
  std::vector<PlotRow> rows;
  for (const oaklight::Stand& stand : live.data().stands) {
    auto plots = live.plots_of(stand.id);
    std::ranges::stable_sort(plots, [](const Plot* a, const Plot* b) {
      return oaklight::natural_less(a->label, b->label);
    });
    for (const Plot* plot : plots) {
      PlotRow row{plot->id, name_of(live, *plot), plot->status, {}, plot->id == target()};
      const auto way = oaklight::way_to(live, plot->id, from);
      if (plot->status == PlotStatus::skipped)
        row.detail = QString::fromStdString(plot->skip_reason);
      else if (way && way->leg)
        row.detail = way_.line(*way->leg, *plot->position);
      if (sampled && plot->status != PlotStatus::skipped) {
        const bool count = oaklight::taken_at(*plot).task == oaklight::PlotTask::count;
        const QString kind = count ? tr("count point") : tr("measure point");
        row.detail = row.detail.isEmpty() ? kind : tr("%1, %2").arg(kind, row.detail);
      }
      rows.push_back(std::move(row));
    }
  }
  plots_.set(std::move(rows));
}

const Plot* WalkViewModel::plot() const { return stop_ ? desk_.live().find(stop_->plot) : nullptr; }

std::optional<PlotId> WalkViewModel::target() const {
  return stop_ ? std::optional(stop_->plot) : std::nullopt;
}

QString WalkViewModel::name() const {
  return plot() == nullptr ? QString() : name_of(desk_.live(), *plot());
}
QString WalkViewModel::status() const {
  return plot() == nullptr ? QString() : status_words(plot()->status);
}
QString WalkViewModel::mark() const {
  return plot() == nullptr ? QString() : icon_of(plot()->status);
}

QString WalkViewModel::note() const {
  if (plot() == nullptr) {
    return desk_.data().plots.empty()
               ? tr("No plots are laid out yet. Add some on the page Tract.")
               : tr("No plot is left to do. Choose any plot from the list to go back to it.");
  }
  const WayStart start = startOfWay();
  if (start.plot != nullptr && start.plot->id == plot()->id)
    return tr("You were at this plot last.");
  if (!plot()->position)
    return tr("Nobody recorded where this plot lies. Find it by your own map.");
  switch (start.kind) {
    case WayStart::Kind::here:
      return noteFromHere();
    case WayStart::Kind::landing:
      return tr("The way begins at the landing.");
    case WayStart::Kind::nowhere:
      return tr("No plot was worked yet, so the way there is not known. Find it by your own map.");
    case WayStart::Kind::plot:
      break;
  }
  const QString from = name_of(desk_.live(), *start.plot);
  return way_.known()
             ? tr("The way begins at %1.").arg(from)
             : tr("Nobody recorded where %1 lies, so the way from there is not known.").arg(from);
}

QString WalkViewModel::noteFromHere() const {
  const QString turns = route_.turnsTo(plot()->id);
  const auto& accuracy = locator_.here()->accuracy;
  const bool there = stop_->leg && accuracy && to_metres(stop_->leg->distance) <= *accuracy;
  if (there)
    return tr(
        "The plot is here, as near as the position can tell. Set its centre now, and do not "
        "move it to better ground.");
  const QString here = tr("The way begins where you are.");
  return turns.isEmpty() ? here : here + QLatin1Char(' ') + turns;
}

QString WalkViewModel::progress() const {
  const auto progress = oaklight::walk_progress(desk_.live(), std::nullopt);
  return tr("%1 done, %2 to do").arg(progress.done()).arg(progress.planned);
}

WalkViewModel::Acts WalkViewModel::may() const {
  if (plot() == nullptr) return {};
  const bool skipped = plot()->status == PlotStatus::skipped;
  Acts may;
  may.setFlag(Act::Go, !skipped);
  if (desk_.readOnly()) return may;
  const bool planned = plot()->status == PlotStatus::planned;
  may.setFlag(Act::Empty, planned);
  may.setFlag(Act::Skip, planned);
  may.setFlag(Act::Centre, !skipped && locator_.here().has_value());
  may.setFlag(Act::Again, skipped || plot()->status == PlotStatus::empty);
  return may;
}

QStringList WalkViewModel::reasons() const {
  return {tr("Not safe to reach"), tr("Not safe to work in"), tr("Under water"),
          tr("Off the property"),  tr("Owner keeps us out"),  tr("Nest or den in use")};
}

void WalkViewModel::choose(int row) {
  const PlotRow* chosen = plots_.at(row);
  if (chosen == nullptr) return;
  chosen_ = chosen->id;
  refresh();
}

void WalkViewModel::chooseCurrent() {
  chosen_ = current_.id();
  refresh();
}

void WalkViewModel::chooseNext() {
  chosen_.reset();
  refresh();
}

void WalkViewModel::start() {
  if (!may().testFlag(Act::Go)) return;
  const PlotId id = plot()->id;
  if (plot()->status != PlotStatus::planned || desk_.readOnly()) {
    current_.set(id);
    stand(id);
    emit reached();
    return;
  }
  oaklight::PlotVisit visit;
  visit.day = day_of(desk_.clock().now_ms());
  desk_.submit(
      [this, id, visit]() -> oaklight::Result<oaklight::Action> {
        if (room_.level() == DiskRoom::Level::too_low) return room_.refusal();
        return oaklight::start_plot(desk_.live(), desk_.knowledge(), id, visit);
      },
      [this, id](const Status& started) {
        if (!started) return;
        current_.set(id);
        emit reached();
      });
}

void WalkViewModel::callEmpty() {
  if (plot() == nullptr) return;
  const PlotId id = plot()->id;
  desk_.submit([this, id] { return oaklight::call_empty(desk_.live(), id); },
               [this, id](const Status& called) {
                 if (!called) return;
                 current_.set(id);
                 stand(id);
                 refresh();
               });
}

void WalkViewModel::skip(const QString& reason) {
  if (plot() == nullptr) return;
  const PlotId id = plot()->id;
  desk_.submit(
      [this, id, words = reason.trimmed().toStdString()] {
        return oaklight::skip_plot(desk_.live(), desk_.knowledge(), id, words);
      },
      [this, id](const Status& skipped) {
        if (!skipped) return;
        if (chosen_ == id) chosen_.reset();
        refresh();
      });
}

void WalkViewModel::planAgain() {
  if (plot() == nullptr) return;
  const PlotId id = plot()->id;
  desk_.submit([this, id] { return oaklight::plan_again(desk_.live(), id); },
               [this, id](const Status& planned) {
                 if (!planned) return;
                 chosen_ = id;  // whoever plans it again means to go there
                 refresh();
               });
}
