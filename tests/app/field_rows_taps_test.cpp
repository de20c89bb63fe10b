// Rows S1 to S4 of field_rows.md: how many taps a tree costs.
#include "tests/app/tally_fixture.hpp"

namespace oaklight::test {
namespace {

TEST_F(FieldRows, S1_OneTapWhenTheSpeciesIsPinned) {
  begin();
  tap(species(0));
  const int before = taps();
  tap(class_name("12"));
  EXPECT_EQ(trees().size(), 1U);
  EXPECT_EQ(taps() - before, 1);
}

TEST_F(FieldRows, S1_TwoTapsForAnotherSpeciesInGlovesOnAPhone) {
  begin(kPhone);
  unhurried();
  const int before = taps();
  for (int i = 0; i < 6; ++i) {
    tap(species(i % 3));
    tap(class_name(i % 2 == 0 ? "12" : "16"));
  }
  EXPECT_EQ(trees().size(), 6U);
  EXPECT_EQ(taps() - before, 12);
}

TEST_F(FieldRows, S1_FiveTapsForAMeasuredDiameter) {
  begin();
  tap(species(0));
  int before = taps();
  type({"Keypad", "1", "2", "3", "Record"});
  ASSERT_EQ(trees().size(), 1U);
  EXPECT_EQ(dbh_text(trees()[0]->facts.dbh), "12.3 in");
  EXPECT_EQ(taps() - before, 5);
  EXPECT_EQ(find(QStringLiteral("Close")), nullptr) << "on to the next species";
}

TEST_F(FieldRows, S2_UndoAndTheRightTreeCostTwoTaps) {
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

TEST_F(FieldRows, S3_ThirtyTreesCostAtMostSixtyFiveTapsByClass) {
  for (const Screen& screen : {kTablet, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    unhurried();
    const int before = taps();
    for (int i = 0; i < 30; ++i) {
      tap(species(i % 5));
      tap(class_name(i % 2 == 0 ? "12" : "16"));
    }
    EXPECT_EQ(trees().size(), 30U);
    EXPECT_LE(taps() - before, 65);
    stop();
  }
}

TEST_F(FieldRows, S3_ThirtyTreesCostAtMostHundredAndSixtyTapsByTenths) {
  begin(kPhone);
  unhurried();
  const int before = taps();
  tap(QStringLiteral("Keypad"));
  tap(QStringLiteral("Always keypad"));
  tap(QStringLiteral("Close"));
  for (int i = 0; i < 30; ++i) {
    tap(species(i % 5));
    type({"1", i % 2 == 0 ? "2" : "4", "5", "Record"});
  }
  ASSERT_EQ(trees().size(), 30U);
  EXPECT_EQ(dbh_text(trees()[29]->facts.dbh), "14.5 in");
  EXPECT_LE(taps() - before, 160);
  EXPECT_EQ(model().page(), AppModel::Page::Tally);
}

TEST_F(FieldRows, S4_TheOrderOfSpeciesStaysWhileAPlotIsWorked) {
  begin();
  QStringList order;
  for (int row = 0; row < tally().species()->rowCount(); ++row) order << species(row);
  for (int i = 0; i < 6; ++i) slide(species(7), class_name(i % 2 == 0 ? "12" : "16"));
  app_settings().setMetric(true);
  app_settings().setMetric(false);
  settle();
  for (int row = 0; row < tally().species()->rowCount(); ++row) EXPECT_EQ(species(row), order[row]);
}

}  // namespace
}  // namespace oaklight::test
