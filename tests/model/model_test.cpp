#include <gtest/gtest.h>

#include <concepts>

#include "core/model/mark.hpp"
#include "tests/support/readings.hpp"

namespace oaklight {
namespace {

using test::dbh_in;

// The id of one kind of record never lands in the place of another.
static_assert(!std::convertible_to<TreeId, PlotId>);
static_assert(!std::convertible_to<WalkTreeId, TreeId>);
static_assert(!std::convertible_to<Uuid, TreeId>);

TEST(Conditions, AreASet) {
  Conditions conditions;
  EXPECT_TRUE(conditions.empty());
  conditions.add(Condition::den);
  conditions.add(Condition::den);
  EXPECT_EQ(conditions, (Conditions{Condition::den}));
  EXPECT_TRUE(conditions.has(Condition::den));
  EXPECT_FALSE(conditions.has(Condition::conk));
  EXPECT_FALSE(conditions.empty());
}

TEST(Conditions, KeepEachConditionApart) {
  for (const auto& [one, word] : kWords<Condition>) {
    const Conditions alone{one};
    for (const auto& [other, other_word] : kWords<Condition>) {
      EXPECT_EQ(alone.has(other), one == other) << word << " " << other_word;
    }
  }
}

TEST(Sides, CountThemselves) {
  EXPECT_EQ(Sides{}.count(), 0);
  EXPECT_TRUE(Sides{}.empty());
  EXPECT_EQ(Sides::all().count(), 4);
  Sides sides{Side::north};
  sides.add(Sides{Side::north, Side::west});
  EXPECT_EQ(sides.count(), 2);
  EXPECT_TRUE(sides.has(Side::west));
  EXPECT_FALSE(sides.has(Side::east));
  EXPECT_EQ(sides, (Sides{Side::west, Side::north}));
}

Species species(int fia, std::string scientific) {
  Species s;
  s.code.fia = fia;
  s.scientific_name = std::move(scientific);
  return s;
}

TEST(Species, IsAnOakByItsGenusAlone) {
  EXPECT_TRUE(species(802, "Quercus alba").is_oak());
  EXPECT_TRUE(species(800, "Quercus").is_oak()) << "a genus row, group not told";
  EXPECT_FALSE(species(701, "Ostrya virginiana").is_oak());
  EXPECT_FALSE(species(9901, "").is_oak());
  EXPECT_EQ(species(802, "Quercus alba").genus(), "Quercus");
}

TEST(SpeciesTable, FindsByCodeOrSaysNothing) {
  const SpeciesTable table({species(802, "Quercus alba"), species(833, "Quercus rubra")});
  ASSERT_NE(table.find({833}), nullptr);
  EXPECT_EQ(table.find({833})->scientific_name, "Quercus rubra");
  EXPECT_EQ(table.find({316}), nullptr);
  EXPECT_EQ(SpeciesTable{}.find({802}), nullptr);
}

// Definitions of the units: 1 m2/ha is 43,560 / 10,000 ft2/ac.
TEST(PointDesign, ReadsItsFactorInItsOwnSystem) {
  EXPECT_EQ((PointDesign{10.0, UnitSystem::us}.baf()), SquareFeetPerAcre{10.0});
  EXPECT_NEAR((PointDesign{2.0, UnitSystem::metric}.baf().value), 8.712, 1e-12);
}

TEST(FixedDesign, ReadsItsAreasInItsOwnSystem) {
  const FixedDesign us{.area = 0.1, .small_area = 0.01, .small_below = dbh_in(5.0)};
  EXPECT_EQ(us.acres(), Acres{0.1});
  EXPECT_EQ(us.small_acres(), Acres{0.01});
  const FixedDesign metric{.area = 0.04, .system = UnitSystem::metric};
  // 1 ha is 2.471053815 ac by definition of the units.
  EXPECT_NEAR(metric.acres().value, 0.0988421526, 1e-10);
  EXPECT_FALSE(metric.small_acres().has_value());
}

TEST(Design, DiffersByKindAndByUnit) {
  const Design point = PointDesign{10.0, UnitSystem::us};
  EXPECT_EQ(point, Design(PointDesign{10.0, UnitSystem::us}));
  EXPECT_NE(point, Design(PointDesign{10.0, UnitSystem::metric}));
  EXPECT_NE(point, Design(FixedDesign{}));
}

TEST(TreeFacts, RecordNothingUnlessTold) {
  const TreeFacts facts{.species = {802}, .dbh = dbh_in(12.0)};
  EXPECT_FALSE(facts.crown_class.has_value());
  EXPECT_FALSE(facts.live_crown.has_value());
  EXPECT_FALSE(facts.dieback.has_value());
  EXPECT_FALSE(facts.height.has_value());
  EXPECT_FALSE(facts.half_logs.has_value());
  EXPECT_TRUE(facts.conditions.empty());
}

}  // namespace
}  // namespace oaklight
