// A touch must not get slower with the tract: ratios of times, so that a slow machine passes too.
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>
#include <iostream>

#include "core/session/plot_figures.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_cruise.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight::test {
namespace {

constexpr int kTreesOfAPlot = 20;

TractData tract_with(int trees) {
  TestCruise cruise;
  const StandId stand = cruise.stand("A", 100.0);
  PlotId plot;
  for (int i = 0; i < trees; ++i) {
    if (i % kTreesOfAPlot == 0) plot = cruise.plot(stand);
    cruise.tree(plot, 802, 1.0 + i % 300 / 10.0);
  }
  return std::move(cruise.data);
}

/// Seconds for one tree tallied, looked up, shown in the plot's figures and taken out again; the
/// best of some rounds, as a busy machine only ever adds.
double seconds_for_a_touch(LiveTract& live) {
  constexpr int kRounds = 7;
  constexpr int kTouches = 300;
  const PlotId plot = live.data().plots.back().id;
  double best = 1e9;
  for (int round = 0; round < kRounds; ++round) {
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < kTouches; ++i) {
      const TreeId id = nth_id<TreeId>(4'000'000'000U + static_cast<std::uint32_t>(i));
      const std::vector<Change> tally{Tree{id, plot, TreeFacts{SpeciesCode{802}, dbh_in(9.0)}}};
      live.follow(tally);
      EXPECT_EQ(plot_figures(live, plot)->records, kTreesOfAPlot + 1);
      const std::vector<Change> undone{Remove{id}};
      live.follow(undone);
    }
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
    best = std::min(best, taken.count() / kTouches);
  }
  return best;
}

// 100 times the trees: a walk over all of them would take 100 times as long, a search 1.7 times
// (derived: log 100,000 over log 1,000).
TEST(LiveTractScale, ATouchOnAHundredThousandTreesCostsLittleMoreThanOnAThousand) {
  LiveTract small(tract_with(1'000));
  LiveTract large(tract_with(100'000));
  const double a = seconds_for_a_touch(small);
  const double b = seconds_for_a_touch(large);
  RecordProperty("microseconds_1k", std::to_string(a * 1e6));
  RecordProperty("microseconds_100k", std::to_string(b * 1e6));
  std::cout << "a touch: " << a * 1e6 << " us on 1,000 trees, " << b * 1e6 << " us on 100,000\n";
  EXPECT_LT(b / a, 10.0);
}

}  // namespace
}  // namespace oaklight::test
