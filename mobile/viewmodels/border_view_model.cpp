#include "mobile/viewmodels/border_view_model.hpp"

#include <algorithm>

#include "core/session/plot_work.hpp"
#include "mobile/viewmodels/words.hpp"

using oaklight::BorderlineTree;
using oaklight::TapedLength;
using oaklight::UnitSystem;

BorderViewModel::BorderViewModel(TractDesk& desk, CurrentPlot& plot, Settings& settings,
                                 QObject* parent)
    : QObject(parent), desk_(desk), plot_(plot), settings_(settings) {
  connect(&plot, &CurrentPlot::changed, this, &BorderViewModel::clear);
  connect(&settings, &Settings::changed, this, &BorderViewModel::judge);
}

QStringList BorderViewModel::names() const {
  return {tr("Diameter"), tr("Taped distance"), tr("Slope")};
}

QStringList BorderViewModel::readings() const {
  const bool metric = settings_.metric();
  const auto text = [&](Field field, const QString& unit, int decimals) {
    const QString& digits = digits_[static_cast<std::size_t>(field)];
    if (digits.isEmpty()) return QStringLiteral("-");
    const double value = decimals == 0 ? digits.toInt() : digits.toInt() / 10.0;
    return QString::number(value, 'f', decimals) + QLatin1Char(' ') + unit;
  };
  return {text(Field::Dbh, metric ? QStringLiteral("cm") : QStringLiteral("in"), 1),
          text(Field::Distance, metric ? QStringLiteral("m") : QStringLiteral("ft"), 1),
          text(Field::Slope, QStringLiteral("%"), 0)};
}

void BorderViewModel::setField(int field) {
  field_ = static_cast<Field>(std::clamp(field, 0, 2));
  emit changed();
}

void BorderViewModel::setDigits(const QString& digits) {
  digits_[static_cast<std::size_t>(field_)] = digits;
  judge();
}

void BorderViewModel::setToFace(bool face) {
  to_face_ = face;
  judge();
}

void BorderViewModel::clear() {
  digits_ = {};
  field_ = Field::Dbh;
  judge();
}

void BorderViewModel::judge() {
  answer_.clear();
  note_.clear();
  counts_ = false;
  const QString& dbh_digits = digits_[0];
  const QString& tape_digits = digits_[1];
  if (plot_.id() && !dbh_digits.isEmpty() && !tape_digits.isEmpty()) {
    const UnitSystem system = settings_.system();
    const auto dbh = oaklight::dbh_from_digits(dbh_digits.toStdString(), system);
    const auto tape = TapedLength::from_hundredths(tape_digits.toInt() * 10, system);
    if (!dbh || !tape) {
      note_ = sentence_of(dbh ? tape.error() : dbh.error());
    } else {
      const BorderlineTree tree{*dbh,
                                *tape,
                                to_face_ ? oaklight::TapedTo::face : oaklight::TapedTo::centre,
                                {oaklight::Percent{static_cast<double>(digits_[2].toInt())}}};
      const auto check = oaklight::border_check(desk_.live(), *plot_.id(), tree);
      if (check) {
        answer_ = QString::fromStdString(check->words);
        note_ = QString::fromStdString(check->note);
        counts_ = check->counts;
      } else {
        note_ = sentence_of(check.error());
      }
    }
  }
  emit changed();
}
