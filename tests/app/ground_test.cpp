// View models of the pages Tract, Walk and Setup, without a window.
#include <gtest/gtest.h>

#include <QSettings>
#include <QtTest/QSignalSpy>
#include <QtTest/QTest>
#include <random>

#include "core/paper/gui_app.hpp"
#include "core/place/geodesy.hpp"
#include "core/session/plot_work.hpp"
#include "mobile/desk/demo_tract.hpp"
#include "mobile/viewmodels/app_model.hpp"
#include "tests/support/places.hpp"
#include "tests/support/set_clock.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {
namespace {

constexpr std::int64_t kMay2026 = 1'777'900'020'000;

class Ground : public testing::Test {
 protected:
  Ground() : settings_(QString::fromStdString((folder_ / "settings.ini").string())) {}

  TractDesk::Clocks clocks() {
    return {clock_, [this] { return chance_(); }, "tablet"};
  }
  void make() { use(TractDesk::create(folder_ / "new.gpkg", clocks())); }
  void open_demo() {
    const auto made = make_demo_tract(folder_ / "demo.gpkg", clocks());
    ASSERT_TRUE(made) << to_text(made.error());
    use(TractDesk::read(folder_ / "demo.gpkg", clocks()));
  }
  void use(Result<ReadTract> read) {
    ASSERT_TRUE(read) << to_text(read.error());
    workspace_ = std::make_unique<Workspace>(
        std::make_unique<TractDesk>(*std::move(read), clocks()), settings_, locator_);
    tract().show(true);
    walk().show(true);
  }
  static bool opened(AppModel& app) {
    return QTest::qWaitFor([&app] { return !app.opening(); }, 10'000);
  }
  TractDesk& desk() { return workspace_->tract(); }
  const TractData& data() { return desk().data(); }
  TractViewModel& tract() { return *workspace_->tractView(); }
  WalkViewModel& walk() { return *workspace_->walk(); }
  SetupViewModel& setup() { return *workspace_->setup(); }
  void settle() {
    ASSERT_TRUE(QTest::qWaitFor([this] { return !desk().busy(); }, 10'000));
  }
  /// A tract with one stand and plots 1, 2, ... without positions.
  void make_with_plots(int plots) {
    make();
    tract().facts()->type(0, "Oak Run");
    tract().facts()->save();
    tract().addStand("North", "40", 0);
    tract().design()->save();
    settle();
    tract().addPlots(0, QString::number(plots));
    settle();
  }
  void place(int plot, Position position) {
    desk().submit([this, plot, position]() -> Result<Action> {
      Plot moved = data().plots[static_cast<std::size_t>(plot)];
      moved.position = position;
      return Action{"place a plot", {moved}};
    });
    settle();
  }

  TempDir folder_;
  SetClock clock_{kMay2026};
  std::mt19937_64 chance_{7};
  Settings settings_;
  Locator locator_;
  std::unique_ptr<Workspace> workspace_;
};

TEST_F(Ground, ANewTractIsMadeWorkableStepByStep) {
  using Step = TractViewModel::Step;
  make();
  EXPECT_EQ(tract().step(), Step::NameTract);
  EXPECT_EQ(tract().figure(), "") << "no plots is not 0 of 0";
  tract().facts()->type(0, "Oak Run");
  tract().facts()->save();
  settle();
  EXPECT_EQ(data().tract.name, "Oak Run");
  EXPECT_EQ(tract().step(), Step::AddStand);
  tract().addStand("North", "40", 0);
  settle();
  EXPECT_EQ(tract().stands()->rowCount(), 1);
  EXPECT_EQ(tract().step(), Step::ChooseDesign);
  tract().design()->save();
  settle();
  EXPECT_EQ(tract().step(), Step::AddPlots);
  tract().addPlots(0, "3");
  settle();
  EXPECT_EQ(tract().step(), Step::Walk);
  EXPECT_EQ(tract().todo(), "3 plots to do in North");
  EXPECT_EQ(tract().figure(), "0 of 3");
  EXPECT_EQ(walk().name(), "North, plot 1");
  // What was proposed and not changed: common practice, as the design's view model says.
  const Cruise& cruise = data().cruises.at(0);
  EXPECT_EQ(std::get<PointDesign>(cruise.design).factor, 10.0);
  EXPECT_EQ(dbh_text(cruise.min_dbh.value()), "3.0 in");
  EXPECT_EQ(cruise.regen_area, 0.001);
}

TEST_F(Ground, WhatIsRefusedSaysWhyAndChangesNothing) {
  make();
  for (const auto& [name, area] : {std::pair{"", "40"}, {"North", "forty"}, {"North", "-3"}}) {
    tract().dismissProblem();
    tract().addStand(name, area, 0);
    settle();
    EXPECT_NE(tract().problem(), "") << name << ", " << area;
    EXPECT_TRUE(data().stands.empty());
  }
  tract().addStand("North", "40", 0);
  settle();
  EXPECT_EQ(tract().problem(), "");
  tract().addPlots(0, "5");
  settle();
  EXPECT_NE(tract().problem(), "") << "plots need a cruise";
  EXPECT_TRUE(data().plots.empty());
  tract().design()->setTyped("many");
  tract().design()->save();
  settle();
  EXPECT_NE(tract().design()->problem(), "");
  EXPECT_TRUE(data().cruises.empty());
}

TEST_F(Ground, AreasAreTypedInTheUnitsOfTheScreenAndKeepTheirDigits) {
  settings_.setMetric(true);
  make();
  tract().addStand("North", "12,5", 1);
  settle();
  ASSERT_EQ(data().stands.size(), 1U);
  EXPECT_NEAR(to_hectares(data().stands[0].acres).value, 12.5, 1e-9) << "as typed";
  EXPECT_EQ(data().stands[0].goal, Goal::timber) << "second of the form's words";
  const Acres before = data().stands[0].acres;
  const auto* stands = tract().stands();
  tract().changeStand(0, "South", stands->areaAt(0), "0.4", stands->goalAt(0));
  settle();
  EXPECT_EQ(data().stands[0].name, "South");
  EXPECT_EQ(data().stands[0].acres, before) << "not typed over, so not rounded";
  ASSERT_TRUE(data().stands[0].walked);
  EXPECT_NEAR(to_hectares(*data().stands[0].walked).value, 0.4, 1e-9);
  tract().changeStand(0, "South", stands->areaAt(0), "", stands->goalAt(0));
  settle();
  EXPECT_FALSE(data().stands[0].walked) << "nothing typed is not walked, which is not 0";
}

TEST_F(Ground, TheWalkWorksWithoutAnyPosition) {
  make_with_plots(2);
  EXPECT_FALSE(walk().way()->known());
  EXPECT_EQ(walk().name(), "North, plot 1");
  EXPECT_EQ(walk().status(), "to do");
  EXPECT_NE(walk().note(), "");
  EXPECT_EQ(walk().way()->distance(), "") << "no figure where nothing is known";
  QSignalSpy reached(&walk(), &WalkViewModel::reached);
  walk().start();
  settle();
  EXPECT_EQ(reached.count(), 1);
  EXPECT_EQ(workspace_->plot().id(), data().plots[0].id);
  EXPECT_EQ(data().plots[0].status, PlotStatus::planned) << "until its first tree";
  EXPECT_EQ(data().cruises[0].date, "2026-05-04") << "the day of the clock";
}

TEST_F(Ground, TheWayIsABearingADistanceAndOnesOwnPaces) {
  // Derived: 500 ft due east of plot 1; 20 paces in 100 ft make 100, 152.4 m at 66 in 100 m 101.
  const Position first{Degrees{39.35}, Degrees{-82.21}};
  make_with_plots(2);
  place(0, first);
  place(1, position_at(first, Degrees{90.0}, Feet{500.0}));
  walk().callEmpty();
  settle();
  EXPECT_EQ(data().plots[0].status, PlotStatus::empty);
  EXPECT_EQ(walk().name(), "North, plot 2") << "the next one by itself";
  const WayViewModel& way = *walk().way();
  ASSERT_TRUE(way.known());
  EXPECT_NEAR(way.arrow(), 90.0, 1e-6) << "north is up: nobody knows which way the tablet lies";
  EXPECT_EQ(way.bearing(), QString::fromUtf8("90\u00b0 TRUE"));
  EXPECT_EQ(way.direction(), "E");
  EXPECT_EQ(way.distance(), "500 ft");
  EXPECT_EQ(way.paces(), "100");
  settings_.setChains(true);
  EXPECT_EQ(way.distance(), "7.58 ch") << "a chain is 66 ft";
  settings_.setMetric(true);
  EXPECT_EQ(way.distance(), "152 m");
  EXPECT_EQ(way.paces(), "101");
}

TEST_F(Ground, APlotIsSkippedForAReasonAndPlannedAgain) {
  make_with_plots(2);
  walk().skip("  ");
  settle();
  EXPECT_EQ(data().plots[0].status, PlotStatus::planned) << "no reason, no skip";
  walk().skip(walk().reasons().at(2));
  settle();
  EXPECT_EQ(data().plots[0].status, PlotStatus::skipped);
  EXPECT_EQ(data().plots[0].skip_reason, walk().reasons().at(2).toStdString());
  EXPECT_EQ(walk().name(), "North, plot 2");
  EXPECT_EQ(walk().progress(), "0 done, 1 to do");
  walk().choose(0);
  EXPECT_EQ(walk().status(), "skipped");
  EXPECT_FALSE(walk().may().testFlag(WalkViewModel::Go));
  EXPECT_TRUE(walk().may().testFlag(WalkViewModel::Again));
  walk().planAgain();
  settle();
  EXPECT_EQ(data().plots[0].status, PlotStatus::planned);
  EXPECT_TRUE(walk().may().testFlag(WalkViewModel::Go));
}

TEST_F(Ground, V5_EachStatusHasAWordAndAShapeOfItsOwn) {
  QStringList words;
  QStringList shapes;
  for (const auto& status : kWords<PlotStatus>) {
    words << status_words(status.value);
    shapes << icon_of(status.value);
    const QString drawing = QString::fromStdString(source_path("mobile/assets/icons/%1.svg"));
    EXPECT_TRUE(QFile::exists(drawing.arg(shapes.back()))) << shapes.back().toStdString();
  }
  EXPECT_EQ(words.removeDuplicates(), 0);
  EXPECT_EQ(shapes.removeDuplicates(), 0);
}

TEST_F(Ground, ATapOnTheMapChoosesThePlotUnderIt) {
  const auto paper = PaperApplication::start();
  ASSERT_TRUE(paper);
  open_demo();
  const PictureFrame upright{{300.0, 500.0}, 11.0, UnitSystem::us, false};
  const PictureFrame wide{{500.0, 300.0}, 14.0, UnitSystem::us, false};
  // The page turned, and then the hidden map was drawn once more.
  for (const PictureFrame& frame : {upright, wide, upright})
    static_cast<void>(tract().map().draw(frame));
  for (const PictureFrame& frame : {upright, wide}) {
    const QPointF corner(frame.size.width(), frame.size.height());
    const TractPicture same = draw_tract(data(), {}, frame);
    ASSERT_GT(same.plots.size(), 20U);
    for (const PlotSpot& spot : {same.plots.front(), same.plots.back()}) {
      tract().tap(spot.at, 10.0, corner);
      EXPECT_EQ(workspace_->plot().id(), spot.plot);
      EXPECT_NE(tract().chosen(), "");
    }
    tract().tap({-500.0, -500.0}, 10.0, corner);
    EXPECT_EQ(tract().chosen(), "") << "beside everything";
  }
}

TEST_F(Ground, TheDemoSaysInPlainWordsWhatIsLeft) {
  open_demo();
  // demo_plots/plots.csv: 33 measured and 3 empty of 36; crop_trees.csv: 45 crop trees, no marks.
  EXPECT_EQ(tract().figure(), "36 of 36");
  EXPECT_TRUE(tract().todo().contains("45 crop trees have no verdict yet"))
      << tract().todo().toStdString();
  EXPECT_EQ(tract().step(), TractViewModel::Step::Decide);
}

TEST_F(Ground, ATalliedTreeRedrawsNoMapAndNoList) {
  open_demo();
  QSignalSpy maps(&tract(), &TractViewModel::mapChanged);
  QSignalSpy ways(&walk(), &WalkViewModel::changed);
  const PlotId plot = data().plots.front().id;
  desk().submit([this, plot] {
    const TreeDraft tree{{SpeciesCode{802}, *Dbh::from_tenths(140, UnitSystem::us)}};
    return tally_tree(desk().live(), desk().knowledge(), desk().ids(), plot, tree);
  });
  settle();
  EXPECT_EQ(maps.count(), 0);
  EXPECT_EQ(ways.count(), 0);
}

TEST_F(Ground, SetupTakesOnlyACountThatAWalkerHas) {
  make();
  setup().typePaces("22");
  EXPECT_EQ(setup().pacesProblem(), "");
  EXPECT_EQ(settings_.pacesIn(UnitSystem::us), 22);
  for (const char* wrong : {"5", "400", "x", ""}) {
    setup().typePaces(wrong);
    EXPECT_NE(setup().pacesProblem(), "") << wrong;
    EXPECT_EQ(settings_.pacesIn(UnitSystem::us), 22);
  }
  settings_.setMetric(true);
  setup().typePaces("70");
  EXPECT_EQ(settings_.pacesIn(UnitSystem::metric), 70);
  EXPECT_EQ(settings_.pacesIn(UnitSystem::us), 22) << "each system keeps its own count";
}

TEST_F(Ground, SetupChoosesLanguageErrorAndTallySet) {
  make();
  ASSERT_GT(setup().tallySets().size(), 1);
  setup().setTallySet(1);
  EXPECT_EQ(settings_.tallySet().toStdString(), desk().knowledge().sets[1].key);
  setup().setLanguage(1);
  EXPECT_EQ(settings_.language(), "es");
  setup().setError(2);
  EXPECT_EQ(QStringLiteral("%1\u00a0%").arg(settings_.allowableError()), setup().errors().at(2));
  setup().setTallySet(99);
  EXPECT_EQ(settings_.tallySet().toStdString(), desk().knowledge().sets[1].key);
  EXPECT_TRUE(setup().about().first().contains("looking up")) << "the caution comes first";
}

TEST_F(Ground, FilesAreMadeListedOpenedAndCopied) {
  AppModel app(settings_, {QString::fromStdString(folder_.path().string()), clocks()});
  app.createTract("Oak Run");
  ASSERT_TRUE(opened(app));
  ASSERT_NE(app.workspace(), nullptr);
  EXPECT_EQ(app.fileNames(), QStringList{"Oak-Run.gpkg"});
  ASSERT_TRUE(QTest::qWaitFor([&] { return !app.workspace()->tract().busy(); }, 10'000));
  EXPECT_EQ(app.workspace()->desk()->title(), "Oak Run");
  app.copyForFriend();
  ASSERT_TRUE(QTest::qWaitFor([&] { return !app.notice().isEmpty(); }, 10'000));
  EXPECT_EQ(app.fileNames(), (QStringList{"Oak-Run-copy.gpkg", "Oak-Run.gpkg"}));
  app.openNamed(0);
  ASSERT_TRUE(opened(app));
  EXPECT_EQ(app.problem(), "");
  EXPECT_EQ(app.workspace()->desk()->title(), "Oak Run");
  app.openFile("/nowhere/at.gpkg");
  ASSERT_TRUE(opened(app));
  EXPECT_NE(app.problem(), "");
  ASSERT_NE(app.workspace(), nullptr) << "a file that does not open leaves the one that is open";
}

TEST_F(Ground, ADemoThatDoesNotOpenIsLeftAloneAndMadeAnew) {
  write_bytes(folder_ / "demo.gpkg", "not a tract");
  AppModel app(settings_, {QString::fromStdString(folder_.path().string()), clocks()});
  app.openLast();
  ASSERT_TRUE(opened(app));
  ASSERT_NE(app.workspace(), nullptr);
  EXPECT_EQ(app.problem(), "");
  EXPECT_TRUE(app.workspace()->desk()->demo());
  EXPECT_EQ(bytes_of(folder_ / "demo.gpkg"), "not a tract");
}

}  // namespace
}  // namespace oaklight::test
