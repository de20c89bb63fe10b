#pragma once

#include <QString>

#include "core/base/number_text.hpp"

/// A number as a person typed it: a decimal comma is as good as a point. Errors: not_a_number.
inline oaklight::Result<double> number_typed(const QString& text) {
  QString plain = text.trimmed();
  plain.replace(QLatin1Char(','), QLatin1Char('.'));
  return oaklight::number_from_text(plain.toStdString());
}
