// Ways to lay out and to work up a cruise, repeated on whole populations. Expected shares come from
// simulations in NumPy that share nothing with this program (apart/).
#include <gtest/gtest.h>

#include <cmath>
#include <tuple>

#include "core/base/number_text.hpp"
#include "core/measure/basal_area.hpp"
#include "core/sample/count_measure.hpp"
#include "core/sample/share.hpp"
#include "core/sample/stratified.hpp"
#include "tests/population/report_row.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

class OnMaps : public testing::Test {
 protected:
  void SetUp() override {
    if (!maps_are_installed()) GTEST_SKIP() << "needs R with package spatstat.data";
  }
};

TEST_F(OnMaps, AGridIsAsTrueAsRandomPlotsAndItsErrorOverstated) {
  // apart/longleaf_design.py, all starts on a lattice: 96.5, 99.7 and 100.0 % of 95 % intervals
  // hold the truth, for the reported error is larger than the true one (maps.tsv has both).
  const StemMap& map = stem_map("longleaf");
  const PlotMaker plots(map, design_of(10), Edge::torus, any_stem());
  const double truth = census_of(map, any_stem()).ba.value;
  for (const auto& [side, covered] : {std::pair(3, 0.9653), {4, 0.9966}, {5, 1.0}}) {
    SeededDraw draw(41);
    const double spacing = map.width.value / side;
    const Outcome got = repeat(repeats_asked(), truth, [&, side = side] {
      const double east = spacing * draw.uniform();
      const double north = spacing * draw.uniform();
      std::vector<double> values;
      for (int i = 0; i < side * side; ++i) {
        values.push_back(plots.at(east + spacing * (i % side), north + spacing * (i / side)).ba);
      }
      return mean_of(values, Confidence{}).value();
    });
    const double band = std::max(share_band(covered, got.repeats, 0), 4.5 / got.repeats);
    EXPECT_NEAR(got.mean, truth, 4.5 * got.mean_se) << side;
    EXPECT_NEAR(got.covered, covered, band) << side;
    EXPECT_GT(got.reported_se, 1.1 * got.true_se) << side;
    record({.map = "longleaf",
            .what = "basal area all",
            .method = "factor 10, grid",
            .edge = edge_words(Edge::torus),
            .plots = side * side,
            .truth = truth,
            .got = got,
            .low = number_text(100.0 * (covered - band), 1),
            .high = number_text(std::min(100.0, 100.0 * (covered + band)), 1)});
  }
}

