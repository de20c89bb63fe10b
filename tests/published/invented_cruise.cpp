#include "tests/published/invented_cruise.hpp"

#include <stdexcept>

#include "core/sample/allocation.hpp"
#include "core/sample/count_measure.hpp"
#include "core/sample/cruise_estimate.hpp"
#include "tests/support/oracle_figures.hpp"

namespace oaklight::test {
namespace {

const OracleCruise& points() {
  static const OracleCruise cruise = read_oracle_points();
  return cruise;
}

const OracleCruise& fixed_plots() {
  static const OracleCruise cruise = read_oracle_fixed();
  return cruise;
}

const std::string& text(const Inputs& in, const std::string& name) {
  const auto found = in.find(name);
  if (found == in.end()) throw std::runtime_error("the row has no input \"" + name + "\"");
  return found->second;
}

/// "A", or "all".
std::vector<StandSample> stands(const Inputs& in) {
  std::vector<StandSample> chosen;
  for (StandSample& s : samples_of(points().data)) {
    if (text(in, "stand") == "all" || text(in, "stand") == s.stand->name) chosen.push_back(s);
  }
  if (chosen.empty()) throw std::runtime_error("no stand " + text(in, "stand"));
  return chosen;
}

Pick group(const Inputs& in) {
  const std::string& name = text(in, "group");
  if (name == "all") return any_tree;
  if (name == "from_11_in") return is_11_in;
  if (name == "oak") return is_oak;
  if (name == "large") return is_large;
  if (name == "small") return [](const TreeFacts& t) { return !is_large(t); };
  const int fia = fia_of(name);
  if (fia == 0) throw std::runtime_error("no group " + name);
  return [fia](const TreeFacts& t) { return t.species.fia == fia; };
}

Figure sum(const Inputs& in) {
  const std::string& name = text(in, "sum");
  if (name == "ba") return ba_of;
  if (name == "tpa") return trees_of;
  if (name == "present") return present;
  throw std::runtime_error("no sum " + name);
}

double figure(const Inputs& in, const Estimate<double>& e, Acres acres) {
  const std::string& name = text(in, "figure");
  const auto total = total_of(with_unit<TreesPerAcre>(e), acres);
  if (name == "mean") return e.mean;
  if (name == "se") return e.se.value();
  if (name == "cv_pct") return e.cv.value().value;
  if (name == "lo") return e.lo.value();
  if (name == "hi") return e.hi.value();
  if (name == "df") return e.df.value();
  if (name == "total") return total.mean.value;
  if (name == "total_se") return total.se.value().value;
  throw std::runtime_error("no figure " + name);
}

EstimateOptions options(const Inputs& in) {
  EstimateOptions asked;
  if (in.contains("df")) asked.df = DegreesOfFreedom::plots_less_strata;
  asked.finite_population = in.contains("correct");
  return asked;
}

double stand_figure(const Inputs& in) {
  const auto chosen = stands(in);
  Acres acres;
  for (const StandSample& s : chosen) acres += s.stand->acres;
  return figure(in, figure_of(chosen, group(in), sum(in), options(in)), acres);
}

double fixed_figure(const Inputs& in) {
  const auto samples = samples_of(fixed_plots().data);
  return figure(in, figure_of(samples, group(in), sum(in), options(in)), Acres{30.0});
}

double qmd(const Inputs& in) {
  const auto chosen = stands(in);
  std::vector<const StandSample*> samples;
  for (const StandSample& s : chosen) samples.push_back(&s);
  const auto area = area_estimate(samples, test_species(), EstimateOptions{}).value();
  const bool mean = text(in, "figure") == "mean";
  return mean ? area.live.qmd->qmd.value : area.live.qmd->se.value().value;
}

double post_stratified(const Inputs& in) {
  const auto p = post_stratified_mean(ba_strata(samples_of(points().data))).value();
  return text(in, "form") == "cochran" ? p.se : p.se_residual;
}

Ratio vbar_over_stands() {
  std::vector<MeasuredPoints> by_stand;
  for (const Stand& s : points().data.stands) by_stand.push_back(measured_points(points(), s.id));
  std::vector<PairedStratum> strata;
  for (std::size_t h = 0; h < by_stand.size(); ++h) {
    strata.push_back({.size = points().data.stands[h].acres.value,
                      .plots = static_cast<int>(by_stand[h].ba.size()),
                      .x = by_stand[h].ba,
                      .y = by_stand[h].volume});
  }
  return ratio_of_sums(strata).value();
}

Estimate<double> vbar_over_trees() { return mean_of(tree_vbars(points()), Confidence{}).value(); }

double vbar(const Inputs& in) {
  if (text(in, "over") == "trees") return vbar_over_trees().se_pct->value;
  const Ratio r =
      text(in, "over") == "stands" ? vbar_over_stands() : vbar_of(measured_points(points()));
  return text(in, "figure") == "ratio" ? r.ratio : r.se.value();
}

double count_measure(const Inputs& in) {
  const auto ba = figure_of(samples_of(points().data), any_tree, ba_of);
  if (text(in, "figure") == "volume") return ba.mean * vbar_of(measured_points(points())).ratio;
  return product_error(*ba.se_pct, *vbar_over_trees().se_pct).value;
}

double double_sample(const Inputs& in) {
  const auto chosen = stands(in);
  const auto measured = measured_points(points(), chosen.at(0).stand->id);
  return ratio_double_sample(values_of(chosen.at(0), ba_of), measured.ba, measured.volume)->se;
}

double neyman(const Inputs& in) {
  std::vector<double> acres, sds;
  for (const Stratum& s : ba_strata(samples_of(points().data))) {
    acres.push_back(s.size);
    sds.push_back(*mean_estimate(s.moments, Confidence{}).sd);
  }
  const auto stand = static_cast<std::size_t>(number(in, "stand"));
  return neyman_shares(number(in, "plots"), acres, sds).at(stand - 1);
}

}  // namespace

Evaluators invented_cruise_evaluators() {
  Evaluators all;
  all["invented_stand"] = stand_figure;
  all["invented_fixed"] = fixed_figure;
  all["invented_qmd"] = qmd;
  all["invented_post_stratified"] = post_stratified;
  all["invented_vbar"] = vbar;
  all["invented_count_measure"] = count_measure;
  all["invented_double_sample"] = double_sample;
  all["invented_neyman"] = neyman;
  return all;
}

}  // namespace oaklight::test
