// Rows F1 to F13 and D10 of field_rows.md: feedback, and errors that are made easy to mend.
#include <sqlite3.h>

#include <QMetaEnum>
#include <QtTest/QTest>
#include <memory>

#include "core/store/tract_store.hpp"
#include "tests/app/tally_fixture.hpp"

namespace oaklight::test {
namespace {

/// What a count says in the tract file, read by another connection; -1 when it cannot be read.
int count_in(const std::filesystem::path& file, const char* sql) {
  sqlite3* opened = nullptr;
  const int state = sqlite3_open_v2(file.c_str(), &opened, SQLITE_OPEN_READONLY, nullptr);
  const std::unique_ptr<sqlite3, int (*)(sqlite3*)> db(opened, sqlite3_close);
  if (state != SQLITE_OK) return -1;
  sqlite3_stmt* prepared = nullptr;
  if (sqlite3_prepare_v2(opened, sql, -1, &prepared, nullptr) != SQLITE_OK) return -1;
  const std::unique_ptr<sqlite3_stmt, int (*)(sqlite3_stmt*)> row(prepared, sqlite3_finalize);
  return sqlite3_step(prepared) == SQLITE_ROW ? sqlite3_column_int(prepared, 0) : -1;
}

constexpr const char* kLiveTrees = "SELECT count(*) FROM tree WHERE deleted = 0";

TEST_F(FieldRows, F1_ATreeIsOnDiskWhenItIsShown) {
  begin();
  tap(species(0));
  const auto file = desk().path();
  int on_disk = -2;
  const int before = count_in(file, kLiveTrees);
  ASSERT_GE(before, 0);
  // Told at the moment at which the page is told, and before anything else can happen.
  const auto told = QObject::connect(&tally(), &TallyViewModel::figuresChanged,
                                     [&] { on_disk = count_in(file, kLiveTrees); });
  tap(class_name("12"));
  QObject::disconnect(told);
  EXPECT_EQ(tally().figures().first(), "1");
  EXPECT_EQ(on_disk, before + 1);
}

TEST_F(FieldRows, F1_WhatIsReadBackIsNeverATreeThatWasUndone) {
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

TEST_F(FieldRows, F2_UndoReachesBackTwoHundredTreesAndThroughARestart) {
  begin();
  const auto plot = *workspace().plot().id();
  constexpr int kTrees = 200;
  for (int i = 0; i < kTrees; ++i) {
    desk().submit([this, plot] {
      const TreeDraft draft{
          .facts = {.species = SpeciesCode{802}, .dbh = *Dbh::from_tenths(120, UnitSystem::us)}};
      return tally_tree(desk().live(), desk().knowledge(), desk().ids(), plot, draft);
    });
  }
  ASSERT_TRUE(written());
  ASSERT_EQ(trees().size(), static_cast<std::size_t>(kTrees));
  stop();
  start();
  EXPECT_EQ(desk().live().trees_of(plot).size(), static_cast<std::size_t>(kTrees));
  for (int i = 0; i < 3; ++i) tap(QStringLiteral("Undo"));
  EXPECT_EQ(desk().live().trees_of(plot).size(), static_cast<std::size_t>(kTrees) - 3);
  for (int i = 3; i < kTrees; ++i) desk().undo();
  ASSERT_TRUE(written());
  EXPECT_EQ(desk().live().trees_of(plot).size(), 0U);
  for (int i = 0; i < kTrees; ++i) desk().redo();
  ASSERT_TRUE(written());
  EXPECT_EQ(desk().live().trees_of(plot).size(), static_cast<std::size_t>(kTrees));
}

TEST_F(FieldRows, F2_F4_ATreeIsTakenOutWithOneTapAndItsRecordStays) {
  begin();
  slide(species(0), class_name("12"));
  const auto file = desk().path();
  const int all = count_in(file, "SELECT count(*) FROM tree");
  const int live = count_in(file, kLiveTrees);
  tap(tally().lastTrees().front());
  scroll_to(QStringLiteral("Take this tree out"));
  const int before = taps();
  tap(QStringLiteral("Take this tree out"));
  EXPECT_EQ(taps() - before, 1);
  EXPECT_EQ(trees().size(), 0U) << "nobody was asked whether it is meant";
  EXPECT_EQ(count_in(file, "SELECT count(*) FROM tree"), all);
  EXPECT_EQ(count_in(file, kLiveTrees), live - 1);
  tap(QStringLiteral("Undo"));
  EXPECT_EQ(trees().size(), 1U);
}

TEST_F(FieldRows, F5_TheLastThreeTreesStayInSightAndOpen) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    for (const char* size : {"10", "12", "14", "16"}) slide(species(0), class_name(size));
    ASSERT_EQ(tally().lastTrees().size(), 3);
    EXPECT_EQ(tally().lastTrees().first(), species(0) + " 16.0 in");
    for (const QString& tree : tally().lastTrees()) EXPECT_NE(find(tree), nullptr);
    tap(tally().lastTrees()[1]);
    EXPECT_EQ(workspace().tree()->title(), species(0) + " 14.0 in");
    tap(QStringLiteral("Dead"));
    ASSERT_EQ(trees().size(), 4U);
    EXPECT_EQ(trees()[2]->facts.status, TreeStatus::dead);
    stop();
  }
}

TEST_F(FieldRows, F6_NoKeypadHasADecimalKey) {
  begin();
  tap(species(0));
  tap(QStringLiteral("Keypad"));
  EXPECT_EQ(find(QStringLiteral(".")), nullptr);
  EXPECT_EQ(find(QStringLiteral(",")), nullptr);
  type({"3", "1", "2", "Record"});
  ASSERT_EQ(trees().size(), 1U);
  EXPECT_EQ(dbh_text(trees()[0]->facts.dbh), "31.2 in");
}

TEST_F(FieldRows, F7_AnUnusualSizeIsDoubtedAndKeptWithoutAQuestion) {
  begin();
  tap(species(0));
  type({"Keypad", "7", "9", "0", "Record"});
  ASSERT_EQ(trees().size(), 1U) << "kept";
  EXPECT_TRUE(tally().doubt().startsWith(QStringLiteral("large for ")))
      << tally().doubt().toStdString();
  EXPECT_TRUE(tally().lastTrees().front().endsWith(QStringLiteral("large?")));
  slide(species(0), class_name("12"));
  EXPECT_EQ(tally().doubt(), "") << "said once";
  EXPECT_TRUE(tally().lastTrees()[1].endsWith(QStringLiteral("large?")))
      << "and marked in the list";
  EXPECT_FALSE(tally().lastTrees()[0].endsWith(QStringLiteral("large?")));
}

TEST_F(FieldRows, F7_ASizeThatNoTreeHasIsRefusedInWords) {
  begin();
  tap(species(0));
  type({"Keypad", "9", "9", "9", "9"});
  EXPECT_FALSE(tally().readDigits(QStringLiteral("9999")).contains(QStringLiteral("999.9 in")) &&
               tally().readDigits(QStringLiteral("9999")).size() < 10)
      << "the key pad says it before it is recorded";
  tap(QStringLiteral("Record"));
  EXPECT_EQ(trees().size(), 0U);
  EXPECT_NE(tally().doubt(), "");
  EXPECT_NE(find(QStringLiteral("Close")), nullptr) << "the reason stands where it was typed";
}

TEST_F(FieldRows, F10_NoSizeIsFirstEnteredBySteps) {
  begin();
  slide(species(0), class_name("12"));
  const auto steps = [this] {
    for (const Control& control : controls_of(window())) {
      const QString icon = control.item->property("iconName").toString();
      EXPECT_NE(icon, QStringLiteral("plus")) << control.name.toStdString();
      EXPECT_NE(icon, QStringLiteral("minus")) << control.name.toStdString();
    }
  };
  // Seedlings are counted, one tap each: that is no reading.
  on_every_sheet_at_the_plot([&](const char* sheet) {
    if (std::string_view(sheet) != "Seedlings") steps();
  });
}

TEST_F(FieldRows, F13_EveryControlHasAName) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    on_every_page(screen, [&](AppModel::Page) {
      EXPECT_FALSE(controls_of(window()).empty());
      for (const Control& control : controls_of(window())) EXPECT_NE(control.name.trimmed(), "");
    });
    begin(screen);
    slide(species(0), class_name("12"));
    on_every_sheet_at_the_plot([&](const char*) {
      for (const Control& control : controls_of(window())) EXPECT_NE(control.name.trimmed(), "");
    });
    stop();
  }
}

