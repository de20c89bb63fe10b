// A picture of every page at every size, by day and night, for people to look at. What software can
// say of them is in the rows of field_rows.md.
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

}  // namespace
}  // namespace oaklight::test
