#pragma once

#include <QtQml/qqmlregistration.h>
#include <QObject>
#include <QSettings>
#include <QStringList>

#include "core/units/reading.hpp"

/// What a person chose once for this device; kept in an ini file beside nothing else.
class Settings : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("AppModel owns it")
  Q_PROPERTY(Light light READ light WRITE setLight NOTIFY changed)
  Q_PROPERTY(bool gloves READ gloves WRITE setGloves NOTIFY changed)
  Q_PROPERTY(bool leftHand READ leftHand WRITE setLeftHand NOTIFY changed)
  Q_PROPERTY(bool metric READ metric WRITE setMetric NOTIFY changed)
  Q_PROPERTY(QString language READ language WRITE setLanguage NOTIFY changed)
  Q_PROPERTY(bool volumeKeys READ volumeKeys WRITE setVolumeKeys NOTIFY changed)
  Q_PROPERTY(bool typed READ typed WRITE setTyped NOTIFY changed)
  Q_PROPERTY(QString tallySet READ tallySet WRITE setTallySet NOTIFY changed)
  Q_PROPERTY(int allowableError READ allowableError WRITE setAllowableError NOTIFY changed)
  Q_PROPERTY(bool magnetic READ magnetic WRITE setMagnetic NOTIFY changed)
  Q_PROPERTY(bool chains READ chains WRITE setChains NOTIFY changed)
  Q_PROPERTY(QString receiver READ receiver WRITE setReceiver NOTIFY changed)
  Q_PROPERTY(QString snapshotFolder READ snapshotFolder WRITE setSnapshotFolder NOTIFY changed)
  Q_PROPERTY(bool introSeen READ introSeen WRITE setIntroSeen NOTIFY changed)

 public:
  enum class Light { Day, Bright, Night };
  Q_ENUM(Light)

  /// file  of the settings; made when something is first set
  explicit Settings(const QString& file, QObject* parent = nullptr);

  [[nodiscard]] Light light() const;
  [[nodiscard]] bool gloves() const;
  [[nodiscard]] bool leftHand() const;
  [[nodiscard]] bool metric() const;
  [[nodiscard]] QString language() const;  ///< "en" or "es"
  [[nodiscard]] bool volumeKeys() const;
  [[nodiscard]] bool typed() const;        ///< a species asks for its diameter by keypad
  [[nodiscard]] QString tallySet() const;  ///< a key of species_sets.csv
  /// The person's own count in 100 ft, or in 100 m: each system keeps the one that was counted.
  [[nodiscard]] int pacesIn(oaklight::UnitSystem system) const;
  [[nodiscard]] int allowableError() const;  ///< percent of the mean, at 95 % confidence
  [[nodiscard]] bool magnetic() const;       ///< bearings are shown first as a compass reads them
  [[nodiscard]] bool chains() const;  ///< ways are told in chains where they would be in feet
  [[nodiscard]] QString receiver()
      const;                             ///< of positions; "": the device's own (desk/receiver.hpp)
  [[nodiscard]] int poorBeyond() const;  ///< metres; a fix less accurate is poor
  /// Where copies of the tract keep themselves; "": the folder "snapshots" beside it.
  [[nodiscard]] QString snapshotFolder() const;
  [[nodiscard]] bool introSeen() const;
  [[nodiscard]] QStringList recentFiles() const;  ///< newest first
  /// A few letters that tell this device from others of its kind in the history of joined files;
  /// drawn once.
  [[nodiscard]] QString deviceMark();

  [[nodiscard]] oaklight::UnitSystem system() const;

  void setLight(Light light);
  void setGloves(bool on);
  void setLeftHand(bool on);
  void setMetric(bool on);
  void setLanguage(const QString& language);
  void setVolumeKeys(bool on);
  void setTyped(bool on);
  void setTallySet(const QString& key);
  void setPacesIn(oaklight::UnitSystem system, int paces);
  void setAllowableError(int percent);
  void setMagnetic(bool on);
  void setChains(bool on);
  void setReceiver(const QString& where);
  void setPoorBeyond(int metres);
  void setSnapshotFolder(const QString& folder);
  void setIntroSeen(bool seen);
  void addRecentFile(const QString& path);

 signals:
  void changed();

 private:
  void set(const QString& key, const QVariant& value);

  QSettings file_;
};
