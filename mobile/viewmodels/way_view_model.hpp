#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <optional>

#include "core/base/clock.hpp"
#include "core/place/declination.hpp"
#include "core/place/geodesy.hpp"
#include "mobile/desk/locator.hpp"
#include "mobile/look/settings.hpp"

/// The straight way to one place: an arrow, a bearing from both norths, a distance. The arrow
/// points ahead as one walks; for one who stands it is drawn on a dial with north up, and says so.
class WayViewModel : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("WalkViewModel owns it")
  Q_PROPERTY(bool known READ known NOTIFY changed)
  /// Where the arrow points and where true north is, degrees clockwise from the top of the glass.
  Q_PROPERTY(double arrow READ arrow NOTIFY changed)
  Q_PROPERTY(double north READ north NOTIFY changed)
  Q_PROPERTY(QString up READ up NOTIFY changed)                ///< what the top of the glass means
  Q_PROPERTY(QString bearing READ bearing NOTIFY changed)      ///< "142° TRUE" or "150° MAGNETIC"
  Q_PROPERTY(QString direction READ direction NOTIFY changed)  ///< "SE"
  Q_PROPERTY(QString distance READ distance NOTIFY changed)
  Q_PROPERTY(QString paces READ paces NOTIFY changed)
  Q_PROPERTY(QString compass READ compass NOTIFY changed)  ///< the other north, and declination
  Q_PROPERTY(QString fix READ fix NOTIFY changed)  ///< how good the position is; "" without one
  Q_PROPERTY(bool poor READ poor NOTIFY changed)   ///< the position is to be doubted
  Q_PROPERTY(QString problem READ problem NOTIFY changed)  ///< why there is no position

 public:
  WayViewModel(Locator& locator, Settings& settings, oaklight::Clock& clock,
               QObject* parent = nullptr);

  /// The way as it is now; nothing: not known.
  void lead(std::optional<oaklight::Leg> leg, std::optional<oaklight::Position> to);

  [[nodiscard]] bool known() const { return leg_.has_value(); }
  [[nodiscard]] double arrow() const;
  [[nodiscard]] double north() const;
  [[nodiscard]] QString up() const;
  [[nodiscard]] QString bearing() const;
  [[nodiscard]] QString direction() const;
  [[nodiscard]] QString distance() const;
  [[nodiscard]] QString paces() const;
  [[nodiscard]] QString compass() const;
  [[nodiscard]] QString fix() const;
  [[nodiscard]] bool poor() const;
  [[nodiscard]] QString problem() const;
  /// "142° TRUE, 310 ft": a way in one line, from the north that the person chose.
  [[nodiscard]] QString line(const oaklight::Leg& leg, oaklight::Position to) const;

 signals:
  void changed();

 private:
  [[nodiscard]] std::optional<oaklight::Declination> declination(oaklight::Position at) const;
  [[nodiscard]] QString bearingAt(oaklight::Degrees azimuth, oaklight::Position to,
                                  bool magnetic) const;

  Locator& locator_;
  Settings& settings_;
  oaklight::Clock& clock_;
  std::optional<oaklight::Leg> leg_;
  std::optional<oaklight::Position> to_;
};

/// "310 ft", "4.70 ch", "95 m": a way to walk, to the whole foot or metre, since nobody paces
/// closer.
QString distance_words(oaklight::Feet distance, const Settings& settings);
/// "± 13 ft", "± 4 m".
QString give_or_take(oaklight::Metres radius, const Settings& settings);
/// The day on this device's calendar.
oaklight::Day day_of(std::int64_t ms);
