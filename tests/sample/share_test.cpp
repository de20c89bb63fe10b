#include "core/sample/share.hpp"

#include <gtest/gtest.h>

namespace oaklight {
namespace {

TEST(Share, StaysWithinZeroAndAHundredPercent) {
  for (int n = 1; n <= 40; ++n) {
    for (int k = 0; k <= n; ++k) {
      const auto e = share_estimate(k, n, Confidence{}).value();
      ASSERT_GE(e.lo->value, 0.0) << k << " of " << n;
      ASSERT_LE(e.hi->value, 100.0) << k << " of " << n;
      ASSERT_LE(*e.lo, e.share) << k << " of " << n;
      ASSERT_GE(*e.hi, e.share) << k << " of " << n;
    }
  }
}

TEST(Share, HasNoErrorOfZeroWhenNoneOrAllPlotsHoldIt) {
  EXPECT_FALSE(share_estimate(0, 15, Confidence{}).value().se);
  EXPECT_FALSE(share_estimate(15, 15, Confidence{}).value().se);
  EXPECT_FALSE(share_estimate(1, 1, Confidence{}).value().se);
  EXPECT_TRUE(share_estimate(1, 2, Confidence{}).value().se);
  EXPECT_EQ(share_estimate(0, 15, Confidence{}).value().hi,
            share_when_none_found(15, Confidence{}));
  EXPECT_LT(share_estimate(15, 15, Confidence{}).value().lo->value, 82.0);
}

TEST(Share, RefusesCountsThatAreNoShare) {
  EXPECT_EQ(share_estimate(0, 0, Confidence{}).error().code, ErrorCode::too_few_plots);
  EXPECT_EQ(share_estimate(4, 3, Confidence{}).error().code, ErrorCode::too_few_plots);
  EXPECT_EQ(share_estimate(-1, 3, Confidence{}).error().code, ErrorCode::too_few_plots);
}

TEST(ShareWhenNoneFound, IsAboutThreeOverN) {
  // Derived: 1 - 0.05^(1/n), which is 2.95 % for 100 plots and 95 % for one.
  EXPECT_NEAR(share_when_none_found(100, Confidence{}).value, 3.0, 0.06);
  EXPECT_NEAR(share_when_none_found(1, Confidence{}).value, 95.0, 1e-9);
}

}  // namespace
}  // namespace oaklight
