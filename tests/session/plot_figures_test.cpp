// The figures that live on the tally screen.
#include "core/session/plot_figures.hpp"

#include <gtest/gtest.h>

#include "core/session/decide.hpp"
#include "tests/session/work_fixture.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_cruise.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {
namespace {

// Derived: at a point each live stem is the factor, 10 ft2/ac.
TEST(PlotFigures, CountRecordsStemsAndBasalArea) {
  TestCruise cruise;
  const PlotId plot = cruise.plot(cruise.stand("A", 10.0));
  cruise.tree(plot, 802, 14.0);
  cruise.tree(plot, 316, 6.0).stems = 3;
  cruise.tree(plot, 833, 9.0).edge_count = 2;
  cruise.tree(plot, 833, 9.0).facts.status = TreeStatus::dead;
  const auto figures = plot_figures(LiveTract(cruise.data), plot);
  ASSERT_TRUE(figures);
  EXPECT_EQ(figures->records, 4);
  EXPECT_EQ(figures->stems, 6);
  EXPECT_EQ(figures->live_stems, 5);
  EXPECT_NEAR(figures->ba->value, 60.0, 1e-9);  // 1 + 3 + 2 stems of 10
}

TEST(PlotFigures, AreThoseOfTheEstimate) {
  TestCruise cruise(FixedDesign{0.1, 0.01, dbh_in(4.5), UnitSystem::us});
  const StandId stand = cruise.stand("A", 10.0);
  const PlotId plot = cruise.plot(stand);
  cruise.tree(plot, 802, 14.0);
  cruise.tree(plot, 316, 3.0);
  const LiveTract live(cruise.data);
  const auto figures = plot_figures(live, plot);
  const auto& knowledge = shipped_tract_knowledge();
  const auto all = running_figures(live, knowledge, stand, {});
  ASSERT_TRUE(all) << to_text(all.error());
  EXPECT_NEAR(figures->ba->value, all->live.ba.mean.value, 1e-9);
  EXPECT_NEAR(figures->trees->value, all->live.trees.mean.value, 1e-9);
  // Derived: one stem on a tenth acre is 10 an acre, one on a hundredth is 100.
  EXPECT_NEAR(figures->trees->value, 110.0, 1e-9);
}

TEST(PlotFigures, OfAPlotThatNobodyVisitedAreNothingAndOfAnEmptyOneZero) {
  TestCruise cruise;
  const StandId stand = cruise.stand("A", 10.0);
  const PlotId planned = cruise.plot(stand, PlotStatus::planned);
  const PlotId skipped = cruise.plot(stand, PlotStatus::skipped);
  const PlotId empty = cruise.plot(stand, PlotStatus::empty);
  const LiveTract live(cruise.data);
  EXPECT_EQ(plot_figures(live, planned)->ba, std::nullopt);
  EXPECT_EQ(plot_figures(live, skipped)->trees, std::nullopt);
  EXPECT_EQ(plot_figures(live, empty)->ba, SquareFeetPerAcre{0.0});
  EXPECT_EQ(plot_figures(live, nth_id<PlotId>(99)).error().code, ErrorCode::unknown_reference);
}

TEST(PlotFigures, LeaveOutWhatIsUnderTheSmallestTreeAndSaySo) {
  TestCruise cruise;
  cruise.data.cruises.front().min_dbh = dbh_in(4.5);
  const PlotId plot = cruise.plot(cruise.stand("A", 10.0));
  cruise.tree(plot, 802, 14.0);
  cruise.tree(plot, 802, 4.0);
  const auto figures = plot_figures(LiveTract(cruise.data), plot);
  EXPECT_EQ(figures->left_out, 1);
  EXPECT_NEAR(figures->ba->value, 10.0, 1e-9);
}

TEST(RunningFigures, AreThoseOfTheWholeTractForEachStand) {
  const OracleCruise oracle = read_oracle_points();
  const auto& knowledge = shipped_tract_knowledge();
  const LiveTract live(oracle.data);
  const auto whole = estimate_tract(oracle.data, knowledge, {});
  ASSERT_TRUE(whole);
  ASSERT_EQ(whole->stands.size(), 3U);
  for (const StandEstimate& stand : whole->stands) {
    const auto one = running_figures(live, knowledge, stand.stand, {});
    ASSERT_TRUE(one) << to_text(one.error());
    EXPECT_EQ(one->plots, stand.figures->plots);
    EXPECT_EQ(one->live.ba.mean, stand.figures->live.ba.mean);
    EXPECT_EQ(one->live.ba.se, stand.figures->live.ba.se);
  }
}

TEST(RunningFigures, BeforeTheFirstPlotSayThatThereIsNothing) {
  TestCruise cruise;
  const StandId stand = cruise.stand("A", 10.0);
  cruise.plot(stand, PlotStatus::planned);
  const auto figures =
      running_figures(LiveTract(cruise.data), shipped_tract_knowledge(), stand, {});
  ASSERT_FALSE(figures);
  EXPECT_EQ(figures.error().code, ErrorCode::no_data);
}

TEST(TallyClasses, OfTwoInchesFollowTheOneSidedRule) {
  const auto classes = tally_classes(TallyClasses::two_inches, dbh_in(4.5), dbh_in(30.0));
  ASSERT_EQ(classes.size(), 13U);  // 6, 8 ... 30: the class of 4 has its middle under 4.5 in
  EXPECT_EQ(classes.front().label, "6");
  EXPECT_EQ(classes.front().range, "5.0 to 6.9 in");
  EXPECT_EQ(classes.back().middle, dbh_in(30.0));
  for (const TallyClass& c : classes) {
    for (const Dbh dbh : {c.least, c.middle, c.most}) {
      EXPECT_EQ(std::to_string(dbh_class(dbh, ClassWidth::two_inches).inches), c.label);
    }
  }
}

TEST(TallyClasses, OfOneInchAgreeWithTheReport) {
  for (const TallyClass& c : tally_classes(TallyClasses::one_inch, {}, dbh_in(60.0))) {
    for (const Dbh dbh : {c.least, c.middle, c.most}) {
      EXPECT_EQ(std::to_string(dbh_class(dbh, ClassWidth::one_inch).inches), c.label);
    }
  }
}

// Derived: the same one-sided rule in tenths of a centimetre.
TEST(TallyClasses, OfFiveCentimetresLeaveNoGap) {
  const auto classes = tally_classes(TallyClasses::five_centimetres, {}, dbh_cm(80.0));
  ASSERT_EQ(classes.size(), 16U);
  EXPECT_EQ(classes[2].label, "15");
  EXPECT_EQ(classes[2].range, "12.5 to 17.4 cm");
  for (std::size_t i = 1; i < classes.size(); ++i) {
    EXPECT_EQ(classes[i].least.tenths(), classes[i - 1].most.tenths() + 1);
  }
}

// Derived: 1 m2/ha is 4.356 ft2/ac, 1 ha is 2.471 ac.
TEST(FigureText, IsInTheUnitsThatAPersonChose) {
  EXPECT_EQ(ba_text(SquareFeetPerAcre{80.0}, UnitSystem::us), "80.0 ft2/ac");
  EXPECT_EQ(ba_text(SquareFeetPerAcre{80.0}, UnitSystem::metric), "18.4 m2/ha");
  EXPECT_EQ(area_text(Acres{12.5}, UnitSystem::metric), "5.06 ha");
}

}  // namespace
}  // namespace oaklight::test
