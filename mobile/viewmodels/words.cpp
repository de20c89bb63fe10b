#include "mobile/viewmodels/words.hpp"

#include <QCoreApplication>
#include <QRegularExpression>

QString sentence_of(const oaklight::Error& error) {
  const QString what = QString::fromStdString(error.what);
  const QString fix = QString::fromStdString(error.fix);
  return fix.isEmpty() ? what : what + QLatin1Char(' ') + fix;
}

QString name_of(const oaklight::Species& species) {
  return QCoreApplication::translate("Species", species.common_name.c_str());
}

QString cell_name_of(const oaklight::Species& species) {
  static const QRegularExpression brackets(QStringLiteral("\\s*\\([^)]*\\)"));
  static const QRegularExpression compound(
      QStringLiteral("(\\w{4,})(berry|beam|wood|nut|tooth|cherry|leaf|cedar|locust|gum)\\b"));
  constexpr QChar kSoftHyphen(0x00AD);
  return name_of(species).remove(brackets).replace(compound,
                                                   QStringLiteral("\\1%1\\2").arg(kSoftHyphen));
}

QString figure_of(const std::string& text) {
  return QString::fromStdString(text)
      .replace(QStringLiteral("ft2"), QStringLiteral("ft²"))
      .replace(QStringLiteral("m2"), QStringLiteral("m²"));
}

QString form_words(const std::string& label) {
  return QCoreApplication::translate("Form", label.c_str());
}
