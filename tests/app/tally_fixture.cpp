#include "tests/app/tally_fixture.hpp"

#include <QMetaEnum>

#include "core/session/decide.hpp"

namespace oaklight::test {
namespace {

// A tablet of 10.1 in and a phone, as in app_fixture.hpp.
constexpr QSizeF kTabletMm{217.0, 135.6};
constexpr QSizeF kPhoneMm{65.4, 145.2};
// 100 dpi, which the offscreen platform says of itself; and a screen of 300 dpi that does not
// scale.
constexpr double kCoarse = 100.0 / 25.4;
constexpr double kFine = 300.0 / 25.4;

}  // namespace

Screen screen_of(const char* name, QSizeF millimetres, double pixels_per_mm) {
  return {name, (millimetres * pixels_per_mm).toSize(), pixels_per_mm};
}

const std::vector<Screen>& screens_of_all_densities() {
  static const std::vector<Screen> screens = {
      kTablet,
      kTabletUpright,
      kPhone,
      screen_of("tablet of 100 dpi", kTabletMm, kCoarse),
      screen_of("tablet of 300 dpi", kTabletMm, kFine),
      screen_of("phone of 300 dpi", kPhoneMm, kFine),
  };
  return screens;
}

bool scrolls(const QQuickItem* item) {
  for (const QQuickItem* parent = item; parent != nullptr; parent = parent->parentItem()) {
    if (parent->inherits("QQuickFlickable")) return true;
  }
  return false;
}

void FieldRows::on_every_page(const Screen& screen,
                              const std::function<void(AppModel::Page)>& look) {
  start(screen);
  const auto pages = QMetaEnum::fromType<AppModel::Page>();
  for (int i = 0; i < pages.keyCount(); ++i) {
    const auto page = static_cast<AppModel::Page>(pages.value(i));
    show(page);
    SCOPED_TRACE(std::string(screen.name) + ", " + pages.key(i));
    look(page);
  }
  stop();
}

void FieldRows::decide_all() {
  desk().submit([this]() -> Result<Action> {
    const auto plans = plan_stands(desk().data(), desk().knowledge(), desk().ids());
    if (!plans) return plans.error();
    return marks_action(desk().data(), *plans);
  });
  settle();
}

bool FieldRows::at_rest() {
  return !workspace().light()->busy() && !workspace().marks()->busy() &&
         !workspace().marks()->packet()->busy() && !desk().busy();
}

void FieldRows::scroll_to(const QString& name) {
  QQuickItem* item = find(name);
  ASSERT_NE(item, nullptr) << name.toStdString();
  QQuickItem* view = item;
  while (view != nullptr && !view->inherits("QQuickFlickable")) view = view->parentItem();
  ASSERT_NE(view, nullptr) << name.toStdString() << " scrolls nowhere";
  const double top = view->property("contentY").toDouble();
  const double end = view->property("contentHeight").toDouble() - view->height();
  const double wanted = top + middleOf(item).y() - middleOf(view).y();
  view->setProperty("contentY", std::clamp(wanted, std::min(top, 0.0), std::max(end, 0.0)));
  settle();
}

void FieldRows::on_every_sheet_at_the_plot(const std::function<void(const char*)>& look) {
  // On a phone some of them are asked for in a sheet themselves.
  const bool brief = find(QStringLiteral("More")) != nullptr;
  for (const char* sheet : {"Keypad", "Border tree", "Seedlings", "the last tree"}) {
    SCOPED_TRACE(sheet);
    if (brief && std::string_view(sheet) != "Keypad" && std::string_view(sheet) != "the last tree")
      tap(QStringLiteral("More"));
    tap(std::string_view(sheet) == "the last tree" ? tally().lastTrees().front()
                                                   : QString::fromLatin1(sheet));
    ASSERT_NE(find(QStringLiteral("Close")), nullptr) << "no sheet opened";
    look(sheet);
    tap(QStringLiteral("Close"));
  }
}

}  // namespace oaklight::test
