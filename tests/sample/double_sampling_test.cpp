// Count points and measure points: the invented cruise of tests/golden/oracle, of which some points
// were measured, against the figures that R printed for it; and what is refused.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/measure/basal_area.hpp"
#include "core/model/plot_task.hpp"
#include "core/sample/cruise_estimate.hpp"
#include "tests/support/oracle_figures.hpp"

namespace oaklight {
namespace {

/// The invented points with those that were not measured as count points.
class DoubleSampling : public testing::Test {
 protected:
  test::OracleCruise oracle = test::read_oracle_points();

  DoubleSampling() {
    for (std::size_t p = 0; p < oracle.data.plots.size(); ++p) {
      if (!oracle.measured[p]) make_count_point(oracle.data.plots[p]);
    }
  }

  static void make_count_point(Plot& plot) {
    PlotTaken taken = taken_at(plot);
    taken.task = PlotTask::count;
    plot.note = note_of(taken);
  }

  /// Takes the sizes from the trees of count points: what is left is how many of which species.
  void leave_counts_only() {
    for (Plot& plot : oracle.data.plots) {
      PlotTaken taken = taken_at(plot);
      if (taken.task != PlotTask::count) continue;
      for (const Tree& tree : oracle.data.trees) {
        if (tree.plot != plot.id) continue;
        auto one = std::ranges::find(taken.counted, tree.facts.species, &SpeciesCount::species);
        if (one == taken.counted.end()) {
          one = taken.counted.insert(one, {tree.facts.species, 0});
        }
        one->stems += tree.stems * tree.edge_count;
      }
      for (std::size_t t = oracle.data.trees.size(); t-- > 0;) {
        if (oracle.data.trees[t].plot != plot.id) continue;
        oracle.data.trees.erase(oracle.data.trees.begin() + static_cast<std::ptrdiff_t>(t));
        oracle.cubic_feet.erase(oracle.cubic_feet.begin() + static_cast<std::ptrdiff_t>(t));
      }
      plot.note = note_of(taken);
    }
  }

