// Intervals must hold the truth as often as they claim. Drawn numbers, fixed seed, own normal
// draws: the same on every machine.

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>
#include <vector>

#include "core/sample/paired.hpp"
#include "core/sample/share.hpp"
#include "core/sample/stratified.hpp"

namespace oaklight {
namespace {

class Draw {
 public:
  double uniform() { return (static_cast<double>(random_()) + 0.5) / 4294967296.0; }
  /// Box and Muller 1958.
  double normal(double mean, double sd) {
    return mean + sd * std::sqrt(-2.0 * std::log(uniform())) *
                      std::cos(2.0 * std::numbers::pi * uniform());
  }
  std::vector<double> plots(int n, double mean, double sd) {
    std::vector<double> values(static_cast<std::size_t>(n));
    for (double& x : values) x = normal(mean, sd);
    return values;
  }

 private:
  std::mt19937 random_{20260504};
};

constexpr int kRepeats = 10'000;
/// 4.5 binomial standard errors: a false alarm about 7 times in a million seeds.
double band(double share) { return 4.5 * std::sqrt(share * (1.0 - share) / kRepeats); }

bool holds(const Estimate<double>& e, double truth) { return *e.lo <= truth && truth <= *e.hi; }

TEST(Coverage, OfOneStandIsWhatItClaims) {
  Draw draw;
  for (const double level : {0.80, 0.90, 0.95}) {
    for (const int n : {2, 5, 15}) {
      int held = 0;
      for (int i = 0; i < kRepeats; ++i) {
        const auto plots = draw.plots(n, 1000.0, 30.0);
        const auto confidence = Confidence::from_share(level).value();
        held += holds(mean_of(plots, confidence).value(), 1000.0) ? 1 : 0;
      }
      EXPECT_NEAR(static_cast<double>(held) / kRepeats, level, band(level)) << level << " " << n;
    }
  }
}

TEST(Coverage, OverUnlikeStandsIsNearWhatItClaimsBySatterthwaiteOnly) {
  // Derived: where one stand of 4 plots carries nearly all of the variance, 3 degrees of freedom
  // are right and n - L = 17 are far too many: t 2.110 for 3.182 holds the truth in 87.46 %
  // of samples.
  Draw draw;
  int held = 0;
  int held_by_all = 0;
  for (int i = 0; i < kRepeats; ++i) {
    std::vector<Stratum> strata;
    for (const auto& [n, mean, sd] : {std::tuple(4, 1000.0, 100.0), std::tuple(15, 1000.0, 1.0)}) {
      const auto plots = draw.plots(n, mean, sd);
      strata.push_back({50.0, moments_of(plots, n).value(), std::nullopt});
    }
    const Confidence c;
    held += holds(stratified_mean(strata, c).value(), 1000.0) ? 1 : 0;
    held_by_all +=
        holds(stratified_mean(strata, c, DegreesOfFreedom::plots_less_strata).value(), 1000.0) ? 1
                                                                                               : 0;
  }
  EXPECT_NEAR(static_cast<double>(held) / kRepeats, 0.95, band(0.95));
  EXPECT_NEAR(static_cast<double>(held_by_all) / kRepeats, 0.8746, band(0.8746));
}

TEST(Coverage, OfSharesStaysNearWhatItClaimsEvenWhenRare) {
  Draw draw;
  for (const double truth : {0.05, 0.372, 0.9}) {
    int held = 0;
    for (int i = 0; i < kRepeats; ++i) {
      int found = 0;
      for (int plot = 0; plot < 30; ++plot) found += draw.uniform() < truth ? 1 : 0;
      const auto e = share_estimate(found, 30, Confidence{}).value();
      held += e.lo->value <= 100.0 * truth && 100.0 * truth <= e.hi->value ? 1 : 0;
    }
    // Counts are whole, so no interval for them holds exactly 95 %.
    EXPECT_GT(static_cast<double>(held) / kRepeats, 0.92) << truth;
    EXPECT_LT(static_cast<double>(held) / kRepeats, 0.99) << truth;
  }
}

/// Two stands of 12 and 8 plots, two visits, weighted 3 to 1.
struct TwoVisits {
  std::vector<double> sizes{30.0, 10.0};
  std::vector<PairedValues> pairs;
};

/// What the error of the change would be if the visits had nothing to do with each other.
double separate_se(const TwoVisits& visits) {
  double variance = 0.0;
  for (const auto visit : {&PairedValues::first, &PairedValues::second}) {
    std::vector<Stratum> strata;
    for (std::size_t h = 0; h < visits.pairs.size(); ++h) {
      const auto& values = visits.pairs[h].*visit;
      strata.push_back({visits.sizes[h],
                        moments_of(values, static_cast<int>(values.size())).value(), std::nullopt});
    }
    const double se = stratified_mean(strata, Confidence{}).value().se.value();
    variance += se * se;
  }
  return std::sqrt(variance);
}

struct Tally {
  int held = 0, narrower = 0;
  double paired_variance = 0.0, separate_variance = 0.0;
};

/// Plots spread by 30 about 100 ft2; between the visits each loses 15, spread by 8. In `moved`
/// plots the second visit is drawn anew, as if it had gone to other ground.
Tally simulate(bool moved) {
  Draw draw;
  Tally tally;
  for (int i = 0; i < kRepeats; ++i) {
    TwoVisits visits;
    for (const int n : {12, 8}) {
      PairedValues p;
      p.first = draw.plots(n, 100.0, 30.0);
      const auto elsewhere = draw.plots(n, 100.0, 30.0);
      const auto loss = draw.plots(n, -15.0, 8.0);
      for (std::size_t k = 0; k < loss.size(); ++k) {
        p.second.push_back((moved ? elsewhere[k] : p.first[k]) + loss[k]);
      }
      visits.pairs.push_back(std::move(p));
    }
    const auto c = paired_change(visits.sizes, visits.pairs, Confidence{}).value();
    const double separate = separate_se(visits);
    tally.held += *c.lo <= -15.0 && -15.0 <= *c.hi ? 1 : 0;
    tally.narrower += *c.se < separate ? 1 : 0;
    tally.paired_variance += *c.se * *c.se / kRepeats;
    tally.separate_variance += separate * separate / kRepeats;
  }
  return tally;
}

TEST(Coverage, OfAChangeOnTheSamePlotsIsWhatItClaimsByTheSmallerPairedError) {
  const Tally tally = simulate(false);
  EXPECT_NEAR(static_cast<double>(tally.held) / kRepeats, 0.95, band(0.95));
  EXPECT_EQ(tally.narrower, kRepeats);
  // Derived: variance of the mean is w^2 s^2 / n over stands, w 0.75 and 0.25; s^2 is 8^2 for the
  // pairs, 30^2 + (30^2 + 8^2) for two separate errors. Within 2 %: four errors of a mean
  // of 10,000 sample variances on some 14 degrees of freedom.
  const double share = 0.75 * 0.75 / 12.0 + 0.25 * 0.25 / 8.0;
  EXPECT_NEAR(tally.paired_variance, 64.0 * share, 0.02 * 64.0 * share);
  EXPECT_NEAR(tally.separate_variance, 1864.0 * share, 0.02 * 1864.0 * share);
}

TEST(Coverage, OfAChangeOnOtherPlotsIsWhatItClaimsAndGainsNothing) {
  const Tally tally = simulate(true);
  EXPECT_NEAR(static_cast<double>(tally.held) / kRepeats, 0.95, band(0.95));
  // Derived: without anything in common the two errors are one and the same on average.
  EXPECT_NEAR(tally.paired_variance / tally.separate_variance, 1.0, 0.02);
  EXPECT_NEAR(static_cast<double>(tally.narrower) / kRepeats, 0.5, 0.05);
}

}  // namespace
}  // namespace oaklight
