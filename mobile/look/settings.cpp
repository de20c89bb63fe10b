#include "mobile/look/settings.hpp"

#include <QRandomGenerator>

using oaklight::UnitSystem;

namespace {

constexpr int kRecentFiles = 8;

}  // namespace

Settings::Settings(const QString& file, QObject* parent)
    : QObject(parent), file_(file, QSettings::IniFormat) {}

Settings::Light Settings::light() const {
  const int stored = file_.value("light", 0).toInt();
  return stored == 1 ? Light::Bright : stored == 2 ? Light::Night : Light::Day;
}
bool Settings::gloves() const { return file_.value("gloves", true).toBool(); }
bool Settings::leftHand() const { return file_.value("left_hand", false).toBool(); }
bool Settings::metric() const { return file_.value("metric", false).toBool(); }
QString Settings::language() const { return file_.value("language", "en").toString(); }
bool Settings::volumeKeys() const { return file_.value("volume_keys", false).toBool(); }
bool Settings::typed() const { return file_.value("typed", false).toBool(); }
QString Settings::tallySet() const {
  return file_.value("tally_set", "appalachian_mixed_oak").toString();
}
// 5 ft a pair of steps is common practice; every person counts an own pace.
int Settings::pacesIn(UnitSystem system) const {
  // The same pace over 100 m, which is 328 ft.
  return system == UnitSystem::us ? file_.value("paces", 20).toInt()
                                  : file_.value("paces_in_100_m", 66).toInt();
}
int Settings::allowableError() const { return file_.value("allowable_error", 15).toInt(); }
bool Settings::magnetic() const { return file_.value("magnetic", false).toBool(); }
bool Settings::chains() const { return file_.value("chains", false).toBool(); }
QString Settings::receiver() const { return file_.value("receiver").toString(); }
// Under leaves a handheld is some metres off; twice that is no place for a plot (judgement).
int Settings::poorBeyond() const { return file_.value("poor_beyond_m", 10).toInt(); }
QString Settings::snapshotFolder() const { return file_.value("snapshot_folder").toString(); }
bool Settings::introSeen() const { return file_.value("intro_seen", false).toBool(); }
QStringList Settings::recentFiles() const { return file_.value("recent").toStringList(); }
QString Settings::deviceMark() {
  constexpr quint32 kMarks = 1U << 24;
  if (!file_.contains("device_mark")) {
    const quint32 drawn = QRandomGenerator::system()->bounded(kMarks);
    file_.setValue("device_mark", QString::number(drawn + kMarks, 16).mid(1));
  }
  return file_.value("device_mark").toString();
}

UnitSystem Settings::system() const { return metric() ? UnitSystem::metric : UnitSystem::us; }

void Settings::setLight(Light light) { set("light", static_cast<int>(light)); }
void Settings::setGloves(bool on) { set("gloves", on); }
void Settings::setLeftHand(bool on) { set("left_hand", on); }
void Settings::setMetric(bool on) { set("metric", on); }
void Settings::setLanguage(const QString& language) { set("language", language); }
void Settings::setVolumeKeys(bool on) { set("volume_keys", on); }
void Settings::setTyped(bool on) { set("typed", on); }
void Settings::setTallySet(const QString& key) { set("tally_set", key); }
void Settings::setPacesIn(UnitSystem system, int paces) {
  set(system == UnitSystem::us ? "paces" : "paces_in_100_m", paces);
}
void Settings::setAllowableError(int percent) { set("allowable_error", percent); }
void Settings::setMagnetic(bool on) { set("magnetic", on); }
void Settings::setChains(bool on) { set("chains", on); }
void Settings::setReceiver(const QString& where) { set("receiver", where.trimmed()); }
void Settings::setPoorBeyond(int metres) { set("poor_beyond_m", metres); }
void Settings::setSnapshotFolder(const QString& folder) {
  set("snapshot_folder", folder.trimmed());
}
void Settings::setIntroSeen(bool seen) { set("intro_seen", seen); }

void Settings::addRecentFile(const QString& path) {
  QStringList recent = recentFiles();
  recent.removeAll(path);
  recent.prepend(path);
  set("recent", recent.mid(0, kRecentFiles));
}

void Settings::set(const QString& key, const QVariant& value) {
  if (file_.value(key) == value) return;
  file_.setValue(key, value);
  file_.sync();
  emit changed();
}
