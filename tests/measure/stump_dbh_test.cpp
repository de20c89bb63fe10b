#include "core/measure/stump_dbh.hpp"

#include <gtest/gtest.h>

#include "tests/support/readings.hpp"

namespace oaklight {
namespace {

using test::stump_cm;
using test::stump_in;
using test::tape_ft;

Species species(const char* scientific, LeafType leaf = LeafType::hardwood) {
  Species s;
  s.scientific_name = scientific;
  s.leaf = leaf;
  return s;
}

// Derived, by hand from the form in the header: at 1 ft, (4.5 - 1) / (1 + 1) is 1.75, and with a
// flare of 0.09 the stump is 1.1575 of the DBH.
TEST(DbhFromStump, IsTheStumpLessItsFlare) {
  const Species oak = species("Quercus alba");
  const auto found = dbh_from_stump({stump_in(23.2), {}, tape_ft(1.0)}, &oak);
  ASSERT_TRUE(found.has_value());
  EXPECT_NEAR(found->dbh.value, 23.2 / 1.1575, 1e-12);
  EXPECT_NEAR(found->low.value, 23.2 / (1.0 + 0.12 * 1.75), 1e-12);
  EXPECT_NEAR(found->high.value, 23.2 / (1.0 + 0.06 * 1.75), 1e-12);
  EXPECT_FALSE(found->height_assumed);
  EXPECT_FALSE(found->beyond_data);
}

TEST(DbhFromStump, IsTheSameInCentimetres) {
  const Species oak = species("Quercus alba");
  const auto inches = dbh_from_stump({stump_in(20.0), {}, tape_ft(1.0)}, &oak).value();
  const auto metric = dbh_from_stump({stump_cm(50.8), {}, tape_ft(1.0)}, &oak).value();
  EXPECT_NEAR(inches.dbh.value, metric.dbh.value, 1e-12);
}

// Derived: 1 / sqrt(1.109) is 0.9496, 1 / sqrt(1.16) is 0.9285 (bark volumes of the header).
TEST(DbhFromStump, UnderBarkFirstGetsItsBarkBack) {
  const Species maple = species("Acer rubrum");
  const auto under = dbh_from_stump({{}, stump_in(19.0), tape_ft(1.0)}, &maple).value();
  const auto over = dbh_from_stump({stump_in(20.0), {}, tape_ft(1.0)}, &maple).value();
  EXPECT_NEAR(under.dbh.value, over.dbh.value, 1e-12);
  EXPECT_NEAR(stump_taper(&maple).bark, 0.9496, 5e-4);
  const Species hickory = species("Carya ovata");
  EXPECT_NEAR(stump_taper(&hickory).bark, 0.9285, 2e-3);
}

TEST(DbhFromStump, GoesByTheBarkWhenBothWereRead) {
  const auto both = dbh_from_stump({stump_in(20.0), stump_in(17.0), tape_ft(0.5)}, nullptr).value();
  const auto over = dbh_from_stump({stump_in(20.0), {}, tape_ft(0.5)}, nullptr).value();
  EXPECT_EQ(both.dbh, over.dbh);
}

// Rule of thumb among foresters: DBH is about the stump's diameter under bark. Source: Beck,
// Teeguarden and Hall 1966, California Forestry and Forest Products 44 (abstract read); for a stump
// of 1 ft, from memory.
TEST(DbhFromStump, StaysNearTheRuleOfThumb) {
  for (const char* name : {"Quercus rubra", "Acer rubrum", "Carya glabra"}) {
    const Species one = species(name);
    const auto found = dbh_from_stump({{}, stump_in(15.0), tape_ft(1.0)}, &one).value();
    EXPECT_NEAR(found.dbh.value, 15.0, 0.12 * 15.0) << name;
    EXPECT_LT(found.low.value, 15.0) << name;
  }
}

TEST(DbhFromStump, OfAStumpOfUnknownHeightIsLessSure) {
  const auto known = dbh_from_stump({stump_in(20.0), {}, tape_ft(0.5)}, nullptr).value();
  const auto assumed = dbh_from_stump({stump_in(20.0), {}, {}}, nullptr).value();
  EXPECT_TRUE(assumed.height_assumed);
  EXPECT_EQ(assumed.dbh, known.dbh);
  EXPECT_LT(assumed.low, known.low);
  EXPECT_GT(assumed.high, known.high);
}

TEST(DbhFromStump, OfALowerStumpIsThinner) {
  Inches before{0.0};
  for (const double height : {0.0, 0.25, 0.5, 1.0, 2.0, 4.4}) {
    const auto found = dbh_from_stump({stump_in(20.0), {}, tape_ft(height)}, nullptr).value();
    EXPECT_GT(found.dbh, before) << height;
    EXPECT_LE(found.low, found.dbh);
    EXPECT_LE(found.dbh, found.high);
    EXPECT_LE(found.high, Inches{20.0});
    before = found.dbh;
  }
}

TEST(DbhFromStump, SaysWhenTheTreeIsBeyondItsData) {
  EXPECT_TRUE(dbh_from_stump({stump_in(4.0), {}, tape_ft(0.5)}, nullptr).value().beyond_data);
  EXPECT_TRUE(dbh_from_stump({stump_in(60.0), {}, tape_ft(0.5)}, nullptr).value().beyond_data);
}

TEST(DbhFromStump, NeedsADiameterAndAStump) {
  EXPECT_EQ(dbh_from_stump({{}, {}, tape_ft(0.5)}, nullptr).error().code, ErrorCode::missing_value);
  for (const double height : {4.5, 6.0}) {
    const auto found = dbh_from_stump({stump_in(20.0), {}, tape_ft(height)}, nullptr);
    ASSERT_FALSE(found.has_value());
    EXPECT_EQ(found.error().code, ErrorCode::out_of_range);
    EXPECT_EQ(found.error().where, "height");
  }
}

TEST(StumpTaper, GoesByLeafAndGenus) {
  const Species pine = species("Pinus strobus", LeafType::softwood);
  const Species maple = species("Acer saccharum");
  const Species oak = species("Quercus alba");
  EXPECT_EQ(stump_taper(&pine).name, "softwood");
  EXPECT_EQ(stump_taper(&maple).name, "thin-barked hardwood");
  EXPECT_EQ(stump_taper(&oak).name, "thick-barked hardwood");
  EXPECT_EQ(stump_taper(nullptr).name, "thick-barked hardwood");
  EXPECT_NE(stump_taper(&oak).source.find("from memory"), std::string_view::npos);
}

}  // namespace
}  // namespace oaklight
