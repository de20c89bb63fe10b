#include "mobile/desk/receiver.hpp"

#include <QDateTime>
#include <QFile>
#include <QFileInfo>
#include <QGeoPositionInfoSource>
#include <QNmeaPositionInfoSource>
#include <cmath>

namespace {

using Source = std::unique_ptr<QGeoPositionInfoSource>;

// NMEA tells how the satellites stand (HDOP) and not how far off a fix is. Qt makes an accuracy of
// it, twice HDOP times the error of a single range, within which 95 of 100 fixes lie: 5 m at an
// HDOP of 1, as handhelds reach in the open (2.5 m from memory; under trees it is more).
constexpr double kRangeErrorMetres = 2.5;

void tell_range_error(QGeoPositionInfoSource* source) {
  if (auto* nmea = qobject_cast<QNmeaPositionInfoSource*>(source))
    nmea->setUserEquivalentRangeError(kRangeErrorMetres);
}

/// A recorded walk.
Source from_file(const QString& path) {
  auto* file = new QFile(path);
  if (!file->open(QIODevice::ReadOnly)) {
    delete file;
    return nullptr;
  }
  auto source = std::make_unique<QNmeaPositionInfoSource>(QNmeaPositionInfoSource::SimulationMode);
  file->setParent(source.get());
  source->setDevice(file);
  return source;
}

Source from_plugin(const QString& where) {
  return Source(QGeoPositionInfoSource::createSource(
      QStringLiteral("nmea"), {{QStringLiteral("nmea.source"), where}}, nullptr));
}

Source source_at(const QString& where) {
  if (where.isEmpty()) return Source(QGeoPositionInfoSource::createDefaultSource(nullptr));
  if (where.startsWith(QLatin1String("socket://"))) return from_plugin(where);
  const QFileInfo info(where);
  if (!info.exists()) return nullptr;
  return info.isFile() ? from_file(where) : from_plugin(QStringLiteral("serial:") + where);
}

/// A broken line of a receiver may tell any number.
bool is_bearing(oaklight::Degrees course) { return course.value >= 0.0 && course.value <= 360.0; }

/// What a receiver says of one figure; nothing where it does not.
template <class Unit>
std::optional<Unit> told(const QGeoPositionInfo& info, QGeoPositionInfo::Attribute which) {
  if (!info.hasAttribute(which)) return std::nullopt;
  const double value = info.attribute(which);
  return std::isfinite(value) ? std::optional(Unit{value}) : std::nullopt;
}

}  // namespace

Receiver::Receiver(QString where, QObject* parent) : QObject(parent), where_(std::move(where)) {}

Receiver::Receiver(QIODevice& cable, QObject* parent) : QObject(parent), cable_(&cable) {}

Receiver::~Receiver() = default;

void Receiver::open() {
  if (cable_ != nullptr) {
    auto nmea = std::make_unique<QNmeaPositionInfoSource>(QNmeaPositionInfoSource::RealTimeMode);
    nmea->setDevice(cable_);
    source_ = std::move(nmea);
  } else {
    source_ = source_at(where_);
  }
  if (source_ == nullptr) {
    return say(
        where_.isEmpty()
            ? tr("This device tells no position. A receiver that speaks NMEA can be named "
                 "on the page Setup.")
            : tr("There is no receiver at \"%1\". Correct it on the page Setup.").arg(where_));
  }
  tell_range_error(source_.get());
  connect(source_.get(), &QGeoPositionInfoSource::positionUpdated, this, &Receiver::take);
  connect(
      source_.get(), &QGeoPositionInfoSource::errorOccurred, this,
      [this](QGeoPositionInfoSource::Error error) {
        if (error == QGeoPositionInfoSource::AccessError)
          say(
              tr("The system keeps the position from this app. Allow it in the system's "
                 "settings."));
        if (error == QGeoPositionInfoSource::ClosedError ||
            error == QGeoPositionInfoSource::UnknownSourceError)
          say(tr("The receiver cannot be reached. Look at its cable, and at whether it is on."));
      });
}

void Receiver::start() {
  if (listening_ || where_ == QLatin1String(kNone)) return;
  listening_ = true;
  say({});
  if (source_ == nullptr) open();
  if (source_ != nullptr) source_->startUpdates();
}

void Receiver::stop() {
  if (!listening_) return;
  listening_ = false;
  if (source_ != nullptr) source_->stopUpdates();
}

void Receiver::take(const QGeoPositionInfo& info) {
  const QGeoCoordinate at = info.coordinate();
  if (!at.isValid()) return;
  say({});
  oaklight::Fix fix;
  fix.at = {oaklight::Degrees{at.latitude()}, oaklight::Degrees{at.longitude()}};
  fix.accuracy = told<oaklight::Metres>(info, QGeoPositionInfo::HorizontalAccuracy);
  const auto course = told<oaklight::Degrees>(info, QGeoPositionInfo::Direction);
  if (course && is_bearing(*course)) fix.course = course;
  fix.speed = told<oaklight::MetresPerSecond>(info, QGeoPositionInfo::GroundSpeed);
  fix.ms = (info.timestamp().isValid() ? info.timestamp() : QDateTime::currentDateTimeUtc())
               .toMSecsSinceEpoch();
  emit fixed(fix);
}

void Receiver::say(const QString& problem) {
  if (problem_ == problem) return;
  problem_ = problem;
  emit problemChanged();
}
