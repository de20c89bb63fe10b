// Acorns by tree and year, from the files of two visits.

#include "core/release/acorn_trees.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "tests/support/readings.hpp"
#include "tests/support/test_ids.hpp"
#include "tests/support/trees.hpp"

namespace oaklight::test {
namespace {

/// A file with oaks that wear tags, and counts on them.
class Oaks {
 public:
  explicit Oaks(std::uint32_t first_id) : last_(first_id) {}
  void stand(const std::string& name) {
    data_.stands.push_back(Stand{.id = nth_id<StandId>(++last_), .name = name});
  }
  void oak(const std::string& tag, int fia) {
    data_.walk_trees.push_back(
        WalkTree{.id = nth_id<WalkTreeId>(++last_),
                 .stand = data_.stands.back().id,
                 .tag = tag,
                 .facts = TreeFacts{.species = SpeciesCode{fia}, .dbh = dbh_in(16.0)}});
    data_.walk_trees.back().crop = true;
  }
  void tips(const std::string& tag, int year, double per_tip) {
    count(tag, year, BranchTipCount{per_tip, 10});
  }
  void timed(const std::string& tag, int year, int n30) { count(tag, year, TimedCount{n30}); }
  void good_year(OakGroup group, int year) {
    AcornYear& one = data_.acorn_years.emplace_back();
    one.id = nth_id<AcornYearId>(++last_);
    one.group = group;
    one.year = year;
    one.crop = AcornCrop::good;
  }
  [[nodiscard]] const TractData& data() const { return data_; }

 private:
  void count(const std::string& tag, int year, std::variant<BranchTipCount, TimedCount> what) {
    const auto tree = std::ranges::find(data_.walk_trees, tag, &WalkTree::tag);
    ASSERT_NE(tree, data_.walk_trees.end());
    AcornCount& count = data_.acorn_counts.emplace_back();
    count.id = nth_id<AcornCountId>(++last_);
    count.tree = tree->id;
    count.year = year;
    count.count = what;
  }
  std::uint32_t last_;
  TractData data_;
};

constexpr int kWhiteOak = 802;
constexpr int kRedOak = 833;

std::vector<AcornTree> joined(const Oaks& first, const Oaks& second) {
  const ReleaseKnowledge& know = shipped_knowledge();
  return acorn_trees(first.data(), second.data(), know.species, know.settings.acorns).value();
}

TEST(AcornTrees, JoinTheCountsOfBothFilesByTag) {
  Oaks first(0), second(1000);
  for (Oaks* file : {&first, &second}) {
    file->stand("Upland");
    file->oak("101", kWhiteOak);
  }
  first.tips("101", 2026, 14.0);
  first.tips("101", 2027, 3.0);
  second.tips("101", 2027, 4.0);  // counted again: the second file's word counts
  second.timed("101", 2027, 9);
  const auto trees = joined(first, second);
  ASSERT_EQ(trees.size(), 1U);
  ASSERT_EQ(trees[0].autumns.size(), 2U);
  EXPECT_EQ(trees[0].autumns[0].year, 2026);
  EXPECT_FALSE(trees[0].autumns[0].n30.has_value()) << "not counted that way is not 0";
  EXPECT_DOUBLE_EQ(*trees[0].autumns[1].per_tip, 4.0);
  EXPECT_EQ(*trees[0].autumns[1].n30, 9);
  // Derived: mean of 14 and 4 is 9, fair by R3.42 (6 to 11, Sharp 1958, from memory).
  EXPECT_EQ(trees[0].record.producer, Producer::fair);
  EXPECT_EQ(trees[0].record.years, 2);
}

TEST(AcornTrees, APoorYearIsNotAPoorTree) {
  Oaks first(0), second(1000);
  second.stand("Upland");
  second.oak("101", kRedOak);
  for (const int year : {2027, 2028, 2029}) second.tips("101", year, 2.0);
  EXPECT_EQ(joined(first, second)[0].record.producer, Producer::poor);
  EXPECT_FALSE(joined(first, second)[0].record.proven_poor) << "no good year is on record";
  first.good_year(OakGroup::white, 2028);
  EXPECT_FALSE(joined(first, second)[0].record.proven_poor) << "good for the other group";
  first.good_year(OakGroup::red, 2028);
  EXPECT_TRUE(joined(first, second)[0].record.proven_poor);
}

TEST(AcornTrees, WithTimedCountsOnlyHaveNoProducerClass) {
  Oaks first(0), second(1000);
  second.stand("Upland");
  second.oak("101", kWhiteOak);
  second.timed("101", 2027, 40);
  EXPECT_EQ(joined(first, second)[0].record.producer, Producer::no_record);
}

TEST(AcornTrees, WithoutCountsThereIsNothing) {
  Oaks first(0), second(1000);
  second.stand("Upland");
  second.oak("101", kWhiteOak);
  EXPECT_TRUE(joined(first, second).empty());
}

TEST(AcornIndex, IsTheMeanLogarithmOverTreesOfOneSpeciesAndYear) {
  Oaks first(0), second(1000);
  second.stand("Upland");
  second.oak("1", kWhiteOak);
  second.oak("2", kWhiteOak);
  second.oak("3", kRedOak);
  second.timed("1", 2027, 0);
  second.timed("2", 2027, 19);
  second.timed("3", 2027, 50);
  second.timed("1", 2028, 3);
  const auto indices = acorn_indices(joined(first, second), 25, Confidence{});
  ASSERT_EQ(indices.size(), 3U);  // one stand: no row for the tract
  EXPECT_EQ(indices[0].year, 2027);
  EXPECT_EQ(indices[0].species.fia, kWhiteOak);
  // Derived: (ln 1 + ln 20) / 2.
  EXPECT_NEAR(indices[0].index.mean, std::log(20.0) / 2.0, 1e-12);
  EXPECT_DOUBLE_EQ(indices[0].bearing.value, 50.0);
  EXPECT_FALSE(indices[0].enough);
  EXPECT_NEAR(indices[1].index.mean, std::log(4.0), 1e-12);
  EXPECT_FALSE(indices[1].index.se.has_value()) << "one tree tells no error";
  EXPECT_EQ(indices[2].species.fia, kRedOak);
}

TEST(AcornIndex, OfTheTractStandsBesideThoseOfItsStands) {
  // By hand: 13 oaks in each of two stands.
  Oaks first(0), second(1000);
  for (const char* stand : {"Upland", "Cove"}) {
    second.stand(stand);
    for (int i = 0; i < 13; ++i) {
      const std::string tag = stand + std::to_string(i);
      second.oak(tag, kWhiteOak);
      second.timed(tag, 2027, i);
    }
  }
  const auto indices = acorn_indices(joined(first, second), 25, Confidence{});
  ASSERT_EQ(indices.size(), 3U);
  EXPECT_EQ(indices[0].stand, "");
  EXPECT_EQ(indices[0].index.n, 26);
  EXPECT_TRUE(indices[0].enough);
  EXPECT_FALSE(indices[1].enough);
}

}  // namespace
}  // namespace oaklight::test
