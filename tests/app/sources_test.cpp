// How figures are made, by one tap; and the curves fitted to trees of the place.
#include <QtTest/QTest>

#include "core/measure/local_curves.hpp"
#include "core/stand/sources.hpp"
#include "mobile/viewmodels/fit_list_model.hpp"
#include "mobile/viewmodels/source_notes.hpp"
#include "tests/app/tally_fixture.hpp"

namespace oaklight::test {
namespace {

class Sources : public FieldRows {
 protected:
  /// One tap on what bears that name opens a note; it may lie below what is seen.
  void expect_note(const QString& name, const QString& about, const char* look,
                   const Screen& screen) {
    SCOPED_TRACE(name.toStdString());
    QQuickItem* item = find(name);
    ASSERT_NE(item, nullptr) << control_lines(window()).toStdString();
    ASSERT_TRUE(QMetaObject::invokeMethod(item, "clicked"));
    settle();
    ASSERT_NE(find(QStringLiteral("Close")), nullptr) << "no sheet opened";
    EXPECT_TRUE(control_lines(window()).contains(about)) << control_lines(window()).toStdString();
    picture(QStringLiteral("note_%1_%2").arg(QLatin1String(look), QLatin1String(screen.name)));
    tap(QStringLiteral("Close"));
  }
  static QString name_of_note(std::string_view key) {
    return QString::fromStdString(std::string(source_note(key)->name));
  }
  /// Radii on the live trees of the first stand, as wide as their DBH lets one expect.
  void tape_crowns() {
    desk().submit([this]() -> Result<Action> {
      Action action{"tape crowns", {}};
      int n = 0;
      for (WalkTree tree : desk().data().walk_trees) {
        if (tree.stand != desk().data().stands.front().id) continue;
        if (tree.facts.status != TreeStatus::live) continue;
        const double feet = 0.7 * tree.facts.dbh.inches().value + (n++ % 3);
        const auto radius =
            TapedLength::from_hundredths(static_cast<std::int32_t>(feet * 100.0), UnitSystem::us)
                .value();
        tree.crown = {radius, radius, radius, radius};
        action.changes.emplace_back(tree);
      }
      return action;
    });
    settle();
  }
};

TEST_F(Sources, OfLightMarksAndStumpsOpenByOneTap) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    start(screen);
    if (desk().data().marks.empty()) decide_all();
    show(AppModel::Page::Light);
    ASSERT_TRUE(waitFor([this] { return at_rest(); }));
    settle();
    expect_note(workspace().light()->advice(), name_of_note("guard_stocking"), "advice", screen);
    expect_note(QStringLiteral("Guards of the stand, with the marked trees gone"),
                name_of_note("after_release"), "guards", screen);
    workspace().light()->openCard(0);
    settle();
    const QStringList light = workspace().light()->card()->light();
    expect_note(QStringLiteral("Light: %1, %2").arg(light[0], light[1]), name_of_note("light"),
                "light", screen);
    picture(QStringLiteral("card_%1").arg(QLatin1String(screen.name)));
    workspace().light()->closeCard();
    show(AppModel::Page::Marks);
    ASSERT_TRUE(waitFor([this] { return at_rest(); }));
    settle();
    ASSERT_FALSE(workspace().marks()->totals().isEmpty());
    expect_note(workspace().marks()->totals().first(), name_of_note("tree_list"), "marks", screen);
    show(AppModel::Page::Stumps);
    ASSERT_TRUE(waitFor(
        [this] { return !workspace().marks()->stumps()->progress().isEmpty() && at_rest(); }));
    settle();
    expect_note(workspace().marks()->stumps()->progress(), name_of_note("tree_list"), "stumps",
                screen);
    EXPECT_TRUE(warnings().isEmpty()) << warnings().join("\n").toStdString();
    stop();
  }
}

TEST_F(Sources, CurvesOfThePlaceAreDrawnWithTheirTrees) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    start(screen);
    tape_crowns();
    workspace().stand()->setStand(1);
    const auto curves =
        crown_curves(desk().data().walk_trees, desk().data().stands.front().id).size() +
        height_curves(desk().data()).size();
    ASSERT_GT(curves, 0U);
    FitListModel fits;
    fits.setWorkspace(&workspace());
    ASSERT_TRUE(waitFor([&] { return !fits.busy(); }));
    EXPECT_EQ(static_cast<std::size_t>(fits.count()), curves);
    EXPECT_TRUE(fits.words().startsWith("Local curves")) << fits.words().toStdString();
    EXPECT_TRUE(fits.pictureAt(0).present());
    EXPECT_FALSE(fits.pictureAt(fits.count()).present());
    show(AppModel::Page::Stand);
    ASSERT_TRUE(waitFor([this] { return !workspace().stand()->busy(); }));
    settle();
    QTest::qWait(300);
    scroll_to(fits.words());
    picture(QStringLiteral("stand_fits_%1").arg(QLatin1String(screen.name)));
    expect_note(fits.words(), name_of_note("local_curve"), "fits", screen);
    EXPECT_TRUE(warnings().isEmpty()) << warnings().join("\n").toStdString();
    stop();
  }
}

TEST_F(Sources, AKeyOfNoNoteTellsNothing) {
  SourceNotes notes;
  notes.setKeys({QStringLiteral("no_such_figure")});
  EXPECT_EQ(notes.title(), "");
  EXPECT_EQ(notes.note()->rowCount(), 0);
  notes.setKeys({QStringLiteral("light")});
  EXPECT_EQ(notes.title(), name_of_note("light"));
  EXPECT_GT(notes.note()->rowCount(), 1);
}

}  // namespace
}  // namespace oaklight::test
