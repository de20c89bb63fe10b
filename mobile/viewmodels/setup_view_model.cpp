#include "mobile/viewmodels/setup_view_model.hpp"

#include <QCoreApplication>
#include <algorithm>
#include <array>

#include "core/base/number_text.hpp"
#include "core/session/walk.hpp"
#include "mobile/viewmodels/way_view_model.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::UnitSystem;

namespace {

constexpr std::array<const char*, 2> kLanguages = {"en", "es"};
// Percent of the mean at 95 % confidence; common practice asks for one of these.
constexpr std::array<int, 4> kErrors = {10, 15, 20, 25};

// Metres. 5 in the open, 10 under leaves, 20 in a cove (judgement).
constexpr std::array<int, 4> kLimits = {5, 10, 20, 30};

}  // namespace

SetupViewModel::SetupViewModel(TractDesk& desk, Settings& settings, QObject* parent)
    : QObject(parent), desk_(desk), settings_(settings) {
  connect(&settings, &Settings::changed, this, &SetupViewModel::changed);
}

QStringList SetupViewModel::languages() const {
  // Each in its own words, for whoever reads only that one.
  return {QStringLiteral("English"), QString::fromUtf8("Espa\u00f1ol")};
}

int SetupViewModel::language() const {
  const std::string now = settings_.language().toStdString();
  const auto found = std::ranges::find(kLanguages, now);
  return found == kLanguages.end() ? -1 : static_cast<int>(found - kLanguages.begin());
}

void SetupViewModel::setLanguage(int row) {
  if (row < 0 || row >= static_cast<int>(kLanguages.size())) return;
  settings_.setLanguage(QString::fromLatin1(kLanguages[static_cast<std::size_t>(row)]));
}

QString SetupViewModel::paces() const {
  return QString::number(settings_.pacesIn(settings_.system()));
}

QString SetupViewModel::pacesLabel() const {
  return settings_.system() == UnitSystem::us ? tr("Your paces in 100 ft")
                                              : tr("Your paces in 100 m");
}

void SetupViewModel::typePaces(const QString& text) {
  paces_problem_.clear();
  const UnitSystem system = settings_.system();
  const auto count = oaklight::whole_from_text(text.trimmed().toStdString());
  // Any distance asks whether the count is a walker's.
  const auto sound =
      count ? oaklight::paces_for(oaklight::Feet{100.0}, {static_cast<double>(*count), system})
            : oaklight::Result<int>(count.error());
  if (sound) {
    settings_.setPacesIn(system, static_cast<int>(*count));
  } else {
    paces_problem_ = sentence_of(sound.error());
  }
  emit pacesProblemChanged();
}

QStringList SetupViewModel::errors() const {
  QStringList list;
  for (const int percent : kErrors) list << QStringLiteral("%1\u00a0%").arg(percent);
  return list;
}

int SetupViewModel::error() const {
  const auto found = std::ranges::find(kErrors, settings_.allowableError());
  return found == kErrors.end() ? -1 : static_cast<int>(found - kErrors.begin());
}

void SetupViewModel::setError(int row) {
  if (row < 0 || row >= static_cast<int>(kErrors.size())) return;
  settings_.setAllowableError(kErrors[static_cast<std::size_t>(row)]);
}

QStringList SetupViewModel::tallySets() const {
  QStringList names;
  for (const oaklight::TallySet& set : desk_.knowledge().sets) names << form_words(set.name);
  return names;
}

int SetupViewModel::tallySet() const {
  const auto& sets = desk_.knowledge().sets;
  const auto found =
      std::ranges::find(sets, settings_.tallySet().toStdString(), &oaklight::TallySet::key);
  return found == sets.end() ? -1 : static_cast<int>(found - sets.begin());
}

void SetupViewModel::setTallySet(int row) {
  const auto& sets = desk_.knowledge().sets;
  if (row < 0 || row >= static_cast<int>(sets.size())) return;
  settings_.setTallySet(QString::fromStdString(sets[static_cast<std::size_t>(row)].key));
}

QStringList SetupViewModel::limits() const {
  QStringList list;
  for (const int metres : kLimits)
    list << give_or_take(oaklight::Metres{static_cast<double>(metres)}, settings_);
  return list;
}

int SetupViewModel::limit() const {
  const auto found = std::ranges::find(kLimits, settings_.poorBeyond());
  return found == kLimits.end() ? -1 : static_cast<int>(found - kLimits.begin());
}

void SetupViewModel::setLimit(int row) {
  if (row < 0 || row >= static_cast<int>(kLimits.size())) return;
  settings_.setPoorBeyond(kLimits[static_cast<std::size_t>(row)]);
}

QStringList SetupViewModel::about() const {
  return {tr("No app replaces looking up. Oaklight is a reminder and a record. It is not training, "
             "a permit, a survey, or a check that a tree is safe to fell."),
          tr("Local codes, the product label, the saw's manual and licensed people always govern."),
          tr("Oaklight %1").arg(QCoreApplication::applicationVersion()),
          tr("Made with Qt %1, under the GNU Lesser General Public License, version 3: you may "
             "replace it by another version of it.")
              .arg(QString::fromLatin1(qVersion())),
          tr("Typeface Noto Sans, under the SIL Open Font License, version 1.1.")};
}
