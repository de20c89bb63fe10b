// Bytes on a receiver's cable, through the classes by which the tablet listens, to a plot's centre.
#include <QCoreApplication>
#include <cmath>

#include "core/session/plot_centre.hpp"
#include "mobile/desk/locator.hpp"
#include "tests/app/nmea.hpp"
#include "tests/fuzz/law.hpp"
#include "tests/fuzz/targets.hpp"

namespace oaklight::test {
namespace {

void start_qt() {
  static int count = 1;
  static char name[] = "fuzz";
  static char* words[] = {name, nullptr};
  // What comes in one push is told in that push; nothing is waited for.
  qputenv("QT_NMEA_PUSH_DELAY", "0");
  static QCoreApplication app(count, words);
}

bool is_on_earth(const Position& at) {
  return std::abs(at.latitude.value) <= 90.0 && std::abs(at.longitude.value) <= 180.0;
}

void require_sound(const Fix& fix) {
  require(is_on_earth(fix.at), "a fix lies on the earth");
  require(!fix.accuracy || std::isfinite(fix.accuracy->value), "an accuracy is a number");
  require(!fix.course || std::isfinite(fix.course->value), "a course is a number");
  require(!fix.speed || std::isfinite(fix.speed->value), "a speed is a number");
}

}  // namespace

void fuzz_nmea(std::string_view bytes) {
  start_qt();
  Cable cable;
  Locator locator;
  locator.want(true);
  locator.use(std::make_unique<Receiver>(cable));
  locator.gather();
  // A cable brings what it has: here a line at a time.
  std::string_view rest = bytes;
  while (!rest.empty()) {
    const auto end = std::min(rest.find('\n'), rest.size() - 1);
    cable.push(QByteArray(rest.data(), static_cast<qsizetype>(end + 1)));
    rest.remove_prefix(end + 1);
    QCoreApplication::processEvents();
    if (locator.here()) require_sound(*locator.here());
    const auto heading = locator.heading();
    require(!heading || (heading->value >= 0.0 && heading->value < 360.0),
            "a heading is a bearing");
  }
  QCoreApplication::processEvents();
  for (const Fix& fix : locator.gathered()) require_sound(fix);
  const auto mean = mean_fix(locator.gathered(), Metres{10.0});
  require(mean.has_value() == !locator.gathered().empty(), "fixes have a mean");
  if (!mean) return;
  require(is_on_earth(mean->at) && std::isfinite(mean->spread.value), "a mean lies on the earth");
  require(mean->fixes + (mean->poor ? 0 : mean->poor_fixes) ==
              static_cast<int>(locator.gathered().size()),
          "every fix is counted");
  require(!centre_words(*mean, locator.gathered().front().at).empty(), "a centre has its words");
}

}  // namespace oaklight::test
