// The centre of a plot by a receiver: what is stored, what stays, what is never rewritten.
#include "core/session/plot_centre.hpp"

#include "core/place/geodesy.hpp"
#include "core/session/plot_work.hpp"
#include "tests/session/work_fixture.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

const Position kPlanned{Degrees{38.1}, Degrees{-82.5}};

class PlotCentre : public WorkTest {
 protected:
  PlotCentre() {
    plot_ = live_.plots_of(stand_with_plots(2)).front()->id;
    Plot planned = *live_.find(plot_);
    planned.position = kPlanned;
    planned.note = "Grid of 312 ft, lines at 45 degrees true, seed 7";
    done(Action{"place a plot", {planned}});
  }
  static MeanFix centre(Feet north, std::optional<Metres> accuracy, bool poor = false) {
    return {position_at(kPlanned, Degrees{0.0}, north), 30, 2, Metres{1.84}, accuracy, poor};
  }
  const Plot& plot() { return *live_.find(plot_); }

  PlotId plot_;
};

TEST_F(PlotCentre, IsStoredWithItsAccuracyCountAndSpread) {
  const MeanFix found = centre(Feet{20.0}, Metres{3.21});
  EXPECT_EQ(done(record_centre(live_, knowledge_, plot_, found)).label, "centre of plot 1");
  EXPECT_EQ(plot().position, found.at);
  EXPECT_EQ(plot().accuracy, Metres{3.21});
  EXPECT_EQ(plot().status, PlotStatus::planned) << "until its first tree";
  // 20 ft are 6.096 m.
  EXPECT_EQ(plot().note,
            "Grid of 312 ft, lines at 45 degrees true, seed 7. Centre by GNSS: mean of 30 fixes, "
            "spread 1.8 m, accuracy 3.2 m, 6.1 m from the planned place.");
  EXPECT_EQ(difference_from_file(), "");
}

TEST_F(PlotCentre, FoundAgainTakesThePlaceOfTheFirstFinding) {
  done(record_centre(live_, knowledge_, plot_, centre(Feet{20.0}, Metres{3.21})));
  done(record_centre(live_, knowledge_, plot_, centre(Feet{10.0}, std::nullopt, true)));
  EXPECT_FALSE(plot().accuracy) << "not told is NULL, not the accuracy of before";
  EXPECT_EQ(plot().note,
            "Grid of 312 ft, lines at 45 degrees true, seed 7. Centre by GNSS, POOR: mean of 30 "
            "fixes, spread 1.8 m, no accuracy told.")
      << "the planned place is known no more";
  undo();
  EXPECT_EQ(plot().accuracy, Metres{3.21});
}

TEST_F(PlotCentre, RewritesNoBearingOfItsTrees) {
  TreeDraft draft{TreeFacts{SpeciesCode{802}, dbh_in(14.0)}};
  draft.azimuth = Degrees{45.0};
  draft.distance = tape_ft(20.0);
  done(tally_tree(live_, knowledge_, ids_, plot_, draft));
  const Action action =
      done(record_centre(live_, knowledge_, plot_, centre(Feet{20.0}, Metres{3.2})));
  EXPECT_EQ(action.changes.size(), 1U);
  EXPECT_EQ(live_.data().trees.front().azimuth, Degrees{45.0});
  EXPECT_EQ(plot().status, PlotStatus::measured) << "a plot that was tallied stays so";
}

TEST_F(PlotCentre, OfASkippedPlotIsRefused) {
  done(skip_plot(live_, knowledge_, plot_, "Under water"));
  EXPECT_EQ(refused(record_centre(live_, knowledge_, plot_, centre(Feet{5.0}, Metres{3.0}))).code,
            ErrorCode::contradiction);
  EXPECT_EQ(plot().position, kPlanned);
}

TEST_F(PlotCentre, OffTheGlobeIsRefused) {
  MeanFix wrong = centre(Feet{5.0}, Metres{3.0});
  wrong.at.latitude = Degrees{138.1};
  EXPECT_EQ(refused(record_centre(live_, knowledge_, plot_, wrong)).code, ErrorCode::out_of_range);
}

}  // namespace
}  // namespace oaklight::test
