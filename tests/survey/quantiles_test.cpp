// Quantiles, audit sizes and shares against R's distributions, for cases that R draws by a seed
// (quantiles.R).
#include <gtest/gtest.h>

#include <cmath>

#include "core/sample/audit.hpp"
#include "core/sample/confidence.hpp"
#include "core/sample/share.hpp"
#include "tests/support/results.hpp"
#include "tests/survey/r_lines.hpp"

namespace oaklight::test {
namespace {

class Quantiles : public testing::Test {
 protected:
  void SetUp() override {
    if (!r_is_installed()) GTEST_SKIP() << "needs R";
  }

  /// Runs the check on each line of one kind; how many there were goes into the report.
  template <class Check>
  static void each(const std::string& what, Check check) {
    static const auto lines = r_lines("quantiles.R");
    int compared = 0;
    for (const RLine& line : lines) {
      if (line.words.at(0) != what) continue;
      check(line.numbers);
      ++compared;
    }
    EXPECT_GT(compared, 0) << what;
    result_table("drawn_cases", {"what", "compared"}).add({what, std::to_string(compared)});
  }
};

using Numbers = std::vector<double>;

Confidence level_of(double share) { return Confidence::from_share(share).value(); }
int whole(double x) { return static_cast<int>(std::lround(x)); }

/// The same to ten digits.
void expect_close(double got, double want, const char* what) {
  EXPECT_NEAR(got, want, 1e-10 * std::max(1.0, std::fabs(want))) << what;
}

TEST_F(Quantiles, OfStudentAndNormalAreThoseOfR) {
  each("t", [](const Numbers& n) { expect_close(student_t(level_of(n[0]), n[1]), n[2], "t"); });
  each("normal",
       [](const Numbers& n) { expect_close(normal_multiplier(level_of(n[0])), n[1], "normal"); });
}

TEST_F(Quantiles, AuditsOfAListAndWithoutOneAreThoseOfR) {
  each("audit_list", [](const Numbers& n) {
    const auto plan = audit_plan(whole(n[0]), whole(n[1]), Percent{n[2]}, level_of(n[3])).value();
    EXPECT_EQ(plan.sample, whole(n[4])) << "list of " << n[0] << ", bound " << n[2];
  });
  each("audit_open", [](const Numbers& n) {
    const auto plan = audit_plan(std::nullopt, whole(n[0]), Percent{n[1]}, level_of(n[2])).value();
    EXPECT_EQ(plan.sample, whole(n[3])) << "bound " << n[1];
  });
  each("share_list", [](const Numbers& n) {
    expect_close(
        greatest_wrong_share(whole(n[0]), whole(n[1]), whole(n[2]), level_of(n[3])).value().value,
        n[4], "of a list");
  });
  each("share_open", [](const Numbers& n) {
    expect_close(
        greatest_wrong_share(std::nullopt, whole(n[0]), whole(n[1]), level_of(n[2])).value().value,
        n[3], "without a list");
  });
}

TEST_F(Quantiles, SharesOfPlotsAreThoseOfR) {
  each("wilson", [](const Numbers& n) {
    const auto e = share_estimate(whole(n[1]), whole(n[0]), level_of(n[2])).value();
    expect_close(e.lo->value, n[3], "lower");
    expect_close(e.hi->value, n[4], "upper");
  });
  each("none_found", [](const Numbers& n) {
    expect_close(share_when_none_found(whole(n[0]), level_of(n[1])).value, n[2], "none found");
  });
}

}  // namespace
}  // namespace oaklight::test
