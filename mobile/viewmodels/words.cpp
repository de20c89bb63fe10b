#include "mobile/viewmodels/words.hpp"

#include <QCoreApplication>

QString sentence_of(const oaklight::Error& error) {
  const QString what = QString::fromStdString(error.what);
  const QString fix = QString::fromStdString(error.fix);
  return fix.isEmpty() ? what : what + QLatin1Char(' ') + fix;
}

QString name_of(const oaklight::Species& species) {
  return QCoreApplication::translate("Species", species.common_name.c_str());
}

QString form_words(const std::string& label) {
  return QCoreApplication::translate("Form", label.c_str());
}
