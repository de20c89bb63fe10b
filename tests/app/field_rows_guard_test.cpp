// Rows T12 to T14, T17 and T18 of field_rows.md: what must make no tree, and what must not be lost.
#include <QtTest/QTest>

#include "tests/app/tally_fixture.hpp"

namespace oaklight::test {
namespace {

TEST_F(FieldRows, T12_ASecondFingerMakesNoSecondTree) {
  begin();
  tap(species(0));
  const QPoint one = at(class_name("12"));
  const QPoint two = at(class_name("16"));
  QTest::touchEvent(&window(), finger()).press(0, one);
  QTest::touchEvent(&window(), finger()).stationary(0).press(1, two);
  QTest::qWait(40);
  QTest::touchEvent(&window(), finger()).stationary(0).release(1, two);
  QTest::touchEvent(&window(), finger()).release(0, one);
  settle();
  ASSERT_EQ(trees().size(), 1U);
  EXPECT_EQ(dbh_text(trees()[0]->facts.dbh), "12.0 in");
}

TEST_F(FieldRows, T12_ACellAndAButtonTogetherMakeOneTree) {
  begin();
  tap(species(0));
  tap(class_name("12"));
  const QPoint cell = at(class_name("16"));
  const QPoint again = at(QStringLiteral("Same again"));
  for (const auto& [first, second] : {std::pair{cell, again}, std::pair{again, cell}}) {
    QTest::qWait(400);  // longer than a finger bounces
    const std::size_t before = trees().size();
    QTest::touchEvent(&window(), finger()).press(0, first);
    QTest::touchEvent(&window(), finger()).stationary(0).press(1, second);
    QTest::qWait(40);
    QTest::touchEvent(&window(), finger()).stationary(0).release(1, second);
    QTest::qWait(40);
    QTest::touchEvent(&window(), finger()).release(0, first);
    settle();
    EXPECT_EQ(trees().size(), before + 1);
  }
}

TEST_F(FieldRows, T13_TheSameCellTappedAgainAtOnceIsOneTree) {
  begin();
  qint64 now = 1000;
  tally().setNow([&now] { return now; });
  tap(species(0));
  tap(class_name("12"));
  now += 349;
  tap(class_name("12"));
  EXPECT_EQ(trees().size(), 1U);
  EXPECT_EQ(tally().doubt(), "double?");
  now += 700;
  tap(class_name("12"));
  EXPECT_EQ(trees().size(), 2U);
}

TEST_F(FieldRows, T13_AnotherButtonAtOnceIsNoBounceOfTheFinger) {
  begin();
  qint64 now = 1000;
  tally().setNow([&now] { return now; });
  tap(species(0));
  tap(class_name("12"));
  now += 100;
  tap(QStringLiteral("Same again"));
  EXPECT_EQ(trees().size(), 2U);
  now += 349;
  tap(QStringLiteral("Same again"));
  EXPECT_EQ(trees().size(), 2U);
  EXPECT_EQ(tally().doubt(), "double?");
}

TEST_F(FieldRows, T13_AFingerThatBouncesChoosesNoSpeciesOnAPhone) {
  begin(kPhone);
  qint64 now = 1000;
  tally().setNow([&now] { return now; });
  tap(species(0));
  const QPoint cell = at(class_name("12"));
  tapAt(cell);
  ASSERT_EQ(trees().size(), 1U);
  ASSERT_NE(find(species(1)), nullptr) << "the species are back, one of them under the finger";
  now += 349;
  tapAt(cell);
  EXPECT_EQ(tally().pinned(), 0) << "the species of the tree before";
  EXPECT_EQ(tally().doubt(), "double?");
  now += 700;
  tap(species(1));
  EXPECT_EQ(tally().pinned(), 1);
}

TEST_F(FieldRows, T14_ThreeContactsMakeNothing) {
  begin();
  tap(species(0));
  const QPoint cell = at(class_name("12"));
  const std::array<QPoint, 3> sleeve = {cell, cell + QPoint(90, 0), cell + QPoint(0, 90)};
  {
    QTest::QTouchEventSequence touch = QTest::touchEvent(&window(), finger());
    for (int i = 0; i < 3; ++i) touch.press(i, sleeve[static_cast<std::size_t>(i)]);
  }
  QTest::qWait(40);
  {
    QTest::QTouchEventSequence touch = QTest::touchEvent(&window(), finger());
    for (int i = 0; i < 3; ++i) touch.release(i, sleeve[static_cast<std::size_t>(i)]);
  }
  settle();
  EXPECT_EQ(trees().size(), 0U);
}

TEST_F(FieldRows, T14_ADropOfRainMakesNothing) {
  begin();
  tap(species(0));
  const QPoint cell = at(class_name("12"));
  // On a busy machine a drop may lie as long as a finger: such a try says nothing.
  bool tried = false;
  for (int i = 0; i < 50 && !tried; ++i) {
    QElapsedTimer lies;
    lies.start();
    QTest::touchEvent(&window(), finger()).press(0, cell);
    QTest::touchEvent(&window(), finger()).release(0, cell);
    tried = lies.elapsed() < 25;
    settle();
    if (tried) {
      EXPECT_EQ(trees().size(), 0U);
    } else if (!trees().empty()) {
      desk().undo();
      settle();
    }
  }
  EXPECT_TRUE(tried) << "this machine is too busy to let a drop fall";
}

TEST_F(FieldRows, T14_APalmThatRestsMakesNothing) {
  begin();
  tap(species(0));
  const QPoint cell = at(class_name("12"));
  QTest::touchEvent(&window(), finger()).press(0, cell);
  QTest::qWait(3100);
  QTest::touchEvent(&window(), finger()).release(0, cell);
  settle();
  EXPECT_EQ(trees().size(), 0U);
}

TEST_F(FieldRows, T14_ALockedTallyTakesNothingUntilItIsHeldAgain) {
  for (const Screen& screen : {kTablet, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    tap(species(0));
    const QPoint cell = at(class_name("12"));
    const auto hold = [this](const char* name, int ms) {
      if (find(QLatin1String(name)) == nullptr) tap(QStringLiteral("More"));
      const QPoint lock = at(QLatin1String(name));
      QTest::touchEvent(&window(), finger()).press(0, lock);
      QTest::qWait(ms);
      QTest::touchEvent(&window(), finger()).release(0, lock);
      settle();
    };
    hold("Hold to lock", 40);
    EXPECT_FALSE(tally().locked()) << "a short touch does not lock";
    hold("Hold to lock", 1100);
    ASSERT_TRUE(tally().locked());
    if (find(QStringLiteral("Close")) != nullptr) tap(QStringLiteral("Close"));
    tapAt(cell);
    for (const char* name : {"Same again", "Keypad", "Undo"}) {
      QQuickItem* button = find(QLatin1String(name));
      if (button != nullptr && std::string_view(name) != "Undo") tap(button);
    }
    EXPECT_EQ(trees().size(), 0U);
    if (find(QStringLiteral("Close")) != nullptr) tap(QStringLiteral("Close"));
    hold("Hold to unlock", 1100);
    EXPECT_FALSE(tally().locked());
    if (find(QStringLiteral("Close")) != nullptr) tap(QStringLiteral("Close"));
    stop();
  }
}

TEST_F(FieldRows, T17_VolumeKeysRepeatAndUndoWhenTheyAreSwitchedOn) {
  begin();
  tap(species(0));
  tap(class_name("12"));
  QTest::keyClick(&window(), Qt::Key_VolumeUp);
  settle();
  EXPECT_EQ(trees().size(), 1U) << "switched off at first";
  app_settings().setVolumeKeys(true);
  QTest::qWait(400);
  QTest::keyClick(&window(), Qt::Key_VolumeUp);
  settle();
  ASSERT_EQ(trees().size(), 2U);
  EXPECT_EQ(trees()[1]->facts.species, trees()[0]->facts.species);
  EXPECT_EQ(trees()[1]->facts.dbh, trees()[0]->facts.dbh);
  QTest::keyClick(&window(), Qt::Key_VolumeDown);
  settle();
  EXPECT_EQ(trees().size(), 1U);
  // Also after a button had the focus of the keys, and after another page.
  tap(QStringLiteral("Same again"));
  EXPECT_EQ(trees().size(), 2U);
  show(AppModel::Page::Walk);
  show(AppModel::Page::Tally);
  QTest::keyClick(&window(), Qt::Key_VolumeDown);
  settle();
  EXPECT_EQ(trees().size(), 1U);
  tally().setLocked(true);
  QTest::qWait(400);
  QTest::keyClick(&window(), Qt::Key_VolumeUp);
  settle();
  EXPECT_EQ(trees().size(), 2U) << "wet glass is locked, and the keys are there for that";
}

TEST_F(FieldRows, T18_ATurnedTabletIsLaidOutAsWhenAPageIsOpenedAnew) {
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

TEST_F(FieldRows, T18_TurningLosesNoTypedDigit) {
  begin(kTablet);
  tap(species(0));
  type({"Keypad", "1", "2"});
  window().resize(kTabletUpright.size);
  settle();
  type({"3", "Record"});
  ASSERT_EQ(trees().size(), 1U);
  EXPECT_EQ(dbh_text(trees()[0]->facts.dbh), "12.3 in");
}

TEST_F(FieldRows, T18_NothingLiesOutsideTheWindow) {
  std::vector<Screen> screens = screens_of_all_densities();
  screens.push_back({"1200 x 1920", {1200, 1920}, 8.8});  // of a tablet of 10.1 in
  for (const Screen& screen : screens) {
    on_every_page(screen, [&](AppModel::Page) {
      const QRectF glass = QRectF(QPointF(), screen.size).adjusted(-1, -1, 1, 1);
      for (const Control& control : controls_of(window())) {
        if (scrolls(control.item)) continue;
        EXPECT_TRUE(glass.contains(control.box)) << control.name.toStdString();
      }
    });
  }
}

}  // namespace
}  // namespace oaklight::test