  /// Cubic feet an acre, in the place of cords, over the stands from first to last.
  [[nodiscard]] Estimate<double> volume(std::size_t first, std::size_t last) {
    const auto samples = test::samples_of(oracle.data);
    std::vector<GroupTally> tallies(samples.size());
    std::vector<StandGroup> parts;
    for (std::size_t h = first; h <= last; ++h) {
      for (const TalliedTree& t : samples[h].trees) {
        const auto at = static_cast<std::size_t>(t.tree - oracle.data.trees.data());
        const auto& feet = oracle.cubic_feet[at];
        tallies[h].add(t, {.board_feet = {},
                           .cords = feet ? std::optional(Cords{*feet}) : std::nullopt,
                           .stem = {}});
      }
      for (const CountedStems& c : samples[h].counted) tallies[h].add(c);
      parts.push_back({&samples[h], &tallies[h]});
    }
    EstimateOptions options;
    options.df = DegreesOfFreedom::plots_less_strata;
    return estimate_over(
               parts, options, [](const PlotSums& p) { return p.cords; }, AtCountPoints::counted,
               true, true)
        .value();
  }
};

TEST_F(DoubleSampling, VolumeIsBasalAreaOnAllPointsTimesTheRatioOfThoseMeasured) {
  // tests/golden/oracle, expected.json: count_measure_stand_A, volume and se_product_points.
  const auto a = volume(0, 0);
  EXPECT_NEAR(a.mean, 2770.05290356894, 1e-8);
  EXPECT_NEAR(*a.se, 376.498224934672, 1e-8);
  EXPECT_EQ(a.plots, 12);
}

TEST_F(DoubleSampling, OverStandsTheRatioIsCombined) {
  // tests/golden/oracle, expected.json: count_measure.ba, ba_se_pct,
  // vbar.combined_ratio_stratified.
  const double ba = 80.562730627306;
  const double ba_pct = 11.05085126012;
  const double ratio = 25.148902463476;
  const double ratio_se = 0.513118991517;
  const auto all = volume(0, 2);
  EXPECT_NEAR(all.mean, ba * ratio, 1e-7);
  EXPECT_NEAR(all.se_pct->value, std::hypot(ba_pct, 100.0 * ratio_se / ratio), 1e-8);
  // Derived: Satterthwaite over n - L = 32 of the basal area and m - L = 9 of the ratio.
  const double a = std::pow(ba_pct, 2);
  const double b = std::pow(100.0 * ratio_se / ratio, 2);
  EXPECT_NEAR(*all.df, (a + b) * (a + b) / (a * a / 32.0 + b * b / 9.0), 1e-6);
}

TEST_F(DoubleSampling, WhereSizesAreKnownEverywhereOnlyWoodComesByRatio) {
  const auto plain = test::read_oracle_points();
  const auto want = cruise_estimate(plain.data, test::test_species(), {}).value();
  const auto got = cruise_estimate(oracle.data, test::test_species(), {}).value();
  EXPECT_EQ(got.all->live.trees.mean, want.all->live.trees.mean);
  EXPECT_EQ(got.all->live.trees.se, want.all->live.trees.se);
  EXPECT_EQ(got.all->live.qmd->qmd, want.all->live.qmd->qmd);
  EXPECT_FALSE(got.all->live.sized.by_ratio);
  EXPECT_EQ(got.all->measure_plots, 12);  // tests/golden/oracle: vbar.measured_points
}

TEST_F(DoubleSampling, SpeciesAndCountAreEnoughForBasalArea) {
  const auto plain = test::read_oracle_points();
  const auto want = cruise_estimate(plain.data, test::test_species(), {}).value();
  const auto volume_with_sizes = volume(0, 2);
  leave_counts_only();
  const auto got = cruise_estimate(oracle.data, test::test_species(), {}).value();
  EXPECT_NEAR(got.all->live.ba.mean.value, want.all->live.ba.mean.value, 1e-10);
  EXPECT_NEAR(got.all->live.ba.se->value, want.all->live.ba.se->value, 1e-10);
  EXPECT_EQ(got.all->live.stems, want.all->live.stems);
  EXPECT_EQ(got.all->empty_plots, want.all->empty_plots);
  ASSERT_EQ(got.all->by_species.size(), want.all->by_species.size());
  for (std::size_t i = 0; i < got.all->by_species.size(); ++i) {
    const SpeciesFigures& a = got.all->by_species[i];
    const SpeciesFigures& b = want.all->by_species[i];
    EXPECT_NEAR(a.figures.ba.mean.value, b.figures.ba.mean.value, 1e-10) << a.species.fia;
    EXPECT_EQ(a.on_plots->found, b.on_plots->found) << a.species.fia;
  }
  const auto again = volume(0, 2);
  EXPECT_NEAR(again.mean, volume_with_sizes.mean, 1e-7);
  EXPECT_NEAR(*again.se, *volume_with_sizes.se, 1e-7);
}

TEST_F(DoubleSampling, TreesWithoutSizesComeByTheirRatioToBasalArea) {
  leave_counts_only();
  const auto samples = test::samples_of(oracle.data);
  // Derived: stand A, from the definition, by the trees that are left.
  double trees = 0.0;
  double ba = 0.0;
  for (const TalliedTree& t : samples[0].trees) {
    trees += t.trees.value;
    ba += t.ba.value;
  }
  const auto got = cruise_estimate(oracle.data, test::test_species(), {}).value();
  const GroupFigures& live = got.stands[0].figures->live;
  EXPECT_TRUE(live.sized.by_ratio);
  EXPECT_FALSE(live.sized.pooled);
  EXPECT_NEAR(live.trees.mean.value, live.ba.mean.value * trees / ba, 1e-9);
  EXPECT_NEAR(live.qmd->qmd.value, std::sqrt(ba / trees / kBasalAreaFactor), 1e-9);
  // Classes are parts of the whole: they add up to it.
  double classes = 0.0;
  for (const ClassFigures& c : got.stands[0].figures->by_class) {
    classes += c.figures.trees.mean.value;
  }
  EXPECT_NEAR(classes, live.trees.mean.value, 1e-9);
  bool pooled = false;
  for (const SpeciesFigures& s : got.stands[0].figures->by_species) {
    pooled = pooled || s.figures.sized.pooled;
  }
  EXPECT_TRUE(pooled);  // no species of a stand has 10 trees on 4 points but the commonest
}

TEST(CountPoints, FiveMeasuredPlotsWithTheGroupAreEnoughToTrustItsRatioAndFourAreNot) {
  // common practice: kFairPlots, five plots on which something is found.
  for (const int measured : {4, 5}) {
    test::TestCruise cruise;
    const StandId stand = cruise.stand("Ridge", 40.0);
    for (int i = 0; i < 12; ++i) {
      const PlotId plot = cruise.plot(stand);
      if (i < measured) {
        for (const double dbh : {12.0, 13.0 + i, 14.0}) cruise.tree(plot, 316, dbh);
      } else {
        cruise.data.plots.back().note =
            note_of({.task = PlotTask::count, .counted = {{SpeciesCode{316}, 2 + i % 2}}});
      }
    }
    const auto got = cruise_estimate(cruise.data, test::test_species(), {}).value();
    const GroupFigures& live = got.stands[0].figures->live;
    EXPECT_EQ(live.ba.trust, Trust::fair);
    EXPECT_TRUE(live.sized.by_ratio);
    EXPECT_EQ(live.trees.trust, measured < kFairPlots ? Trust::few_found : Trust::fair);
  }
}

TEST_F(DoubleSampling, RefusesCountsWithoutAnythingMeasured) {
  for (Plot& plot : oracle.data.plots) make_count_point(plot);
  leave_counts_only();
  const auto got = cruise_estimate(oracle.data, test::test_species(), {}).value();
  EXPECT_EQ(got.all.error().code, ErrorCode::no_data);
}

TEST_F(DoubleSampling, RefusesSeedlingsAtACountPoint) {
  auto& data = oracle.data;
  data.cruises[0].regen_area = 0.001;
  const auto point = std::ranges::find_if(
      data.plots, [](const Plot& p) { return taken_at(p).task == PlotTask::count; });
  data.regens.push_back({RegenId{}, point->id, SpeciesCode{802}, RegenHeight::under_1_ft, 2});
  EXPECT_EQ(stand_sample(data, point->stand).error().code, ErrorCode::contradiction);
}

TEST(CountPoints, RefuseACountThatNoPointHolds) {
  test::TestCruise cruise;
  const StandId stand = cruise.stand("Ridge", 40.0);
  cruise.tree(cruise.plot(stand), 802, 12.0);
  cruise.plot(stand);
  const auto counted = [&](int stems) {
    cruise.data.plots.back().note =
        note_of({.task = PlotTask::count, .counted = {{SpeciesCode{802}, stems}}});
    return stand_sample(cruise.data, stand);
  };
  EXPECT_TRUE(counted(10'000).has_value());
  EXPECT_EQ(counted(10'001).error().code, ErrorCode::contradiction);
}

TEST(CountPoints, AreNoneOfFixedPlots) {
  test::TestCruise cruise(FixedDesign{});
  const StandId stand = cruise.stand("Ridge", 40.0);
  cruise.tree(cruise.plot(stand), 802, 12.0);
  cruise.plot(stand);
  cruise.data.plots.back().note = "[count point: 802 3]";
  EXPECT_EQ(stand_sample(cruise.data, stand).error().code, ErrorCode::contradiction);
}

TEST(CountPoints, KeepWhatWasCountedInTheirNote) {
  Plot plot;
  plot.note = note_of({.task = PlotTask::count,
                       .counted = {{SpeciesCode{802}, 4}, {SpeciesCode{316}, 3}},
                       .note = "by the creek"});
  EXPECT_EQ(plot.note, "[count point: 802 4, 316 3] by the creek");
  const PlotTaken taken = taken_at(plot);
  EXPECT_EQ(taken.task, PlotTask::count);
  ASSERT_EQ(taken.counted.size(), 2U);
  EXPECT_EQ(taken.counted[1], (SpeciesCount{SpeciesCode{316}, 3}));
  EXPECT_EQ(taken.note, "by the creek");
  for (const char* text : {"", "by the creek", "[count point", "[count point: 802]",
                           "[count point: 802 0]", "[count point: 802 4, ]", "[count points]"}) {
    plot.note = text;
    EXPECT_EQ(taken_at(plot).task, PlotTask::measure) << text;
    EXPECT_EQ(note_of(taken_at(plot)), text);
  }
  plot.note = "[count point]";
  EXPECT_EQ(taken_at(plot).task, PlotTask::count);
  EXPECT_TRUE(taken_at(plot).counted.empty());
}

}  // namespace
}  // namespace oaklight
