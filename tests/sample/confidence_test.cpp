#include "core/sample/confidence.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace oaklight {
namespace {

// Common practice in cruising reports.
TEST(Confidence, IsNinetyFivePercentUnlessAsked) { EXPECT_EQ(Confidence{}.share(), 0.95); }

TEST(Confidence, RefusesLevelsThatNoIntervalReaches) {
  for (const double share : {0.0, 1.0, -0.1, 1.5, 95.0, std::numeric_limits<double>::quiet_NaN(),
                             std::numeric_limits<double>::infinity()}) {
    const auto refused = Confidence::from_share(share);
    ASSERT_FALSE(refused) << share;
    EXPECT_EQ(refused.error().code, ErrorCode::level_out_of_range);
    EXPECT_FALSE(refused.error().fix.empty());
  }
}

TEST(Confidence, RefusesInPercentAsItWasTyped) {
  EXPECT_NE(Confidence::from_share(1.5).error().what.find("150.0 %"), std::string::npos)
      << Confidence::from_share(1.5).error().what;
}

TEST(StudentT, FallsWithDegreesOfFreedomTowardTheNormal) {
  double last = student_t(Confidence{}, 1.0);
  for (const double df : {1.5, 2.0, 3.7, 10.0, 100.0, 1e4, 1e8}) {
    const double t = student_t(Confidence{}, df);
    EXPECT_LT(t, last) << df;
    EXPECT_GT(t, normal_multiplier(Confidence{})) << df;
    last = t;
  }
  EXPECT_NEAR(last, normal_multiplier(Confidence{}), 1e-7);
}

TEST(StudentT, IsExactWhereTheFormulaIsClosed) {
  // df 1 is the Cauchy distribution: the quartile (confidence one half) is 1.
  EXPECT_NEAR(student_t(Confidence::from_share(0.5).value(), 1.0), 1.0, 1e-14);
  // df 2: t = c sqrt(2 / (1 - c^2)) for confidence c.
  EXPECT_NEAR(student_t(Confidence::from_share(0.9).value(), 2.0), 0.9 * std::sqrt(2.0 / 0.19),
              1e-13);
}

}  // namespace
}  // namespace oaklight
