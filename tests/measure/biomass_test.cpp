#include "core/measure/biomass.hpp"

#include <gtest/gtest.h>

#include <array>

#include "tests/support/readings.hpp"

namespace oaklight {
namespace {

using test::dbh_cm;
using test::dbh_in;

constexpr auto kGroups = {"aspen_alder_cottonwood_willow",
                          "soft_maple_birch",
                          "mixed_hardwood",
                          "hard_maple_oak_hickory_beech",
                          "cedar_larch",
                          "fir_hemlock",
                          "pine",
                          "spruce"};

// Values: tests/published/tree_tables.tsv and mensuration.tsv.
TEST(Biomass, PartsAddUpAndAreAllWood) {
  for (const char* group : kGroups) {
    for (const double cm : {2.5, 10.0, 30.0, 56.0}) {
      const Biomass mass = dry_biomass(dbh_cm(cm), group).value();
      EXPECT_NEAR((mass.foliage + mass.stem_wood + mass.stem_bark + mass.branches).value,
                  mass.above_ground.value, 1e-9);
      for (const Kilograms part :
           {mass.foliage, mass.stem_wood, mass.stem_bark, mass.branches, mass.coarse_roots}) {
        EXPECT_GT(part, Kilograms{}) << group << " " << cm;
      }
    }
  }
}

TEST(Biomass, IsNotToldBeyondTheTreesBehindTheEquation) {
  const auto code = [](Dbh dbh, const char* group) {
    const auto result = dry_biomass(dbh, group);
    return result ? std::optional<ErrorCode>{} : std::optional(result.error().code);
  };
  EXPECT_EQ(code(dbh_cm(2.4), "pine"), ErrorCode::outside_table);
  EXPECT_FALSE(code(dbh_cm(2.5), "pine"));
  EXPECT_EQ(code(dbh_in(0.9), "pine"), ErrorCode::outside_table) << "0.9 in is 2.3 cm";
  // Largest trees, from memory of the paper: oaks 73 cm, mixed hardwoods 56 cm.
  EXPECT_FALSE(code(dbh_cm(73.0), "hard_maple_oak_hickory_beech"));
  EXPECT_EQ(code(dbh_cm(73.1), "hard_maple_oak_hickory_beech"), ErrorCode::outside_table);
  EXPECT_EQ(code(dbh_cm(56.1), "mixed_hardwood"), ErrorCode::outside_table);
}

// Largest trees behind each equation: Jenkins et al. 2003, from memory.
TEST(Biomass, EndsWithTheLargestTreesOfItsGroup) {
  constexpr std::array<std::pair<const char*, double>, 8> kLargest{
      {{"aspen_alder_cottonwood_willow", 70.0},
       {"soft_maple_birch", 66.0},
       {"mixed_hardwood", 56.0},
       {"hard_maple_oak_hickory_beech", 73.0},
       {"cedar_larch", 250.0},
       {"fir_hemlock", 230.0},
       {"pine", 180.0},
       {"spruce", 250.0}}};
  for (const auto& [group, cm] : kLargest) {
    EXPECT_TRUE(dry_biomass(dbh_cm(cm), group)) << group;
    EXPECT_FALSE(dry_biomass(dbh_cm(cm + 0.1), group)) << group;
  }
}

TEST(Biomass, RefusesAGroupWithoutAnEquation) {
  EXPECT_EQ(dry_biomass(dbh_in(4.0), "woodland").error().code, ErrorCode::outside_table);
  EXPECT_EQ(dry_biomass(dbh_in(4.0), "oak").error().code, ErrorCode::unknown_reference);
  EXPECT_EQ(dry_biomass(dbh_in(4.0), "").error().code, ErrorCode::unknown_reference);
}

}  // namespace
}  // namespace oaklight
