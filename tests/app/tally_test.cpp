// The tally by touch. Tests are named after the rows of the field requirements (DEVELOPERS.md).
#include <QtTest/QTest>

#include "core/store/tract_store.hpp"
#include "tests/app/app_fixture.hpp"

namespace oaklight::test {
namespace {

class Tally : public App {
 protected:
  void begin(const Screen& screen = kTablet) {
    start(screen);
    show(AppModel::Page::Tally);
    const auto& plots = desk().data().plots;
    const auto planned = std::ranges::find(plots, PlotStatus::empty, &Plot::status);
    ASSERT_NE(planned, plots.end());
    workspace().plot().set(planned->id);
    settle();
  }
  std::vector<const Tree*> trees() { return desk().live().trees_of(*workspace().plot().id()); }
  TallyViewModel& tally() { return *workspace().tally(); }
  QString species(int row) {
    return tally()
        .species()
        ->data(tally().species()->index(row), SpeciesListModel::NameRole)
        .toString();
  }
  QString class_name(const char* label) {
    return QStringLiteral("%1, diameter class").arg(QLatin1String(label));
  }
};

TEST_F(Tally, OneGestureIsOneTree) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    slide(species(1), class_name("14"));
    ASSERT_EQ(trees().size(), 1U);
    EXPECT_EQ(trees()[0]->facts.species, tally().species()->at(1)->code);
    EXPECT_EQ(dbh_text(trees()[0]->facts.dbh), "14.0 in");
    EXPECT_EQ(tally().reading(), species(1) + " 14.0 in") << "read back";
    EXPECT_EQ(tally().figures().first(), "1");
    desk().undo();
    settle();
    stop();
  }
}

TEST_F(Tally, CellsStayWhereTheyAreWhileTreesComeIn) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    const QPoint before = middleOf(find(species(2)));
    for (const char* size : {"8", "10", "12", "14"}) {
      slide(species(1), class_name(size));
      if (find(QStringLiteral("Back to the species")) != nullptr)
        tap(QStringLiteral("Back to the species"));
      EXPECT_EQ(middleOf(find(species(2))), before);
    }
    for (int i = 0; i < 4; ++i) desk().undo();
    settle();
    stop();
  }
}

TEST_F(Tally, S1_OneTapWhenTheSpeciesIsPinned) {
  begin();
  tap(species(0));
  const int before = taps();
  tap(class_name("12"));
  EXPECT_EQ(trees().size(), 1U);
  EXPECT_EQ(taps() - before, 1);
}

TEST_F(Tally, S1_FiveTapsForAMeasuredDiameter) {
  begin();
  tap(species(0));
  tap(QStringLiteral("Keypad"));
  const int before = taps();
  for (const char* key : {"1", "2", "3", "Record"}) tap(QLatin1String(key));
  ASSERT_EQ(trees().size(), 1U);
  EXPECT_EQ(dbh_text(trees()[0]->facts.dbh), "12.3 in");
  EXPECT_LE(taps() - before, 5);
  for (const char* key : {"8", "1", "Record"}) tap(QLatin1String(key));
  EXPECT_EQ(trees().size(), 2U) << "the keypad stays open";
}

TEST_F(Tally, F1_WhatIsReadBackIsNeverATreeThatWasUndone) {
  begin();
  tap(species(0));
  for (const char* size : {"10", "12"}) tap(class_name(size));
  EXPECT_EQ(tally().reading(), species(0) + " 12.0 in");
  tap(QStringLiteral("Undo"));
  EXPECT_EQ(tally().reading(), species(0) + " 10.0 in");
  tap(QStringLiteral("Undo"));
  EXPECT_EQ(tally().reading(), "");
  tap(QStringLiteral("Redo"));
  EXPECT_EQ(tally().reading(), species(0) + " 10.0 in");
}

TEST_F(Tally, F6_NoKeypadHasADecimalKey) {
  begin();
  tap(species(0));
  tap(QStringLiteral("Keypad"));
  EXPECT_EQ(find(QStringLiteral(".")), nullptr);
  EXPECT_EQ(find(QStringLiteral(",")), nullptr);
}

