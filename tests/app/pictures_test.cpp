// A picture of every page at every size, by day and night, for people to look at; and what software
// can say of them: sizes, names, edges.
#include <QMetaEnum>
#include <QtTest/QTest>

#include "tests/app/app_fixture.hpp"

namespace oaklight::test {
namespace {

class EveryPage : public App {
 protected:
  void on_every_page(const Screen& screen, const std::function<void(const QString&)>& look) {
    start(screen);
    const auto pages = QMetaEnum::fromType<AppModel::Page>();
    for (int i = 0; i < pages.keyCount(); ++i) {
      show(static_cast<AppModel::Page>(pages.value(i)));
      SCOPED_TRACE(std::string(screen.name) + ", " + pages.key(i));
      look(QString::fromLatin1(pages.key(i)).toLower());
    }
  }
};

TEST_F(EveryPage, HasItsPicture) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    for (const auto light : {Settings::Light::Day, Settings::Light::Night}) {
      const char* name = light == Settings::Light::Day ? "day" : "night";
      on_every_page(screen, [&](const QString& page) {
        app_settings().setLight(light);
        settle();
        QTest::qWait(400);  // what is computed off the screen's thread comes in
        const QImage image = picture(
            QStringLiteral("%1_%2_%3").arg(page, QLatin1String(screen.name), QLatin1String(name)));
        EXPECT_EQ(image.size(), screen.size);
      });
      stop();
    }
  }
}

/// Whether an item lies in something that scrolls, where it need not be in sight.
bool scrolls(const QQuickItem* item) {
  for (const QQuickItem* parent = item; parent != nullptr; parent = parent->parentItem()) {
    if (parent->inherits("QQuickFlickable")) return true;
  }
  return false;
}

TEST_F(EveryPage, T1_T3_EveryControlIsAsLargeAsAFinger) {
  for (const bool gloves : {true, false}) {
    for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
      on_every_page(screen, [&](const QString& page) {
        app_settings().setGloves(gloves);
        settle();
        const bool at_the_tree = page == QLatin1String("tally");
        for (const Control& control : controls_of(window())) {
          const bool changes_page = model().pageNames().contains(control.name);
          const double least = !at_the_tree || changes_page ? 12.0 : gloves ? 20.0 : 15.0;
          const double width = control.box.width() / screen.pixels_per_mm;
          const double height = control.box.height() / screen.pixels_per_mm;
          EXPECT_GE(std::min(width, height), least - 0.1)
              << control.name.toStdString() << (gloves ? " in gloves" : " bare");
        }
      });
      stop();
    }
  }
}

TEST_F(EveryPage, IsReachedByTouchWhereTheNamesAreInASheet) {
  for (const Screen& screen : {kTabletUpright, kPhone}) {
    start(screen);
    const auto names = model().pageNames();
    for (int page = static_cast<int>(names.size()) - 1; page >= 0; --page) {
      if (names[page].isEmpty()) continue;  // shown once a tree is marked
      SCOPED_TRACE(std::string(screen.name) + ", " + names[page].toStdString());
      tap(names[static_cast<int>(model().page())]);
      ASSERT_NE(find(QStringLiteral("Close")), nullptr);
      EXPECT_TRUE(QRect(QPoint(), screen.size).contains(middleOf(find(names[page]))));
      tap(names[page]);
      EXPECT_EQ(static_cast<int>(model().page()), page);
    }
    stop();
  }
}

TEST_F(EveryPage, T18_ATurnedTabletIsLaidOutAsWhenAPageIsOpenedAnew) {
  for (const Screen& screen : {kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    start(screen);  // the window opens lying, and is turned
    const QImage turned = window().grabWindow();
    show(AppModel::Page::Setup);
    show(AppModel::Page::Tract);
    EXPECT_EQ(window().grabWindow(), turned);
    stop();
  }
}

TEST_F(EveryPage, F13_EveryControlHasAName) {
  on_every_page(kTablet, [&](const QString&) {
    EXPECT_GT(controls_of(window()).size(), 7U);
    for (const Control& control : controls_of(window())) EXPECT_NE(control.name.trimmed(), "");
  });
}

TEST_F(EveryPage, T18_NothingLiesOutsideTheWindow) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    on_every_page(screen, [&](const QString&) {
      const QRectF glass = QRectF(QPointF(), screen.size).adjusted(-1, -1, 1, 1);
      for (const Control& control : controls_of(window())) {
        if (scrolls(control.item)) continue;
        EXPECT_TRUE(glass.contains(control.box)) << control.name.toStdString();
      }
    });
    stop();
  }
}

}  // namespace
}  // namespace oaklight::test
