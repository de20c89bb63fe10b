// What counts of acorns say of a tree, and what a recommendation makes of them.
#include "core/release/acorns.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/release/plan.hpp"
#include "core/release/stand_facts.hpp"
#include "tests/support/readings.hpp"
#include "tests/support/test_ids.hpp"
#include "tests/support/trees.hpp"

namespace oaklight {
namespace {

using testing::Contains;
using testing::HasSubstr;

constexpr SpeciesCode kWhiteOak{802};

AcornCount tips(std::uint32_t tree, int year, double per_tip) {
  return {{}, test::nth_id<WalkTreeId>(tree), year, "", BranchTipCount{per_tip, {}}, ""};
}
AcornCount timed(std::uint32_t tree, int year, int n30) {
  return {{}, test::nth_id<WalkTreeId>(tree), year, "", TimedCount{n30}, ""};
}
CountedOak oak(std::uint32_t tree) { return {test::nth_id<WalkTreeId>(tree).value, kWhiteOak}; }
AcornYear year_of(int year, AcornCrop crop, OakGroup group = OakGroup::white) {
  return {{}, group, year, crop, ""};
}

AcornSettings settings(int index_trees = 2) {
  AcornSettings s = test::shipped_knowledge().settings.acorns;
  s.index_trees = index_trees;
  return s;
}

AcornRecord record(std::uint32_t tree, const std::vector<AcornCount>& counts,
                   const std::vector<AcornYear>& years = {}, int index_trees = 2) {
  const std::vector<CountedOak> oaks = {oak(1), oak(2), oak(3)};
  const AcornSettings s = settings(index_trees);
  return acorn_record(oak(tree), OakGroup::white, counts, years, timed_means(oaks, counts, s), s);
}

TEST(TimedMeans, AverageTheTransformOverTheTreesOfASpecies) {
  const std::vector counts = {timed(1, 2024, 0), timed(2, 2024, 19), timed(3, 2025, 4)};
  const std::vector<CountedOak> oaks = {oak(1), oak(2), oak(3)};
  const TimedMeans means = timed_means(oaks, counts, settings(2));
  ASSERT_EQ(means.size(), 1U);  // 2025 has one tree, and two are asked for
  // Derived: (ln 1 + ln 20) / 2.
  EXPECT_NEAR(means.at({kWhiteOak, 2024}), std::log(20.0) / 2.0, 1e-12);
}

TEST(AcornRecords, OfTimedCountsGoByTheMeanOfTheSpeciesOverThreeAutumns) {
  std::vector<AcornCount> counts;
  for (const int year : {2023, 2024, 2025}) {
    counts.push_back(timed(1, year, 40));
    counts.push_back(timed(2, year, 5));
    counts.push_back(timed(3, year, 0));
  }
  EXPECT_EQ(record(1, counts).producer, Producer::good);
  EXPECT_EQ(record(2, counts).producer, Producer::fair);  // ln 6 is less than the mean, 1.84
  EXPECT_EQ(record(3, counts).producer, Producer::poor);  // nobody ever saw an acorn on it
  EXPECT_EQ(record(1, counts).years, 3);
  EXPECT_EQ(record(1, counts).per_tip, std::nullopt);
  // Too few trees of the species for a mean (R3.48): no class, but none seen is none seen.
  EXPECT_EQ(record(1, counts, {}, 25).producer, Producer::no_record);
  EXPECT_EQ(record(3, counts, {}, 25).producer, Producer::poor);
  std::erase_if(counts, [](const AcornCount& c) { return c.year == 2023; });
  EXPECT_EQ(record(1, counts).producer, Producer::no_record);  // two autumns (R3.37)
}

TEST(AcornRecords, ATreeAtTheMeanOfItsSpeciesIsAGoodProducer) {
  std::vector<AcornCount> counts;
  for (const int year : {2023, 2024, 2025}) {
    for (const std::uint32_t tree : {1U, 2U, 3U}) counts.push_back(timed(tree, year, 7));
  }
  EXPECT_EQ(record(2, counts).producer, Producer::good);
}

TEST(AcornRecords, BranchTipsGoBeforeTimedCounts) {
  // By hand: (20 + 18) / 2.
  const std::vector counts = {tips(1, 2023, 20), timed(1, 2023, 0), tips(1, 2024, 18)};
  const AcornRecord r = record(1, counts);
  EXPECT_EQ(r.producer, Producer::excellent);
  EXPECT_EQ(r.years, 2);
  EXPECT_DOUBLE_EQ(*r.per_tip, 19.0);
}

TEST(AcornRecords, ProofThatATreeIsPoorTakesEveryAutumnAndAGoodOne) {
  const std::vector<AcornYear> good = {year_of(2024, AcornCrop::bumper)};
  const std::vector mixed = {tips(1, 2023, 2), timed(1, 2024, 0), tips(1, 2025, 5)};
  EXPECT_TRUE(record(1, mixed, good).proven_poor);
  EXPECT_FALSE(record(1, mixed, {year_of(2024, AcornCrop::fair)}).proven_poor);
  EXPECT_FALSE(record(1, mixed, {year_of(2022, AcornCrop::good)}).proven_poor);  // not surveyed
  EXPECT_FALSE(record(1, mixed, {year_of(2024, AcornCrop::good, OakGroup::red)}).proven_poor);
  const std::vector some = {tips(1, 2023, 2), timed(1, 2024, 1), tips(1, 2025, 5)};
  EXPECT_FALSE(record(1, some, good).proven_poor);  // a timed count of 1 is no proof
}

/// S9 as records of a tract: a white oak of 13 in that bears, a red oak of 15 in that does not.
struct Tract2 {
  TractData data;
  StandId stand = test::nth_id<StandId>(1);

