#include <cmath>
#include <stdexcept>
#include <vector>

#include "core/base/number_text.hpp"
#include "core/measure/plot_geometry.hpp"
#include "core/sample/allocation.hpp"
#include "core/sample/audit.hpp"
#include "core/sample/difference.hpp"
#include "core/sample/plot_spacing.hpp"
#include "core/sample/plots_needed.hpp"
#include "core/sample/ratio.hpp"
#include "core/sample/share.hpp"
#include "core/sample/stratified.hpp"
#include "tests/published/evaluator.hpp"
#include "tests/published/invented_cruise.hpp"
#include "tests/support/readings.hpp"

namespace oaklight::test {
namespace {

const std::string& text(const Inputs& in, const std::string& name) {
  const auto found = in.find(name);
  if (found == in.end()) throw std::runtime_error("the row has no input \"" + name + "\"");
  return found->second;
}

template <class T>
T value(const Result<T>& result) {
  if (!result) throw std::runtime_error(to_text(result.error()));
  return *result;
}

std::vector<double> list(const Inputs& in, const std::string& name) {
  std::vector<double> numbers;
  std::string item;
  for (const char c : text(in, name) + ",") {
    if (c != ',') {
      item += c;
      continue;
    }
    numbers.push_back(value(number_from_text(item)));
    item.clear();
  }
  return numbers;
}

int whole(const Inputs& in, const std::string& name) {
  return static_cast<int>(value(whole_from_text(text(in, name))));
}

std::optional<double> optional_number(const Inputs& in, const std::string& name) {
  return in.contains(name) ? std::optional(number(in, name)) : std::nullopt;
}

Confidence confidence(const Inputs& in) {
  return value(Confidence::from_share(number(in, "confidence")));
}

Acres acres(const Inputs& in) { return Acres{number(in, "acres")}; }

/// The mean of the row's plots, at 95 % where it does not say otherwise.
Estimate<double> plots(const Inputs& in) {
  const Confidence level = in.contains("confidence") ? confidence(in) : Confidence{};
  return value(mean_of(list(in, "plots"), level, optional_number(in, "population")));
}

/// A mean that is known already, as one for each acre.
Estimate<TreesPerAcre> known_mean(double mean, double se) {
  Estimate<TreesPerAcre> e;
  e.mean = TreesPerAcre{mean};
  e.se = TreesPerAcre{se};
  return e;
}

Ratio ratio(const Inputs& in) {
  const auto x = list(in, "x");
  const auto y = list(in, "y");
  const PairedStratum pairs{.plots = static_cast<int>(x.size()),
                            .x = x,
                            .y = y,
                            .population = optional_number(in, "population")};
  return value(ratio_of_sums({&pairs, 1}));
}

/// Error of the ratio times a known total of x: over the sample's mean of x, or over a known one.
double ratio_times_se(const Inputs& in) {
  const Ratio r = ratio(in);
  const auto known_mean_of_x = optional_number(in, "known_x_mean");
  return number(in, "known") * (known_mean_of_x ? *r.residual_se / *known_mean_of_x : *r.se);
}

double ratio_residual_variance(const Inputs& in) {
  const Ratio r = ratio(in);
  const double n = r.plots;
  return *r.residual_se * *r.residual_se * n /
         finite_correction(n, optional_number(in, "population"));
}

std::vector<Stratum> strata(const Inputs& in) {
  const auto sizes = list(in, "sizes");
  const auto plots_in = list(in, "plots");
  const auto means = list(in, "means");
  const auto variances = list(in, "variances");
  std::vector<Stratum> all;
  for (std::size_t h = 0; h < sizes.size(); ++h) {
    const int n = static_cast<int>(plots_in.at(h));
    all.push_back(
        {sizes[h],
         {.plots = n, .found = n, .mean = means.at(h), .squares = variances.at(h) * (n - 1)},
         in.contains("correct") ? std::optional(sizes[h]) : std::nullopt});
  }
  return all;
}

Estimate<double> over_strata(const Inputs& in) {
  return value(stratified_mean(strata(in), Confidence{}));
}

double total_size(const Inputs& in) {
  double sum = 0.0;
  for (const double size : list(in, "sizes")) sum += size;
  return sum;
}

ErrorGoal goal(const Inputs& in) { return {Percent{number(in, "goal_pct")}, confidence(in)}; }
Percent cv(const Inputs& in) { return Percent{number(in, "cv_pct")}; }

double plots_by_normal(const Inputs& in) {
  return plots_for_multiplier(normal_multiplier(confidence(in)), cv(in), goal(in).half_width);
}

double of_stand(const Inputs& in, const std::vector<double>& shares) {
  return shares.at(static_cast<std::size_t>(whole(in, "stand") - 1));
}

Difference change(const Inputs& in) {
  const auto visit = [&](const std::string& when) {
    return VisitMean{number(in, when + "_scale"), number(in, when + "_mean"),
                     number(in, when + "_variance")};
  };
  return value(change_between(visit("before"), visit("after"), number(in, "covariance")));
}

ShareEstimate share(const Inputs& in) {
  const Confidence level = in.contains("confidence") ? confidence(in) : Confidence{};
  return value(share_estimate(whole(in, "found"), whole(in, "plots"), level));
}

/// Square chains for each plot, lines times plots, when so much of the ground is to be on plots.
double ground_per_plot(const Inputs& in) {
  const Acres tract{1000.0};
  const int plots_there = static_cast<int>(
      std::lround(tract.value * number(in, "intensity_pct") / 100.0 / number(in, "plot_acres")));
  const Feet lines = kChain * 5.0;
  return lines / kChain * (spacing_on_lines(tract, plots_there, lines) / kChain);
}

void add_means(Evaluators& all) {
  all["student_t"] = [](const Inputs& in) { return student_t(confidence(in), number(in, "df")); };
  all["plots_mean"] = [](const Inputs& in) { return plots(in).mean; };
  all["plots_variance"] = [](const Inputs& in) { return *plots(in).sd * *plots(in).sd; };
  all["plots_se"] = [](const Inputs& in) { return *plots(in).se; };
  all["plots_se_pct"] = [](const Inputs& in) { return plots(in).se_pct->value; };
  all["plots_lower"] = [](const Inputs& in) { return *plots(in).lo; };
  all["plots_total"] = [](const Inputs& in) {
    return total_of(with_unit<TreesPerAcre>(plots(in)), acres(in)).mean.value;
  };
  all["plots_total_se"] = [](const Inputs& in) {
    return total_of(with_unit<TreesPerAcre>(plots(in)), acres(in)).se->value;
  };
  all["total"] = [](const Inputs& in) {
    return total_of(known_mean(number(in, "mean"), 0.0), acres(in)).mean.value;
  };
  all["total_se"] = [](const Inputs& in) {
    return total_of(known_mean(0.0, number(in, "se")), acres(in)).se->value;
  };
  all["moments_total_two_se"] = [](const Inputs& in) {
    const int n = whole(in, "plots");
    const Moments moments{n, n, number(in, "mean"), number(in, "variance") * (n - 1)};
    const auto e = mean_estimate(moments, Confidence{}, number(in, "population"));
    return 2.0 * total_of(with_unit<TreesPerAcre>(e), acres(in)).se->value;
  };
  all["share_se"] = [](const Inputs& in) { return fraction(*share(in).se); };
  all["share_lower"] = [](const Inputs& in) { return fraction(*share(in).lo); };
  all["share_upper"] = [](const Inputs& in) { return fraction(*share(in).hi); };
  all["share_when_none_found"] = [](const Inputs& in) {
    return fraction(share_when_none_found(whole(in, "plots"), confidence(in)));
  };
}

void add_ratios(Evaluators& all) {
  all["ratio"] = [](const Inputs& in) { return ratio(in).ratio; };
  all["ratio_se"] = [](const Inputs& in) { return *ratio(in).se; };
  all["ratio_residual_variance"] = ratio_residual_variance;
  all["ratio_times"] = [](const Inputs& in) { return number(in, "known") * ratio(in).ratio; };
  all["ratio_times_se"] = ratio_times_se;
  all["ratio_times_two_se"] = [](const Inputs& in) { return 2.0 * ratio_times_se(in); };
  all["ratio_times_variance"] = [](const Inputs& in) {
    return ratio_times_se(in) * ratio_times_se(in);
  };
  all["change"] = [](const Inputs& in) { return change(in).mean; };
  all["change_se"] = [](const Inputs& in) { return change(in).se; };
  all["change_variance"] = [](const Inputs& in) { return change(in).se * change(in).se; };
}

void add_strata(Evaluators& all) {
  all["strata_mean"] = [](const Inputs& in) { return over_strata(in).mean; };
  all["strata_se"] = [](const Inputs& in) { return *over_strata(in).se; };
  all["strata_df"] = [](const Inputs& in) { return *over_strata(in).df; };
  all["strata_total"] = [](const Inputs& in) { return total_size(in) * over_strata(in).mean; };
  all["strata_total_se"] = [](const Inputs& in) { return total_size(in) * *over_strata(in).se; };
}

void add_planning(Evaluators& all) {
  all["plots_needed"] = [](const Inputs& in) {
    return static_cast<double>(
        value(plots_needed(cv(in), goal(in), optional_number(in, "population"))));
  };
  all["plots_for_multiplier"] = [](const Inputs& in) {
    return plots_for_multiplier(number(in, "multiplier"), cv(in), Percent{number(in, "goal_pct")},
                                optional_number(in, "population"));
  };
  all["plots_by_normal"] = plots_by_normal;
  all["plots_by_normal_up"] = [](const Inputs& in) { return std::ceil(plots_by_normal(in)); };
  all["rule_of_thumb_points"] = [](const Inputs& in) {
    return static_cast<double>(value(rule_of_thumb_points(acres(in))));
  };
  all["weighted_cv"] = [](const Inputs& in) {
    std::vector<Percent> cvs;
    for (const double x : list(in, "cv_pct")) cvs.emplace_back(x);
    return weighted_cv(list(in, "shares"), cvs).value;
  };
  all["proportional_share"] = [](const Inputs& in) {
    return of_stand(in, proportional_shares(number(in, "plots"), list(in, "sizes")));
  };
  all["neyman_share"] = [](const Inputs& in) {
    return of_stand(in, neyman_shares(number(in, "plots"), list(in, "sizes"), list(in, "spreads")));
  };
}

void add_ground(Evaluators& all) {
  all["acre_m2"] = [](const Inputs&) { return to_square_metres(Acres{1.0}).value; };
  all["census_trees"] = [](const Inputs& in) {
    Tree tree{.facts = TreeFacts{.species = {}, .dbh = dbh_in(12.0)}};  // any size
    tree.stems = whole(in, "stems");
    return trees_stood_for(FixedDesign{.area = number(in, "plot_acres")}, tree).value;
  };
  all["square_spacing_ft"] = [](const Inputs& in) {
    return square_spacing(acres(in), whole(in, "plots")).value;
  };
  all["square_spacing_chains"] = [](const Inputs& in) {
    return square_spacing(acres(in), whole(in, "plots")) / kChain;
  };
  all["spacing_on_lines"] = [](const Inputs& in) {
    return spacing_on_lines(acres(in), whole(in, "plots"), kChain * number(in, "lines_chains")) /
           kChain;
  };
  all["ground_per_plot"] = ground_per_plot;
}

std::optional<int> list_length(const Inputs& in) {
  return in.contains("list") ? std::optional(whole(in, "list")) : std::nullopt;
}

Confidence one_sided(const Inputs& in) {
  return value(Confidence::from_share(number(in, "confidence_pct") / 100.0));
}

void add_audits(Evaluators& all) {
  all["audit_sample"] = [](const Inputs& in) {
    return static_cast<double>(value(audit_plan(list_length(in), whole(in, "allowed"),
                                                Percent{number(in, "bound_pct")}, one_sided(in)))
                                   .sample);
  };
  all["audit_share"] = [](const Inputs& in) {
    return value(greatest_wrong_share(list_length(in), whole(in, "sample"), whole(in, "wrong"),
                                      one_sided(in)))
        .value;
  };
}

}  // namespace

Evaluators sampling_evaluators() {
  Evaluators all = invented_cruise_evaluators();
  add_means(all);
  add_ratios(all);
  add_strata(all);
  add_planning(all);
  add_ground(all);
  add_audits(all);
  return all;
}

}  // namespace oaklight::test