TEST_F(FieldRows, D10_LittleRoomOnTheDiskIsToldAndNoPlotIsBegunWithTooLittle) {
  constexpr std::uintmax_t kMebibyte = 1024 * 1024;
  start(kTablet);
  std::uintmax_t left = 200 * kMebibyte;
  workspace().room().measureWith([&left](const std::filesystem::path&) { return left; });
  const auto planned = [this] {
    const auto& plots = desk().data().plots;
    return std::ranges::count(plots, PlotStatus::planned, &Plot::status);
  };
  workspace().desk()->lookAtRoom();
  EXPECT_EQ(workspace().desk()->lowRoom(), "");
  left = 200 * kMebibyte - 1;
  workspace().desk()->lookAtRoom();
  settle();
  EXPECT_TRUE(workspace().desk()->lowRoom().contains(QStringLiteral("199 MiB")));
  tap(QStringLiteral("All right"));
  EXPECT_EQ(workspace().desk()->lowRoom(), "") << "told once";
  left = 50 * kMebibyte - 1;
  workspace().desk()->lookAtRoom();
  settle();
  EXPECT_TRUE(workspace().desk()->lowRoom().contains(QStringLiteral("49 MiB")));
  desk().submit([this] {
    const Plot& other = desk().data().plots.front();
    return add_plots(desk().live(), desk().knowledge(), desk().ids(), other.stand, other.cruise, 1);
  });
  settle();
  ASSERT_EQ(planned(), 1);
  show(AppModel::Page::Walk);
  tap(QStringLiteral("Start plot"));
  EXPECT_EQ(model().page(), AppModel::Page::Walk) << "no plot is begun";
  EXPECT_TRUE(workspace().desk()->refusal().contains(QStringLiteral("49 MiB")))
      << workspace().desk()->refusal().toStdString();
  left = 50 * kMebibyte;
  tap(QStringLiteral("Start plot"));
  EXPECT_EQ(model().page(), AppModel::Page::Tally);
}

}  // namespace
}  // namespace oaklight::test
