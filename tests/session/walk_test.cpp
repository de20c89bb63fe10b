// Which plot is next, how to get there, how far the work has come.
#include "core/session/walk.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/support/test_cruise.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {
namespace {

const Position kHome{Degrees{38.1}, Degrees{-82.5}};

/// Plots at distances from home along azimuths.
class Woods {
 public:
  Woods() { stand = cruise_.stand("A", 40.0); }
  PlotId plot(std::optional<double> feet, double azimuth = 0.0,
              PlotStatus status = PlotStatus::planned) {
    const PlotId id = cruise_.plot(stand, status);
    if (feet) {
      cruise_.data.plots.back().position = position_at(kHome, Degrees{azimuth}, Feet{*feet});
    }
    return id;
  }
  Plot& last() { return cruise_.data.plots.back(); }
  [[nodiscard]] LiveTract live() const { return LiveTract(cruise_.data); }

  StandId stand;

 private:
  TestCruise cruise_;
};

std::vector<std::string> labels(const std::vector<WalkStop>& stops) {
  std::vector<std::string> list;
  for (const WalkStop& stop : stops) list.push_back(stop.label);
  return list;
}

TEST(Walk, GoesToTheNearestPlannedPlotFirst) {
  Woods woods;
  woods.plot(600.0);                          // 1
  woods.plot(200.0, 90.0);                    // 2
  woods.plot(100.0, 0.0, PlotStatus::empty);  // 3
  woods.plot(400.0, 180.0);                   // 4
  const auto live = woods.live();
  EXPECT_EQ(labels(walk_order(live, {}, {kHome, {}})), (std::vector<std::string>{"2", "4", "1"}));
  const auto next = next_stop(live, {}, {kHome, {}});
  ASSERT_TRUE(next && next->leg);
  EXPECT_NEAR(next->leg->distance.value, 200.0, 1e-6);
  EXPECT_NEAR(next->leg->azimuth.value, 90.0, 1e-6) << "from true north";
}

TEST(Walk, WithoutAPositionStartsAtThePlotWorkedLast) {
  Woods woods;
  woods.plot(600.0);                                                 // 1
  woods.plot(200.0);                                                 // 2
  const PlotId last = woods.plot(700.0, 0.0, PlotStatus::measured);  // 3
  const auto next = next_stop(woods.live(), {}, {{}, last});
  ASSERT_TRUE(next && next->leg);
  EXPECT_EQ(next->label, "1");
  EXPECT_NEAR(next->leg->distance.value, 100.0, 1e-6);
  EXPECT_NEAR(next->leg->azimuth.value, 180.0, 1e-6);
}

TEST(Walk, WithoutAnyPlaceGoesByLabelAsPeopleCount) {
  Woods woods;
  for (const char* label : {"10", "2", "A3", "1"}) {
    woods.plot({});
    woods.last().label = label;
  }
  const auto stops = walk_order(woods.live(), {}, {});
  EXPECT_EQ(labels(stops), (std::vector<std::string>{"1", "2", "10", "A3"}));
  EXPECT_FALSE(stops.front().leg) << "no figure where none is known";
}

TEST(Walk, PutsPlotsWithoutAPlaceLast) {
  Woods woods;
  woods.plot({});      // 1
  woods.plot(5000.0);  // 2
  EXPECT_EQ(labels(walk_order(woods.live(), {}, {kHome, {}})),
            (std::vector<std::string>{"2", "1"}));
}

TEST(Walk, EndsWhenAllIsDone) {
  Woods woods;
  woods.plot(100.0, 0.0, PlotStatus::measured);
  woods.plot(100.0, 0.0, PlotStatus::skipped);
  EXPECT_EQ(next_stop(woods.live(), {}, {kHome, {}}), std::nullopt);
  EXPECT_EQ(way_to(woods.live(), nth_id<PlotId>(99), {}).error().code,
            ErrorCode::unknown_reference);
}

// Derived: 2 done of 2 done and 1 planned; the skipped one is neither.
TEST(Walk, ProgressCountsDoneAgainstDoneAndPlanned) {
  Woods woods;
  woods.plot({}, 0.0, PlotStatus::measured);
  woods.plot({}, 0.0, PlotStatus::empty);
  woods.plot({}, 0.0, PlotStatus::skipped);
  woods.plot({}, 0.0, PlotStatus::planned);
  const WalkProgress progress = walk_progress(woods.live(), woods.stand);
  EXPECT_EQ(progress.done(), 2);
  EXPECT_EQ(progress.skipped, 1);
  EXPECT_EQ(progress.all(), 4);
  ASSERT_TRUE(progress.share);
  EXPECT_NEAR(progress.share->value, 200.0 / 3.0, 1e-9);
  EXPECT_EQ(walk_progress(Woods().live(), {}).share, std::nullopt) << "no plots, no share";
}

// Derived: 38 paces in 100 ft are 76 in 200 ft; 125 paces in 100 m are 76.2 in 60.96 m (200 ft).
TEST(Paces, FollowFromAPersonsOwnCount) {
  EXPECT_EQ(paces_for(Feet{200.0}, {38.0, UnitSystem::us}).value(), 76);
  EXPECT_EQ(paces_for(Feet{200.0}, {125.0, UnitSystem::metric}).value(), 76);
  EXPECT_EQ(paces_for(Feet{0.0}, {38.0, UnitSystem::us}).value(), 0);
}

TEST(Paces, RefuseACountThatNobodyHas) {
  for (const double count : {0.0, 9.9, 100.1, std::nan("")}) {
    EXPECT_EQ(paces_for(Feet{200.0}, {count, UnitSystem::us}).error().code,
              ErrorCode::out_of_range);
  }
}

TEST(CompassPoint, IsTheNearestOfSixteen) {
  EXPECT_EQ(compass_point(Degrees{0.0}), "N");
  EXPECT_EQ(compass_point(Degrees{11.2}), "N");
  EXPECT_EQ(compass_point(Degrees{11.3}), "NNE");
  EXPECT_EQ(compass_point(Degrees{90.0}), "E");
  EXPECT_EQ(compass_point(Degrees{225.0}), "SW");
  EXPECT_EQ(compass_point(Degrees{359.0}), "N");
}

TEST(NaturalOrder, ReadsDigitsAsNumbers) {
  EXPECT_TRUE(natural_less("2", "10"));
  EXPECT_FALSE(natural_less("10", "2"));
  EXPECT_TRUE(natural_less("A9", "A10"));
  EXPECT_TRUE(natural_less("7", "7b"));
  EXPECT_FALSE(natural_less("7", "7"));
  EXPECT_FALSE(natural_less("07", "7")) << "the same number";
}

}  // namespace
}  // namespace oaklight::test
