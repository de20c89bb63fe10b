// Count points of double sampling, as a tablet works them.
#include "core/session/plot_figures.hpp"
#include "core/session/plot_work.hpp"
#include "core/session/tract_work.hpp"
#include "tests/session/work_fixture.hpp"

namespace oaklight {
namespace {

constexpr SpeciesCode kWhiteOak{802};
constexpr SpeciesCode kRedMaple{316};

class CountWork : public test::WorkTest {
 protected:
  StandId stand_ = stand_with_plots(3);

  [[nodiscard]] const Plot& plot(std::size_t i) const { return live_.data().plots[i]; }
  PlotId count_point(std::size_t i) {
    const PlotId id = plot(i).id;
    done(set_task(live_, id, PlotTask::count));
    return id;
  }
  void count(PlotId id, SpeciesCode species, int step = 1) {
    done(count_tree(live_, knowledge_, id, species, step));
  }
};

TEST_F(CountWork, TakesSpeciesAndCountAndNoMore) {
  const PlotId id = count_point(0);
  count(id, kWhiteOak);
  count(id, kWhiteOak);
  count(id, kRedMaple);
  const Plot* counted = live_.find(id);
  EXPECT_EQ(counted->status, PlotStatus::measured);
  EXPECT_EQ(counted->note, "[count point: 802 2, 316 1]");
  const PlotFigures figures = plot_figures(live_, id).value();
  EXPECT_EQ(figures.stems, 3);
  EXPECT_EQ(figures.ba->value, 30.0);  // by hand: the factor of 10 a stem
  EXPECT_FALSE(figures.trees);         // nobody took their sizes
  EXPECT_EQ(difference_from_file(), "");
  undo();
  EXPECT_EQ(live_.find(id)->note, "[count point: 802 2]");
}

TEST_F(CountWork, TakesACountBackToAPlotThatIsToDoAgain) {
  const PlotId id = count_point(0);
  count(id, kWhiteOak);
  count(id, kWhiteOak, -1);
  EXPECT_EQ(live_.find(id)->status, PlotStatus::planned);
  EXPECT_EQ(refused(count_tree(live_, knowledge_, id, kWhiteOak, -1)).code,
            ErrorCode::out_of_range);
}

TEST_F(CountWork, IsRefusedWhereItDoesNotBelong) {
  EXPECT_EQ(refused(count_tree(live_, knowledge_, plot(0).id, kWhiteOak, 1)).code,
            ErrorCode::contradiction);
  const PlotId id = count_point(1);
  EXPECT_EQ(refused(count_tree(live_, knowledge_, id, SpeciesCode{77777}, 1)).code,
            ErrorCode::unknown_species);
  count(id, kWhiteOak);
  EXPECT_EQ(refused(set_task(live_, id, PlotTask::measure)).code, ErrorCode::contradiction);
  EXPECT_EQ(refused(call_empty(live_, id)).code, ErrorCode::contradiction);
  EXPECT_EQ(refused(plan_again(live_, id)).code, ErrorCode::contradiction);
  const SeedlingCell cell{id, kWhiteOak, RegenHeight::under_1_ft};
  EXPECT_EQ(refused(count_regen(live_, knowledge_, ids_, cell, 1)).code, ErrorCode::contradiction);
}

TEST_F(CountWork, ANoteOfAPersonKeepsWhatWasCounted) {
  const PlotId id = count_point(0);
  count(id, kWhiteOak);
  PlotVisit visit;
  visit.note = "by the creek";
  done(start_plot(live_, knowledge_, id, visit));
  EXPECT_EQ(live_.find(id)->note, "[count point: 802 1] by the creek");
}

TEST_F(CountWork, PlotsThatAreAddedGoOnInTheirTurn) {
  EXPECT_EQ(measured_every(live_, plot(0).cruise), 1);
  count_point(1);
  count_point(2);
  EXPECT_EQ(measured_every(live_, plot(0).cruise), 3);
  done(add_plots(live_, knowledge_, ids_, stand_, plot(0).cruise, 4));
  std::string tasks;
  for (const Plot& p : live_.data().plots) {
    tasks += taken_at(p).task == PlotTask::count ? 'c' : 'm';
  }
  EXPECT_EQ(tasks, "mccmccm");  // by hand: the 1st, 4th and 7th are measured
}

TEST_F(CountWork, PointsToDoAreGivenTheirTurnsAndVisitedOnesKeepTheirs) {
  const CruiseId cruise = plot(0).cruise;
  done(add_plots(live_, knowledge_, ids_, stand_, cruise, 4));
  const auto tasks = [&] {
    std::string text;
    for (const Plot& p : live_.data().plots) {
      text += taken_at(p).task == PlotTask::count ? 'c' : 'm';
    }
    return text;
  };
  TreeDraft draft{{kWhiteOak, *Dbh::from_tenths(120, UnitSystem::us)}};
  done(tally_tree(live_, knowledge_, ids_, plot(2).id, draft));
  done(measure_in_turn(live_, cruise, 3));
  EXPECT_EQ(tasks(), "mcmmccm");  // by hand: the 1st, 4th and 7th; the 3rd was visited
  EXPECT_EQ(difference_from_file(), "");
  undo();
  EXPECT_EQ(tasks(), "mmmmmmm") << "one step";
  done(measure_in_turn(live_, cruise, 3));
  done(measure_in_turn(live_, cruise, 1));
  EXPECT_EQ(tasks(), "mmmmmmm");
  EXPECT_EQ(refused(measure_in_turn(live_, cruise, 1)).code, ErrorCode::contradiction);
  EXPECT_EQ(refused(measure_in_turn(live_, cruise, 0)).code, ErrorCode::out_of_range);
  EXPECT_EQ(refused(measure_in_turn(live_, cruise, 51)).code, ErrorCode::out_of_range);
  EXPECT_EQ(refused(measure_in_turn(live_, {}, 2)).code, ErrorCode::unknown_reference);
}

TEST_F(CountWork, PlotsMayBeAddedWithTurnsOfTheirOwn) {
  const auto added = add_plots(live_, knowledge_, ids_, stand_, plot(0).cruise, 4, 2);
  ASSERT_TRUE(added);
  std::string tasks;
  for (const Change& change : added->changes) {
    tasks += taken_at(std::get<Plot>(change)).task == PlotTask::count ? 'c' : 'm';
  }
  EXPECT_EQ(tasks, "cmcm");  // by hand: plots 4 to 7, of which the odd ones are measured
  EXPECT_EQ(refused(add_plots(live_, knowledge_, ids_, stand_, plot(0).cruise, 4, 99)).code,
            ErrorCode::out_of_range);
}

TEST_F(CountWork, FixedPlotsTakeNoTurns) {
  Cruise fixed;
  fixed.name = "fixed";
  fixed.design = FixedDesign{0.1, {}, {}, UnitSystem::us};
  const Action made = done(add_cruise(live_, knowledge_, ids_, fixed));
  const CruiseId cruise = std::get<Cruise>(made.changes.front()).id;
  EXPECT_EQ(refused(measure_in_turn(live_, cruise, 2)).code, ErrorCode::contradiction);
  EXPECT_EQ(refused(add_plots(live_, knowledge_, ids_, stand_, cruise, 2, 2)).code,
            ErrorCode::contradiction);
  done(add_plots(live_, knowledge_, ids_, stand_, cruise, 2));
}

TEST_F(CountWork, TurnsAreSaidInWords) {
  EXPECT_EQ(every_text(1), "every point");
  EXPECT_EQ(every_text(2), "every 2nd point");
  EXPECT_EQ(every_text(3), "every 3rd point");
  EXPECT_EQ(every_text(11), "every 11th point");
  EXPECT_EQ(every_text(21), "every 21st point");
  EXPECT_EQ(every_text(12), "every 12th point");
}

TEST_F(CountWork, TheLastTreeWithASizeLeavesTheCountsInTheSample) {
  const PlotId id = count_point(0);
  count(id, kRedMaple);
  TreeDraft draft{{kWhiteOak, *Dbh::from_tenths(120, UnitSystem::us)}};
  done(tally_tree(live_, knowledge_, ids_, id, draft));
  done(remove_tree(live_, knowledge_, live_.trees_of(id).front()->id));
  EXPECT_EQ(live_.find(id)->status, PlotStatus::measured);
}

}  // namespace
}  // namespace oaklight
