#include "core/measure/stump_dbh.hpp"

#include <gtest/gtest.h>

#include <cmath>

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

// The heights between which a stump lies that nobody measured: 3 in (common practice) and 12 in
// (the most that felling specifications allow).
TEST(DbhFromStump, OfAStumpOfUnknownHeightReachesFromALowToAHighStump) {
  const auto assumed = dbh_from_stump({stump_in(20.0), {}, {}}, nullptr).value();
  const auto low = dbh_from_stump({stump_in(20.0), {}, tape_ft(0.25)}, nullptr).value();
  const auto high = dbh_from_stump({stump_in(20.0), {}, tape_ft(1.0)}, nullptr).value();
  EXPECT_NEAR(assumed.low.value, low.low.value, 1e-12);
  EXPECT_NEAR(assumed.high.value, high.high.value, 1e-12);
}

// Flares of the header: from memory. Derived: at 1 ft the stump is 1 + 1.75 flare of the DBH; under
// bark 0.93 of that, as for pine bark of 15 to 16 % (1 / sqrt(1.155) is 0.9305).
TEST(DbhFromStump, OfASoftwoodHasMoreFlare) {
  const Species pine = species("Pinus strobus", LeafType::softwood);
  const auto found = dbh_from_stump({stump_in(15.0), {}, tape_ft(1.0)}, &pine).value();
  EXPECT_NEAR(found.dbh.value, 15.0 / (1.0 + 1.75 * 0.11), 1e-12);
  EXPECT_NEAR(found.low.value, 15.0 / (1.0 + 1.75 * 0.15), 1e-12);
  EXPECT_NEAR(found.high.value, 15.0 / (1.0 + 1.75 * 0.07), 1e-12);
  const auto under = dbh_from_stump({{}, stump_in(15.0), tape_ft(1.0)}, &pine).value();
  EXPECT_NEAR(found.dbh / under.dbh, 0.93, 1e-12);
  EXPECT_NEAR(stump_taper(&pine).bark, 1.0 / std::sqrt(1.155), 1e-3);
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
  // Derived: at 1 ft a stump is 1.1575 of the DBH; trees of the inventory are 5 in and thicker, and
  // few of those behind the form are over 30 in.
  const auto beyond = [](double stump) {
    return dbh_from_stump({stump_in(stump), {}, tape_ft(1.0)}, nullptr).value().beyond_data;
  };
  EXPECT_TRUE(beyond(5.7)) << "4.92 in";
  EXPECT_FALSE(beyond(5.8)) << "5.01 in";
  EXPECT_FALSE(beyond(34.7)) << "29.98 in";
  EXPECT_TRUE(beyond(34.8)) << "30.06 in";
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
