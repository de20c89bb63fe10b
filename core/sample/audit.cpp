#include "core/sample/audit.hpp"

#include <algorithm>
#include <boost/math/distributions/binomial.hpp>
#include <boost/math/distributions/hypergeometric.hpp>
#include <cmath>
#include <numeric>
#include <random>

#include "core/base/number_text.hpp"

namespace oaklight {
namespace {

// No exception may leave this file: arguments are checked before, and a failure gives NaN.
using Quiet = boost::math::policies::policy<
    boost::math::policies::domain_error<boost::math::policies::ignore_error>,
    boost::math::policies::overflow_error<boost::math::policies::ignore_error>,
    boost::math::policies::evaluation_error<boost::math::policies::ignore_error>>;

/// Chance to find at most `found` wrong ones in a sample from a list that holds `wrong`.
double chance_from_list(int list, int wrong, int sample, int found) {
  if (found >= std::min(wrong, sample)) return 1.0;
  const int least = std::max(0, sample + wrong - list);
  if (found < least) return 0.0;
  const boost::math::hypergeometric_distribution<double, Quiet> drawn(
      static_cast<unsigned>(wrong), static_cast<unsigned>(sample), static_cast<unsigned>(list));
  return cdf(drawn, static_cast<unsigned>(found));
}

/// The same when each has the same chance to be wrong; more are looked at than may be wrong.
double chance_of_share(double share, int sample, int found) {
  const boost::math::binomial_distribution<double, Quiet> drawn(sample, share);
  return cdf(drawn, found);
}

/// Whether a chance is no greater than the risk. A chance of 0.2 is, although 1 - 0.8 comes out a
/// rounding below it.
bool within(double chance, double risk) {
  constexpr double kRoundingError = 1e-12;
  return chance <= risk * (1.0 + kRoundingError);
}

/// The least number from first to last at which the chance is no greater than the risk; it falls
/// with the number. last when none is.
template <class Chance>
int least_with(int first, int last, double risk, Chance chance) {
  while (first < last) {
    const int middle = first + (last - first) / 2;
    if (within(chance(middle), risk)) {
      last = middle;
    } else {
      first = middle + 1;
    }
  }
  return first;
}

Error out_of_range(const char* what, const char* where, const char* fix) {
  return {ErrorCode::out_of_range, what, where, fix};
}

std::optional<Error> check(std::optional<int> list, int allowed, Percent bound) {
  if (list && (*list < 1 || *list > kLongestAuditList)) {
    return out_of_range("There is nothing to look at, or more than an audit can take.", "list",
                        "Audit one stand at a time.");
  }
  if (!(bound.value > 0.0 && bound.value < 100.0)) {
    return out_of_range("The wrong share to be claimed must lie between 0 and 100 %.", "bound",
                        "Choose one like 5 %.");
  }
  if (allowed < 0 || (list && allowed >= *list)) {
    return out_of_range("So many wrong ones cannot be allowed in a sample.", "allowed",
                        "Choose 0, 1 or 2.");
  }
  return std::nullopt;
}

/// A draw below `end`, each equally likely: values past the last whole multiple are drawn again.
/// The standard fixes the engine's numbers, but not those of its own distributions.
std::uint64_t draw_below(std::mt19937_64& chance, std::uint64_t end) {
  const std::uint64_t most = std::mt19937_64::max();
  const std::uint64_t whole = most - most % end;
  std::uint64_t value = chance();
  while (value >= whole) value = chance();
  return value % end;
}

}  // namespace

Result<AuditPlan> audit_plan(std::optional<int> list, int allowed, Percent bound,
                             Confidence confidence) {
  if (const auto fault = check(list, allowed, bound)) return *fault;
  const double risk = 1.0 - confidence.share();
  const double share = bound.value / 100.0;
  AuditPlan plan{0, allowed, list ? AuditModel::hypergeometric : AuditModel::binomial, 0.0};
  if (list) {
    // The smallest number of wrong ones that breaks the claim. A share of whole trees is exact in
    // tenths of a percent; the small amount keeps 5 % of 40 at 2.
    constexpr double kRoundingError = 1e-9;
    const int wrong =
        std::min(*list, static_cast<int>(std::floor(share * *list + kRoundingError)) + 1);
    const auto chance = [&](int n) { return chance_from_list(*list, wrong, n, allowed); };
    plan.sample = least_with(std::min(allowed + 1, *list), *list, risk, chance);
    // After the whole list nothing is left to chance.
    plan.risk = plan.sample == *list ? 0.0 : chance(plan.sample);
    return plan;
  }
  // More than this no bound and confidence of use ask for: 0.01 % at 99.99 %.
  constexpr int kMost = 1'000'000;
  const auto chance = [&](int n) { return chance_of_share(share, n, allowed); };
  plan.sample = least_with(allowed + 1, kMost, risk, chance);
  plan.risk = chance(plan.sample);
  if (!within(plan.risk, risk)) {
    return out_of_range("No sample of use can show so small a share.", "bound",
                        "Choose a greater share or a lower confidence.");
  }
  return plan;
}

Result<Percent> greatest_wrong_share(std::optional<int> list, int sample, int wrong,
                                     Confidence confidence) {
  if (sample < 1 || (list && (sample > *list || *list > kLongestAuditList)) || wrong < 0 ||
      wrong > sample) {
    return out_of_range("The sample does not fit the list, or the wrong ones not the sample.",
                        "sample", "Count again.");
  }
  const double risk = 1.0 - confidence.share();
  if (list) {
    // The first number that the finding rules out, less one.
    const int most = *list - (sample - wrong);
    const int ruled_out = least_with(wrong, most + 1, risk, [&](int w) {
      return w > most ? 0.0 : chance_from_list(*list, w, sample, wrong);
    });
    return Percent{100.0 * (ruled_out - 1) / *list};
  }
  if (wrong == sample) return Percent{100.0};
  using Binomial = boost::math::binomial_distribution<double, Quiet>;
  return Percent{100.0 * Binomial::find_upper_bound_on_p(sample, wrong, risk)};
}

Result<std::vector<int>> audit_draw(int list, int sample, std::uint64_t seed) {
  if (list < 0 || sample < 0 || sample > list) {
    return out_of_range("More are to be drawn than there are.", "sample", "Look at all of them.");
  }
  std::vector<int> places(static_cast<std::size_t>(list));
  std::iota(places.begin(), places.end(), 0);
  std::mt19937_64 chance(seed);
  for (std::size_t i = 0; i < static_cast<std::size_t>(sample); ++i) {
    const auto j = i + static_cast<std::size_t>(draw_below(chance, places.size() - i));
    std::swap(places[i], places[j]);
  }
  places.resize(static_cast<std::size_t>(sample));
  std::ranges::sort(places);
  return places;
}

}  // namespace oaklight
