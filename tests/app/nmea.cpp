#include "tests/app/nmea.hpp"

#include <QDateTime>
#include <cmath>
#include <cstring>

namespace oaklight::test {
namespace {

/// "3806.000000,N": degrees and minutes.
QByteArray angle(double degrees, int digits, char positive, char negative) {
  const double size = std::fabs(degrees);
  const auto whole = static_cast<int>(size);
  const QByteArray minutes =
      QByteArray::number((size - whole) * 60.0, 'f', 6).rightJustified(9, '0');
  return QByteArray::number(whole).rightJustified(digits, '0') + minutes + ',' +
         (degrees < 0.0 ? negative : positive);
}

}  // namespace

QByteArray sentence(const QByteArray& words) {
  unsigned sum = 0;
  for (const char c : words) sum ^= static_cast<unsigned char>(c);
  return '$' + words + '*' + QByteArray::number(sum, 16).toUpper().rightJustified(2, '0') + "\r\n";
}

QByteArray nmea_of(const Fix& fix) {
  constexpr double kKnot = 1852.0 / 3600.0;  // metres in a second, by definition
  constexpr double kMetresOfOne = 5.0;
  const QDateTime time = QDateTime::fromMSecsSinceEpoch(fix.ms, Qt::UTC);
  const QByteArray clock = time.toString(QStringLiteral("HHmmss.zzz")).toLatin1();
  const QByteArray place =
      angle(fix.at.latitude.value, 2, 'N', 'S') + ',' + angle(fix.at.longitude.value, 3, 'E', 'W');
  const QByteArray dilution =
      fix.accuracy ? QByteArray::number(fix.accuracy->value / kMetresOfOne, 'f', 2) : QByteArray();
  QByteArray said =
      sentence("GPGGA," + clock + ',' + place + ",1,08," + dilution + ",210.0,M,-33.0,M,,");
  const QByteArray speed = fix.speed ? QByteArray::number(fix.speed->value / kKnot, 'f', 3) : "";
  const QByteArray course = fix.course ? QByteArray::number(fix.course->value, 'f', 2) : "";
  said += sentence("GPRMC," + clock + ",A," + place + ',' + speed + ',' + course + ',' +
                   time.toString(QStringLiteral("ddMMyy")).toLatin1() + ",,,A");
  return said;
}

qint64 Cable::readData(char* to, qint64 most) {
  const qint64 count = std::min<qint64>(most, waiting_.size());
  std::memcpy(to, waiting_.constData(), static_cast<std::size_t>(count));
  waiting_.remove(0, count);
  return count;
}

}  // namespace oaklight::test
