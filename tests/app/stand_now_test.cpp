// How the stand stands so far, for whoever tallies in it.
#include "core/session/tract_work.hpp"
#include "mobile/viewmodels/stand_words.hpp"
#include "tests/app/tally_fixture.hpp"

namespace oaklight::test {
namespace {

class StandNowLine : public Tally {
 protected:
  StandNowViewModel& line() { return *workspace().standNow(); }
  /// The same words from the full computation.
  QString in_full() {
    const StandId stand = desk().live().find(*workspace().plot().id())->stand;
    const auto options = options_of(app_settings());
    const auto full = running_figures(desk().live(), desk().knowledge(), stand, options);
    EXPECT_TRUE(full) << to_text(full.error());
    return full ? StandWords(app_settings().system(), options).now(stand_now(*full)) : QString();
  }
  /// Whether these words are in sight, and told to whoever cannot see them.
  bool seen(const QString& words) {
    return !words.isEmpty() && control_lines(window()).contains(words);
  }
};

TEST_F(StandNowLine, IsTrueAfterEachTapUndoAndRedoAndMovesNoButton) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    slide(species(1), class_name("8"));
    const QString before = line().text();
    EXPECT_EQ(before, in_full());
    const QPoint again = at(QStringLiteral("Same again"));
    const QPoint cell = at(species(2));
    for (const char* size : {"10", "16"}) {
      slide(species(1), class_name(size));
      EXPECT_EQ(line().text(), in_full());
      EXPECT_NE(line().text(), before);
      EXPECT_EQ(at(QStringLiteral("Same again")), again);
      EXPECT_EQ(at(species(2)), cell);
    }
    EXPECT_TRUE(cut_words().isEmpty()) << cut_words().join(", ").toStdString();
    picture(QStringLiteral("stand_now_%1").arg(QLatin1String(screen.name)));
    desk().undo();
    settle();
    EXPECT_EQ(line().text(), in_full());
    desk().redo();
    settle();
    EXPECT_EQ(line().text(), in_full());
    for (int i = 0; i < 2; ++i) desk().undo();
    settle();
    EXPECT_EQ(line().text(), before);
    stop();
  }
}

TEST_F(StandNowLine, IsInSightOnTheTallyAndBeforeTheWayOn) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    begin(screen);
    slide(species(1), class_name("10"));
    // A hand's width of glass has no room beside the cells: there it stands where "Next plot" is.
    if (find(QStringLiteral("More")) != nullptr) tap(QStringLiteral("More"));
    EXPECT_TRUE(seen(line().text())) << line().text().toStdString();
    picture(QStringLiteral("stand_now_more_%1").arg(QLatin1String(screen.name)));
    tap(QStringLiteral("Next plot"));
    settle();
    EXPECT_TRUE(seen(line().text())) << line().text().toStdString();
    EXPECT_TRUE(seen(line().need())) << line().need().toStdString();
    EXPECT_TRUE(cut_words().isEmpty()) << cut_words().join(", ").toStdString();
    picture(QStringLiteral("stand_now_walk_%1").arg(QLatin1String(screen.name)));
    stop();
  }
}

TEST_F(StandNowLine, ChangesWithStandUnitsLanguageAndErrorAllowed) {
  begin();
  slide(species(1), class_name("10"));
  EXPECT_TRUE(line().text().startsWith("Stand: ")) << line().text().toStdString();
  EXPECT_TRUE(line().text().contains("ft²/ac"));
  app_settings().setMetric(true);
  settle();
  EXPECT_EQ(line().text(), in_full());
  EXPECT_TRUE(line().text().contains("m²/ha")) << line().text().toStdString();
  app_settings().setMetric(false);
  const QString need = line().need();
  app_settings().setAllowableError(5);
  EXPECT_NE(line().need(), need);
  const QString here = line().text();
  const auto& plots = desk().data().plots;
  const StandId stand = plots.back().stand;
  const auto other = std::ranges::find_if(plots, [&](const Plot& p) { return p.stand != stand; });
  ASSERT_NE(other, plots.end());
  workspace().plot().set(other->id);
  settle();
  EXPECT_NE(line().text(), here);
  EXPECT_EQ(line().text(), in_full());
  app_settings().setLanguage(QStringLiteral("es"));
  settle();
  EXPECT_TRUE(line().text().startsWith("Rodal: ")) << line().text().toStdString();
  EXPECT_TRUE(line().text().contains("parcela")) << line().text().toStdString();
}

TEST_F(StandNowLine, SaysNothingBeforeTheFirstPlotOfAStand) {
  begin();
  desk().submit([this]() -> Result<Action> {
    Stand stand;
    stand.name = "New ground";
    stand.acres = Acres{5.0};
    return add_stand(desk().live(), desk().knowledge(), desk().ids(), stand);
  });
  settle();
  desk().submit([this] {
    return add_plots(desk().live(), desk().knowledge(), desk().ids(),
                     desk().data().stands.back().id, desk().data().cruises.front().id, 2);
  });
  settle();
  workspace().plot().set(desk().data().plots.back().id);
  settle();
  EXPECT_EQ(line().text(), QString());
  const QPoint cell = at(species(2));
  slide(species(1), class_name("10"));
  EXPECT_EQ(line().text(), QStringLiteral("Stand: 10.0 ft²/ac, 1 plot"));
  EXPECT_EQ(at(species(2)), cell);
}

// Several cruises in a stand are computed in full, and told all the same.
TEST_F(StandNowLine, TellsAStandThatMustBeComputedInFull) {
  begin();
  slide(species(1), class_name("10"));
  const QString before = line().text();
  desk().submit([this]() -> Result<Action> {
    Cruise twin = *desk().live().find(desk().live().find(*workspace().plot().id())->cruise);
    twin.id = desk().ids().next_id<CruiseTag>();
    twin.name = "by another crew";
    Plot plot = *desk().live().find(*workspace().plot().id());
    plot.cruise = twin.id;
    return Action{"hand over", {twin, plot}};
  });
  settle();
  const StandId stand = desk().live().find(*workspace().plot().id())->stand;
  EXPECT_FALSE(LiveStand(desk().live(), desk().knowledge().species(), stand).now({}));
  EXPECT_EQ(line().text(), before) << "the same design, so the same figures";
}

}  // namespace
}  // namespace oaklight::test
