// Rows V1 to V9 of field_rows.md: what is read in sun, shade and dark. The pictures drawn by core
// are held to the same rows by tests/paper.
#include <QDirIterator>
#include <QFile>
#include <QFontMetricsF>
#include <QRegularExpression>

#include "core/paper/gui_app.hpp"
#include "tests/app/tally_fixture.hpp"
#include "tests/paper/picture_check.hpp"
#include "tests/support/places.hpp"

namespace oaklight::test {
namespace {

constexpr double kText = 7.0;      // contrast of text
constexpr double kGraphics = 3.0;  // of borders and icons
constexpr double kBright = 18.0;   // in the sun
const QColor kNightMost(0x40, 0x40, 0x40);

/// The colours of one light, as a page asks for them.
class Lit {
 public:
  explicit Lit(Settings::Light light) : settings_(path()) {
    settings_.setLight(light);
    theme_.follow(settings_);
  }
  const Theme& theme() const { return theme_; }

 private:
  QString path() { return QString::fromStdString((folder_ / "settings.ini").string()); }
  TempDir folder_;
  Settings settings_;
  Theme theme_;
};

constexpr std::array kLights = {Settings::Light::Day, Settings::Light::Bright,
                                Settings::Light::Night};

TEST_F(FieldRows, V1_TextStandsOutSevenToOneAndBordersThreeToOne) {
  for (const auto light : kLights) {
    SCOPED_TRACE(static_cast<int>(light));
    const Lit lit(light);
    const Theme& theme = lit.theme();
    for (const QColor& ground : {theme.ground(), theme.panel()}) {
      EXPECT_GE(contrast(theme.ink(), ground), kText);
      EXPECT_GE(contrast(theme.soft(), ground), kText);
      EXPECT_GE(contrast(theme.rule(), ground), kGraphics);
    }
    EXPECT_GE(contrast(theme.onLeaf(), theme.leaf()), kText);
    EXPECT_GE(contrast(theme.onWarn(), theme.warn()), kText);
  }
}

TEST_F(FieldRows, V2_NoGreyIsLighterThanReadableOnWhiteOrDarkerThanReadableOnBlack) {
  EXPECT_LE(luminance(Lit(Settings::Light::Day).theme().soft()),
            luminance(QColor(0x59, 0x59, 0x59)));
  EXPECT_LE(luminance(Lit(Settings::Light::Bright).theme().soft()),
            luminance(QColor(0x59, 0x59, 0x59)));
  EXPECT_GE(luminance(Lit(Settings::Light::Night).theme().soft()),
            luminance(QColor(0x95, 0x95, 0x95)));
}

TEST_F(FieldRows, V3_InTheSunAllWordsAreNearlyBlackOnWhite) {
  const Lit lit(Settings::Light::Bright);
  for (const QColor& ink : {lit.theme().ink(), lit.theme().soft()}) {
    EXPECT_GE(contrast(ink, lit.theme().ground()), kBright);
    EXPECT_GE(contrast(ink, lit.theme().panel()), kBright);
  }
}

/// The largest square, in pixels, of which each is brighter than anything may be at night.
int brightest_square(const QImage& image) {
  const double most = luminance(kNightMost);
  std::vector<int> above(static_cast<std::size_t>(image.width()) + 1, 0);
  int largest = 0;
  for (int y = 0; y < image.height(); ++y) {
    int corner = 0;
    for (int x = 0; x < image.width(); ++x) {
      const auto at = static_cast<std::size_t>(x) + 1;
      const int up = above[at];
      const bool bright = luminance(image.pixelColor(x, y)) > most;
      above[at] = bright ? 1 + std::min({above[at - 1], up, corner}) : 0;
      corner = up;
      largest = std::max(largest, above[at]);
    }
  }
  return largest;
}

TEST_F(FieldRows, V4_AtNightNoGroundIsBrightAndOneTapDoesIt) {
  start(kTablet);
  show(AppModel::Page::Setup);
  const int before = taps();
  tap(QStringLiteral("Night"));
  EXPECT_EQ(taps() - before, 1);
  stop();
  start(kTablet);
  EXPECT_TRUE(theme().night()) << "remembered";
  const Screen& screen = kTablet;
  stop();
  on_every_page(screen, [&](AppModel::Page) {
    QTest::qWait(300);  // what is computed off the screen's thread comes in
    // The largest thing that is drawn and no ground is an icon, 5.9 mm.
    EXPECT_LE(brightest_square(window().grabWindow()) / screen.pixels_per_mm, 6.0);
  });
}

TEST_F(FieldRows, V6_V7_StatusFillsBearBlackWordsAndNoWordsAreInTheirColours) {
  // Okabe and Ito 2008: orange, sky blue, green, yellow, blue, vermilion, purple.
  const std::array fills = {QColor(0xE6, 0x9F, 0x00), QColor(0x56, 0xB4, 0xE9),
                            QColor(0x00, 0x9E, 0x73), QColor(0xF0, 0xE4, 0x42),
                            QColor(0x00, 0x72, 0xB2), QColor(0xD5, 0x5E, 0x00),
                            QColor(0xCC, 0x79, 0xA7)};
  for (const auto light : {Settings::Light::Day, Settings::Light::Bright}) {
    const Lit lit(light);
    EXPECT_EQ(lit.theme().warn(), fills[3]);
    EXPECT_GE(contrast(lit.theme().onWarn(), lit.theme().warn()), 15.8);
    for (const QColor& fill : fills) {
      EXPECT_NE(lit.theme().ink(), fill);
      EXPECT_NE(lit.theme().soft(), fill);
      EXPECT_NE(lit.theme().rule(), fill);
    }
  }
}

/// How high the capitals of a text on the screen are, mm; a text may have been made smaller to fit.
double capitals_mm(const QQuickItem& text, const Screen& screen) {
  const double line =
      text.property("contentHeight").toDouble() / text.property("lineCount").toInt();
  QFont font(QString::fromLatin1(kTypeface));
  font.setPixelSize(100);
  const QFontMetricsF metrics(font);
  return line * metrics.capHeight() / metrics.height() / screen.pixels_per_mm;
}

std::vector<QQuickItem*> texts_in(QQuickItem* item, const QString& words) {
  std::vector<QQuickItem*> found;
  if (item->inherits("QQuickText") && item->isVisible() && item->property("text") == words)
    found.push_back(item);
  for (QQuickItem* child : item->childItems()) {
    const auto more = texts_in(child, words);
    found.insert(found.end(), more.begin(), more.end());
  }
  return found;
}

TEST_F(FieldRows, V8_CountAndKeysAreReadAtArmsLength) {
  for (const Screen& screen : screens_of_all_densities()) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    unhurried();
    slide(species(0), class_name("12"));
    const double pixel = 1.0 / screen.pixels_per_mm;
    const auto count = texts_in(window().contentItem(), QStringLiteral("1"));
    ASSERT_FALSE(count.empty());
    for (const QQuickItem* text : count) EXPECT_GE(capitals_mm(*text, screen), 6.4 - pixel);
    tap(species(0));
    for (const char* label : {"10", "12"}) {
      const auto cells = texts_in(window().contentItem(), QString::fromLatin1(label));
      ASSERT_FALSE(cells.empty()) << label;
      for (const QQuickItem* text : cells) EXPECT_GE(capitals_mm(*text, screen), 3.2 - pixel);
    }
    tap(QStringLiteral("Keypad"));
    for (const char* key : {"5", "0"}) {
      const auto keys = texts_in(window().contentItem(), QString::fromLatin1(key));
      ASSERT_FALSE(keys.empty()) << key;
      EXPECT_GE(capitals_mm(*keys.back(), screen), 6.4 - pixel) << key;
    }
    stop();
  }
}

TEST_F(FieldRows, V9_NothingIsToldByMovement) {
  static const QRegularExpression movement(
      QStringLiteral("\\b(\\w*Animation|\\w*Animator|Behavior|Transition)\\b"));
  QDirIterator files(QString::fromStdString(source_path("mobile/qml")), {QStringLiteral("*.qml")},
                     QDir::Files, QDirIterator::Subdirectories);
  int read = 0;
  while (files.hasNext()) {
    QFile file(files.next());
    ASSERT_TRUE(file.open(QIODevice::ReadOnly));
    EXPECT_FALSE(movement.match(QString::fromUtf8(file.readAll())).hasMatch())
        << file.fileName().toStdString();
    ++read;
  }
  EXPECT_GT(read, 10);
}

}  // namespace
}  // namespace oaklight::test