TEST_F(Tally, T13_TheSameCellTappedAgainAtOnceIsOneTree) {
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

TEST_F(Tally, T13_AnotherButtonAtOnceIsNoBounceOfTheFinger) {
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

TEST_F(Tally, T12_ASecondFingerMakesNoSecondTree) {
  begin();
  tap(species(0));
  const QPoint one = middleOf(find(class_name("12")));
  const QPoint two = middleOf(find(class_name("16")));
  QTest::touchEvent(&window(), finger()).press(0, one);
  QTest::touchEvent(&window(), finger()).stationary(0).press(1, two);
  QTest::qWait(40);
  QTest::touchEvent(&window(), finger()).stationary(0).release(1, two);
  QTest::touchEvent(&window(), finger()).release(0, one);
  settle();
  ASSERT_EQ(trees().size(), 1U);
  EXPECT_EQ(dbh_text(trees()[0]->facts.dbh), "12.0 in");
}

TEST_F(Tally, T14_ThreeContactsAndDropsMakeNothing) {
  begin();
  tap(species(0));
  const QPoint at = middleOf(find(class_name("12")));
  QTest::touchEvent(&window(), finger())
      .press(0, at)
      .press(1, at + QPoint(90, 0))
      .press(2, at + QPoint(0, 90));
  QTest::qWait(40);
  QTest::touchEvent(&window(), finger())
      .release(0, at)
      .release(1, at + QPoint(90, 0))
      .release(2, at + QPoint(0, 90));
  settle();
  EXPECT_EQ(trees().size(), 0U) << "a sleeve";
  // On a busy machine a drop may lie as long as a finger: such a try says nothing.
  bool tried = false;
  for (int i = 0; i < 50 && !tried; ++i) {
    QElapsedTimer lies;
    lies.start();
    QTest::touchEvent(&window(), finger()).press(0, at);
    QTest::touchEvent(&window(), finger()).release(0, at);
    tried = lies.elapsed() < 25;
    settle();
    if (tried) {
      EXPECT_EQ(trees().size(), 0U) << "a drop";
    } else if (!trees().empty()) {
      desk().undo();
      settle();
    }
  }
  EXPECT_TRUE(tried) << "this machine is too busy to let a drop fall";
}

TEST_F(Tally, T14_ALockedTallyTakesNothing) {
  begin();
  tap(species(0));
  const QPoint lock = middleOf(find(QStringLiteral("Hold to lock")));
  tapAt(lock);
  EXPECT_FALSE(tally().locked()) << "a short touch does not lock";
  QTest::touchEvent(&window(), finger()).press(0, lock);
  QTest::qWait(1100);
  QTest::touchEvent(&window(), finger()).release(0, lock);
  settle();
  ASSERT_TRUE(tally().locked());
  tapAt(middleOf(find(class_name("12"))));
  EXPECT_EQ(trees().size(), 0U);
}

TEST_F(Tally, T11_AFingerThatSlipsInsideItsCellCounts) {
  begin();
  const QPoint at = middleOf(find(species(0)));
  const QPoint slipped = at + QPoint(0, static_cast<int>(theme().mm(9.0)));
  QTest::touchEvent(&window(), finger()).press(0, at);
  QTest::qWait(40);
  QTest::touchEvent(&window(), finger()).move(0, slipped);
  QTest::touchEvent(&window(), finger()).release(0, slipped);
  settle();
  EXPECT_EQ(tally().pinned(), 0);
}

TEST_F(Tally, T7_NoTouchFallsBetweenTwoCells) {
  begin();
  const QQuickItem* first = find(class_name("12"));
  const QQuickItem* next = find(class_name("14"));
  ASSERT_NE(first, nullptr);
  ASSERT_NE(next, nullptr);
  EXPECT_NEAR(first->x() + first->width(), next->x(), 0.51);
}

TEST_F(Tally, S2_UndoAndTheRightTreeCostTwoTaps) {
  begin();
  tap(species(0));
  tap(class_name("12"));
  const int before = taps();
  tap(QStringLiteral("Undo"));
  EXPECT_EQ(trees().size(), 0U);
  tap(class_name("14"));
  ASSERT_EQ(trees().size(), 1U);
  EXPECT_EQ(dbh_text(trees()[0]->facts.dbh), "14.0 in");
  EXPECT_LE(taps() - before, 2);
}

TEST_F(Tally, F2_UndoReachesBackThroughARestart) {
  begin();
  tap(species(0));
  for (const char* size : {"10", "12", "14", "16"}) tap(class_name(size));
  const auto plot = *workspace().plot().id();
  stop();
  start();
  EXPECT_EQ(desk().live().trees_of(plot).size(), 4U);
  for (int i = 0; i < 4; ++i) tap(QStringLiteral("Undo"));
  EXPECT_EQ(desk().live().trees_of(plot).size(), 0U);
  for (int i = 0; i < 4; ++i) tap(QStringLiteral("Redo"));
  EXPECT_EQ(desk().live().trees_of(plot).size(), 4U);
}

TEST_F(Tally, S3_ThirtyTreesCostAtMostSixtyFiveTaps) {
  begin();
  const int before = taps();
  for (int i = 0; i < 30; ++i) slide(species(i % 5), class_name(i % 2 == 0 ? "12" : "16"));
  EXPECT_EQ(trees().size(), 30U);
  EXPECT_LE(taps() - before, 65);
}

TEST_F(Tally, S4_TheOrderOfSpeciesStaysWhileAPlotIsWorked) {
  begin();
  QStringList order;
  for (int row = 0; row < tally().species()->rowCount(); ++row) order << species(row);
  for (int i = 0; i < 6; ++i) slide(species(7), class_name(i % 2 == 0 ? "12" : "16"));
  app_settings().setMetric(true);
  app_settings().setMetric(false);
  settle();
  for (int row = 0; row < tally().species()->rowCount(); ++row) EXPECT_EQ(species(row), order[row]);
}

TEST_F(Tally, F5_TheLastThreeTreesStayInSightAndOpen) {
  begin();
  tap(species(0));
  for (const char* size : {"10", "12", "14", "16"}) tap(class_name(size));
  ASSERT_EQ(tally().lastTrees().size(), 3);
  EXPECT_EQ(tally().lastTrees().first(), species(0) + " 16.0 in");
  tap(tally().lastTrees()[1]);
  EXPECT_EQ(workspace().tree()->title(), species(0) + " 14.0 in");
  tap(QStringLiteral("Dead"));
  ASSERT_EQ(trees().size(), 4U);
  EXPECT_EQ(trees()[2]->facts.status, TreeStatus::dead);
}

TEST_F(Tally, F7_AnUnusualSizeIsSaidAndKept) {
  begin();
  tap(species(0));
  tap(QStringLiteral("Keypad"));
  for (const char* key : {"7", "9", "0", "Record"}) tap(QLatin1String(key));
  ASSERT_EQ(trees().size(), 1U);
  EXPECT_NE(tally().doubt(), "") << "79 in is doubted";
  for (const char* key : {"9", "9", "9", "9", "Record"}) tap(QLatin1String(key));
  EXPECT_EQ(trees().size(), 1U) << "999.9 in is refused";
  EXPECT_NE(tally().doubt(), "");
}

}  // namespace
}  // namespace oaklight::test
