// Planning on the tablet: outlines out of files, by taps and by walking; plots laid out in them.
#include <gtest/gtest.h>

#include <QFile>
#include <QtTest/QSignalSpy>
#include <QtTest/QTest>
#include <random>

#include "core/base/number_text.hpp"
#include "core/model/plot_task.hpp"
#include "core/paper/gui_app.hpp"
#include "core/place/geodesy.hpp"
#include "mobile/viewmodels/workspace.hpp"
#include "tests/app/app_fixture.hpp"
#include "tests/app/nmea.hpp"
#include "tests/support/bad_outlines.hpp"
#include "tests/support/set_clock.hpp"

namespace oaklight::test {
namespace {

constexpr std::int64_t kMay2026 = 1'777'900'020'000;
const Position kCorner{Degrees{39.35}, Degrees{-82.21}};

/// A square of 1,320 ft to the north and east of a corner: a sixteenth of a section, 40 acres.
std::vector<Position> forty_acres(Position corner = kCorner) {
  const Position north = position_at(corner, Degrees{0.0}, Feet{1320.0});
  return {corner, position_at(corner, Degrees{90.0}, Feet{1320.0}),
          position_at(north, Degrees{90.0}, Feet{1320.0}), north};
}

std::string degrees_text(Degrees degrees) { return number_text(degrees.value, 8); }

std::string land(const std::string& name, const std::vector<Position>& ring) {
  std::string places;
  for (std::size_t i = 0; i <= ring.size(); ++i) {
    const Position& p = ring[i % ring.size()];
    places += (i == 0 ? "" : " ") + degrees_text(p.longitude) + "," + degrees_text(p.latitude);
  }
  return kml_of(name, {places});
}

class Planning : public testing::Test {
 protected:
  Planning()
      : paper_(PaperApplication::start()),
        settings_(QString::fromStdString((folder_ / "settings.ini").string())) {
    qputenv("QT_NMEA_PUSH_DELAY", "0");
    const TractDesk::Clocks clocks{clock_, [this] { return chance_(); }, "t"};
    auto read = TractDesk::create(folder_ / "new.gpkg", clocks);
    EXPECT_TRUE(read);
    workspace_ = std::make_unique<Workspace>(std::make_unique<TractDesk>(*std::move(read), clocks),
                                             settings_, locator_);
  }
  TractDesk& desk() { return workspace_->tract(); }
  const TractData& data() { return desk().data(); }
  BoundaryViewModel& outline() { return *workspace_->boundary(); }
  LayoutViewModel& layout() { return *workspace_->layout(); }
  void settle() {
    ASSERT_TRUE(QTest::qWaitFor([this] { return !desk().busy() && !outline().busy(); }, 10'000));
  }
  void add_stand(const char* name, const char* acres) {
    workspace_->tractView()->addStand(name, acres, 0);
    settle();
  }
  void read(const std::string& name, const std::string& bytes) {
    write_bytes(folder_ / name, bytes);
    const auto files = outline().files();
    const auto row = files.indexOf(QString::fromStdString(name));
    ASSERT_GE(row, 0) << "the folder's outlines are listed";
    outline().chooseFile(static_cast<int>(row));
    settle();
  }
  /// A stand with an outline of 40 acres, and a cruise.
  void make_ready() {
    add_stand("North", "40");
    outline().begin("North");
    read("north.kml", land("", forty_acres()));
    outline().keep();
    workspace_->tractView()->design()->save();
    settle();
    ASSERT_TRUE(data().stands.front().boundary);
    ASSERT_EQ(data().cruises.size(), 1U);
  }
  [[nodiscard]] QString rows(const QStringList& list) const { return list.join("\n"); }

  TempDir folder_;
  SetClock clock_{kMay2026};
  std::mt19937_64 chance_{7};
  Result<PaperApplication> paper_;
  Settings settings_;
  Cable cable_;
  Locator locator_;
  std::unique_ptr<Workspace> workspace_;
};

TEST_F(Planning, AnOutlineOutOfAFileIsToldWithItsAcresBeforeItIsKept) {
  add_stand("North", "40");
  outline().begin("North");
  read("land.kml", land("whatever the file says", forty_acres()));
  ASSERT_TRUE(outline().sound()) << outline().problem().toStdString();
  EXPECT_TRUE(rows(outline().rows()).contains("North: 40.0 ac drawn, 40.0 ac stated"))
      << rows(outline().rows()).toStdString();
  EXPECT_FALSE(data().stands.front().boundary) << "only looked at";
  QSignalSpy kept(&outline(), &BoundaryViewModel::kept);
  outline().keep();
  settle();
  EXPECT_EQ(kept.count(), 1);
  ASSERT_TRUE(data().stands.front().boundary);
  const auto acres = polygon_acres(*data().stands.front().boundary);
  ASSERT_TRUE(acres);
  EXPECT_NEAR(acres->value, 40.0, 0.01);
  EXPECT_EQ(data().stands.front().acres, Acres{40.0});
}

TEST_F(Planning, AcresThatDifferAreToldAndTakenOnlyWhenAskedFor) {
  add_stand("North", "50");
  outline().begin("North");
  read("land.kml", land("", forty_acres()));
  EXPECT_TRUE(rows(outline().rows()).contains("20 % less")) << rows(outline().rows()).toStdString();
  outline().keep();
  settle();
  EXPECT_EQ(data().stands.front().acres, Acres{50.0}) << "as stated";
  outline().begin("North");
  read("land.kml", land("", forty_acres()));
  outline().setTakeArea(true);
  outline().keep();
  settle();
  EXPECT_NEAR(data().stands.front().acres.value, 40.0, 0.01);
}

TEST_F(Planning, AFileMayNameTheStandsItself) {
  outline().begin({});
  read("land.kml", land("Cove", forty_acres()));
  outline().keep();
  settle();
  ASSERT_EQ(data().stands.size(), 1U);
  EXPECT_EQ(data().stands.front().name, "Cove");
  EXPECT_NEAR(data().stands.front().acres.value, 40.0, 0.01);
}

TEST_F(Planning, EveryBadFileIsRefusedInWordsAndChangesNothing) {
  add_stand("North", "40");
  const auto files = bad_outlines();
  ASSERT_GE(files.size(), 40U);
  for (const auto& file : files) {
    SCOPED_TRACE(file.name);
    const auto path = folder_ / (file.name + file.ending);
    write_bytes(path, file.text);
    outline().begin("North");
    outline().readFile(QString::fromStdString(path.string()));
    settle();
    EXPECT_FALSE(outline().sound());
    EXPECT_NE(outline().problem(), "");
    outline().keep();
    settle();
    EXPECT_FALSE(data().stands.front().boundary);
  }
  outline().readFile("/nowhere/land.kml");
  settle();
  EXPECT_NE(outline().problem(), "");
}

TEST_F(Planning, AnOutlineIsDrawnByTapsOnTheMap) {
  ASSERT_TRUE(paper_);
  make_ready();
  add_stand("South", "10");
  outline().begin("South");
  outline().setWay(BoundaryViewModel::Draw);
  const PictureFrame frame{{400.0, 400.0}, 11.0, UnitSystem::us, false};
  const QPointF corner(400.0, 400.0);
  const auto tap = [&](QPointF at) {
    static_cast<void>(outline().map().draw(frame));
    outline().tap(at, corner);
  };
  tap({150.0, 150.0});
  tap({250.0, 150.0});
  EXPECT_EQ(outline().corners(), "2 corners");
  EXPECT_FALSE(outline().sound()) << "two corners bound nothing";
  tap({250.0, 250.0});
  tap({390.0, 390.0});
  outline().undo();
  EXPECT_EQ(outline().corners(), "3 corners");
  ASSERT_TRUE(outline().sound()) << outline().problem().toStdString();
  outline().keep();
  settle();
  const auto south = std::ranges::find(data().stands, "South", &Stand::name);
  ASSERT_TRUE(south != data().stands.end() && south->boundary);
  EXPECT_EQ(south->boundary->outer.size(), 4U) << "closed by itself";
  // The right angle of the taps is one on the ground: a right triangle with equal legs.
  std::vector<double> legs;
  for (std::size_t i = 0; i < 3; ++i) {
    legs.push_back(
        leg_between(south->boundary->outer[i], south->boundary->outer[i + 1]).distance.value);
  }
  std::ranges::sort(legs);
  EXPECT_NEAR(legs[0] / legs[1], 1.0, 0.02);
  EXPECT_NEAR(legs[2] / legs[0], std::sqrt(2.0), 0.02);
}

TEST_F(Planning, AnOutlineIsWalkedWithAReceiverAndPoorFixesSetNoCorner) {
  add_stand("North", "40");
  locator_.use(std::make_unique<Receiver>(cable_));
  outline().begin("North");
  outline().setWay(BoundaryViewModel::Walk);
  outline().startWalk();
  std::int64_t ms = kMay2026;
  const auto ring = forty_acres();
  for (std::size_t side = 0; side < 4; ++side) {
    const Leg leg = leg_between(ring[side], ring[(side + 1) % 4]);
    for (int step = 0; step < 12; ++step) {
      Fix fix;
      fix.at = position_at(ring[side], leg.azimuth, Feet{110.0 * step});
      fix.accuracy = Metres{4.0};
      fix.ms = ms += 1'000;
      for (const bool astray : {false, true}) {
        if (astray) {
          fix.at = position_at(fix.at, Degrees{77.0}, Feet{900.0});
          fix.accuracy = Metres{80.0};
          fix.ms = ms += 1'000;
        }
        cable_.push(nmea_of(fix));
        ASSERT_TRUE(QTest::qWaitFor(
            [&] { return locator_.here() && locator_.here()->ms == fix.ms; }, 10'000));
      }
    }
  }
  outline().stopWalk();
  EXPECT_EQ(outline().corners(), "48 corners");
  ASSERT_TRUE(outline().sound()) << outline().problem().toStdString();
  outline().keep();
  settle();
  ASSERT_TRUE(data().stands.front().boundary);
  EXPECT_NEAR(polygon_acres(*data().stands.front().boundary)->value, 40.0, 0.05);
}

TEST_F(Planning, PlotsAreLaidOutInTheStandAndTheSeedBringsThemBack) {
  make_ready();
  layout().setGoal(LayoutViewModel::Plots);
  layout().setAmount("20");
  layout().setAzimuth("22.5");
  layout().setSeed("4711");
  layout().layOut();
  EXPECT_EQ(layout().problem(), "");
  const QString shown = rows(layout().rows());
  EXPECT_TRUE(shown.contains("as if the plots lay at random")) << shown.toStdString();
  EXPECT_TRUE(data().plots.empty()) << "only looked at";
  layout().keep();
  settle();
  ASSERT_GE(data().plots.size(), 15U);
  const std::vector<Plot> first = data().plots;
  for (const Plot& plot : first) {
    ASSERT_TRUE(plot.position);
    EXPECT_EQ(plot.status, PlotStatus::planned);
    EXPECT_NE(plot.note.find("lines at 22.5 degrees true, seed 4711"), std::string::npos)
        << plot.note;
  }
  EXPECT_EQ(layout().rows().size(), 0) << "kept, and no longer a draft";
  layout().layOut();
  EXPECT_NE(layout().problem(), "") << "a second layout over plots not yet visited is refused";
  desk().undo();
  settle();
  ASSERT_TRUE(data().plots.empty()) << "one step";
  layout().layOut();
  layout().keep();
  settle();
  ASSERT_EQ(data().plots.size(), first.size());
  for (std::size_t i = 0; i < first.size(); ++i)
    EXPECT_EQ(data().plots[i].position, first[i].position);
  workspace_->walk()->show(true);
  EXPECT_TRUE(workspace_->walk()->name().contains("North, plot")) << "and the walk goes there";
}

TEST_F(Planning, EveryThirdPointIsMeasuredWhereThatIsChosen) {
  make_ready();
  TurnsViewModel& turns = *workspace_->turns();
  const auto tasks = [&] {
    QString text;
    for (const Plot& plot : data().plots)
      text += taken_at(plot).task == PlotTask::count ? 'c' : 'm';
    return text;
  };
  layout().begin();
  layout().setGoal(LayoutViewModel::Plots);
  layout().setAmount("10");
  layout().layOut();
  ASSERT_TRUE(turns.asked());
  EXPECT_EQ(turns.options().value(2), "1 point in 3");
  turns.setChosen(2);
  EXPECT_EQ(layout().rows().size(), 0) << "another wish: what was laid out is not what is kept";
  layout().layOut();
  EXPECT_TRUE(rows(layout().rows()).contains("every 3rd point"));
  layout().keep();
  settle();
  ASSERT_GE(data().plots.size(), 4U);
  EXPECT_EQ(tasks().left(4), "mccm");  // by hand: the first of the stand and every third after it
  EXPECT_EQ(turns.now(), "1 point in 3 is measured");
  ASSERT_TRUE(turns.left());
  turns.begin();
  EXPECT_EQ(turns.chosen(), 2) << "as it is now";
  turns.setChosen(0);
  turns.keep();
  settle();
  EXPECT_FALSE(tasks().contains('c'));
  turns.keep();
  settle();
  EXPECT_NE(turns.problem(), "") << "nothing would change";
  desk().undo();
  settle();
  EXPECT_EQ(tasks().left(4), "mccm") << "one step";
  const auto before = tasks().size();
  workspace_->tractView()->show(true);
  workspace_->tractView()->beginPlots(0);
  turns.setChosen(1);
  workspace_->tractView()->addPlots(0, "2");
  settle();
  EXPECT_EQ(tasks().size(), before + 2);
  EXPECT_EQ(tasks().right(2).count('c'), 1) << "1 point in 2";
}

TEST_F(Planning, AnErrorAsksForMorePlotsTheSmallerItIs) {
  make_ready();
  const auto plots_for = [&](const char* error) {
    layout().setAmount(error);
    layout().layOut();
    EXPECT_EQ(layout().problem(), "") << error;
    return layout().rows().value(0).section(' ', 0, 0).toInt();
  };
  const int loose = plots_for("25");
  const int tight = plots_for("10");
  EXPECT_GT(loose, 1);
  EXPECT_GT(tight, 3 * loose) << "plots rise with the square of the error: 6.25 times";
}

TEST_F(Planning, WhatIsTypedWrongSaysWhy) {
  make_ready();
  layout().setAmount("many");
  layout().layOut();
  EXPECT_NE(layout().problem(), "");
  layout().setAmount("15");
  layout().setSeed("-3");
  layout().layOut();
  EXPECT_NE(layout().problem(), "");
  layout().keep();
  settle();
  EXPECT_TRUE(data().plots.empty());
}

/// The sheets, as they look.
class PlanOnGlass : public App {};

TEST_F(PlanOnGlass, SheetsShowWhatIsPlanned) {
  for (const Screen& screen : {kTablet, kTabletUpright, kPhone}) {
    SCOPED_TRACE(screen.name);
    start(screen);
    show(AppModel::Page::Tract);
    const auto sheet = [&](const QString& button, const QString& name) {
      // It may lie below what is seen of a page that scrolls.
      QQuickItem* item = this->find(button);
      ASSERT_NE(item, nullptr) << button.toStdString();
      ASSERT_TRUE(QMetaObject::invokeMethod(item, "clicked"));
      settle();
      EXPECT_NE(find(QStringLiteral("Close")), nullptr) << button.toStdString();
      for (const Control& control : controls_of(window())) {
        EXPECT_NE(control.name.trimmed(), "");
      }
      picture(QStringLiteral("%1_%2").arg(name, QLatin1String(screen.name)));
      tap(QStringLiteral("Close"));
    };
    sheet(QStringLiteral("Lay out plots"), QStringLiteral("layout"));
    sheet(QStringLiteral("Outlines of stands"), QStringLiteral("outlines"));
    show(AppModel::Page::Walk);
    if (find(QStringLiteral("Plan the walk")) == nullptr) {
      QQuickItem* plots = find(QStringLiteral("All plots"));
      ASSERT_NE(plots, nullptr);
      ASSERT_TRUE(QMetaObject::invokeMethod(plots, "clicked"));
      settle();
    }
    sheet(QStringLiteral("Plan the walk"), QStringLiteral("route"));
    EXPECT_TRUE(warnings().isEmpty()) << warnings().join("\n").toStdString();
    stop();
  }
}

}  // namespace
}  // namespace oaklight::test
