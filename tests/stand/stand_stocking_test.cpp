#include "core/stand/stand_stocking.hpp"

#include <gtest/gtest.h>

#include "core/stand/stand_density.hpp"
#include "tests/support/test_cruise.hpp"

namespace oaklight {
namespace {

using test::TestCruise;

/// Stocking of all stands that a cruise has plots in.
Result<StandStocking> stocking(const TractData& data) {
  const auto cruised = cruised_stands(data).value();
  std::vector<const StandSample*> samples;
  for (const CruisedStand& c : cruised) samples.push_back(&c.sample.value());
  return stand_stocking(samples, test::test_species(), EstimateOptions{}, Inches{5.0});
}

TEST(StandStocking, IsThatOfTheMeanAcre) {
  // Stocking is a sum over trees, so the mean over plots is the stocking of the mean sums.
  const auto oracle = test::read_oracle_points();
  for (const Stand& stand : oracle.data.stands) {
    const auto d = stand_density(oracle.data, stand.id, test::test_species(), Inches{5.0}).value();
    const auto sample = stand_sample(oracle.data, stand.id).value();
    const StandSample* one = &sample;
    const auto s =
        stand_stocking({&one, 1}, test::test_species(), EstimateOptions{}, Inches{5.0}).value();
    EXPECT_NEAR(s.stocking.mean.value, upland_oak_stocking(d.live).value, 1e-9);
    EXPECT_NEAR(s.crown_competition.mean.value, crown_competition(d.live).value, 1e-9);
    EXPECT_NEAR(s.guard.mean.value, upland_oak_stocking(d.guard).value, 1e-9);
    EXPECT_GT(s.stocking.se->value, 0.0);
  }
}

TEST(StandStocking, WeighsStandsByAcres) {
  const auto oracle = test::read_oracle_points();
  double by_hand = 0.0;
  for (const Stand& stand : oracle.data.stands) {
    const auto d = stand_density(oracle.data, stand.id, test::test_species(), Inches{5.0}).value();
    by_hand += stand.acres.value / 135.5 * upland_oak_stocking(d.live).value;
  }
  EXPECT_NEAR(stocking(oracle.data)->stocking.mean.value, by_hand, 1e-9);
}

TEST(StandStocking, MeetsTheChartReadingOfAPureStand) {
  // Chart reading (university class slides on the 1967 guide): 90 ft2 on 200 trees is 80 %. One
  // size of tree holds a little more, as its mean diameter is the mean of its squares: 1.5 to 2
  // points.
  TestCruise cruise(FixedDesign{0.1, {}, {}, UnitSystem::us});
  const StandId stand = cruise.stand("Ridge", 40.0);
  for (int p = 0; p < 3; ++p) {
    const PlotId plot = cruise.plot(stand);
    for (int i = 0; i < 20; ++i) cruise.tree(plot, 802, 9.1);
  }
  const auto s = stocking(cruise.data).value();
  EXPECT_NEAR(s.ba.value, 90.3, 0.05);
  EXPECT_NEAR(s.stocking.mean.value, 81.75, 1.0);
  EXPECT_EQ(*s.stocking.se, Percent{0.0}) << "all plots alike";
  EXPECT_NEAR(s.qmd->value, 9.1, 1e-9);
  EXPECT_NEAR(s.b->ba.value, b_line(Inches{9.1}).ba.value, 1e-9);
  EXPECT_NEAR(s.a->ba.value, a_line(Inches{9.1}).ba.value, 1e-9);
  EXPECT_TRUE(s.fit.fits());
  EXPECT_TRUE(s.fit.printed);
}

TEST(StandStocking, LeavesOutStemsUnderTwoInchesAndDeadTrees) {
  // By hand: one tree on a tenth of an acre.
  TestCruise cruise(FixedDesign{0.1, {}, {}, UnitSystem::us});
  const PlotId plot = cruise.plot(cruise.stand("Ridge", 40.0));
  cruise.tree(plot, 802, 1.9);
  cruise.tree(plot, 802, 12.0).facts.status = TreeStatus::dead;
  cruise.tree(plot, 802, 2.0);
  EXPECT_DOUBLE_EQ(stocking(cruise.data)->trees.value, 10.0);
}

TEST(StandStocking, SaysWhenTheGuideWasNotMadeForTheStand) {
  // By hand: one tree of three, each with the same basal area at a point.
  const auto fit = [](double dbh, std::initializer_list<int> species) {
    TestCruise cruise;
    const PlotId plot = cruise.plot(cruise.stand("Ridge", 40.0));
    for (const int fia : species) cruise.tree(plot, fia, dbh);
    return stocking(cruise.data)->fit;
  };
  EXPECT_TRUE(fit(12.0, {802, 400, 316, 621}).fits()) << "half of the basal area is enough";
  EXPECT_FALSE(fit(12.0, {802, 316, 621}).oak_hickory);
  EXPECT_NEAR(fit(12.0, {802, 316, 621}).oak_hickory_share.value, 33.3, 0.05);
  EXPECT_FALSE(fit(2.5, {802}).diameters);
  // Derived: an oak of 12.0 in beside a maple of 12.1 in holds 144 of 290.41 parts, 49.6 %.
  TestCruise cruise(FixedDesign{0.1, {}, {}, UnitSystem::us});
  const PlotId plot = cruise.plot(cruise.stand("Ridge", 40.0));
  cruise.tree(plot, 802, 12.0);
  cruise.tree(plot, 316, 12.1);
  EXPECT_FALSE(stocking(cruise.data)->fit.oak_hickory) << "a little less than half";
  EXPECT_TRUE(fit(18.0, {802}).fits());
  EXPECT_FALSE(fit(18.0, {802}).printed);
  EXPECT_FALSE(fit(22.1, {802}).fits());
}

TEST(StandStocking, OfNoTreesHasNoLines) {
  TestCruise cruise;
  const StandId stand = cruise.stand("Field", 40.0);
  cruise.plot(stand, PlotStatus::empty);
  cruise.plot(stand, PlotStatus::empty);
  const auto s = stocking(cruise.data).value();
  EXPECT_FALSE(s.qmd);
  EXPECT_FALSE(s.a);
  EXPECT_FALSE(s.fit.fits());
  EXPECT_EQ(s.stocking.trust, Trust::not_found);
}

TEST(StandStocking, RefusesNoStand) {
  EXPECT_EQ(stand_stocking({}, test::test_species(), EstimateOptions{}, Inches{5.0}).error().code,
            ErrorCode::no_data);
}

}  // namespace
}  // namespace oaklight