  Tract2() {
    data.stands = {{stand, "S", Acres{10}, Acres{1}, Goal::mast, {}, {}, {}}};
    const auto facts = test::trees("WO 13 co, RO 15 co");
    data.walk_trees = {
        {test::nth_id<WalkTreeId>(1), stand, "W", facts[0].facts, true, {}, {}, {}},
        {test::nth_id<WalkTreeId>(2), stand, "R", facts[1].facts, false, {}, {}, {}}};
    data.walk_trees[0].looked = Sides::all();
    data.contacts = {{test::nth_id<ContactId>(1),
                      data.walk_trees[0].id,
                      data.walk_trees[1].id,
                      {Side::north},
                      Seen::touches,
                      test::tape_ft(20),
                      {}}};
  }
  void count(std::initializer_list<double> white, std::initializer_list<double> red) {
    int year = 2023;
    for (const double t : white) data.acorn_counts.push_back(tips(1, year++, t));
    year = 2023;
    for (const double t : red) data.acorn_counts.push_back(tips(2, year++, t));
    data.acorn_years = {year_of(2025, AcornCrop::good, OakGroup::red)};
  }
  [[nodiscard]] ReleaseInput input() const {
    return *input_from_cards(data, stand, test::shipped_knowledge());
  }
  [[nodiscard]] TreeVerdict verdict(std::string_view tag) const {
    return test::verdict_on(recommend(input()), tag);
  }
};

// Counts 21, 4, 19 and 2, 1, 3; the third autumn was a good one for red oaks (scenario S9).
TEST(CountsOfATract, ReachTheRecommendation) {
  Tract2 tract;
  EXPECT_EQ(tract.verdict("R").verdict, Verdict::keep);  // a sound oak, nobody counted
  tract.count({21, 4, 19}, {2, 1, 3});
  EXPECT_NE(tract.verdict("R").verdict, Verdict::keep);
  EXPECT_THAT(tract.verdict("R").rules, Contains("R3.39"));
  // The mean of 21, 4 and 19 is 14.7, good by R3.42.
  EXPECT_THAT(tract.verdict("W").reason, HasSubstr("a good acorn producer (14.7 acorns"));
  EXPECT_THAT(tract.verdict("W").rules, Contains("R3.42"));
}

TEST(CountsOfATract, TooFewAutumnsAreToldBesideTheOakThatStays) {
  Tract2 tract;
  tract.count({21, 4}, {2, 1});
  const TreeVerdict red = tract.verdict("R");
  EXPECT_EQ(red.verdict, Verdict::keep);
  EXPECT_THAT(red.what_would_change_it, HasSubstr("(2 counted so far)"));
}

}  // namespace
}  // namespace oaklight
