// Two groups of trees. Expected values: R's t.test on the sleep
// data of Student 1908, Biometrika 6:1-25 (tests/golden/oracle/paired.R).

#include "core/sample/mean_difference.hpp"

#include <gtest/gtest.h>

#include "tests/sample/ledger.hpp"

namespace oaklight::test {
namespace {

class Sleep : public testing::Test {
 protected:
  std::vector<double> group(const std::string& name) {
    return ledger_.at("/sleep/" + name).get<std::vector<double>>();
  }
  void expect(const std::string& path, const MeanDifference& d) {
    ledger_.expect(path + "/difference", d.difference);
    ledger_.expect(path + "/se", d.se);
    ledger_.expect(path + "/df", d.df);
    ledger_.expect(path + "/lo", d.lo);
    ledger_.expect(path + "/hi", d.hi);
  }
  Ledger ledger_{"expected_paired.json"};
};

TEST_F(Sleep, OfTwoGroupsByWelch) {
  const auto d = welch_difference(group("group2"), group("group1"), Confidence{}).value();
  expect("/sleep/welch", d);
  EXPECT_FALSE(d.clear());
}

TEST_F(Sleep, OfTwoGroupsOfUnequalSize) {
  auto few = group("group1");
  few.resize(6);
  const auto d = welch_difference(group("group2"), few, Confidence{}).value();
  expect("/sleep/uneven", d);
  EXPECT_TRUE(d.clear());
}

TEST(MeanDifference, RefusesWhatHasNoError) {
  const std::vector<double> one{0.2};
  const std::vector<double> two{0.2, 0.3};
  const std::vector<double> same{0.2, 0.2};
  EXPECT_EQ(welch_difference(one, two, {}).error().code, ErrorCode::too_few_plots);
  EXPECT_EQ(welch_difference(two, one, {}).error().code, ErrorCode::too_few_plots);
  EXPECT_EQ(welch_difference(same, same, {}).error().code, ErrorCode::contradiction);
  const std::vector<double> bad{0.2, std::nan("")};
  EXPECT_EQ(welch_difference(two, bad, {}).error().code, ErrorCode::not_a_number);
}

TEST(GroupMean, OfOneTreeHasNoError) {
  const std::vector<double> one{0.2};
  const GroupMean group = group_mean(one, {}).value();
  EXPECT_DOUBLE_EQ(group.mean, 0.2);
  EXPECT_FALSE(group.se.has_value());
  EXPECT_EQ(group_mean({}, {}).error().code, ErrorCode::no_data);
}

}  // namespace
}  // namespace oaklight::test
