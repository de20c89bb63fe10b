#pragma once

#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

#include "core/sample/estimate.hpp"
#include "core/sample/group_tally.hpp"

namespace oaklight {

/// A change of something between two visits to the same plots, with its paired error: the error of
/// the mean of the plots' own differences. It is never put together from the errors of the two
/// visits, which would count the spread between plots twice.
template <class Q>
struct PairedChange {
  Q before{}, after{};
  Q change{};       ///< after less before; below 0 where there is less now
  int plots = 0;    ///< pairs
  int changed = 0;  ///< pairs whose two values differ
  /// Of the change. Nothing for one pair in a stand, and when no pair changed: that no change was
  /// found is not known to be no change.
  std::optional<Q> se{};
  std::optional<double> df{};
  std::optional<Q> half_width{};
  std::optional<Q> lo{}, hi{};  ///< of the change; may lie below 0
  Confidence confidence;
  Trust trust = Trust::fair;  ///< not_found: nothing changed on any pair

  /// Whether the interval leaves out 0.
  [[nodiscard]] bool clear() const { return lo && (*lo > Q{} || *hi < Q{}); }
};

/// Plots of one stand that both visits went to.
struct PairedStand {
  const StandSample* first = nullptr;
  const StandSample* second = nullptr;
  std::vector<std::pair<int, int>> plots;  ///< indices into first->plots and second->plots
  std::vector<std::string> only_first;     ///< labels of plots that only one visit went to
  std::vector<std::string> only_second;
};

/// Pairs the plots of one stand by their label. Plots of one visit only are in no figure, nor are
/// count points: what was only counted cannot be followed.
///
/// errors   mixed_designs when the two visits differ in design or smallest tree: their difference
///          would be one of methods too; no_data when no label is in both
Result<PairedStand> pair_stand(const StandSample& first, const StandSample& second);

/// The trees of one group at both visits to one stand.
struct PairedGroup {
  const PairedStand* stand = nullptr;
  const GroupTally* first = nullptr;
  const GroupTally* second = nullptr;
};

/// A plot's values at both visits, pair by pair, zeros and all.
struct PairedValues {
  std::vector<double> first, second;
};
template <class Figure>
[[nodiscard]] PairedValues paired_values(const PairedGroup& group, Figure figure) {
  const auto spread = [&](const GroupTally& tally, std::size_t plots) {
    std::vector<double> values(plots, 0.0);
    for (const PlotSums& p : tally.plots()) values[static_cast<std::size_t>(p.plot)] = figure(p);
    return values;
  };
  const PairedStand& s = *group.stand;
  const auto before = spread(*group.first, s.first->plots.size());
  const auto after = spread(*group.second, s.second->plots.size());
  PairedValues pairs;
  for (const auto& [a, b] : s.plots) {
    pairs.first.push_back(before[static_cast<std::size_t>(a)]);
    pairs.second.push_back(after[static_cast<std::size_t>(b)]);
  }
  return pairs;
}

/// The change over one stand, or over several weighted by size.
///
/// sizes    acres, one a stand
/// pairs    one a stand; its two lists are of one length
/// errors   of stratified_mean and moments_of; missing_value for lists of unequal length
/// assumes  plots within a stand are a simple random sample
/// source   error of a difference of paired observations, Freese 1962, Elementary forest sampling,
///          USDA Agriculture Handbook 232; over stands as stratified_mean; checked against R
///          package survey (tests/golden/oracle)
Result<PairedChange<double>> paired_change(std::span<const double> sizes,
                                           std::span<const PairedValues> pairs,
                                           Confidence confidence,
                                           DegreesOfFreedom rule = DegreesOfFreedom::satterthwaite);

/// Change of the quadratic mean diameter, inches, from basal area over trees of the pairs at both
/// visits. Nothing when one of the visits found no tree.
///
/// trees, ba  per acre, one a stand
/// errors     as paired_change
/// accuracy   of the error: delta method, as MeanDiameter; checked against R package survey
/// source     difference of two linearized ratios: the residuals of each plot at both visits are
///            subtracted before their spread is taken
Result<std::optional<PairedChange<Inches>>> paired_diameter(std::span<const double> sizes,
                                                            std::span<const PairedValues> trees,
                                                            std::span<const PairedValues> ba,
                                                            Confidence confidence,
                                                            DegreesOfFreedom rule);

/// The same with each figure scaled: a total from a mean, or a number given its unit.
template <class To, class From, class Scale>
[[nodiscard]] PairedChange<To> scaled(const PairedChange<From>& c, Scale scale) {
  const auto each = [&](const std::optional<From>& x) {
    return x ? std::optional<To>(scale(*x)) : std::nullopt;
  };
  return {.before = scale(c.before),
          .after = scale(c.after),
          .change = scale(c.change),
          .plots = c.plots,
          .changed = c.changed,
          .se = each(c.se),
          .df = c.df,
          .half_width = each(c.half_width),
          .lo = each(c.lo),
          .hi = each(c.hi),
          .confidence = c.confidence,
          .trust = c.trust};
}
template <class Q>
[[nodiscard]] PairedChange<Q> with_unit(const PairedChange<double>& c) {
  return scaled<Q>(c, [](double x) { return Q{x}; });
}
/// A total over an area that is taken as known, with the error of its mean.
template <class Unit>
[[nodiscard]] PairedChange<Quantity<Unit>> total_of(
    const PairedChange<Quantity<PerAcreOf<Unit>>>& c, Acres area) {
  return scaled<Quantity<Unit>>(
      c, [&](Quantity<PerAcreOf<Unit>> per_acre) { return per_acre * area; });
}

}  // namespace oaklight
