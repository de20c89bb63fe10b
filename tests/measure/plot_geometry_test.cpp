#include "core/measure/plot_geometry.hpp"

#include <gtest/gtest.h>

#include "core/measure/basal_area.hpp"
#include "tests/support/readings.hpp"

namespace oaklight {
namespace {

using test::dbh_cm;
using test::dbh_in;
using test::tape_ft;
using test::tape_m;

const Design kBaf10 = PointDesign{10.0, UnitSystem::us};
const Design kTenthAcre = FixedDesign{.area = 0.1};

FixedDesign nested() {
  return {.area = 0.1, .small_area = 0.01, .small_below = dbh_in(5.0), .system = UnitSystem::us};
}

ErrorCode code_of(const Design& design) {
  const Status status = check_design(design);
  EXPECT_FALSE(status.has_value());
  EXPECT_FALSE(status.error().what.empty());
  EXPECT_FALSE(status.error().where.empty());
  EXPECT_FALSE(status.error().fix.empty());
  return status.error().code;
}

TEST(CheckDesign, AcceptsPointsAndPlotsOfEitherSystem) {
  EXPECT_TRUE(check_design(kBaf10).has_value());
  EXPECT_TRUE(check_design(PointDesign{2.0, UnitSystem::metric}).has_value());
  EXPECT_TRUE(check_design(kTenthAcre).has_value());
  EXPECT_TRUE(check_design(nested()).has_value());
}

TEST(CheckDesign, RefusesAFactorThatNoGroundCouldCarry) {
  EXPECT_EQ(code_of(PointDesign{0.0, UnitSystem::us}), ErrorCode::out_of_range);
  EXPECT_EQ(code_of(PointDesign{-10.0, UnitSystem::us}), ErrorCode::out_of_range);
  EXPECT_EQ(code_of(PointDesign{43'560.0, UnitSystem::us}), ErrorCode::out_of_range);
  EXPECT_EQ(code_of(PointDesign{10'000.0, UnitSystem::metric}), ErrorCode::out_of_range);
  EXPECT_EQ(code_of(PointDesign{std::nan(""), UnitSystem::us}), ErrorCode::out_of_range);
}

TEST(CheckDesign, RefusesAPlotWithoutArea) {
  EXPECT_EQ(code_of(FixedDesign{.area = 0.0}), ErrorCode::out_of_range);
  EXPECT_EQ(code_of(FixedDesign{.area = std::nan("")}), ErrorCode::out_of_range);
  EXPECT_EQ(code_of(FixedDesign{.area = HUGE_VAL}), ErrorCode::out_of_range);
}

TEST(CheckDesign, RefusesHalfASmallPlotOrOneThatIsNotSmaller) {
  FixedDesign design = nested();
  design.small_below.reset();
  EXPECT_EQ(code_of(design), ErrorCode::missing_value);
  design = nested();
  design.small_area.reset();
  EXPECT_EQ(code_of(design), ErrorCode::missing_value);
  design = nested();
  design.small_area = design.area;
  EXPECT_EQ(code_of(design), ErrorCode::out_of_range);
  design.small_area = 0.0;
  EXPECT_EQ(code_of(design), ErrorCode::out_of_range);
}

// Derived: with F in m2/ha and d in cm the limit in metres is d / (2 sqrt F).
TEST(LimitingDistance, OfAMetricFactorFollowsItsOwnFormula) {
  const Design design = PointDesign{4.0, UnitSystem::metric};
  const Feet limit = limiting_distance(design, dbh_cm(20.0), TapedTo::centre);
  EXPECT_NEAR(to_metres(limit).value, 5.0, 1e-12);
  const Feet face = limiting_distance(design, dbh_cm(20.0), TapedTo::face);
  EXPECT_NEAR(to_metres(face).value, 4.9, 1e-12) << "half of 20 cm nearer";
}

TEST(LimitingDistance, OnFixedPlotsIsThePlotOfTheTreesSize) {
  EXPECT_EQ(limiting_distance(kTenthAcre, dbh_in(30.0), TapedTo::centre), plot_radius(Acres{0.1}));
  EXPECT_EQ(limiting_distance(nested(), dbh_in(4.9), TapedTo::centre), plot_radius(Acres{0.01}));
  EXPECT_EQ(limiting_distance(nested(), dbh_in(5.0), TapedTo::centre), plot_radius(Acres{0.1}));
  EXPECT_EQ(limiting_distance(kTenthAcre, dbh_in(12.0), TapedTo::face),
            plot_radius(Acres{0.1}) - Feet{0.5});
}

TEST(LimitingDistance, ComparesTheDividingSizeAcrossTapes) {
  EXPECT_EQ(limiting_distance(nested(), dbh_cm(12.7), TapedTo::centre), plot_radius(Acres{0.1}));
  EXPECT_EQ(limiting_distance(nested(), dbh_cm(12.6), TapedTo::centre), plot_radius(Acres{0.01}));
}

TEST(Slope, IsTheSameUphillAndDownhill) {
  EXPECT_EQ(along_slope(Feet{33.0}, {Percent{30.0}}), along_slope(Feet{33.0}, {Percent{-30.0}}));
  EXPECT_EQ(along_slope(Feet{33.0}, {Percent{0.0}}), Feet{33.0});
  // Geometry: 75 % is the 3-4-5 triangle.
  EXPECT_NEAR(along_slope(Feet{4.0}, {Percent{75.0}}).value, 5.0, 1e-12);
  EXPECT_NEAR(level_distance(Feet{5.0}, {Percent{75.0}}).value, 4.0, 1e-12);
}

// Geometry: a circle of radius r / sqrt(cos) on a plane tilted by the slope covers, seen from
// above, an ellipse with half axes r / sqrt(cos) and r sqrt(cos), whose area is that of the circle
// r.
TEST(Slope, LeavesThePlotItsAreaSeenFromAbove) {
  const Slope slope{Percent{60.0}};
  const Feet laid = radius_on_slope(Feet{37.24}, slope);
  EXPECT_NEAR(laid.value * (laid.value * slope.cosine()), 37.24 * 37.24, 1e-9);
}

TEST(Borderline, CallsATreeExactlyAtTheLimitIn) {
  // By hand: 12 in at factor 10 reach 2.75 x 12 = 33 ft (Point sampling, public lecture slides,
  // 2015); 33.01 ft are 0.01 too far.
  BorderlineTree tree{dbh_in(12.0), tape_ft(33.0)};
  EXPECT_TRUE(check_borderline(kBaf10, tree).in);
  tree.taped = tape_ft(33.01);
  const BorderlineCall out = check_borderline(kBaf10, tree);
  EXPECT_FALSE(out.in);
  EXPECT_NEAR(out.margin.value, -0.01, 1e-9);
}

TEST(Borderline, TakesHalfTheStemOffWhenTapedToTheFace) {
  BorderlineTree tree{dbh_in(12.0), tape_ft(32.5), TapedTo::face};
  EXPECT_TRUE(check_borderline(kBaf10, tree).in);
  tree.taped = tape_ft(32.51);
  EXPECT_FALSE(check_borderline(kBaf10, tree).in) << "a centre limit would call it in";
}

TEST(Borderline, ReadsTheTapeAlongTheSlope) {
  // 33 ft level at 30 % is 34.453 ft on the tape (derived, mensuration.tsv M033).
  BorderlineTree tree{dbh_in(12.0), tape_ft(34.45), TapedTo::centre, {Percent{30.0}}};
  const BorderlineCall in = check_borderline(kBaf10, tree);
  EXPECT_TRUE(in.in);
  EXPECT_NEAR(in.limit_taped.value, 34.453, 5e-4);
  tree.taped = tape_ft(34.46);
  EXPECT_FALSE(check_borderline(kBaf10, tree).in);
  tree.slope = {};
  EXPECT_FALSE(check_borderline(kBaf10, tree).in);
}

TEST(Borderline, CallsAMetricTreeAtItsLimitIn) {
  const Design design = PointDesign{4.0, UnitSystem::metric};
  EXPECT_TRUE(check_borderline(design, {dbh_cm(20.0), tape_m(5.0)}).in);
  EXPECT_FALSE(check_borderline(design, {dbh_cm(20.0), tape_m(5.01)}).in);
}

TEST(Borderline, IsInAtTheLimitForEveryMetricSizeThatHasAWholeOne) {
  // At 1 m2/ha the limit in cm is 50 times the DBH in cm: each reading has its limit on the tape.
  const Design design = PointDesign{1.0, UnitSystem::metric};
  for (int tenths = 1; tenths <= 1000; ++tenths) {
    const Dbh dbh = Dbh::from_tenths(tenths, UnitSystem::metric).value();
    const auto at = [&](int extra) {
      return BorderlineTree{
          dbh, TapedLength::from_hundredths(5 * tenths + extra, UnitSystem::metric).value()};
    };
    ASSERT_TRUE(check_borderline(design, at(0)).in) << tenths;
    ASSERT_FALSE(check_borderline(design, at(1)).in) << tenths;
  }
}

TEST(TreeFactor, OfFixedPlotsIsOneOverTheirArea) {
  // By hand: 1 / 0.1 acre and 1 / 0.01 acre.
  EXPECT_NEAR(tree_factor(kTenthAcre, dbh_in(3.0)).value, 10.0, 1e-12);
  EXPECT_NEAR(tree_factor(nested(), dbh_in(4.9)).value, 100.0, 1e-12);
  EXPECT_NEAR(tree_factor(nested(), dbh_in(5.0)).value, 10.0, 1e-12);
}

TEST(TreeFactor, GivesEachTreeOfAPointTheSameBasalArea) {
  // By definition of the factor, 10 ft2/ac.
  for (const double d : {1.0, 5.3, 12.0, 41.7}) {
    const Dbh dbh = dbh_in(d);
    EXPECT_NEAR(tree_factor(kBaf10, dbh).value * basal_area(dbh.inches()).value, 10.0, 1e-12);
  }
}

TEST(TreeFactor, OfAMetricPlotIsTheSameGround) {
  // 0.04046856422 ha is 0.1 ac by definition of the units.
  const Design metric = FixedDesign{.area = 0.040468564224, .system = UnitSystem::metric};
  EXPECT_NEAR(tree_factor(metric, dbh_cm(30.0)).value, 10.0, 1e-9);
}

TEST(TreesStoodFor, CountsStemsAndEdgeTrees) {
  // By hand: 1 / 0.1 acre, then times 3 stems times 2.
  Tree tree{.facts = {.dbh = dbh_in(8.0)}};
  const double once = trees_stood_for(kTenthAcre, tree).value;
  EXPECT_NEAR(once, 10.0, 1e-12);
  tree.stems = 3;
  tree.edge_count = 2;
  EXPECT_NEAR(trees_stood_for(kTenthAcre, tree).value, 60.0, 1e-12);
}

}  // namespace
}  // namespace oaklight
