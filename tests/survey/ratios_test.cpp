// Ratios of sums and paired changes over stands against R's package survey, for values that R draws
// by a seed (ratios.R).
#include <gtest/gtest.h>

#include <cmath>

#include "core/sample/paired.hpp"
#include "core/sample/ratio.hpp"
#include "tests/support/results.hpp"
#include "tests/survey/r_lines.hpp"

namespace oaklight::test {
namespace {

/// One case of ratios.R.
struct Case {
  std::vector<PairedValues> values;  ///< x first, y second, by stratum
  std::vector<double> sizes;
  std::vector<double> populations;  ///< 0: not finite
  std::vector<double> answers;      ///< ratio, se, change, se, lower, upper

  explicit Case(const std::vector<double>& numbers) {
    std::size_t at = 0;
    const auto next = [&] { return numbers.at(at++); };
    const auto strata = static_cast<std::size_t>(next());
    for (std::size_t h = 0; h < strata; ++h) {
      sizes.push_back(next());
      populations.push_back(next());
      const auto plots = static_cast<std::size_t>(next());
      PairedValues pairs;
      for (auto* side : {&pairs.first, &pairs.second}) {
        while (side->size() < plots) side->push_back(next());
      }
      values.push_back(pairs);
    }
    while (at < numbers.size()) answers.push_back(next());
  }

  [[nodiscard]] bool is_finite() const { return populations.front() > 0.0; }
};

void expect_close(double got, double want) {
  EXPECT_NEAR(got, want, 1e-9 * std::max(1.0, std::fabs(want)));
}

TEST(Ratios, AndChangesOfPairsAreThoseOfR) {
  if (!survey_is_installed()) GTEST_SKIP() << "needs R with package survey";
  int cases = 0;
  for (const RLine& line : r_lines("ratios.R")) {
    SCOPED_TRACE("case " + std::to_string(++cases));
    const Case c(line.numbers);
    ASSERT_EQ(c.answers.size(), 6U);
    std::vector<PairedStratum> strata;
    for (std::size_t h = 0; h < c.values.size(); ++h) {
      strata.push_back(
          {.size = c.sizes[h],
           .plots = static_cast<int>(c.values[h].first.size()),
           .x = c.values[h].first,
           .y = c.values[h].second,
           .population = c.is_finite() ? std::optional(c.populations[h]) : std::nullopt});
    }
    const Ratio ratio = ratio_of_sums(strata).value();
    expect_close(ratio.ratio, c.answers[0]);
    expect_close(*ratio.se, c.answers[1]);
    if (c.is_finite()) continue;  // the change between two visits has no such correction
    const auto change =
        paired_change(c.sizes, c.values, Confidence{}, DegreesOfFreedom::plots_less_strata).value();
    expect_close(change.change, c.answers[2]);
    expect_close(*change.se, c.answers[3]);
    expect_close(*change.lo, c.answers[4]);
    expect_close(*change.hi, c.answers[5]);
  }
  EXPECT_EQ(cases, 40) << "by definition of ratios.R";
  result_table("drawn_cases", {"what", "compared"}).add({"ratios", std::to_string(cases)});
}

}  // namespace
}  // namespace oaklight::test
