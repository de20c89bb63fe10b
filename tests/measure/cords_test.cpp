#include "core/measure/cords.hpp"

#include <gtest/gtest.h>

#include <set>

#include "core/measure/basal_area.hpp"
#include "tests/support/readings.hpp"

namespace oaklight {
namespace {

using test::dbh_cm;
using test::dbh_in;

// Values: tests/published/tree_tables.tsv and mensuration.tsv.
TEST(FirewoodCords, RunStraightBetweenThePrintedDiameters) {
  // By hand: 18 in 0.65 and 22 in 1.00, so 20 in is halfway and 18.4 in a tenth of the way.
  EXPECT_NEAR(firewood_cords(dbh_in(20.0)).value().value, 0.825, 1e-12);
  EXPECT_NEAR(firewood_cords(dbh_in(18.4)).value().value, 0.685, 1e-12);
}

TEST(FirewoodCords, AreNotToldOutsideTheTable) {
  for (const Dbh dbh : {dbh_in(4.9), dbh_in(22.1), dbh_cm(12.6), dbh_cm(55.9)}) {
    const auto cords = firewood_cords(dbh);
    ASSERT_FALSE(cords.has_value());
    EXPECT_EQ(cords.error().code, ErrorCode::outside_table);
    EXPECT_EQ(trees_per_cord(dbh).error().code, ErrorCode::outside_table);
  }
  EXPECT_TRUE(firewood_cords(dbh_in(5.0)).has_value());
  EXPECT_TRUE(firewood_cords(dbh_cm(12.7)).has_value()) << "12.7 cm is 5 in";
  EXPECT_TRUE(firewood_cords(dbh_in(22.0)).has_value());
  EXPECT_TRUE(too_thin_for_firewood(dbh_in(4.9)));
  EXPECT_FALSE(too_thin_for_firewood(dbh_in(5.0)));
}

// Definitions: a cord is 4 x 4 x 8 ft; a face cord of 16-in pieces is a third of it.
TEST(StackedCords, OfAFaceCordAreAThird) {
  const CubicFeet face_cord = stacked(Feet{4.0}, Feet{8.0}, Inches{16.0});
  EXPECT_NEAR(cords_of_stacked(face_cord).value, 1.0 / 3.0, 1e-12);
}

TEST(StemCubicFeet, FollowTheRuleOfThumb) {
  // By hand, 0.42 x basal area x height (from memory), with basal area 0.7854 ft2 at 12 in.
  EXPECT_NEAR(stem_cubic_feet(dbh_in(12.0), Feet{70.0}).value, 23.09, 0.005);
  EXPECT_EQ(stem_cubic_feet(dbh_in(12.0), Feet{}), CubicFeet{});
}

TEST(PulpwoodShortcut, IsNothingAtSixInchesAndBelow) {
  EXPECT_EQ(pulpwood_shortcut(dbh_in(6.0)), CubicFeet{});
  EXPECT_EQ(pulpwood_shortcut(dbh_in(5.0)), CubicFeet{}) << "never negative wood";
}

Species species(int fia, std::string scientific, LeafType leaf, OakGroup oak = OakGroup::none) {
  Species s;
  s.code.fia = fia;
  s.scientific_name = std::move(scientific);
  s.leaf = leaf;
  s.oak_group = oak;
  return s;
}

TEST(CordKind, IsTheSpeciesOwnOrItsGroups) {
  constexpr auto kHardwood = LeafType::hardwood;
  constexpr auto kSoftwood = LeafType::softwood;
  EXPECT_EQ(cord_kind(species(746, "Populus tremuloides", kHardwood)), CordKind::aspen);
  EXPECT_EQ(cord_kind(species(837, "Quercus velutina", kHardwood, OakGroup::red)),
            CordKind::red_oak);
  EXPECT_EQ(cord_kind(species(832, "Quercus prinus", kHardwood, OakGroup::white)),
            CordKind::white_oak);
  EXPECT_EQ(cord_kind(species(800, "Quercus", kHardwood)), CordKind::mixed_hardwood)
      << "an oak whose group is not told is not guessed";
  EXPECT_EQ(cord_kind(species(316, "Acer rubrum", kHardwood)), CordKind::mixed_hardwood);
  EXPECT_EQ(cord_kind(species(97, "Picea rubens", kSoftwood)), CordKind::spruce);
  EXPECT_EQ(cord_kind(species(241, "Thuja occidentalis", kSoftwood)), CordKind::cedar);
  EXPECT_EQ(cord_kind(species(110, "Pinus echinata", kSoftwood)), std::nullopt)
      << "no published weight";
}

TEST(CordWeight, IsToldForEachKindAndLessWhenSeasoned) {
  for (const auto& [kind, word] : kWords<CordKind>) {
    EXPECT_GT(cord_weight(kind, Dryness::seasoned), Pounds{}) << word;
    EXPECT_GT(cord_weight(kind, Dryness::green), cord_weight(kind, Dryness::seasoned)) << word;
  }
}

}  // namespace
}  // namespace oaklight
