// Estimates over stands of which one has no acres, or a tree of no species that the table knows:
// refused with the place, by each of them.
#include <gtest/gtest.h>

#include "core/sample/cruise_estimate.hpp"
#include "core/sample/regeneration.hpp"
#include "core/stand/stand_change.hpp"
#include "core/stand/stand_stocking.hpp"
#include "tests/support/oracle_figures.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_cruise.hpp"

namespace oaklight::test {
namespace {

/// Both visits to the oracle's stands, as far as they can be paired.
struct TwoVisits {
  TwoVisits() : before(read_oracle_points().data), after(read_oracle_later().data) {}

  Result<AreaChange> change() {
    first = samples_of(before);
    second = samples_of(after);
    pairs.clear();
    for (std::size_t h = 0; h < first.size(); ++h) {
      pairs.push_back(pair_stand(first[h], second[h]).value());
    }
    std::vector<const PairedStand*> all;
    for (const PairedStand& p : pairs) all.push_back(&p);
    return area_change(all, test_species(), {});
  }

  TractData before, after;
  std::vector<StandSample> first, second;
  std::vector<PairedStand> pairs;
};

std::vector<const StandSample*> pointers_to(const std::vector<StandSample>& samples) {
  std::vector<const StandSample*> all;
  for (const StandSample& s : samples) all.push_back(&s);
  return all;
}

TEST(Refused, AStandWithoutAcresByEveryEstimate) {
  TractData data = read_oracle_points().data;
  data.stands[1].acres = Acres{0.0};
  const auto samples = samples_of(data);
  const auto all = pointers_to(samples);
  const EstimateOptions options;
  const auto refused = [](const auto& result) {
    if (result) return std::string("taken");
    return result.error().what + " " + result.error().where;
  };
  const std::string wanted = "A stand has no acres. stand/2/acres";
  EXPECT_EQ(refused(area_estimate(all, test_species(), options)),
            "Stand B has no acres. stand/B/acres");
  EXPECT_EQ(refused(stand_stocking(all, test_species(), options, Inches{5.0})), wanted);
  TwoVisits visits;
  visits.after.stands[1].acres = Acres{0.0};
  EXPECT_EQ(refused(visits.change()), wanted);
  const std::vector<double> sizes = {1.0, 0.0};
  const std::vector<PairedValues> values = {{{1, 2}, {2, 3}}, {{1, 2}, {2, 3}}};
  EXPECT_EQ(refused(paired_change(sizes, values, {})), wanted);
  EXPECT_EQ(refused(paired_diameter(sizes, values, values, {}, {})), wanted);
}

TEST(Refused, ATreeThatTheTableDoesNotKnowAtEitherVisit) {
  TwoVisits sound;
  ASSERT_TRUE(sound.change());
  for (TractData TwoVisits::*visit : {&TwoVisits::before, &TwoVisits::after}) {
    TwoVisits visits;
    (visits.*visit).trees.front().facts.species = SpeciesCode{99};
    const auto change = visits.change();
    ASSERT_FALSE(change);
    EXPECT_EQ(change.error().code, ErrorCode::unknown_species);
  }
  TractData data = read_oracle_points().data;
  data.trees.front().facts.species = SpeciesCode{99};
  const auto samples = samples_of(data);
  const auto stocking = stand_stocking(pointers_to(samples), test_species(), {}, Inches{5.0});
  ASSERT_FALSE(stocking);
  EXPECT_EQ(stocking.error().code, ErrorCode::unknown_species);
}

// With trees at one visit only there is no change of a mean diameter.
TEST(Refused, AMeanDiameterOfNoTreesIsNone) {
  const std::vector<double> sizes = {1.0};
  const std::vector<PairedValues> gone = {{{10, 20}, {0, 0}}};
  const std::vector<PairedValues> come = {{{0, 0}, {10, 20}}};
  for (const auto& values : {gone, come}) {
    const auto change = paired_diameter(sizes, values, values, {}, {});
    ASSERT_TRUE(change);
    EXPECT_FALSE(change->has_value());
  }
}

// A plot pairs by its label, and only where both visits measured it: one that was counted has no
// sizes to compare.
TEST(Refused, PlotsThatCannotPairAreListed) {
  const auto visit = [](const std::vector<std::string>& labels) {
    TestCruise cruise;
    const StandId stand = cruise.stand("One", 10.0);
    for (const std::string& label : labels) {
      cruise.tree(cruise.plot(stand), 802, 12.0);
      cruise.data.plots.back().label = label;
    }
    return cruise.data;
  };
  const TractData before = visit({"1", "2", "3", ""});
  const TractData after = visit({"1", "2", "", "4"});
  auto first = samples_of(before);
  auto second = samples_of(after);
  second[0].measured[1] = false;
  const PairedStand pair = pair_stand(first[0], second[0]).value();
  EXPECT_EQ(pair.plots.size(), 1U);
  EXPECT_EQ(pair.only_first, (std::vector<std::string>{"2", "3", ""}));
  EXPECT_EQ(pair.only_second, (std::vector<std::string>{"2", "", "4"}));
  first[0].measured[0] = false;
  EXPECT_EQ(pair_stand(first[0], second[0]).error().code, ErrorCode::no_data);
}

}  // namespace
}  // namespace oaklight::test
