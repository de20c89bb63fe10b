#include "core/measure/dbh_class.hpp"

#include <gtest/gtest.h>

#include "tests/support/readings.hpp"

namespace oaklight {
namespace {

using test::dbh_cm;
using test::dbh_in;

int one_inch(Dbh dbh) { return dbh_class(dbh, ClassWidth::one_inch).inches; }
int two_inches(Dbh dbh) { return dbh_class(dbh, ClassWidth::two_inches).inches; }

// Edges: standard cruise practice, from memory.
TEST(DbhClass, OfOneInchSendsAHalfUp) {
  EXPECT_EQ(one_inch(dbh_in(9.4)), 9);
  EXPECT_EQ(one_inch(dbh_in(9.5)), 10);
  EXPECT_EQ(one_inch(dbh_in(10.4)), 10);
  EXPECT_EQ(one_inch(dbh_in(10.5)), 11);
}

TEST(DbhClass, OfTwoInchesHoldsItsLowerEdgeOnly) {
  EXPECT_EQ(two_inches(dbh_in(8.9)), 8);
  EXPECT_EQ(two_inches(dbh_in(9.0)), 10);
  EXPECT_EQ(two_inches(dbh_in(10.9)), 10);
  EXPECT_EQ(two_inches(dbh_in(11.0)), 12);
}

TEST(DbhClass, OfTheThinnestStemsIsZero) {
  EXPECT_EQ(one_inch(dbh_in(0.4)), 0);
  EXPECT_EQ(one_inch(dbh_in(0.5)), 1);
  EXPECT_EQ(two_inches(dbh_in(0.9)), 0);
  EXPECT_EQ(two_inches(dbh_in(1.0)), 2);
}

// Derived: 1 in is 2.54 cm, so these readings lie on an edge or 0.1 cm below it.
TEST(DbhClass, IsExactForMetricReadingsOnAnEdge) {
  EXPECT_EQ(two_inches(dbh_cm(12.7)), 6) << "12.7 cm is 5 in, the lower edge of 6";
  EXPECT_EQ(two_inches(dbh_cm(12.6)), 4);
  EXPECT_EQ(one_inch(dbh_cm(12.7)), 5);
  EXPECT_EQ(two_inches(dbh_cm(38.1)), 16) << "38.1 cm is 15 in";
  EXPECT_EQ(one_inch(dbh_cm(64.7)), 25) << "64.7 cm is 25.47 in";
  EXPECT_EQ(one_inch(dbh_cm(64.8)), 26) << "64.8 cm is 25.51 in";
}

TEST(DbhClass, OfEveryReadingOfEitherTapeHoldsTheReading) {
  for (const UnitSystem system : {UnitSystem::us, UnitSystem::metric}) {
    const int top = system == UnitSystem::us ? Dbh::kMaxTenthInches : Dbh::kMaxTenthCentimetres;
    for (int tenths = 1; tenths <= top; ++tenths) {
      const Dbh dbh = Dbh::from_tenths(tenths, system).value();
      for (const ClassWidth width : {ClassWidth::one_inch, ClassWidth::two_inches}) {
        const ClassEdges edges = edges_of(dbh_class(dbh, width), width);
        ASSERT_GE(dbh.inches(), edges.from) << tenths;
        ASSERT_LT(dbh.inches(), edges.below) << tenths;
      }
    }
  }
}

}  // namespace
}  // namespace oaklight
