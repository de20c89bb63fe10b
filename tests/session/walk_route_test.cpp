#include "core/session/walk_route.hpp"

#include <chrono>
#include <iostream>

#include "core/place/seeded_draw.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/tract_work.hpp"
#include "core/session/walk_sheet.hpp"
#include "tests/session/work_fixture.hpp"

namespace oaklight {
namespace {

const Position kGate{Degrees{38.1}, Degrees{-82.5}};
Position at(double east, double north) {
  return position_from_local(kGate, {Feet{east}, Feet{north}});
}

class WalkRouteTest : public test::WorkTest {
 protected:
  WalkRouteTest() {
    stand_ = stand_with_plots(0);
    Tract tract = live_.data().tract;
    tract.landing = kGate;
    done(Result<Action>(Action{"gate", {tract}}));
  }
  void plot(std::optional<Position> position) {
    Plot made;
    made.stand = stand_;
    made.cruise = live_.data().cruises.front().id;
    made.position = position;
    done(add_plot(live_, knowledge_, ids_, made));
  }
  void line(LineKind kind, std::vector<Position> points) {
    MapLine made;
    made.id = ids_.next_id<MapLineTag>();
    made.kind = kind;
    made.points = std::move(points);
    done(Result<Action>(Action{"line", {made}}));
  }
  StandId stand_;
};

TEST_F(WalkRouteTest, GoesRoundAndComesBack) {
  for (const auto& [x, y] : {std::pair(0.0, 300.0), {300.0, 300.0}, {300.0, 0.0}}) plot(at(x, y));
  const WalkRoute route = plan_walk(live_, {}).value();
  ASSERT_EQ(route.stops.size(), 3U);
  EXPECT_TRUE(route.exact);
  EXPECT_NEAR(route.length.value, 1200.0, 0.01);
  EXPECT_EQ(route.stops[1].label, "2");
  ASSERT_EQ(route.stops[0].legs.size(), 1U);
  EXPECT_NEAR(route.stops[0].walk.value, 300.0, 0.01);
  EXPECT_DOUBLE_EQ(route.gap(), 0.0);
}

TEST_F(WalkRouteTest, KeepsToItsSideOfTheStreamAndCrossesItOnTheRoad) {
  plot(at(200.0, 0.0));
  line(LineKind::stream, {at(100.0, -1000.0), at(100.0, 1000.0)});
  const WalkRoute round = plan_walk(live_, {}).value();
  EXPECT_GT(round.length.value, 4000.0);
  EXPECT_EQ(round.stops[0].legs.size(), round.stops[0].turns.size() + 1);
  EXPECT_GT(round.stops[0].legs.size(), 1U);
  line(LineKind::road, {at(0.0, 50.0), at(300.0, 50.0)});
  const WalkRoute over = plan_walk(live_, {}).value();
  EXPECT_LT(over.length.value, 440.0);
  EXPECT_GT(over.length.value, 400.0);
  RouteRequest straight;
  straight.cross = true;
  EXPECT_NEAR(plan_walk(live_, straight)->length.value, 400.0, 0.01);
}

TEST_F(WalkRouteTest, NeverCrossesANeighbourLineNotEvenOnARoad) {
  plot(at(200.0, 0.0));
  plot(at(50.0, 0.0));
  line(LineKind::neighbour_line,
       {at(150, -50), at(250, -50), at(250, 50), at(150, 50), at(150, -50)});
  line(LineKind::road, {at(0.0, 0.0), at(300.0, 0.0)});
  const WalkRoute route = plan_walk(live_, {}).value();
  ASSERT_EQ(route.stops.size(), 1U);
  ASSERT_EQ(route.left_out.size(), 1U);
  EXPECT_NE(route.left_out[0].find("Plot 1"), std::string::npos);
}

TEST_F(WalkRouteTest, TellsWhichPlotsHaveNoPosition) {
  plot(at(100.0, 0.0));
  plot(std::nullopt);
  const WalkRoute route = plan_walk(live_, {}).value();
  EXPECT_EQ(route.stops.size(), 1U);
  ASSERT_EQ(route.left_out.size(), 1U);
  EXPECT_NE(route.left_out[0].find("has no position"), std::string::npos);
}

TEST_F(WalkRouteTest, RefusesWhatCannotBeWalked) {
  EXPECT_EQ(plan_walk(live_, {}).error().code, ErrorCode::no_data);
  plot(at(100.0, 0.0));
  RouteRequest request;
  request.stand = "Nowhere";
  EXPECT_EQ(plan_walk(live_, request).error().code, ErrorCode::unknown_reference);
  Tract tract = live_.data().tract;
  tract.landing.reset();
  done(Result<Action>(Action{"no gate", {tract}}));
  EXPECT_EQ(plan_walk(live_, {}).error().code, ErrorCode::missing_value);
}

TEST_F(WalkRouteTest, OfTwoHundredPlotsWithAStreamSaysItsGap) {
  SeededDraw draw(12);
  std::vector<Position> stream;
  for (int i = 0; i <= 120; ++i) stream.push_back(at(40.0 * i, 2000.0 + 30.0 * (i % 7)));
  line(LineKind::stream, stream);
  for (int i = 0; i < 200; ++i) plot(at(4800.0 * draw.uniform(), 4000.0 * draw.uniform()));
  const auto begun = std::chrono::steady_clock::now();
  const WalkRoute route = plan_walk(live_, {}).value();
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - begun;
  std::cout << "200 plots, stream of 120 walls: " << took.count() << " s, gap "
            << 100.0 * route.gap() << " %\n";
  EXPECT_EQ(route.stops.size(), 200U);
  EXPECT_LE(route.bound.value, route.length.value);
  EXPECT_LT(route.gap(), 0.10);
}

TEST_F(WalkRouteTest, KeepsToTheCruiseAndStandAskedFor) {
  plot(at(100.0, 0.0));
  Cruise other;
  other.name = "second";
  done(add_cruise(live_, knowledge_, ids_, other));
  Plot apart;
  apart.stand = stand_;
  apart.cruise = live_.data().cruises.back().id;
  apart.position = at(0.0, 100.0);
  done(add_plot(live_, knowledge_, ids_, apart));
  RouteRequest request;
  request.cruise = "SECOND";
  request.stand = "north slope";
  const WalkRoute route = plan_walk(live_, request).value();
  ASSERT_EQ(route.stops.size(), 1U);
  EXPECT_EQ(route.stops[0].label, "2");
  request.cruise = "third";
  const auto refused = plan_walk(live_, request);
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.error().where, "cruise");
  request.cruise = "first";
  request.start = at(0.0, 50.0);
  EXPECT_EQ(plan_walk(live_, request)->stops[0].label, "1");
}

TEST_F(WalkRouteTest, OfMoreThanFiveHundredPlotsIsPlannedInParts) {
  Action many{"many", {}};
  for (int i = 0; i < 501; ++i) {
    Plot made;
    made.id = ids_.next_id<PlotTag>();
    made.stand = stand_;
    made.cruise = live_.data().cruises.front().id;
    made.label = std::to_string(i + 1);
    made.position = at(10.0 * i, 5.0);
    many.changes.emplace_back(made);
  }
  live_.follow(many.changes);
  EXPECT_EQ(plan_walk(live_, {}).error().code, ErrorCode::out_of_range);
}

TEST_F(WalkRouteTest, IsToldOnASheetInAnyUnitAndByAnyPace) {
  plot(at(0.0, 300.0));
  const WalkRoute route = plan_walk(live_, {}).value();
  SheetRequest request{WalkUnit::metres, PaceCount{120.0, UnitSystem::metric},
                       *day_from_text("2026-05-04")};
  const auto sheet = sheet_of(live_.data().tract, route, request);
  ASSERT_TRUE(sheet) << to_text(sheet.error());
  // Derived: 300 ft are 91.44 m, at 120 paces in 100 m 110.
  EXPECT_EQ(sheet->stops[0].legs[0].distance, "91 m");
  EXPECT_EQ(sheet->stops[0].legs[0].paces, "110");
  EXPECT_FALSE(sheet->stops[0].legs[0].magnetic_bearing.empty());
  EXPECT_TRUE(sheet->head.back().starts_with("Paces: 120 in 100 m."));
  EXPECT_FALSE(sheet->cautions.empty());
  request.pace = PaceCount{5.0, UnitSystem::us};
  EXPECT_EQ(sheet_of(live_.data().tract, route, request).error().code, ErrorCode::out_of_range);
  // The magnetic model ends; a sheet for a day beyond it says so.
  request = {WalkUnit::chains, PaceCount{40.0, UnitSystem::us}, *day_from_text("2060-05-04")};
  const auto later = sheet_of(live_.data().tract, route, request);
  ASSERT_TRUE(later) << to_text(later.error());
  EXPECT_EQ(later->stops[0].legs[0].distance, "4.55 ch");  // derived: 66 ft a chain
  EXPECT_NE(later->head[2].find("OUT OF DATE"), std::string::npos) << later->head[2];
  EXPECT_TRUE(later->head.back().starts_with("Paces: 40 in 100 ft."));
}

}  // namespace
}  // namespace oaklight
