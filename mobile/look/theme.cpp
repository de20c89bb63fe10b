#include "mobile/look/theme.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace {

// Noto Sans: its capitals are 714 of 1,000 units high (OS/2 table of the typeface, sCapHeight).
constexpr double kCapitalShare = 0.714;
// A tablet of 8 in is 108 mm across the short side; a phone is held in one hand below that.
constexpr double kPhoneMm = 90.0;
constexpr double kWideMm = 150.0;

}  // namespace

struct Theme::Colours {
  QRgb ground, panel, ink, soft, rule, leaf, on_leaf, warn, on_warn;
};

const Theme::Colours& Theme::colours() const {
  // Paper, sun, dark. Contrasts of every pair are held by rows V1 to V7 of tests/app/field_rows.md.
  static constexpr std::array kColours = {
      Colours{0xfffaf7f0, 0xffefeadd, 0xff1a1a17, 0xff45443d, 0xff77756a, 0xff1f4a30, 0xffffffff,
              0xfff0e442, 0xff000000},
      Colours{0xffffffff, 0xffffffff, 0xff000000, 0xff000000, 0xff000000, 0xff00341a, 0xffffffff,
              0xfff0e442, 0xff000000},
      Colours{0xff131310, 0xff22221e, 0xffd9d5c8, 0xffb3afa3, 0xff77756a, 0xff2b4033, 0xffe3f1e6,
              0xff3a3712, 0xfff0e442}};
  return kColours[static_cast<std::size_t>(light())];
}

void Theme::follow(Settings& settings) {
  settings_ = &settings;
  connect(&settings, &Settings::changed, this, &Theme::changed);
  emit changed();
}

void Theme::setWindow(WindowSize window) {
  window_ = window;
  emit changed();
}

int Theme::letters(double capital_mm) const {
  return std::max(1, static_cast<int>(std::lround(mm(capital_mm) / kCapitalShare)));
}

QString Theme::icon(const QString& name, const QColor& colour) const {
  return QStringLiteral("image://icon/%1/%2").arg(name, colour.name().mid(1));
}

bool Theme::phone() const { return std::min(window_.width, window_.height) < mm(kPhoneMm); }
bool Theme::wide() const { return window_.width > window_.height && window_.width >= mm(kWideMm); }
double Theme::columnWidth() const { return std::min(mm(62.0), window_.width); }

double Theme::sheetWidth() const {
  // Three keys for gloved fingers need a phone's whole width.
  return std::min(mm(130.0), window_.width - (phone() ? 0.0 : 2 * edge()));
}
double Theme::sheetHeight() const { return std::min(mm(150.0), window_.height - 2 * edge()); }

QColor Theme::ground() const { return colours().ground; }
QColor Theme::panel() const { return colours().panel; }
QColor Theme::ink() const { return colours().ink; }
QColor Theme::soft() const { return colours().soft; }
QColor Theme::rule() const { return colours().rule; }
QColor Theme::shade() const { return QColor(0, 0, 0, 140); }
QColor Theme::leaf() const { return colours().leaf; }
QColor Theme::onLeaf() const { return colours().on_leaf; }
QColor Theme::warn() const { return colours().warn; }
QColor Theme::onWarn() const { return colours().on_warn; }