TEST_F(OnMaps, StandsWeighedByAcresAreTrueAndCovered) {
  // apart/longleaf_design.py: west and east half with 10 points each, 94.7 % of 5,000 cruises.
  const StemMap& map = stem_map("longleaf");
  const PlotMaker plots(map, design_of(10), Edge::torus, any_stem());
  const double truth = census_of(map, any_stem()).ba.value;
  const double half_width = map.width.value / 2.0;
  SeededDraw draw(42);
  const auto half = [&](double from) {
    std::vector<double> values;
    for (int i = 0; i < 10; ++i) {
      const double east = from + half_width * draw.uniform();
      values.push_back(plots.at(east, map.height.value * draw.uniform()).ba);
    }
    return Stratum{map.acres().value / 2.0, moments_of(values, 10).value(), std::nullopt};
  };
  const Outcome got = repeat(repeats_asked(), truth, [&] {
    const std::vector<Stratum> strata{half(0.0), half(half_width)};
    return stratified_mean(strata, Confidence{}).value();
  });
  const double band = share_band(0.947, got.repeats, 5'000);
  EXPECT_NEAR(got.mean, truth, 4.5 * got.mean_se);
  EXPECT_NEAR(got.covered, 0.947, band);
  record({.map = "longleaf",
          .what = "basal area all",
          .method = "factor 10, two stands",
          .edge = edge_words(Edge::torus),
          .plots = 20,
          .truth = truth,
          .got = got,
          .low = number_text(100.0 * (0.947 - band), 1),
          .high = number_text(100.0 * (0.947 + band), 1)});
}

TEST_F(OnMaps, DroppingEmptyPlotsAddsTreesThatAreNotThere) {
  // apart/lansing_design.py: 62.1 % of tenth-acre plots hold no black oak; without them 6.9 trees
  // an acre become 18.2.
  const StemMap& map = stem_map("lansing");
  const PlotMaker plots(map, design_of(0.1), Edge::torus, of_kind("blackoak"));
  const double truth = census_of(map, of_kind("blackoak")).trees.value;
  SeededDraw draw(43);
  int empty = 0;
  int laid = 0;
  const Outcome got = repeat(repeats_asked(), truth, [&] {
    std::vector<double> values;
    for (int i = 0; i < 20; ++i) {
      const double trees = plots.anywhere(draw).trees;
      ++laid;
      empty += trees == 0.0 ? 1 : 0;
      if (trees > 0.0) values.push_back(trees);
    }
    if (values.empty()) values.push_back(0.0);
    return mean_of(values, Confidence{}).value();
  });
  const double share = static_cast<double>(empty) / laid;
  EXPECT_NEAR(share, 0.6214, share_band(0.6214, laid, 30'000));
  EXPECT_NEAR(truth / (1.0 - share), 18.223, 0.5) << "all plots together, empty ones dropped";
  EXPECT_GT(got.mean, 2.0 * truth);
  EXPECT_LT(got.covered, 0.5) << "of 95 % claimed";
  record({.map = "lansing",
          .what = "trees blackoak",
          .method = "1/10 acre, empty plots dropped (wrong)",
          .edge = edge_words(Edge::torus),
          .plots = 20,
          .truth = truth,
          .got = got});
}

TEST_F(OnMaps, SharesOfPlotsStayNearWhatTheyClaim) {
  // apart/lansing_design.py: 1/100-acre plots with an oak, Wilson limits: 93.76 % of 5,000 cruises
  // of 20 plots, 95.75 % of 2,000 of 50. Counts are whole, so no interval holds exactly 95 %.
  const PlotMaker plots(stem_map("lansing"), design_of(0.01), Edge::torus, of_kind("oaks"));
  constexpr double kTruth = 0.37243;  // maps.tsv
  SeededDraw draw(47);
  for (const auto& [n, covered, cruises] : {std::tuple(20, 0.9376, 5'000), {50, 0.9575, 2'000}}) {
    int held = 0;
    for (int i = 0; i < repeats_asked(); ++i) {
      int found = 0;
      for (int plot = 0; plot < n; ++plot) found += plots.anywhere(draw).tallied > 0 ? 1 : 0;
      const auto e = share_estimate(found, n, Confidence{}).value();
      held += fraction(*e.lo) <= kTruth && kTruth <= fraction(*e.hi) ? 1 : 0;
    }
    EXPECT_NEAR(static_cast<double>(held) / repeats_asked(), covered,
                share_band(covered, repeats_asked(), cruises))
        << n;
  }
}

TEST_F(OnMaps, SmallTreesOnANestedPlotAreCountedBetterThanAtAPoint) {
  // Derived: both are unbiased; the spread of one plot follows from how much one small tree adds. A
  // tenth of an acre adds at most 100 trees for one on its 1/100-acre plot; a point 2,957 for the
  // smallest longleaf here, of 2.0 cm.
  const StemMap& map = stem_map("longleaf");
  const Design nested = FixedDesign{.area = 0.1, .small_area = 0.01, .small_below = dbh_in(5.0)};
  const double truth = census_of(map, any_stem()).trees.value;
  const PlotMaker by_plot(map, nested, Edge::torus, any_stem());
  const PlotMaker by_point(map, design_of(10), Edge::torus, any_stem());
  SeededDraw draw(44);
  const auto cruise = [&](const PlotMaker& plots) {
    return repeat(repeats_asked(), truth, [&] {
      std::vector<double> values;
      while (values.size() < 15) values.push_back(plots.anywhere(draw).trees);
      return mean_of(values, Confidence{}).value();
    });
  };
  const Outcome plot = cruise(by_plot);
  const Outcome point = cruise(by_point);
  EXPECT_NEAR(plot.mean, truth, 4.5 * plot.mean_se);
  EXPECT_NEAR(point.mean, truth, 4.5 * point.mean_se);
  EXPECT_LT(plot.true_se, 0.7 * point.true_se);
  EXPECT_GT(plot.covered, point.covered + 0.1);
  record({.map = "longleaf",
          .what = "trees all",
          .method = "1/10 acre, under 5 in on 1/100",
          .edge = edge_words(Edge::torus),
          .plots = 15,
          .truth = truth,
          .got = plot});
  record({.map = "longleaf",
          .what = "trees all",
          .method = "factor 10",
          .edge = edge_words(Edge::torus),
          .plots = 15,
          .truth = truth,
          .got = point});
}

/// Volume by counts on all points and trees measured on every third.
Estimate<double> count_and_measure(const PlotMaker& plots, SeededDraw& draw) {
  std::vector<double> ba;
  std::vector<double> vbars;
  double vbar = 0.0;
  double vbar2 = 0.0;
  int trees = 0;
  for (int i = 0; i < 30; ++i) {
    const PlotValue plot = plots.anywhere(draw);
    ba.push_back(plot.ba);
    if (i % 3 != 0) continue;
    vbar += plot.vbar;
    vbar2 += plot.vbar2;
    trees += plot.tallied;
  }
  const auto counted = mean_of(ba, Confidence{}).value();
  const double mean = vbar / trees;
  const double variance = (vbar2 - trees * mean * mean) / (trees - 1.0);
  const Percent vbar_error = percent(std::sqrt(variance / trees) / mean);
  Estimate<double> volume;
  volume.mean = counted.mean * mean;
  set_interval(volume, volume.mean * fraction(product_error(*counted.se_pct, vbar_error)), 29.0);
  return volume;
}

TEST_F(OnMaps, VolumeByCountsAndEveryThirdPointMeasuredIsTrueAndCovered) {
  // apart/longleaf_design.py: 30 points, 10 measured; true error 153.5, reported 156.4, 95.2 % of
  // 5,000 cruises.
  const StemMap& map = stem_map("longleaf");
  const PlotMaker plots(map, design_of(10), Edge::torus, any_stem());
  double truth = 0.0;
  for (const Stem& stem : map.stems) truth += test_cubic_feet(stem.dbh) / map.acres().value;
  EXPECT_NEAR(truth, 1622.2, 0.05);
  SeededDraw draw(45);
  const Outcome got =
      repeat(repeats_asked(), truth, [&] { return count_and_measure(plots, draw); });
  const double band = share_band(0.952, got.repeats, 5'000);
  EXPECT_NEAR(got.mean, truth, 4.5 * got.mean_se);
  EXPECT_NEAR(got.covered, 0.952, band);
  // A spread from n draws is known to 1 / sqrt(2 n) of itself: 4.5 times 1.6 and 1.0 %.
  EXPECT_NEAR(got.true_se, 153.5, 0.085 * 153.5);
  EXPECT_NEAR(got.reported_se, 156.4, 0.085 * 156.4);
  record({.map = "longleaf",
          .what = "cubic feet all",
          .method = "factor 10, every third point measured",
          .edge = edge_words(Edge::torus),
          .plots = 30,
          .truth = truth,
          .got = got,
          .low = number_text(100.0 * (0.952 - band), 1),
          .high = number_text(100.0 * (0.952 + band), 1)});
}

TEST_F(OnMaps, VolumeByWholePointsMeasuredIsTrueAndNearlyCovered) {
  // apart/longleaf_design.py: the same cruises worked up by ratio double sampling: reported error
  // 155.0, 93.6 % of 5,000 cruises, as ten points tell little of their own spread.
  const StemMap& map = stem_map("longleaf");
  const PlotMaker plots(map, design_of(10), Edge::torus, any_stem());
  double truth = 0.0;
  for (const Stem& stem : map.stems) truth += test_cubic_feet(stem.dbh) / map.acres().value;
  SeededDraw draw(48);
  const Outcome got = repeat(repeats_asked(), truth, [&] {
    std::vector<double> counted;
    std::vector<double> ba;
    std::vector<double> cubic_feet;
    for (int i = 0; i < 30; ++i) {
      const PlotValue plot = plots.anywhere(draw);
      counted.push_back(plot.ba);
      if (i % 3 != 0) continue;
      ba.push_back(plot.ba);
      cubic_feet.push_back(plot.volume);
    }
    const DoubleSample d = ratio_double_sample(counted, ba, cubic_feet).value();
    Estimate<double> volume;
    volume.mean = d.mean;
    set_interval(volume, d.se, 29.0);
    return volume;
  });
  const double band = share_band(0.936, got.repeats, 5'000);
  EXPECT_NEAR(got.mean, truth, 4.5 * got.mean_se);
  EXPECT_NEAR(got.covered, 0.936, band);
  EXPECT_NEAR(got.reported_se, 155.0, 0.085 * 155.0);
  record({.map = "longleaf",
          .what = "cubic feet all",
          .method = "factor 10, ratio double sampling",
          .edge = edge_words(Edge::torus),
          .plots = 30,
          .truth = truth,
          .got = got,
          .low = number_text(100.0 * (0.936 - band), 1),
          .high = number_text(100.0 * (0.936 + band), 1)});
}

TEST_F(OnMaps, FelledTreesMetAsAPointMeetsThemGiveTheirVolumeToBasalArea) {
  // Derived: a point meets trees in proportion to basal area, so the plain mean of their volume to
  // basal area is without bias for the ratio of sums, 29.893 (maps.tsv).
  const auto& trees = black_cherries();
  double ba = 0.0;
  double volume = 0.0;
  for (const FelledTree& tree : trees) {
    ba += basal_area(tree.dbh).value;
    volume += tree.cubic_feet;
  }
  SeededDraw draw(46);
  const auto meet = [&] {
    double at = ba * draw.uniform();
    for (const FelledTree& tree : trees) {
      at -= basal_area(tree.dbh).value;
      if (at < 0.0) return tree.cubic_feet / basal_area(tree.dbh).value;
    }
    return trees.back().cubic_feet / basal_area(trees.back().dbh).value;
  };
  const Outcome got = repeat(repeats_asked(), volume / ba, [&] {
    std::vector<double> met;
    while (met.size() < 20) met.push_back(meet());
    return mean_of(met, Confidence{}).value();
  });
  EXPECT_NEAR(got.mean, volume / ba, 4.5 * got.mean_se);
  EXPECT_NEAR(got.covered, 0.95, 0.03) << "near normal values: within 3 of what is claimed";
  record({.map = "black cherry",
          .what = "volume to basal area",
          .method = "20 trees met by size",
          .edge = "no map",
          .plots = 20,
          .truth = volume / ba,
          .got = got,
          .low = "92.0",
          .high = "98.0"});
}

}  // namespace
}  // namespace oaklight::test
