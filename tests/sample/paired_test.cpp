// Change between two visits. Expected values: R package survey on an invented second visit
// (tests/golden/oracle/paired.R), and the sleep data of Student 1908.

#include "core/sample/paired.hpp"

#include <gtest/gtest.h>

#include "tests/sample/ledger.hpp"
#include "tests/support/oracle_figures.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

GroupTally tally_of(const StandSample& sample) {
  GroupTally tally;
  for (const TalliedTree& t : sample.trees) tally.add(t);
  return tally;
}

/// Both visits to the oracle's stands, paired.
class TwoVisits : public testing::Test {
 protected:
  void SetUp() override {
    for (std::size_t h = 0; h < first_.size(); ++h) {
      pairs_.push_back(pair_stand(first_[h], second_[h]).value());
      acres_.push_back(first_[h].stand->acres.value);
      tally_first_.push_back(tally_of(first_[h]));
      tally_second_.push_back(tally_of(second_[h]));
    }
  }

  std::vector<PairedValues> values(Figure figure) {
    std::vector<PairedValues> all;
    for (std::size_t h = 0; h < pairs_.size(); ++h) {
      all.push_back(paired_values({&pairs_[h], &tally_first_[h], &tally_second_[h]}, figure));
    }
    return all;
  }

  const OracleCruise before_ = read_oracle_points();
  const OracleCruise after_ = read_oracle_later();
  const std::vector<StandSample> first_ = samples_of(before_.data);
  const std::vector<StandSample> second_ = samples_of(after_.data);
  std::vector<PairedStand> pairs_;
  std::vector<double> acres_;
  std::vector<GroupTally> tally_first_, tally_second_;
};

void expect_change(Ledger& ledger, const std::string& path, const PairedChange<double>& c,
                   double acres) {
  ledger.expect(path + "/before", c.before);
  ledger.expect(path + "/after", c.after);
  ledger.expect(path + "/change", c.change);
  ledger.expect(path + "/se", c.se);
  ledger.expect(path + "/df", c.df);
  ledger.expect(path + "/lo", c.lo);
  ledger.expect(path + "/hi", c.hi);
  const auto total = total_of(with_unit<SquareFeetPerAcre>(c), Acres{acres});
  ledger.expect(path + "/total", total.change.value);
  ledger.expect(path + "/total_se", plain(total.se));
  EXPECT_LT(*c.se, ledger.at(path + "/separate_se_wrong").get<double>());
}

TEST_F(TwoVisits, ChangeAsTheSurveyPackageSays) {
  Ledger ledger("expected_paired.json");
  double acres = 0.0;
  for (const double a : acres_) acres += a;
  for (const auto& [name, figure] : {std::pair("ba", &ba_of), std::pair("tpa", &trees_of)}) {
    const auto all = values(figure);
    const auto c = paired_change(acres_, all, Confidence{}).value();
    expect_change(ledger, std::string("/all/") + name, c, acres);
    ledger.expect("/all/pairs", static_cast<double>(c.plots));
    for (std::size_t h = 0; h < all.size(); ++h) {
      const std::string path = "/" + first_[h].stand->name + "/" + name;
      const auto one = paired_change({&acres_[h], 1}, {&all[h], 1}, Confidence{}).value();
      expect_change(ledger, path, one, acres_[h]);
    }
  }
}

TEST_F(TwoVisits, ChangeOfTheMeanDiameterAsTheSurveyPackageSays) {
  Ledger ledger("expected_paired.json");
  const auto trees = values(trees_of);
  const auto ba = values(ba_of);
  const auto rule = DegreesOfFreedom::satterthwaite;
  const auto c = paired_diameter(acres_, trees, ba, Confidence{}, rule).value().value();
  ledger.expect("/all/qmd/change", c.change.value);
  ledger.expect("/all/qmd/se", plain(c.se));
  EXPECT_NEAR(c.change.value, c.after.value - c.before.value, 1e-12);
  for (std::size_t h = 0; h < trees.size(); ++h) {
    const std::string path = "/" + first_[h].stand->name + "/qmd";
    const auto one =
        paired_diameter({&acres_[h], 1}, {&trees[h], 1}, {&ba[h], 1}, Confidence{}, rule);
    ledger.expect(path + "/change", one.value().value().change.value);
    ledger.expect(path + "/se", plain(one.value().value().se));
  }
}

