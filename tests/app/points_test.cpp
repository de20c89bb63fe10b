// Count points and measure points by touch.
#include "tests/app/tally_fixture.hpp"

namespace oaklight::test {
namespace {

class Points : public Tally, public testing::WithParamInterface<Screen> {
 protected:
  PlotTaken taken() { return taken_at(*desk().live().find(*workspace().plot().id())); }
  PointViewModel& point() { return *workspace().point(); }
  void look(const char* name, const Screen& screen) {
    picture(QStringLiteral("point_%1_%2").arg(QLatin1String(name), QLatin1String(screen.name)));
    EXPECT_TRUE(cut_words().isEmpty()) << name << ": " << cut_words().join('|').toStdString();
  }
  void one_less(int row) {
    QQuickItem* minus = find(QStringLiteral("One less: %1").arg(point().counted().at(row)));
    ASSERT_NE(minus, nullptr);
    ASSERT_TRUE(QMetaObject::invokeMethod(minus, "clicked"));  // it may lie below what is seen
    settle();
  }
  /// The sheet of the point, from the tally.
  void open_sheet(const Screen& screen) {
    if (screen.size.width() < 500) tap(QStringLiteral("More"));
    tap(screen.size.width() < 500 ? QStringLiteral("Count or measure") : point().kind());
  }
};

TEST_P(Points, AreCountedOrMeasuredByTapsThatAreStored) {
  const Screen& screen = GetParam();
  begin(screen);
  unhurried();
  EXPECT_EQ(point().kind(), "") << "a cruise without count points says nothing of them";
  show(AppModel::Page::Walk);
  workspace().walk()->chooseCurrent();
  settle();
  QQuickItem* ask = find(QStringLiteral("Count or measure"));
  ASSERT_NE(ask, nullptr);
  ASSERT_TRUE(QMetaObject::invokeMethod(ask, "clicked"));  // it may lie below what is seen
  settle();
  tap(QStringLiteral("Count point"));
  EXPECT_EQ(taken().task, PlotTask::count) << "on disk";
  EXPECT_EQ(find(QStringLiteral("Close")), nullptr) << "the sheet is done";
  EXPECT_TRUE(control_lines(window()).contains("Count point")) << "the page Walk says so";
  look("walk", screen);
  show(AppModel::Page::Tally);
  EXPECT_EQ(find(QStringLiteral("Keypad")), nullptr) << "no size is asked";
  EXPECT_EQ(find(QStringLiteral("Seedlings")), nullptr);
  slide(species(1), class_name("Count"));
  slide(species(1), class_name("Count"));
  slide(species(0), class_name("Count"));
  look("count", screen);
  open_sheet(screen);
  look("sheet", screen);
  tap(QStringLiteral("Measure point"));
  EXPECT_EQ(taken().task, PlotTask::count) << "trees without a size are not thrown away";
  EXPECT_NE(point().problem(), "");
  one_less(1);
  one_less(1);
  one_less(0);
  EXPECT_TRUE(taken().counted.empty());
  tap(QStringLiteral("Measure point"));
  EXPECT_EQ(taken().task, PlotTask::measure);
  EXPECT_NE(find(QStringLiteral("Keypad")), nullptr);
  desk().undo();
  settle();
  EXPECT_EQ(taken().task, PlotTask::count) << "each tap is a step of the history";
  desk().redo();
  settle();
  EXPECT_TRUE(warnings().isEmpty()) << warnings().join("\n").toStdString();
}

INSTANTIATE_TEST_SUITE_P(On, Points, testing::Values(kTablet, kTabletUpright, kPhone),
                         [](const auto& screen) { return screen.param.name; });

}  // namespace
}  // namespace oaklight::test
