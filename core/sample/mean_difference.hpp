#pragma once

#include <optional>
#include <span>

#include "core/base/result.hpp"
#include "core/sample/confidence.hpp"

namespace oaklight {

/// One group of trees, and the mean of one value over them.
struct GroupMean {
  int n = 0;
  double mean = 0.0;
  std::optional<double> se{};        ///< nothing for one tree
  std::optional<double> lo{}, hi{};  ///< Student t, n - 1 degrees of freedom
};

/// How much one mean exceeds another, with its error.
struct MeanDifference {
  double difference = 0.0;  ///< a less b
  double se = 0.0;
  double df = 0.0;
  double lo = 0.0, hi = 0.0;  ///< two-sided Student t interval
  Confidence confidence;

  [[nodiscard]] bool clear() const { return lo > 0.0 || hi < 0.0; }
};

/// errors   no_data when the list is empty; not_a_number
Result<GroupMean> group_mean(std::span<const double> values, Confidence confidence);

/// Mean of a less mean of b, two groups of different trees whose spreads may differ.
///
/// errors   too_few_plots: fewer than two in a group; not_a_number;
///          contradiction when neither group varies at all, so that no error can be told
/// assumes  trees within a group are drawn at random and are independent
/// source   Welch 1947, Biometrika 34:28-35; degrees of freedom by Satterthwaite 1946, Biometrics
///          Bulletin 2:110-114 (both from memory); checked against R's t.test
Result<MeanDifference> welch_difference(std::span<const double> a, std::span<const double> b,
                                        Confidence confidence);

}  // namespace oaklight
