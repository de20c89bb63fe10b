#include "mobile/viewmodels/way_view_model.hpp"

#include <QDateTime>
#include <cmath>

#include "core/base/number_text.hpp"
#include "core/sample/plot_spacing.hpp"
#include "core/session/walk.hpp"

using oaklight::Declination;
using oaklight::Degrees;
using oaklight::Leg;
using oaklight::Position;
using oaklight::UnitSystem;

namespace {

QString whole_degrees(Degrees azimuth) {
  return QString::number(static_cast<int>(std::lround(azimuth.value)) % 360);
}

/// 0 up to 360.
double turned(double degrees) {
  const double turn = std::fmod(degrees, 360.0);
  return turn < 0.0 ? turn + 360.0 : turn;
}

QString figure(double value, int decimals) {
  return QString::fromStdString(oaklight::number_text(value, decimals));
}

}  // namespace

QString distance_words(oaklight::Feet distance, const Settings& settings) {
  if (settings.metric())
    return QString::fromStdString(oaklight::grouped_text(oaklight::to_metres(distance).value, 0)) +
           QStringLiteral(" m");
  if (settings.chains()) return figure(distance / oaklight::kChain, 2) + QStringLiteral(" ch");
  return QString::fromStdString(oaklight::grouped_text(distance.value, 0)) + QStringLiteral(" ft");
}

QString give_or_take(oaklight::Metres radius, const Settings& settings) {
  const QString plus_minus = QString::fromUtf8("\u00b1 ");
  return settings.metric()
             ? plus_minus + figure(radius.value, 0) + QStringLiteral(" m")
             : plus_minus + figure(oaklight::to_feet(radius).value, 0) + QStringLiteral(" ft");
}

oaklight::Day day_of(std::int64_t ms) {
  const QDate date = QDateTime::fromMSecsSinceEpoch(ms).date();
  return {std::chrono::year(date.year()), std::chrono::month(static_cast<unsigned>(date.month())),
          std::chrono::day(static_cast<unsigned>(date.day()))};
}

WayViewModel::WayViewModel(Locator& locator, Settings& settings, oaklight::Clock& clock,
                           QObject* parent)
    : QObject(parent), locator_(locator), settings_(settings), clock_(clock) {
  connect(&locator, &Locator::problemChanged, this, &WayViewModel::changed);
}

void WayViewModel::lead(std::optional<Leg> leg, std::optional<Position> to) {
  leg_ = leg;
  to_ = to;
  emit changed();
}

double WayViewModel::arrow() const {
  const auto heading = locator_.heading();
  return known() ? turned((leg_->azimuth - heading.value_or(Degrees{})).value) : 0.0;
}

double WayViewModel::north() const {
  const auto heading = locator_.heading();
  return heading ? turned(-heading->value) : 0.0;
}

QString WayViewModel::up() const {
  if (locator_.heading()) return tr("Up is the way you walk.");
  return locator_.here() ? tr("Face north: up is TRUE north. Walk on, and up is ahead.")
                         : tr("Face north: up is TRUE north.");
}

std::optional<Declination> WayViewModel::declination(Position at) const {
  const auto found = oaklight::declination_at(at, day_of(clock_.now_ms()));
  return found ? std::optional(*found) : std::nullopt;
}

QString WayViewModel::bearingAt(Degrees azimuth, Position to, bool magnetic) const {
  const auto here = magnetic ? declination(to) : std::nullopt;
  if (!here) return tr("%1° TRUE").arg(whole_degrees(azimuth));
  return tr("%1° MAGNETIC").arg(whole_degrees(oaklight::magnetic_from_true(azimuth, here->east)));
}

QString WayViewModel::bearing() const {
  return known() ? bearingAt(leg_->azimuth, *to_, settings_.magnetic()) : QString();
}

QString WayViewModel::line(const Leg& leg, Position to) const {
  return tr("%1, %2").arg(bearingAt(leg.azimuth, to, settings_.magnetic()),
                          distance_words(leg.distance, settings_));
}

QString WayViewModel::direction() const {
  return known() ? QString::fromStdString(oaklight::compass_point(leg_->azimuth)) : QString();
}

QString WayViewModel::distance() const {
  return known() ? distance_words(leg_->distance, settings_) : QString();
}

QString WayViewModel::paces() const {
  if (!known()) return {};
  const UnitSystem system = settings_.system();
  const oaklight::PaceCount count{static_cast<double>(settings_.pacesIn(system)), system};
  const auto paces = oaklight::paces_for(leg_->distance, count);
  return paces ? QString::number(*paces) : tr("not counted");
}

QString WayViewModel::compass() const {
  if (!known()) return {};
  const auto here = declination(*to_);
  if (!here)
    return tr(
        "No declination is known here, so no magnetic bearing is given: set your compass's "
        "own declination first.");
  const QString other = bearingAt(leg_->azimuth, *to_, !settings_.magnetic());
  QString words = settings_.magnetic()
                      ? tr("%1. A compass whose own declination is set to 0 shows the MAGNETIC "
                           "bearing.")
                            .arg(other)
                      : tr("%1, on a compass whose own declination is set to 0.").arg(other);
  const QString side = here->east.value < 0.0 ? tr("west") : tr("east");
  words += QLatin1Char(' ') + tr("Declination %1° %2 (WMM2025, ± %3°).")
                                  .arg(figure(std::fabs(here->east.value), 1), side,
                                       figure(here->uncertainty.value, 1));
  if (here->expired)
    words += QLatin1Char(' ') + tr("OUT OF DATE: the model holds from 2025 to the end of 2029. Ask "
                                   "a current map for the declination.");
  if (here->weak) words += QLatin1Char(' ') + tr("Here a compass is not to be trusted.");
  return words;
}

bool WayViewModel::poor() const {
  return locator_.here() &&
         oaklight::poor(*locator_.here(), oaklight::Metres{double(settings_.poorBeyond())});
}

QString WayViewModel::fix() const {
  const auto& here = locator_.here();
  if (!here) {
    const Receiver* receiver = locator_.receiver();
    const bool waits = receiver != nullptr && receiver->listening() && problem().isEmpty();
    return waits ? tr("No position yet.") : QString();
  }
  if (!here->accuracy) return tr("POOR position: the receiver does not say how good it is.");
  const QString radius = give_or_take(*here->accuracy, settings_);
  return poor() ? tr("POOR position, %1: trust compass and paces.").arg(radius)
                : tr("Position %1").arg(radius);
}

QString WayViewModel::problem() const {
  const Receiver* receiver = locator_.receiver();
  return receiver == nullptr ? QString() : receiver->problem();
}