TEST_F(TwoVisits, PlotsOfOneVisitAreListedAndInNoFigure) {
  EXPECT_EQ(pairs_[0].only_first, std::vector<std::string>{"A3"});
  EXPECT_TRUE(pairs_[0].only_second.empty());
  EXPECT_TRUE(pairs_[1].only_first.empty());
  EXPECT_EQ(pairs_[1].only_second, std::vector<std::string>{"B9"});
  EXPECT_EQ(pairs_[0].plots.size(), 11U);
  EXPECT_EQ(pairs_[1].plots.size(), 8U);
  // Derived: A3 held 11 trees, 110 ft2 an acre, so that the mean of all 12 is another.
  EXPECT_NEAR(paired_change({acres_.data(), 1}, {values(ba_of).data(), 1}, {}).value().before,
              (12 * 104.16666666666667 - 110.0) / 11.0, 1e-9);
}

TEST_F(TwoVisits, OtherDesignsOrSizesAreNotCompared) {
  StandSample other = second_[0];
  other.design = PointDesign{20.0, UnitSystem::us};
  EXPECT_EQ(pair_stand(first_[0], other).error().code, ErrorCode::mixed_designs);
  other = second_[0];
  other.min_dbh = dbh_in(4.5);
  EXPECT_EQ(pair_stand(first_[0], other).error().code, ErrorCode::mixed_designs);
}

TEST_F(TwoVisits, NoCommonLabelIsNoPair) {
  EXPECT_EQ(pair_stand(first_[0], second_[1]).error().code, ErrorCode::no_data);
}

PairedChange<double> of_one(const PairedValues& values) {
  const double acres = 1.0;
  return paired_change({&acres, 1}, {&values, 1}, Confidence{}).value();
}

TEST(ChangeOfPlots, OfAStandThatLostEverythingMayLieBelowZero) {
  const PairedChange<double> c = of_one({{80, 100, 120}, {0, 0, 0}});
  // Derived: mean -100, variance 400, SE sqrt(400 / 3), t(2) 4.302652729749462 by R (NIST
  // table 4.303).
  EXPECT_DOUBLE_EQ(c.change, -100.0);
  EXPECT_NEAR(*c.se, 11.547005383792515, 1e-12);
  EXPECT_NEAR(*c.lo, -100.0 - 4.302652729749462 * 11.547005383792515, 1e-9);
  EXPECT_LT(*c.hi, 0.0);
  EXPECT_TRUE(c.clear());
}

TEST(ChangeOfPlots, ThatWasFoundNowhereIsNotKnownToBeNone) {
  const PairedChange<double> c = of_one({{80, 100, 120}, {80, 100, 120}});
  EXPECT_EQ(c.trust, Trust::not_found);
  EXPECT_EQ(c.changed, 0);
  EXPECT_FALSE(c.se.has_value());
  EXPECT_FALSE(c.clear());
}

TEST(ChangeOfPlots, IsClearOnlyWhereTheIntervalLeavesOutZero) {
  const auto clear = [](double lo, double hi) {
    PairedChange<double> c;
    c.lo = lo;
    c.hi = hi;
    return c.clear();
  };
  EXPECT_TRUE(clear(0.1, 2.0));
  EXPECT_TRUE(clear(-2.0, -0.1));
  EXPECT_FALSE(clear(-1.0, 1.0));
  EXPECT_FALSE(clear(0.0, 2.0)) << "an end at 0 does not leave it out";
  EXPECT_FALSE(clear(-2.0, 0.0));
}

TEST(ChangeOfPlots, OfOnePairHasNoError) {
  const PairedChange<double> c = of_one({{80}, {90}});
  EXPECT_EQ(c.trust, Trust::one_plot);
  EXPECT_DOUBLE_EQ(c.change, 10.0);
  EXPECT_FALSE(c.se.has_value());
}

TEST(ChangeOfPlots, NeedsBothValuesOfEachPlot) {
  const double acres = 1.0;
  const PairedValues lopsided{{1, 2, 3}, {1, 2}};
  EXPECT_EQ(paired_change({&acres, 1}, {&lopsided, 1}, {}).error().code, ErrorCode::missing_value);
  const PairedValues bad{{1, 2}, {1, std::nan("")}};
  EXPECT_EQ(paired_change({&acres, 1}, {&bad, 1}, {}).error().code, ErrorCode::not_a_number);
}

}  // namespace
}  // namespace oaklight::test
