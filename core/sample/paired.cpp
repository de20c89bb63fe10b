#include "core/sample/paired.hpp"

#include <map>
#include <string_view>

#include "core/measure/basal_area.hpp"

namespace oaklight {
namespace {

/// Mean over the stands of one value a pair.
Result<Estimate<double>> mean_over(std::span<const double> sizes,
                                   std::span<const std::vector<double>> values,
                                   Confidence confidence, DegreesOfFreedom rule) {
  std::vector<Stratum> strata;
  for (std::size_t h = 0; h < values.size(); ++h) {
    const auto moments = moments_of(values[h], static_cast<int>(values[h].size()));
    if (!moments) return moments.error();
    strata.push_back({sizes[h], *moments, std::nullopt});
  }
  return stratified_mean(strata, confidence, rule);
}

/// A change whose mean is known to lie at `change`, with the error of `differences`.
PairedChange<double> change_of(double before, double after, const Estimate<double>& differences) {
  PairedChange<double> c{.before = before,
                         .after = after,
                         .change = after - before,
                         .plots = differences.plots,
                         .changed = differences.found,
                         .se = differences.se,
                         .df = differences.df,
                         .half_width = differences.half_width,
                         .confidence = differences.confidence,
                         .trust = differences.trust};
  if (c.half_width) {  // not the estimate's own limits: an amount ends at 0, a change does not
    c.lo = c.change - *c.half_width;
    c.hi = c.change + *c.half_width;
  }
  return c;
}

Status check(std::span<const double> sizes, std::span<const PairedValues> pairs) {
  bool whole = sizes.size() == pairs.size();
  for (const PairedValues& p : pairs) whole = whole && p.first.size() == p.second.size();
  if (whole) return Done{};
  return Error{ErrorCode::missing_value, "A plot has the value of one visit only.", "plots",
               "Leave out plots that only one visit went to."};
}

std::vector<std::vector<double>> at_visit(std::span<const PairedValues> pairs,
                                          std::vector<double> PairedValues::*visit) {
  std::vector<std::vector<double>> values;
  for (const PairedValues& p : pairs) values.push_back(p.*visit);
  return values;
}

/// Mean diameter at one visit, and by how much each pair pulls at it.
struct Linearized {
  double qmd = 0.0;
  std::vector<std::vector<double>> pulls;
};

Result<std::optional<Linearized>> linearized(std::span<const double> sizes,
                                             const std::vector<std::vector<double>>& trees,
                                             const std::vector<std::vector<double>>& ba) {
  const auto x = mean_over(sizes, trees, {}, DegreesOfFreedom::satterthwaite);
  if (!x) return x.error();
  const auto y = mean_over(sizes, ba, {}, DegreesOfFreedom::satterthwaite);
  if (!y) return y.error();
  if (!(x->mean > 0.0) || !(y->mean > 0.0)) return std::optional<Linearized>{};
  const double ratio = y->mean / x->mean;
  Linearized line{
      .qmd = quadratic_mean_diameter(SquareFeetPerAcre{y->mean}, TreesPerAcre{x->mean}).value};
  const double slope = line.qmd / (2.0 * ratio) / x->mean;  // d qmd / d ratio, over mean trees
  for (std::size_t h = 0; h < trees.size(); ++h) {
    std::vector<double>& pulls = line.pulls.emplace_back();
    for (std::size_t i = 0; i < trees[h].size(); ++i) {
      pulls.push_back(slope * (ba[h][i] - ratio * trees[h][i]));
    }
  }
  return std::optional(std::move(line));
}

}  // namespace

Result<PairedStand> pair_stand(const StandSample& first, const StandSample& second) {
  const std::string where = "stand/" + first.stand->name;
  if (!(first.design == second.design) || first.thin_design != second.thin_design ||
      first.min_dbh != second.min_dbh) {
    return Error{ErrorCode::mixed_designs,
                 "The two visits to stand " + first.stand->name +
                     " were made by different designs: plots, or the smallest tree tallied.",
                 where,
                 "Their difference would be one of methods too. Compare a visit by the same "
                 "design, or read both estimates side by side."};
  }
  PairedStand pair{
      .first = &first, .second = &second, .plots = {}, .only_first = {}, .only_second = {}};
  std::map<std::string_view, int> later;
  for (std::size_t i = 0; i < second.plots.size(); ++i) {
    if (second.measured[i] && !second.plots[i]->label.empty())
      later.emplace(second.plots[i]->label, static_cast<int>(i));
  }
  for (std::size_t i = 0; i < first.plots.size(); ++i) {
    const auto found = later.find(first.plots[i]->label);
    if (found == later.end() || !first.measured[i]) {
      pair.only_first.push_back(first.plots[i]->label);
      continue;
    }
    pair.plots.emplace_back(static_cast<int>(i), found->second);
    later.erase(found);
  }
  for (std::size_t i = 0; i < second.plots.size(); ++i) {
    const std::string& label = second.plots[i]->label;
    if (label.empty() || !second.measured[i] || later.contains(label)) {
      pair.only_second.push_back(label);
    }
  }
  if (pair.plots.empty()) {
    return Error{ErrorCode::no_data,
                 "No plot of stand " + first.stand->name + " was visited both times.", where,
                 "Plots are paired by their label: give a plot the label that it had before."};
  }
  return pair;
}

Result<PairedChange<double>> paired_change(std::span<const double> sizes,
                                           std::span<const PairedValues> pairs,
                                           Confidence confidence, DegreesOfFreedom rule) {
  if (const auto whole = check(sizes, pairs); !whole) return whole.error();
  std::vector<std::vector<double>> differences;
  for (const PairedValues& p : pairs) {
    std::vector<double>& d = differences.emplace_back();
    for (std::size_t i = 0; i < p.first.size(); ++i) d.push_back(p.second[i] - p.first[i]);
  }
  const auto before = mean_over(sizes, at_visit(pairs, &PairedValues::first), confidence, rule);
  if (!before) return before.error();
  const auto after = mean_over(sizes, at_visit(pairs, &PairedValues::second), confidence, rule);
  if (!after) return after.error();
  const auto mean = mean_over(sizes, differences, confidence, rule);
  if (!mean) return mean.error();
  return change_of(before->mean, after->mean, *mean);
}

Result<std::optional<PairedChange<Inches>>> paired_diameter(std::span<const double> sizes,
                                                            std::span<const PairedValues> trees,
                                                            std::span<const PairedValues> ba,
                                                            Confidence confidence,
                                                            DegreesOfFreedom rule) {
  using Answer = std::optional<PairedChange<Inches>>;
  for (const auto values : {trees, ba}) {
    if (const auto whole = check(sizes, values); !whole) return whole.error();
  }
  const auto before =
      linearized(sizes, at_visit(trees, &PairedValues::first), at_visit(ba, &PairedValues::first));
  if (!before) return before.error();
  const auto after = linearized(sizes, at_visit(trees, &PairedValues::second),
                                at_visit(ba, &PairedValues::second));
  if (!after) return after.error();
  if (!*before || !*after) return Answer{};
  std::vector<std::vector<double>> pulls = (*after)->pulls;
  for (std::size_t h = 0; h < pulls.size(); ++h) {
    for (std::size_t i = 0; i < pulls[h].size(); ++i) pulls[h][i] -= (*before)->pulls[h][i];
  }
  const auto mean = mean_over(sizes, pulls, confidence, rule);
  if (!mean) return mean.error();
  return Answer{with_unit<Inches>(change_of((*before)->qmd, (*after)->qmd, *mean))};
}

}  // namespace oaklight
