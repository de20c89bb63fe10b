// Visited, empty, skipped, planned; and the seedlings counted there.
#include "core/session/plot_work.hpp"
#include "tests/session/work_fixture.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

constexpr SpeciesCode kWhiteOak{802};

class PlotStatusTest : public WorkTest {
 protected:
  PlotStatusTest() {
    stand_ = stand_with_plots(3);
    plot_ = live_.plots_of(stand_).front()->id;
    cell_ = {plot_, kWhiteOak, RegenHeight::under_1_ft};
  }
  void tally() {
    done(tally_tree(live_, knowledge_, ids_, plot_, TreeDraft{TreeFacts{kWhiteOak, dbh_in(14.0)}}));
  }
  Action count(int step) { return done(count_regen(live_, knowledge_, ids_, cell_, step)); }

  StandId stand_;
  PlotId plot_;
  SeedlingCell cell_;
};

TEST_F(PlotStatusTest, StartingRecordsThePlaceAndLeavesThePlotPlanned) {
  PlotVisit visit;
  visit.position = Position{Degrees{38.1}, Degrees{-82.5}};
  visit.accuracy = Metres{6.0};
  visit.slope = Percent{35.0};
  visit.crew = "Ann";
  visit.day = day_from_text("2026-05-04").value();
  const Action action = done(start_plot(live_, knowledge_, plot_, visit));
  EXPECT_EQ(action.label, "start plot 1");
  const Plot& plot = *live_.find(plot_);
  EXPECT_EQ(plot.status, PlotStatus::planned);
  EXPECT_EQ(plot.position, visit.position);
  EXPECT_EQ(plot.slope, Percent{35.0});
  const Cruise& cruise = live_.data().cruises.front();
  EXPECT_EQ(cruise.crew, "Ann");
  EXPECT_EQ(cruise.date, "2026-05-04");
  visit = {};
  visit.crew = "Bo";
  visit.day = day_from_text("2026-05-05").value();
  done(start_plot(live_, knowledge_, plot_, visit));
  EXPECT_EQ(live_.data().cruises.front().crew, "Ann; Bo");
  EXPECT_EQ(live_.data().cruises.front().date, "2026-05-04") << "a cruise keeps its first day";
  EXPECT_EQ(live_.find(plot_)->slope, Percent{35.0}) << "nothing given, nothing changed";
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(PlotStatusTest, StartingRefusesASlopeThatTheFormDoesNotAllow) {
  PlotVisit visit;
  visit.slope = Percent{201.0};
  EXPECT_EQ(refused(start_plot(live_, knowledge_, plot_, visit)).where, "plot/1/slope_pct");
}

TEST_F(PlotStatusTest, APlotWithTreesIsNeitherEmptySkippedNorPlanned) {
  tally();
  EXPECT_EQ(refused(call_empty(live_, plot_)).code, ErrorCode::contradiction);
  EXPECT_EQ(refused(plan_again(live_, plot_)).code, ErrorCode::contradiction);
  EXPECT_EQ(refused(skip_plot(live_, knowledge_, plot_, "bees")).code, ErrorCode::contradiction);
}

TEST_F(PlotStatusTest, SkippingNeedsAReason) {
  EXPECT_EQ(refused(skip_plot(live_, knowledge_, plot_, " ")).code, ErrorCode::missing_value);
  done(skip_plot(live_, knowledge_, plot_, "posted land"));
  EXPECT_EQ(live_.find(plot_)->status, PlotStatus::skipped);
  EXPECT_EQ(live_.find(plot_)->skip_reason, "posted land");
  undo();
  EXPECT_EQ(live_.find(plot_)->status, PlotStatus::planned);
}

TEST_F(PlotStatusTest, ANewPlotGetsTheNextLabelAndNoneInUse) {
  EXPECT_EQ(next_plot_label(live_, stand_), "4");
  Plot plot = *live_.find(plot_);
  plot.label = "";
  done(add_plot(live_, knowledge_, ids_, plot));
  EXPECT_EQ(live_.plots_of(stand_).back()->label, "4");
  EXPECT_EQ(live_.plots_of(stand_).back()->status, PlotStatus::planned);
  plot.label = "2";
  EXPECT_EQ(refused(add_plot(live_, knowledge_, ids_, plot)).code, ErrorCode::duplicate);
}

TEST_F(PlotStatusTest, ManyPlotsAreAddedAndTakenBackInOneStep) {
  const std::size_t before = live_.plots_of(stand_).size();
  const CruiseId cruise = live_.data().cruises.front().id;
  const Action added = done(add_plots(live_, knowledge_, ids_, stand_, cruise, 12));
  EXPECT_EQ(added.label.rfind("add 12 plots to ", 0), 0U) << added.label;
  ASSERT_EQ(live_.plots_of(stand_).size(), before + 12);
  for (const Plot* plot : live_.plots_of(stand_)) EXPECT_EQ(plot->status, PlotStatus::planned);
  EXPECT_EQ(live_.plots_of(stand_).back()->label, std::to_string(before + 12))
      << "the fixture labels its plots 1, 2, ...";
  undo();
  EXPECT_EQ(live_.plots_of(stand_).size(), before);
  for (const int count : {-1, 0, 501}) {
    EXPECT_EQ(refused(add_plots(live_, knowledge_, ids_, stand_, cruise, count)).code,
              ErrorCode::out_of_range);
  }
  EXPECT_EQ(refused(add_plots(live_, knowledge_, ids_, {}, cruise, 1)).code,
            ErrorCode::unknown_reference);
  EXPECT_EQ(refused(add_plots(live_, knowledge_, ids_, stand_, {}, 1)).code,
            ErrorCode::unknown_reference);
}

TEST_F(PlotStatusTest, SeedlingsAreCountedUpAndDownAndNothingIsNotZero) {
  tally();
  EXPECT_EQ(regen_count(live_, cell_), std::nullopt);
  EXPECT_EQ(count(1).label, "seedlings white oak under 1 ft: 1");
  count(1);
  EXPECT_EQ(regen_count(live_, cell_), 2);
  count(-1);
  count(-1);
  EXPECT_EQ(regen_count(live_, cell_), 0) << "looked, and none";
  EXPECT_EQ(refused(count_regen(live_, knowledge_, ids_, cell_, -1)).code, ErrorCode::out_of_range);
  done(set_regen(live_, knowledge_, ids_, cell_, std::nullopt));
  EXPECT_EQ(regen_count(live_, cell_), std::nullopt);
  done(set_regen(live_, knowledge_, ids_, cell_, 40));
  EXPECT_EQ(regen_count(live_, cell_), 40);
  const SeedlingCell taller{plot_, kWhiteOak, RegenHeight::over_4_5_ft};
  EXPECT_EQ(regen_count(live_, taller), std::nullopt) << "each height is counted by itself";
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(PlotStatusTest, SeedlingsNeedAVisitedPlotAndGroundOfKnownSize) {
  EXPECT_EQ(refused(count_regen(live_, knowledge_, ids_, cell_, 1)).code, ErrorCode::contradiction);
  done(call_empty(live_, plot_));
  count(1);
  EXPECT_EQ(refused(set_regen(live_, knowledge_, ids_, cell_, 10'000)).code,
            ErrorCode::out_of_range)
      << "the form allows 9999";
  Cruise cruise = live_.data().cruises.front();
  cruise.regen_area.reset();
  done(Action{"no seedling plot", {cruise}});
  EXPECT_EQ(refused(count_regen(live_, knowledge_, ids_, cell_, 1)).code, ErrorCode::missing_value);
}

TEST_F(PlotStatusTest, APlotWithSeedlingsIsNotPlannedAgain) {
  done(call_empty(live_, plot_));
  count(1);
  EXPECT_EQ(refused(plan_again(live_, plot_)).code, ErrorCode::contradiction);
  EXPECT_TRUE(call_empty(live_, plot_)) << "it has no tree";
}

}  // namespace
}  // namespace oaklight::test
