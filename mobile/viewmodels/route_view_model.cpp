#include "mobile/viewmodels/route_view_model.hpp"

#include <algorithm>

#include "core/base/number_text.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::PlotId;
using oaklight::RouteStop;
using oaklight::WalkRoute;

RouteViewModel::RouteViewModel(TractDesk& desk, Locator& locator, const WayViewModel& way,
                               Settings& settings, QObject* parent)
    : QObject(parent), desk_(desk), locator_(locator), way_(way), settings_(settings) {
  connect(&settings, &Settings::changed, this, &RouteViewModel::changed);
  connect(&work_, &Background::answered, this, &RouteViewModel::changed);
}

void RouteViewModel::plan() {
  oaklight::RouteRequest request;
  if (locator_.here()) request.start = locator_.here()->at;
  work_.ask([this, data = desk_.snapshot(), request]() -> Background::Answer {
    auto route = oaklight::plan_walk(oaklight::LiveTract(*data), request);
    return [this, route = std::move(route)] { take(route); };
  });
  emit changed();
}

void RouteViewModel::take(const oaklight::Result<WalkRoute>& route) {
  problem_ = route ? QString() : sentence_of(route.error());
  route_ = route ? *route : WalkRoute{};
  order_.clear();
  for (const RouteStop& stop : route_.stops) order_.push_back(stop.plot);
  emit changed();
  emit ordered();
}

void RouteViewModel::drop() {
  work_.drop();
  problem_.clear();
  route_ = {};
  order_.clear();
  emit changed();
  emit ordered();
}

QString RouteViewModel::legs(const RouteStop& stop) const {
  QStringList words;
  for (const oaklight::Leg& leg : stop.legs) words << way_.line(leg, stop.at);
  return words.join(QStringLiteral("; "));
}

QStringList RouteViewModel::stops() const {
  QStringList lines;
  for (const RouteStop& stop : route_.stops) {
    const oaklight::Plot* plot = desk_.live().find(stop.plot);
    if (plot == nullptr) continue;
    const QString name = QString::fromStdString(stop.stand_name + " " + stop.label);
    const bool done = plot->status != oaklight::PlotStatus::planned;
    lines << QStringLiteral("%1. %2: %3")
                 .arg(lines.size() + 1)
                 .arg(name, done ? tr("done") : legs(stop));
  }
  return lines;
}

QStringList RouteViewModel::words() const {
  if (!planned()) return {};
  QStringList lines{tr("%1 plots, %2 there and back to the start.")
                        .arg(route_.stops.size())
                        .arg(distance_words(route_.length, settings_))};
  const QString gap = QString::fromStdString(oaklight::number_text(100.0 * route_.gap(), 1));
  lines << (route_.exact
                ? tr("No other order is a shorter walk.")
                : tr("At most %1 % of the walk could be saved by another order.").arg(gap));
  for (const std::string& note : route_.notes) lines << QString::fromStdString(note);
  for (const std::string& out : route_.left_out) lines << QString::fromStdString(out + ".");
  return lines;
}

std::vector<oaklight::Position> RouteViewModel::line() const {
  return planned() ? oaklight::route_line(route_) : std::vector<oaklight::Position>();
}

QString RouteViewModel::turnsTo(PlotId plot) const {
  const auto stop = std::ranges::find(route_.stops, plot, &RouteStop::plot);
  if (stop == route_.stops.end() || stop->legs.size() < 2) return {};
  return tr("Planned way, round what is not crossed: %1.").arg(legs(*stop));
}
