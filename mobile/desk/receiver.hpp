#pragma once

#include <QObject>
#include <QString>
#include <memory>

#include "core/place/fix.hpp"

class QGeoPositionInfo;
class QGeoPositionInfoSource;
class QIODevice;

/// A GNSS receiver: this device's own, or one that speaks NMEA 0183. The only place that knows
/// QtPositioning. It listens only while somebody asked it to, because a receiver drains a battery.
class Receiver : public QObject {
  Q_OBJECT

 public:
  /// where  "": as this device provides; kNone; "socket://host:port"; a serial device
  ///        ("/dev/ttyACM0"); or a file of NMEA sentences, played in the time in which it was taken
  explicit Receiver(QString where, QObject* parent = nullptr);
  /// A receiver at the end of a cable that somebody else opened; it must outlive this.
  explicit Receiver(QIODevice& cable, QObject* parent = nullptr);
  ~Receiver() override;

  static constexpr const char* kNone = "none";

  void start();
  void stop();
  [[nodiscard]] const QString& where() const { return where_; }
  [[nodiscard]] bool listening() const { return listening_; }
  /// Why it says nothing; "" while it works, or before it was asked.
  [[nodiscard]] const QString& problem() const { return problem_; }

 signals:
  void fixed(const oaklight::Fix& fix);
  void problemChanged();

 private:
  void open();
  void take(const QGeoPositionInfo& info);
  void say(const QString& problem);

  QString where_;
  QIODevice* cable_ = nullptr;
  std::unique_ptr<QGeoPositionInfoSource> source_;
  bool listening_ = false;
  QString problem_;
};
