// Pictures of what opens on the pages, for people to look at.
#include <QtTest/QTest>

#include "tests/app/tally_fixture.hpp"

namespace oaklight::test {
namespace {

class SheetPictures : public FieldRows {
 protected:
  void look(const char* name, const Screen& screen) {
    settle();
    for (const auto light : {Settings::Light::Night, Settings::Light::Day}) {
      app_settings().setLight(light);
      settle();
      picture(QStringLiteral("sheet_%1_%2_%3")
                  .arg(QLatin1String(name), QLatin1String(screen.name),
                       light == Settings::Light::Day ? QStringLiteral("day")
                                                     : QStringLiteral("night")));
    }
  }
  void close() { tap(QStringLiteral("Close")); }
};

TEST_F(SheetPictures, OfTheTally) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    for (const char* size : {"10", "14", "12"}) slide(species(1), class_name(size));
    look("none", screen);
    tap(species(0));
    look("classes", screen);
    tap(QStringLiteral("Keypad"));
    type({"1", "2", "3"});
    look("keypad", screen);
    close();
    on_every_sheet_at_the_plot([&](const char* sheet) {
      if (std::string_view(sheet) != "Keypad") look(sheet, screen);
    });
    stop();
  }
}

TEST_F(SheetPictures, OfTheDecisionAndThePacket) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    start(screen);
    if (desk().data().marks.empty()) decide_all();
    show(AppModel::Page::Light);
    ASSERT_TRUE(waitFor([this] { return at_rest(); }));
    workspace().light()->openCard(0);
    look("card", screen);
    const QString tree = workspace().light()->card()->trees()->titleOf(0);
    for (const Control& control : controls_of(window())) {
      if (control.name.startsWith(tree)) {
        scroll_to(control.name);
        tap(control.item);
        break;
      }
    }
    tap(QStringLiteral("Keep"));
    look("decision", screen);
    close();
    workspace().light()->closeCard();
    show(AppModel::Page::Marks);
    ASSERT_TRUE(waitFor([this] { return at_rest(); }));
    look("marks", screen);
    tap(QStringLiteral("Packet to hand over"));
    ASSERT_TRUE(waitFor([this] { return at_rest(); }));
    look("packet", screen);
    stop();
  }
}

}  // namespace
}  // namespace oaklight::test
