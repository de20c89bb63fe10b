// The stand page: the figures of core, in words, and each with its source.
#include <QtTest/QTest>

#include "core/base/number_text.hpp"
#include "core/session/plot_work.hpp"
#include "mobile/viewmodels/stand_words.hpp"
#include "tests/app/app_fixture.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_cruise.hpp"

namespace oaklight::test {
namespace {

class StandPage : public App {
 protected:
  void begin(const Screen& screen = kTablet) {
    start(screen);
    show(AppModel::Page::Stand);
    ready();
  }
  void ready() {
    ASSERT_TRUE(waitFor([this] { return !stand().busy(); }));
    settle();
  }
  StandViewModel& stand() { return *workspace().stand(); }
  QString figure(const char* key, int role) {
    for (int row = 0; row < stand().figures()->rowCount(); ++row) {
      if (stand().figures()->at(row)->key == QLatin1String(key)) {
        return stand().figures()->data(stand().figures()->index(row), role).toString();
      }
    }
    ADD_FAILURE() << "no figure " << key;
    return {};
  }
  QString value(const char* key) { return figure(key, FigureListModel::ValueRole); }
  /// All that the open sheet says.
  QString note() {
    QStringList lines;
    for (int row = 0; row < stand().note()->rowCount(); ++row) {
      lines << stand().note()->data(stand().note()->index(row), NoteListModel::TextRole).toString();
    }
    return lines.join(QLatin1Char('\n'));
  }
  Result<StandView> view_now(std::optional<StandId> id) {
    EstimateOptions options;
    options.goal = Percent{static_cast<double>(app_settings().allowableError())};
    return stand_view(desk().data(), desk().knowledge(), id, options);
  }
  void tally(SpeciesCode species) {
    desk().submit([this, species]() -> Result<Action> {
      const TreeDraft draft{.facts = {.species = species, .dbh = dbh_in(14.0)}};
      return tally_tree(desk().live(), desk().knowledge(), desk().ids(), *workspace().plot().id(),
                        draft);
    });
  }
};

QString one_decimal(double value) { return QString::fromStdString(grouped_text(value, 1)); }

TEST_F(StandPage, ShowsTheEstimateOfTheStandWhereThePersonWorks) {
  begin();
  const StandId here = desk().live().find(*workspace().plot().id())->stand;
  const auto view = view_now(here);
  ASSERT_TRUE(view);
  EXPECT_EQ(value("basal_area"), one_decimal(view->area.live.ba.mean.value));
  EXPECT_TRUE(figure("basal_area", FigureListModel::ErrorRole)
                  .contains(one_decimal(view->area.live.ba.half_width->value)));
  EXPECT_EQ(stand().stands()[stand().stand()].toStdString(), desk().live().find(here)->name);
  EXPECT_TRUE(stand().advice().startsWith(QString::fromStdString(view->advice->text).left(20)));
  EXPECT_TRUE(stand().composition().present());
  EXPECT_TRUE(stand().diameters().present());
  EXPECT_TRUE(stand().stocking().present());
  EXPECT_EQ(stand().problem(), "");
}

TEST_F(StandPage, ATapOnAFigureTellsHowItWasComputedAndItsSource) {
  for (const Screen& screen : {kTablet, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    tap(figure("basal_area", FigureListModel::SpokenRole));
    EXPECT_EQ(stand().noteTitle(), "Basal area");
    EXPECT_TRUE(note().contains(QStringLiteral("definition of the basal area factor (derived)")));
    EXPECT_TRUE(note().contains(QStringLiteral("degrees of freedom")));
    ASSERT_NE(find(QStringLiteral("Close")), nullptr);
    tap(QStringLiteral("Close"));
    ASSERT_TRUE(waitFor([this] { return find(QStringLiteral("Close")) == nullptr; }));
    stop();
  }
}

TEST_F(StandPage, SaysOfAFigureFromMemoryThatItIs) {
  begin();
  for (int row = 0; row < stand().figures()->rowCount(); ++row) {
    stand().explain(row);
    const QString key = stand().figures()->at(row)->key;
    const SourceNote* source = source_note(key.toStdString());
    ASSERT_NE(source, nullptr);
    for (const Citation& citation : source->citations) {
      EXPECT_TRUE(note().contains(QString::fromStdString(std::string(citation.work))));
    }
    if (key == QLatin1String("stocking")) {
      EXPECT_TRUE(note().contains(QStringLiteral("38-53 (from memory, not read again)")));
    }
    if (key == QLatin1String("board_feet")) {
      EXPECT_TRUE(note().contains(QStringLiteral("Michigan Compiled Laws 290.401")));
    }
  }
}

TEST_F(StandPage, FollowsEveryTreeAndEndsAtTheNewest) {
  begin();
  const StandId here = desk().live().find(*workspace().plot().id())->stand;
  const QString before = value("basal_area");
  for (int i = 0; i < 5; ++i) tally(SpeciesCode{802});
  settle();
  ready();
  EXPECT_NE(value("basal_area"), before);
  EXPECT_EQ(value("basal_area"), one_decimal(view_now(here)->area.live.ba.mean.value));
  for (int i = 0; i < 5; ++i) desk().undo();
  settle();
  ready();
  EXPECT_EQ(value("basal_area"), before);
}

TEST_F(StandPage, ComputesNothingWhileNobodyLooks) {
  begin();
  const QString before = value("basal_area");
  show(AppModel::Page::Tally);
  tally(SpeciesCode{802});
  settle();
  EXPECT_FALSE(stand().busy());
  EXPECT_EQ(value("basal_area"), before);
  show(AppModel::Page::Stand);
  ready();
  EXPECT_NE(value("basal_area"), before);
}

TEST_F(StandPage, OfTheWholeTractWeighsStandsAndAdvisesNothing) {
  begin();
  tap(QStringLiteral("Whole tract"));
  ready();
  const auto view = view_now(std::nullopt);
  ASSERT_TRUE(view) << to_text(view.error());
  EXPECT_EQ(value("basal_area"), one_decimal(view->area.live.ba.mean.value));
  EXPECT_EQ(stand().advice(), "");
  EXPECT_FALSE(stand().stocking().present());  // the guide is for one stand
  EXPECT_TRUE(stand().summary().contains(QStringLiteral("weighing by its area")));
}

// Derived: 1 m2/ha is 4.356 ft2/ac.
TEST_F(StandPage, ChangesUnitsInOnePlace) {
  begin();
  const auto view = view_now(desk().live().find(*workspace().plot().id())->stand);
  ASSERT_TRUE(view);
  app_settings().setMetric(true);
  settle();
  ready();
  EXPECT_EQ(value("basal_area"), one_decimal(view->area.live.ba.mean.value / 4.356));
  EXPECT_EQ(figure("basal_area", FigureListModel::UnitRole), "m²/ha");
  EXPECT_EQ(figure("mean_diameter", FigureListModel::UnitRole), "cm");
}

TEST_F(StandPage, AsksForMorePlotsWhenLessErrorIsAllowed) {
  begin();
  const StandId here = desk().live().find(*workspace().plot().id())->stand;
  for (const int percent : {10, 50}) {
    app_settings().setAllowableError(percent);
    settle();
    ready();
    const int more = view_now(here)->area.need->more;
    EXPECT_TRUE(stand().need().contains(QString::number(percent)));
    EXPECT_EQ(stand().need().startsWith(QStringLiteral("Enough")), more == 0);
    if (more > 1) {
      EXPECT_TRUE(stand().need().contains(QString::number(more)));
    }
  }
}

TEST_F(StandPage, SaysWhyThereIsNothingToShow) {
  begin();
  desk().submit([this]() -> Result<Action> {
    Stand bare;
    bare.id = desk().ids().next_id<StandTag>();
    bare.name = "Bare Knob";
    bare.acres = Acres{5.0};
    return Action{"add stand", {bare}};
  });
  settle();
  ASSERT_EQ(stand().stands().last(), "Bare Knob");
  stand().setStand(static_cast<int>(stand().stands().size()) - 1);
  EXPECT_EQ(stand().figures()->rowCount(), 0) << "figures of another stand under this name";
  ready();
  EXPECT_TRUE(stand().problem().contains(QStringLiteral("Lay out a cruise")));
  EXPECT_EQ(stand().figures()->rowCount(), 0);
}

class StandSays : public StandPage {
 protected:
  FigureRow row(const TestCruise& cruise, StandId id, std::string_view key) {
    const auto view = stand_view(cruise.data, desk().knowledge(), id, options_);
    EXPECT_TRUE(view) << to_text(view.error());
    const StandWords words(UnitSystem::us, options_);
    summary_ = words.summary(*view);
    for (const AreaFigure& figure : area_figures(*view, options_)) {
      if (figure.key == key) return words.row(figure, *view);
    }
    ADD_FAILURE() << key;
    return {};
  }
  EstimateOptions options_;
  QString summary_;
};

TEST_F(StandSays, ThatOnePlotTellsNoError) {
  begin();
  TestCruise cruise;
  const StandId id = cruise.stand("A", 10.0);
  cruise.tree(cruise.plot(id), 802, 14.0);
  const FigureRow ba = row(cruise, id, "basal_area");
  EXPECT_EQ(ba.value, "10.0");
  EXPECT_EQ(ba.error, "");
  EXPECT_EQ(ba.remark, "n = 1: no error can be told.");
}

// Derived: 1 - 0.05^(1/2) is 78 %.
TEST_F(StandSays, NotFoundInPlaceOfZero) {
  begin();
  TestCruise cruise;
  const StandId id = cruise.stand("A", 10.0);
  cruise.tree(cruise.plot(id), 316, 14.0);
  cruise.plot(id, PlotStatus::empty);
  const FigureRow oak = row(cruise, id, "oak_share");
  EXPECT_EQ(oak.value, "none found");
  EXPECT_EQ(oak.remark, "Not found on 2 plots: up to 78 % of such plots may still hold it.");
  EXPECT_TRUE(
      summary_.startsWith(QStringLiteral("2 plots, 1 of them without a tree (counted as 0).")));
  const FigureRow feet = row(cruise, id, "board_feet");
  EXPECT_EQ(feet.value, "not known") << "nobody counted the logs of a red maple of 14 in";
}

}  // namespace
}  // namespace oaklight::test
