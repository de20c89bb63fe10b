// Positions of a receiver, from the bytes on its cable to the page Walk: the arrow, the walk from
// plot to plot, the centre of a plot, and what is said where no position is known.
#include <gtest/gtest.h>

#include <QQuickItem>
#include <QtTest/QTest>
#include <random>

#include "core/place/geodesy.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/tract_work.hpp"
#include "mobile/viewmodels/workspace.hpp"
#include "tests/app/app_fixture.hpp"
#include "tests/app/nmea.hpp"
#include "tests/support/set_clock.hpp"
#include "tests/support/temp_dir.hpp"

namespace oaklight::test {
namespace {

constexpr std::int64_t kMay2026 = 1'777'900'020'000;
const Position kGate{Degrees{39.35}, Degrees{-82.21}};

QString text(const char* words) { return QString::fromUtf8(words); }

/// A tract with one stand and plots at places around the gate, and a receiver on a cable.
class OnFoot : public testing::Test {
 protected:
  OnFoot() : settings_(QString::fromStdString((folder_ / "settings.ini").string())) {
    // What the receiver says in one second is together at once; nothing is waited for.
    qputenv("QT_NMEA_PUSH_DELAY", "0");
  }
  void make(const std::vector<Leg>& plots) {
    const TractDesk::Clocks clocks{clock_, [this] { return chance_(); }, "t"};
    auto read = TractDesk::create(folder_ / "new.gpkg", clocks);
    ASSERT_TRUE(read) << to_text(read.error());
    workspace_ = std::make_unique<Workspace>(std::make_unique<TractDesk>(*std::move(read), clocks),
                                             settings_, locator_);
    workspace_->tractView()->show(true);
    workspace_->tractView()->addStand("North", "40", 0);
    workspace_->tractView()->design()->save();
    settle();
    workspace_->tractView()->addPlots(0, QString::number(plots.size()));
    settle();
    workspace_->tractView()->show(false);
    ASSERT_EQ(data().plots.size(), plots.size());
    for (std::size_t i = 0; i < plots.size(); ++i) {
      Plot placed = data().plots[i];
      placed.position = position_at(kGate, plots[i].azimuth, plots[i].distance);
      desk_of().submit([placed]() -> Result<Action> { return Action{"place a plot", {placed}}; });
      settle();
    }
    walk().show(true);
    locator_.use(std::make_unique<Receiver>(cable_));
  }
  TractDesk& desk_of() { return workspace_->tract(); }
  const TractData& data() { return desk_of().data(); }
  WalkViewModel& walk() { return *workspace_->walk(); }
  WayViewModel& way() { return *walk().way(); }
  void settle() {
    ASSERT_TRUE(QTest::qWaitFor([this] { return !desk_of().busy(); }, 10'000));
  }
  /// Says a fix on the cable, a second after the last, and waits until it is known.
  void say(Fix fix) {
    second_ += 1'000;
    fix.ms = second_;
    cable_.push(nmea_of(fix));
    ASSERT_TRUE(
        QTest::qWaitFor([&] { return locator_.here() && locator_.here()->ms == fix.ms; }, 10'000))
        << nmea_of(fix).toStdString();
  }
  static Fix standing(Position at, std::optional<double> accuracy = 4.0) {
    Fix fix;
    fix.at = at;
    if (accuracy) fix.accuracy = Metres{*accuracy};
    fix.course = Degrees{200.0};  // noise, as receivers tell it of one who stands
    fix.speed = MetresPerSecond{0.05};
    return fix;
  }
  static Fix walking(Position at, double course) {
    Fix fix = standing(at);
    fix.course = Degrees{course};
    fix.speed = MetresPerSecond{1.2};
    return fix;
  }

  TempDir folder_;
  SetClock clock_{kMay2026};
  std::mt19937_64 chance_{7};
  std::int64_t second_ = kMay2026 / 1'000 * 1'000;
  Settings settings_;
  Cable cable_;
  Locator locator_;
  std::unique_ptr<Workspace> workspace_;
};

double turn_between(double a, double b) { return std::fabs(std::remainder(a - b, 360.0)); }

TEST_F(OnFoot, TheArrowIsRightAtAllEightPointsOfTheCompass) {
  for (int point = 0; point < 8; ++point) {
    const double azimuth = 45.0 * point;
    SCOPED_TRACE(azimuth);
    workspace_.reset();
    std::filesystem::remove(folder_ / "new.gpkg");
    make({{Degrees{azimuth}, Feet{400.0}}});
    say(standing(kGate));
    ASSERT_TRUE(way().known());
    EXPECT_LT(turn_between(way().arrow(), azimuth), 0.1) << "on a dial with north up";
    EXPECT_EQ(way().north(), 0.0);
    EXPECT_TRUE(way().up().contains("Face north")) << way().up().toStdString();
    EXPECT_EQ(way().bearing(), text("%1° TRUE").arg(45 * point));
    EXPECT_EQ(way().distance(), "400 ft");
    EXPECT_EQ(way().paces(), "80") << "20 in 100 ft";
    for (int course = 0; course < 360; course += 45) {
      SCOPED_TRACE(course);
      say(walking(kGate, course));
      EXPECT_LT(turn_between(way().arrow(), azimuth - course), 0.1) << "ahead is up";
      EXPECT_LT(turn_between(way().north(), -course), 0.1);
      EXPECT_TRUE(way().up().contains("the way you walk")) << way().up().toStdString();
      EXPECT_EQ(way().bearing(), text("%1° TRUE").arg(45 * point))
          << "no matter which way one walks";
    }
  }
}

TEST_F(OnFoot, AcrossTheDateOfDeclinationChangeTheArrowStaysAndTheCompassIsWarnedOf) {
  make({{Degrees{90.0}, Feet{400.0}}});
  settings_.setMagnetic(true);
  say(standing(kGate));
  const auto before = data().plots.front().position;
  struct Moment {
    std::int64_t ms;
    Day day;
    bool expired;
  };
  // Noon UTC, which is the same day wherever oaks like ours stand.
  using namespace std::chrono;
  std::vector<Moment> moments;
  for (const Day day : {2026y / May / 4, 2029y / December / 31, 2030y / January / 1}) {
    const auto noon = sys_days(day) + 12h;
    moments.push_back(
        {duration_cast<milliseconds>(noon.time_since_epoch()).count(), day, day.year() >= 2030y});
  }
  for (const Moment& moment : moments) {
    SCOPED_TRACE(to_text(moment.day));
    clock_.ms = moment.ms;
    say(standing(kGate));
    EXPECT_NEAR(way().arrow(), 90.0, 0.1) << "the ground has not turned";
    const auto declination = declination_at(*data().plots.front().position, moment.day);
    ASSERT_TRUE(declination);
    const double magnetic = 90.0 - declination->east.value;  // by definition
    EXPECT_EQ(way().bearing(), text("%1° MAGNETIC").arg(std::lround(magnetic)));
    EXPECT_EQ(way().compass().contains("OUT OF DATE"), moment.expired)
        << way().compass().toStdString();
    EXPECT_TRUE(way().compass().contains(text("90° TRUE"))) << "both norths are told";
  }
  EXPECT_EQ(data().plots.front().position, before) << "nothing stored is rewritten";
  EXPECT_FALSE(desk_of().busy());
}

TEST_F(OnFoot, AWalkerWhoFollowsTheArrowComesFromPlotToPlot) {
  make({{Degrees{20.0}, Feet{300.0}}, {Degrees{70.0}, Feet{420.0}}, {Degrees{120.0}, Feet{350.0}}});
  std::mt19937_64 chance(3);
  std::normal_distribution<double> off(0.0, 1.0);  // metres a side
  const auto seen_at = [&](Position at) {
    return position_from_local(at, {to_feet(Metres{off(chance)}), to_feet(Metres{off(chance)})});
  };
  Position at = kGate;
  say(standing(at));
  int steps = 0;
  for (const QString& name :
       {text("North, plot 1"), text("North, plot 2"), text("North, plot 3")}) {
    ASSERT_EQ(walk().name(), name);
    double course = 0.0;  // who stands faces north, as the page says
    // Five seconds of walking at a time, turned by what the arrow shows and by nothing else.
    const Position goal = *desk_of().live().find(*walk().target())->position;
    while (leg_between(at, goal).distance > Feet{25.0}) {
      ASSERT_LT(++steps, 200) << "lost on the way to " << name.toStdString();
      course = std::fmod(course + way().arrow(), 360.0);
      at = position_at(at, Degrees{course}, to_feet(Metres{1.2 * 5.0}));
      say(walking(seen_at(at), course));
      ASSERT_EQ(walk().name(), name) << "the goal does not change underfoot";
    }
    // At the stake: half a minute of fixes, their mean kept.
    at = goal;
    walk().centre()->begin();
    for (int i = 0; i < 30; ++i) say(standing(seen_at(at)));
    EXPECT_TRUE(walk().note().contains("here")) << walk().note().toStdString();
    EXPECT_EQ(walk().centre()->fixes(), "30");
    walk().centre()->keep();
    walk().centre()->end();
    settle();
    const PlotId id = *walk().target();
    const Plot& kept = *desk_of().live().find(id);
    EXPECT_LT(to_metres(leg_between(*kept.position, at).distance).value, 1.0)
        << "5 standard errors of the mean of 30";
    ASSERT_TRUE(kept.accuracy);
    EXPECT_NEAR(kept.accuracy->value, 4.0, 0.01) << "as the receiver told";
    EXPECT_TRUE(kept.note.find("mean of 30 fixes") != std::string::npos) << kept.note;
    walk().start();
    settle();
    walk().callEmpty();
    settle();
  }
  EXPECT_EQ(walk().progress(), "3 done, 0 to do");
  EXPECT_GT(steps, 30);
}

TEST_F(OnFoot, APoorFixIsToldAndKeptAsPoor) {
  make({{Degrees{90.0}, Feet{400.0}}});
  say(standing(kGate, 45.0));
  EXPECT_TRUE(way().poor());
  EXPECT_TRUE(way().fix().contains("POOR")) << way().fix().toStdString();
  walk().centre()->begin();
  say(standing(kGate, 45.0));
  EXPECT_TRUE(walk().centre()->poor());
  walk().centre()->keep();
  settle();
  EXPECT_NEAR(data().plots.front().accuracy.value_or(Metres{}).value, 45.0, 0.1);
  EXPECT_NE(data().plots.front().note.find("POOR"), std::string::npos);
  say(standing(kGate, 4.0));
  EXPECT_FALSE(way().poor());
  EXPECT_FALSE(walk().centre()->poor()) << "one good fix is better than all poor ones";
  EXPECT_EQ(walk().centre()->fixes(), "1");
}

TEST_F(OnFoot, AnAccuracyThatIsNotToldStaysNothing) {
  make({{Degrees{90.0}, Feet{400.0}}});
  say(standing(kGate, std::nullopt));
  ASSERT_TRUE(locator_.here());
  EXPECT_FALSE(locator_.here()->accuracy);
  EXPECT_TRUE(way().poor());
  walk().centre()->begin();
  say(standing(kGate, std::nullopt));
  walk().centre()->keep();
  settle();
  EXPECT_TRUE(data().plots.front().position);
  EXPECT_FALSE(data().plots.front().accuracy) << "NULL, never 0";
}

TEST_F(OnFoot, WithoutAFixNothingIsAPosition) {
  make({{Degrees{90.0}, Feet{400.0}}});
  Plot unplaced = data().plots.front();
  unplaced.position.reset();
  desk_of().submit([unplaced]() -> Result<Action> { return Action{"lose it", {unplaced}}; });
  settle();
  EXPECT_FALSE(locator_.here());
  EXPECT_FALSE(walk().may().testFlag(WalkViewModel::Centre));
  EXPECT_EQ(way().fix(), "No position yet.");
  walk().centre()->begin();
  EXPECT_FALSE(walk().centre()->known());
  walk().centre()->keep();
  settle();
  // A receiver that sees no satellites says so in sentences without a place.
  cable_.push(sentence("GPGGA,120000.00,,,,,0,00,,,M,,M,,"));
  cable_.push(sentence("GPRMC,120000.00,V,,,,,,,040526,,,N"));
  cable_.push("$GPGGA,120001.00,3921.0,N,08212.6,W,1,08,1.0,210.0,M,-33.0,M,,*00\r\n");  // bad sum
  cable_.push(QByteArray(3'000, 'x') + "\r\n");
  QTest::qWait(100);
  EXPECT_FALSE(locator_.here());
  EXPECT_FALSE(data().plots.front().position) << "NULL, never 0, 0";
}

TEST_F(OnFoot, AnOldFixIsNoPosition) {
  Locator soon(200);
  soon.want(true);
  soon.use(std::make_unique<Receiver>(cable_));
  Fix fix = standing(kGate);
  fix.ms = kMay2026;
  cable_.push(nmea_of(fix));
  ASSERT_TRUE(QTest::qWaitFor([&] { return soon.here().has_value(); }, 10'000));
  EXPECT_TRUE(QTest::qWaitFor([&] { return !soon.here().has_value(); }, 10'000));
}

TEST_F(OnFoot, ThePlannedWalkIsFollowedInItsOrder) {
  // On a line: 100, 300 and 200 ft east of the gate, and one 150 ft west.
  make({{Degrees{90.0}, Feet{100.0}},
        {Degrees{90.0}, Feet{300.0}},
        {Degrees{90.0}, Feet{200.0}},
        {Degrees{270.0}, Feet{150.0}}});
  say(standing(kGate));
  walk().route()->plan();
  ASSERT_TRUE(QTest::qWaitFor([&] { return walk().route()->planned(); }, 10'000));
  EXPECT_EQ(walk().route()->problem(), "");
  EXPECT_EQ(walk().route()->stops().size(), 4);
  // There and back on a line is twice the way between its ends: 900 ft.
  EXPECT_TRUE(walk().route()->words().join(" ").contains("900 ft"))
      << walk().route()->words().join(" ").toStdString();
  const std::vector<PlotId> order = walk().route()->order();
  for (const PlotId id : order) {
    ASSERT_EQ(walk().target(), id);
    workspace_->plot().set(id);
    walk().callEmpty();
    settle();
  }
  EXPECT_EQ(walk().progress(), "4 done, 0 to do");
}

/// The dial on the page itself.
class ArrowOnGlass : public App {};

QQuickItem* dial_in(QQuickItem* item) {
  if (QByteArray(item->metaObject()->className()).startsWith("Compass")) return item;
  for (QQuickItem* child : item->childItems()) {
    if (QQuickItem* found = dial_in(child)) return found;
  }
  return nullptr;
}

TEST_F(ArrowOnGlass, IsTurnedAsTheWayIs) {
  qputenv("QT_NMEA_PUSH_DELAY", "0");
  start();
  Cable cable;
  show(AppModel::Page::Walk);
  workspace().walk()->choose(0);
  model().locator().use(std::make_unique<Receiver>(cable));
  const Position goal = *desk().data().plots.front().position;
  std::int64_t ms = kMay2026;
  for (int point = 0; point < 8; ++point) {
    const double azimuth = 45.0 * point;
    SCOPED_TRACE(azimuth);
    for (const std::optional<double> course : {std::optional<double>(), std::optional(135.0)}) {
      Fix fix;
      fix.at = position_at(goal, Degrees{azimuth + 180.0}, Feet{300.0});
      fix.accuracy = Metres{4.0};
      fix.course = Degrees{course.value_or(0.0)};
      fix.speed = MetresPerSecond{course ? 1.2 : 0.0};
      fix.ms = ms += 1'000;
      cable.push(nmea_of(fix));
      ASSERT_TRUE(waitFor(
          [&] { return model().locator().here() && model().locator().here()->ms == fix.ms; }));
      settle();
      QQuickItem* dial = dial_in(window().contentItem());
      ASSERT_NE(dial, nullptr);
      ASSERT_EQ(dial->childItems().size(), 2);
      EXPECT_LT(turn_between(dial->childItems().at(0)->rotation(), -course.value_or(0.0)), 0.1);
      EXPECT_LT(turn_between(dial->childItems().at(1)->rotation(), azimuth - course.value_or(0.0)),
                0.5)
          << "300 ft off, a foot is 0.2 degrees";
    }
    if (point == 3) picture(QStringLiteral("walk_tablet_position"));
  }
  model().locator().use(nullptr);
}

}  // namespace
}  // namespace oaklight::test
