// What the stand screen shows: the figures of the estimate, no more and no less.
#include "core/session/stand_view.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/session/plot_figures.hpp"
#include "core/stand/sources.hpp"
#include "tests/session/work_fixture.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_cruise.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {
namespace {

Result<StandView> view_of(const TractData& data, std::optional<StandId> stand = std::nullopt) {
  return stand_view(data, shipped_tract_knowledge(), stand, {});
}

const AreaFigure& figure(const std::vector<AreaFigure>& figures, std::string_view key) {
  const auto found = std::ranges::find(figures, key, &AreaFigure::key);
  EXPECT_NE(found, figures.end()) << key;
  return found == figures.end() ? figures.front() : *found;
}

/// A point cruise of factor 10: plots of 3, 1 and 0 stems, half of them oaks.
struct ThreePlots {
  TestCruise cruise;
  StandId stand = cruise.stand("A", 10.0);

  ThreePlots() {
    const PlotId first = cruise.plot(stand);
    cruise.tree(first, 802, 14.0);
    cruise.tree(first, 802, 12.0);
    cruise.tree(first, 316, 10.0);
    cruise.tree(cruise.plot(stand), 316, 8.0);
    cruise.plot(stand, PlotStatus::empty);
  }
};

TEST(StandView, EachFigureHasANoteOfItsSource) {
  ThreePlots woods;
  const auto view = view_of(woods.cruise.data, woods.stand);
  ASSERT_TRUE(view) << to_text(view.error());
  const auto figures = area_figures(*view, {});
  EXPECT_EQ(figures.size(), 8U);  // nobody counted seedlings
  for (const AreaFigure& f : figures) EXPECT_NE(source_note(f.key), nullptr) << f.key;
}

// Derived: 30, 10 and 0 ft2/ac have the mean 40/3 and the variance (30^2 + 10^2 - 3 (40/3)^2) / 2;
// t for 2 degrees of freedom at 95 % is 4.303 (NIST/SEMATECH e-Handbook 1.3.6.7.2).
TEST(StandView, CountsAnEmptyPlotInTheMeanAndInItsError) {
  ThreePlots woods;
  const auto view = view_of(woods.cruise.data, woods.stand);
  ASSERT_TRUE(view);
  EXPECT_EQ(view->area.plots, 3);
  EXPECT_EQ(view->area.empty_plots, 1);
  const AreaFigure ba = figure(area_figures(*view, {}), "basal_area");
  const double se = std::sqrt((1000.0 - 3.0 * 1600.0 / 9.0) / 2.0 / 3.0);
  EXPECT_NEAR(*ba.mean, 40.0 / 3.0, 1e-9);
  EXPECT_NEAR(*ba.se, se, 1e-9);
  EXPECT_NEAR(*ba.df, 2.0, 1e-9);
  EXPECT_NEAR(*ba.multiplier, 4.303, 5e-4);
  EXPECT_NEAR(*ba.half_width, *ba.multiplier * se, 1e-9);
  EXPECT_EQ(ba.found, 2);
  EXPECT_EQ(ba.trust, Trust::few_found);
}

// Derived: of the 40 ft2/ac of three plots 20 are oak. Residuals about the ratio 1/2 are 20 - 15,
// 0 - 5 and 0; their variance is 50 / 2, so se = sqrt(25 / 3) / (40 / 3).
TEST(StandView, GivesARatioItsIntervalByPlotsLessStands) {
  ThreePlots woods;
  const auto view = view_of(woods.cruise.data, woods.stand);
  ASSERT_TRUE(view);
  const auto figures = area_figures(*view, {});
  const AreaFigure oak = figure(figures, "oak_share");
  EXPECT_TRUE(oak.ratio);
  EXPECT_NEAR(*oak.mean, 50.0, 1e-9);
  EXPECT_NEAR(*oak.se, 100.0 * std::sqrt(25.0 / 3.0) / (40.0 / 3.0), 1e-9);
  EXPECT_NEAR(*oak.half_width, 4.303 * *oak.se, 5e-4 * *oak.se);
  EXPECT_EQ(oak.half_pct, std::nullopt);  // a percent of a percent would only confuse
  const AreaFigure qmd = figure(figures, "mean_diameter");
  EXPECT_NEAR(*qmd.mean, view->area.live.qmd->qmd.value, 1e-12);
  EXPECT_NEAR(*qmd.half_width, *qmd.multiplier * view->area.live.qmd->se->value, 1e-9);
}

TEST(StandView, HasNoErrorFromOnePlot) {
  TestCruise cruise;
  const StandId stand = cruise.stand("A", 10.0);
  cruise.tree(cruise.plot(stand), 802, 14.0);
  const auto view = view_of(cruise.data, stand);
  ASSERT_TRUE(view);
  const auto figures = area_figures(*view, {});
  for (const char* key : {"basal_area", "trees", "mean_diameter", "stocking", "oak_share"}) {
    const AreaFigure f = figure(figures, key);
    EXPECT_TRUE(f.mean) << key;
    EXPECT_EQ(f.half_width, std::nullopt) << key;
    EXPECT_EQ(f.trust, Trust::one_plot) << key;
  }
  ASSERT_TRUE(view->advice);
  EXPECT_EQ(view->advice->treatment, Treatment::measure_first);
  EXPECT_FALSE(view->area.need);
}

// Derived: 1 - 0.05^(1/2) = 77.6 % of such plots may still hold an oak that two plots missed.
TEST(StandView, SaysNotFoundWhereThereIsNoOakAndNotThatThereAreNone) {
  TestCruise cruise;
  const StandId stand = cruise.stand("A", 10.0);
  cruise.tree(cruise.plot(stand), 316, 10.0);
  cruise.tree(cruise.plot(stand), 316, 12.0);
  const auto view = view_of(cruise.data, stand);
  ASSERT_TRUE(view);
  const AreaFigure oak = figure(area_figures(*view, {}), "oak_share");
  EXPECT_EQ(oak.trust, Trust::not_found);
  EXPECT_EQ(oak.half_width, std::nullopt);
  ASSERT_TRUE(oak.on_at_most);
  EXPECT_NEAR(oak.on_at_most->value, 77.639, 5e-4);
}

TEST(StandView, OfOnlyEmptyPlotsFindsNothingAndClaimsNoError) {
  TestCruise cruise;
  const StandId stand = cruise.stand("A", 10.0);
  for (int i = 0; i < 3; ++i) cruise.plot(stand, PlotStatus::empty);
  const auto view = view_of(cruise.data, stand);
  ASSERT_TRUE(view) << to_text(view.error());
  EXPECT_EQ(view->area.empty_plots, 3);
  EXPECT_FALSE(view->composition);
  for (const AreaFigure& f : area_figures(*view, {})) {
    if (f.mean) {
      EXPECT_EQ(f.trust, Trust::not_found) << f.key;
    }
    EXPECT_EQ(f.half_width, std::nullopt) << f.key;
  }
}

TEST(StandView, TellsTheTreesWhoseLogsNobodyCounted) {
  TestCruise cruise;
  const StandId stand = cruise.stand("A", 10.0);
  const PlotId plot = cruise.plot(stand);
  cruise.tree(plot, 802, 18.0);
  const auto unknown = view_of(cruise.data, stand);
  ASSERT_TRUE(unknown);
  const AreaFigure none = figure(area_figures(*unknown, {}), "board_feet");
  EXPECT_EQ(none.mean, std::nullopt);  // not known is not 0
  EXPECT_EQ(none.without, 1);
  cruise.tree(plot, 802, 18.0).facts.half_logs = 4;
  const auto known = view_of(cruise.data, stand);
  ASSERT_TRUE(known);
  const AreaFigure some = figure(area_figures(*known, {}), "board_feet");
  EXPECT_NEAR(*some.mean, known->area.live.board_feet->mean.value, 1e-12);
  EXPECT_EQ(some.without, 1);
}

TEST(StandView, OverAllStandsIsTheEstimateOfAllWithoutAdvice) {
  ThreePlots woods;
  const StandId other = woods.cruise.stand("B", 30.0);
  woods.cruise.tree(woods.cruise.plot(other), 802, 14.0);
  woods.cruise.plot(other, PlotStatus::empty);
  const auto view = view_of(woods.cruise.data);
  ASSERT_TRUE(view) << to_text(view.error());
  const auto estimate = estimate_tract(woods.cruise.data, shipped_tract_knowledge(), {});
  ASSERT_TRUE(estimate && estimate->all);
  EXPECT_EQ(view->stands, 2);
  EXPECT_FALSE(view->advice);
  EXPECT_NEAR(view->area.live.ba.mean.value, estimate->all->live.ba.mean.value, 1e-12);
  // Derived: plots less stands, 5 - 2.
  EXPECT_NEAR(*figure(area_figures(*view, {}), "oak_share").df, 3.0, 1e-12);
}

TEST(StandView, OfAStandThatNobodyVisitedSaysWhatToDo) {
  TestCruise cruise;
  const StandId stand = cruise.stand("A", 10.0);
  const auto bare = view_of(cruise.data, stand);
  ASSERT_FALSE(bare);
  EXPECT_EQ(bare.error().code, ErrorCode::no_data);
  cruise.plot(stand, PlotStatus::planned);
  const auto planned = view_of(cruise.data, stand);
  ASSERT_FALSE(planned);
  EXPECT_EQ(planned.error().code, ErrorCode::no_data);
  EXPECT_FALSE(planned.error().fix.empty());
}

TEST(StandView, ShowsUnitsAsTheTallyScreenDoes) {
  for (const UnitSystem system : {UnitSystem::us, UnitSystem::metric}) {
    const ShownUnit ba = shown_unit(FigureUnit::basal_area, system);
    EXPECT_NE(ba_text(SquareFeetPerAcre{80.0}, system).find(ba.words), std::string::npos);
  }
  // Derived: 1 m2/ha is 4.356 ft2/ac exactly; 1 ha is 2.4710538 ac (international acre).
  EXPECT_NEAR(shown_unit(FigureUnit::basal_area, UnitSystem::metric).factor, 1.0 / 4.356, 1e-9);
  EXPECT_NEAR(shown_unit(FigureUnit::trees, UnitSystem::metric).factor, 2.4710538, 5e-8);
  EXPECT_NEAR(shown_unit(FigureUnit::diameter, UnitSystem::metric).factor, 2.54, 1e-12);
  EXPECT_NEAR(shown_unit(FigureUnit::percent, UnitSystem::metric).factor, 1.0, 0.0);
}

}  // namespace
}  // namespace oaklight::test
