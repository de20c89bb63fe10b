// The invented cruise of tests/golden/oracle against the results of R's survey package: every
// number that is printed there is either met, or named below with the reason why we do not give it.

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <functional>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "core/measure/basal_area.hpp"
#include "core/sample/allocation.hpp"
#include "core/sample/count_measure.hpp"
#include "core/sample/cruise_estimate.hpp"
#include "tests/support/test_cruise.hpp"

namespace oaklight {
namespace {

using nlohmann::json;

constexpr double kRelative = 1e-9;
/// The files have 12 decimals: half a unit of the last, and what reading it adds.
constexpr double kLastDecimal = 5.1e-13;

json read_json(const std::string& name) {
  std::ifstream in(OAKLIGHT_SOURCE_DIR "/tests/golden/oracle/" + name);
  return json::parse(in);
}

/// Compares numbers with a file of expected ones and keeps account of which were asked for.
class Ledger {
 public:
  explicit Ledger(const std::string& name) : wanted_(read_json(name)) {}

  void expect(const std::string& path, double got) {
    const json::json_pointer at(path);
    ASSERT_TRUE(wanted_.contains(at)) << path;
    const double want = wanted_.at(at).get<double>();
    EXPECT_NEAR(got, want, std::max(kRelative * std::abs(want), kLastDecimal)) << path;
    met_.insert(path);
  }
  void expect(const std::string& path, std::optional<double> got) {
    ASSERT_TRUE(got.has_value()) << path;
    expect(path, *got);
  }
  /// A number that we do not give.
  void leave_out(const std::string& path, const std::string& why) {
    ASSERT_FALSE(why.empty());
    met_.insert(path);
  }

  void fail_on_numbers_not_asked_for() const {
    const json flat = wanted_.flatten();
    EXPECT_GT(flat.size(), 0U);
    for (const auto& [path, value] : flat.items()) {
      EXPECT_TRUE(met_.contains(path)) << path << " is expected, but nobody computed it";
    }
  }
  [[nodiscard]] const json& at(const std::string& path) const {
    return wanted_.at(json::json_pointer(path));
  }

 private:
  json wanted_;
  std::set<std::string> met_;
};

template <class Q>
std::optional<double> plain(const std::optional<Q>& q) {
  return q ? std::optional(q->value) : std::nullopt;
}
std::optional<double> plain(const std::optional<double>& x) { return x; }

template <class Q>
double plain(const Q& q) {
  if constexpr (std::is_same_v<Q, double>) {
    return q;
  } else {
    return q.value;
  }
}

/// The eleven figures of one stand's mean.
template <class Q>
void expect_mean(Ledger& ledger, const std::string& path, const Estimate<Q>& e) {
  ledger.expect(path + "/n", static_cast<double>(e.plots));
  ledger.expect(path + "/mean", plain(e.mean));
  ledger.expect(path + "/sd", plain(e.sd));
  ledger.expect(path + "/cv_pct", plain(e.cv));
  ledger.expect(path + "/se", plain(e.se));
  ledger.expect(path + "/se_pct", plain(e.se_pct));
  ledger.expect(path + "/df", e.df);
  ledger.expect(path + "/t", student_t(e.confidence, *e.df));
  ledger.expect(path + "/lo", plain(e.lo));
  ledger.expect(path + "/hi", plain(e.hi));
  ledger.expect(path + "/half_pct", plain(e.half_pct));
}

using Pick = std::function<bool(const TreeFacts&)>;
using Figure = double (*)(const PlotSums&);
double ba_of(const PlotSums& p) { return p.ba; }
double trees_of(const PlotSums& p) { return p.sums.trees; }
double present(const PlotSums&) { return 1.0; }

bool is_oak(const TreeFacts& t) { return test::test_species().find(t.species)->is_oak(); }
bool is_11_in(const TreeFacts& t) { return t.dbh.inches() >= Inches{11.0}; }
bool any(const TreeFacts&) { return true; }

/// One figure of any group of trees over some stands, by the product's own functions.
Estimate<double> figure_of(const std::vector<StandSample>& samples, const Pick& pick, Figure figure,
                           const EstimateOptions& options = {}) {
  std::vector<GroupTally> tallies(samples.size());
  std::vector<StandGroup> parts;
  for (std::size_t h = 0; h < samples.size(); ++h) {
    for (const TalliedTree& t : samples[h].trees) {
      if (pick(t.tree->facts)) tallies[h].add(t);
    }
    parts.push_back({&samples[h], &tallies[h]});
  }
  return estimate_over(parts, options, figure).value();
}

EstimateOptions at_90() {
  EstimateOptions options;
  options.confidence = Confidence::from_share(0.90).value();
  return options;
}
EstimateOptions by_plots_less_strata(EstimateOptions options = {}) {
  options.df = DegreesOfFreedom::plots_less_strata;
  return options;
}

/// The invented points with everything that is asked of them.
class OraclePoints : public testing::Test {
 protected:
  test::OracleCruise oracle = test::read_oracle_points(OAKLIGHT_SOURCE_DIR);
  CruiseEstimate estimate =
      cruise_estimate(oracle.data, test::test_species(), EstimateOptions{}).value();
  std::vector<StandSample> samples = read_samples();
  Ledger ledger{"expected.json"};

  [[nodiscard]] std::vector<StandSample> read_samples() const {
    std::vector<StandSample> all;
    for (const Stand& s : oracle.data.stands)
      all.push_back(stand_sample(oracle.data, s.id).value());
    return all;
  }
  [[nodiscard]] const AreaEstimate& all() const { return estimate.all.value(); }

  void constants();
  void by_stand();
  void stratified();
  void stratified_figure(const std::string& path, const Pick& pick, Figure figure,
                         const EstimateOptions& options = {});
  void cells();
  void cell(const std::string& path, const GroupFigures& f);
  void species_by_stand();
  void pooled();
  void post_stratified();
  void volumes();
  void double_sample();
  void planning();
};

void OraclePoints::constants() {
  ledger.leave_out("/made_with", "text");
  ledger.leave_out("/constants/note", "text");
  ledger.expect("/constants/K", kBasalAreaFactor);
  ledger.expect("/acres", all().acres.value);
  ledger.expect("/points", static_cast<double>(all().plots));
}

void OraclePoints::by_stand() {
  const auto at_90_percent = cruise_estimate(oracle.data, test::test_species(), at_90()).value();
  for (std::size_t h = 0; h < samples.size(); ++h) {
    const std::string path = "/by_stand/" + samples[h].stand->name;
    const AreaEstimate& area = estimate.stands[h].figures.value();
    ledger.expect(path + "/acres", area.acres.value);
    ledger.expect(path + "/empty_points", static_cast<double>(area.empty_plots));
    expect_mean(ledger, path + "/ba", area.live.ba);
    expect_mean(ledger, path + "/tpa", area.live.trees);
    expect_mean(ledger, path + "/ba_90", at_90_percent.stands[h].figures->live.ba);
    ledger.expect(path + "/qmd_in", area.live.qmd->qmd.value);
    const auto ba = total_of(area.live.ba, area.acres);
    const auto trees = total_of(area.live.trees, area.acres);
    ledger.expect(path + "/ba_total", ba.mean.value);
    ledger.expect(path + "/ba_total_se", ba.se->value);
    ledger.expect(path + "/tpa_total", trees.mean.value);
    ledger.expect(path + "/tpa_total_se", trees.se->value);
    expect_mean(ledger, path + "/ba_sawtimber_11in", figure_of({samples[h]}, is_11_in, ba_of));
    expect_mean(ledger, path + "/ba_oak", figure_of({samples[h]}, is_oak, ba_of));
    expect_mean(ledger, path + "/oak_present", figure_of({samples[h]}, is_oak, present));
  }
}

void OraclePoints::stratified_figure(const std::string& path, const Pick& pick, Figure figure,
                                     const EstimateOptions& options) {
  const auto satterthwaite = figure_of(samples, pick, figure, options);
  const auto plain_df = figure_of(samples, pick, figure, by_plots_less_strata(options));
  ledger.expect(path + "/mean", satterthwaite.mean);
  ledger.expect(path + "/se", satterthwaite.se);
  ledger.expect(path + "/df_n_minus_L", plain_df.df);
  ledger.expect(path + "/lo", plain_df.lo);
  ledger.expect(path + "/hi", plain_df.hi);
  ledger.expect(path + "/df_satterthwaite", satterthwaite.df);
  ledger.expect(path + "/lo_satt", satterthwaite.lo);
  ledger.expect(path + "/hi_satt", satterthwaite.hi);
  const auto total = total_of(with_unit<SquareFeetPerAcre>(satterthwaite), all().acres);
  ledger.expect(path + "/total", total.mean.value);
  ledger.expect(path + "/total_se", total.se->value);
}

void OraclePoints::stratified() {
  stratified_figure("/stratified/ba", any, ba_of);
  stratified_figure("/stratified/tpa", any, trees_of);
  stratified_figure("/stratified/ba_saw", is_11_in, ba_of);
  stratified_figure("/stratified/tpa_saw", is_11_in, trees_of);
  stratified_figure("/stratified/ba_oak", is_oak, ba_of);
  stratified_figure("/stratified/oak_present", is_oak, present);
  stratified_figure("/stratified_90/ba", any, ba_of, at_90());
  stratified_figure("/stratified_90/tpa", any, trees_of, at_90());
  // What a report shows is the same.
  ledger.expect("/stratified/ba/mean", all().live.ba.mean.value);
  ledger.expect("/stratified/ba/se", all().live.ba.se->value);
  ledger.expect("/stratified/ba/df_satterthwaite", all().live.ba.df);
  ledger.expect("/stratified/tpa/lo_satt", all().live.trees.lo->value);
  ledger.expect("/stratified/qmd_in", all().live.qmd->qmd.value);
  ledger.expect("/qmd_delta/qmd_in", all().live.qmd->qmd.value);
  ledger.expect("/qmd_delta/se", all().live.qmd->se->value);
}

void OraclePoints::cell(const std::string& path, const GroupFigures& f) {
  ledger.expect(path + "/trees", static_cast<double>(f.stems));
  ledger.expect(path + "/points_with", static_cast<double>(f.ba.found));
  ledger.expect(path + "/ba", f.ba.mean.value);
  ledger.expect(path + "/ba_se", f.ba.se->value);
  ledger.expect(path + "/tpa", f.trees.mean.value);
  ledger.expect(path + "/tpa_se", f.trees.se->value);
  ledger.expect(path + "/qmd_in", f.qmd->qmd.value);
}

std::string letters_of(SpeciesCode code) {
  for (const char* letters : {"AB", "BO", "HI", "RM", "RO", "SM", "WO", "YP"}) {
    if (test::fia_of(letters) == code.fia) return letters;
  }
  return "?";
}

void OraclePoints::cells() {
  for (const SpeciesFigures& s : all().by_species) {
    cell("/by_species/" + letters_of(s.species), s.figures);
  }
  for (const ClassFigures& c : all().by_class) {
    cell("/by_class_2in/" + std::to_string(c.dbh_class.inches), c.figures);
  }
  for (const SpeciesClassFigures& c : all().by_species_class) {
    cell(
        "/by_species_class_2in/" + letters_of(c.species) + "_" + std::to_string(c.dbh_class.inches),
        c.figures);
  }
}

void OraclePoints::species_by_stand() {
  for (std::size_t h = 0; h < samples.size(); ++h) {
    std::map<std::string, const GroupFigures*> found;
    for (const SpeciesFigures& s : estimate.stands[h].figures->by_species) {
      found[letters_of(s.species)] = &s.figures;
    }
    for (const char* letters : {"AB", "BO", "HI", "RM", "RO", "SM", "WO", "YP"}) {
      const std::string path = "/by_species_stand/" + samples[h].stand->name + "_" + letters;
      if (!found.contains(letters)) {
        for (const char* key : {"/ba", "/ba_se", "/tpa", "/tpa_se"}) {
          ASSERT_EQ(ledger.at(path + key).get<double>(), 0.0);
          ledger.leave_out(path + key, "not found in the stand: we claim no error of 0");
        }
        continue;
      }
      const GroupFigures& f = *found[letters];
      ledger.expect(path + "/ba", f.ba.mean.value);
      ledger.expect(path + "/ba_se", f.ba.se->value);
      ledger.expect(path + "/tpa", f.trees.mean.value);
      ledger.expect(path + "/tpa_se", f.trees.se->value);
    }
  }
}

void OraclePoints::pooled() {
  // One sample of 35 points checks the plain formula once more; as an answer it is wrong.
  TractData pooled = oracle.data;
  for (Plot& p : pooled.plots) {
    p.stand = pooled.stands[0].id;
    p.label += to_text(p.id);
  }
  const auto e = cruise_estimate(pooled, test::test_species(), EstimateOptions{}).value();
  expect_mean(ledger, "/pooled_srs/ba", e.all->live.ba);
  expect_mean(ledger, "/pooled_srs/tpa", e.all->live.trees);
  ledger.leave_out("/pooled_srs/note", "text");
}

/// Plot values of one group by stand, zeros and all.
std::vector<double> values_of(const StandSample& sample, Figure figure) {
  GroupTally tally;
  for (const TalliedTree& t : sample.trees) tally.add(t);
  std::vector<double> values(sample.plots.size(), 0.0);
  for (const PlotSums& p : tally.plots()) values[static_cast<std::size_t>(p.plot)] = figure(p);
  return values;
}

void OraclePoints::post_stratified() {
  std::vector<Stratum> strata;
  for (const StandSample& s : samples) {
    const auto values = values_of(s, ba_of);
    strata.push_back({s.stand->acres.value,
                      moments_of(values, static_cast<int>(values.size())).value(), std::nullopt});
  }
  const auto p = post_stratified_mean(strata).value();
  ledger.expect("/post_stratified/ba_mean", p.mean);
  ledger.expect("/post_stratified/se_survey_package", p.se_residual);
  ledger.expect("/post_stratified/se_cochran_5A42", p.se);
  ledger.expect("/post_stratified/se_conditional_like_stratified", all().live.ba.se->value);
}

/// Volume (y) and basal area (x) on the measured points of one stand.
struct MeasuredPoints {
  std::vector<double> ba, volume;
};

MeasuredPoints measured_points(const test::OracleCruise& oracle, StandId stand) {
  MeasuredPoints m;
  for (std::size_t p = 0; p < oracle.data.plots.size(); ++p) {
    const Plot& plot = oracle.data.plots[p];
    if (plot.stand != stand || !oracle.measured[p]) continue;
    m.ba.push_back(0.0);
    m.volume.push_back(0.0);
    for (std::size_t t = 0; t < oracle.data.trees.size(); ++t) {
      const Tree& tree = oracle.data.trees[t];
      if (tree.plot != plot.id) continue;
      m.ba.back() += 10.0;
      m.volume.back() += 10.0 * *oracle.cubic_feet[t] / basal_area(tree.facts.dbh.inches()).value;
    }
  }
  return m;
}

void OraclePoints::volumes() {
  std::vector<MeasuredPoints> by_stand;
  for (const StandSample& s : samples) by_stand.push_back(measured_points(oracle, s.stand->id));
  std::vector<PairedStratum> strata;
  MeasuredPoints pooled;
  for (std::size_t h = 0; h < samples.size(); ++h) {
    strata.push_back({.size = samples[h].stand->acres.value,
                      .plots = static_cast<int>(by_stand[h].ba.size()),
                      .x = by_stand[h].ba,
                      .y = by_stand[h].volume});
    pooled.ba.insert(pooled.ba.end(), by_stand[h].ba.begin(), by_stand[h].ba.end());
    pooled.volume.insert(pooled.volume.end(), by_stand[h].volume.begin(), by_stand[h].volume.end());
  }
  const auto combined = ratio_of_sums(strata).value();
  ledger.expect("/vbar/combined_ratio_stratified/ratio", combined.ratio);
  ledger.expect("/vbar/combined_ratio_stratified/se", combined.se);
  const auto ratio =
      ratio_of_sums(
          std::vector{PairedStratum{
              .plots = static_cast<int>(pooled.ba.size()), .x = pooled.ba, .y = pooled.volume}})
          .value();
  const Percent ratio_pct = percent(*ratio.se / ratio.ratio);
  ledger.expect("/vbar/measured_points", static_cast<double>(ratio.plots));
  ledger.expect("/vbar/pooled_ratio_of_sums/ratio", ratio.ratio);
  ledger.expect("/vbar/pooled_ratio_of_sums/se", ratio.se);
  ledger.expect("/vbar/pooled_ratio_of_sums/se_pct", ratio_pct.value);

  std::vector<double> vbars;
  for (std::size_t t = 0; t < oracle.data.trees.size(); ++t) {
    if (!oracle.cubic_feet[t]) continue;
    vbars.push_back(*oracle.cubic_feet[t] /
                    basal_area(oracle.data.trees[t].facts.dbh.inches()).value);
  }
  const auto vbar = mean_of(vbars, Confidence{}).value();
  ledger.expect("/vbar/measured_trees", static_cast<double>(vbar.plots));
  ledger.expect("/vbar/tree_mean/trees", static_cast<double>(vbar.plots));
  ledger.expect("/vbar/tree_mean/mean", vbar.mean);
  ledger.expect("/vbar/tree_mean/sd", vbar.sd);
  ledger.expect("/vbar/tree_mean/cv_pct", vbar.cv->value);
  ledger.expect("/vbar/tree_mean/se", vbar.se);
  ledger.expect("/vbar/tree_mean/se_pct", vbar.se_pct->value);

  const auto& ba = all().live.ba;
  const double volume = ba.mean.value * ratio.ratio;
  const Percent by_trees = product_error(*ba.se_pct, *vbar.se_pct);
  const Percent by_points = product_error(*ba.se_pct, ratio_pct);
  ledger.expect("/count_measure/ba", ba.mean.value);
  ledger.expect("/count_measure/ba_se_pct", ba.se_pct->value);
  ledger.expect("/count_measure/vbar", ratio.ratio);
  ledger.expect("/count_measure/volume_cuft_ac", volume);
  ledger.expect("/count_measure/product_with_tree_vbar_se/se_pct", by_trees.value);
  ledger.expect("/count_measure/product_with_tree_vbar_se/se", volume * fraction(by_trees));
  ledger.expect("/count_measure/product_with_point_ratio_se/se_pct", by_points.value);
  ledger.expect("/count_measure/product_with_point_ratio_se/se", volume * fraction(by_points));
  ledger.expect("/count_measure/goodman_unbiased_tree",
                product_error_unbiased(*ba.se_pct, *vbar.se_pct).value);
  ledger.expect("/count_measure/total_cuft", volume * all().acres.value);
}

void OraclePoints::double_sample() {
  const std::string path = "/count_measure_stand_A";
  const auto counted = values_of(samples[0], ba_of);
  const auto measured = measured_points(oracle, samples[0].stand->id);
  const auto d = ratio_double_sample(counted, measured.ba, measured.volume).value();
  ledger.expect(path + "/n", static_cast<double>(counted.size()));
  ledger.expect(path + "/m", static_cast<double>(measured.ba.size()));
  const auto& ba = estimate.stands[0].figures->live.ba;
  ledger.expect(path + "/ba", ba.mean.value);
  ledger.expect(path + "/vbar", d.ratio);
  ledger.expect(path + "/volume", d.mean);
  ledger.expect(path + "/se_ratio_double_sampling", d.se);
  const auto ratio =
      ratio_of_sums(std::vector{PairedStratum{.plots = static_cast<int>(measured.ba.size()),
                                              .x = measured.ba,
                                              .y = measured.volume}})
          .value();
  const Percent product = product_error(*ba.se_pct, percent(*ratio.se / ratio.ratio));
  ledger.expect(path + "/se_product_points", d.mean * fraction(product));
}

void OraclePoints::planning() {
  for (std::size_t i = 0; i < ledger.at("/needed").size(); ++i) {
    const std::string path = "/needed/" + std::to_string(i);
    const Percent cv{ledger.at(path + "/cv").get<double>()};
    const Percent allowed{ledger.at(path + "/ae").get<double>()};
    const auto confidence = Confidence::from_share(ledger.at(path + "/conf").get<double>()).value();
    for (const char* input : {"/cv", "/ae", "/conf"}) ledger.leave_out(path + input, "an input");
    const ErrorGoal goal{allowed, confidence};
    ledger.expect(path + "/n_smallest", static_cast<double>(plots_needed(cv, goal).value()));
    ledger.expect(path + "/n_smallest_N400",
                  static_cast<double>(plots_needed(cv, goal, 400.0).value()));
    ledger.expect(path + "/n_z",
                  std::ceil(plots_for_multiplier(normal_multiplier(confidence), cv, allowed)));
    ledger.expect(path + "/n_t2", std::ceil(plots_for_multiplier(2.0, cv, allowed)));
    ledger.leave_out(path + "/n_iterated",
                     "putting n back into t may never end; we search upward instead");
  }
  std::vector<double> acres, sds;
  for (std::size_t h = 0; h < samples.size(); ++h) {
    acres.push_back(samples[h].stand->acres.value);
    sds.push_back(estimate.stands[h].figures->live.ba.sd->value);
  }
  const auto proportional = proportional_shares(40, acres);
  const auto neyman = neyman_shares(40, acres, sds);
  for (std::size_t h = 0; h < samples.size(); ++h) {
    const std::string& name = samples[h].stand->name;
    ledger.expect("/allocation_n40/sd/" + name, sds[h]);
    ledger.expect("/allocation_n40/proportional/" + name, proportional[h]);
    ledger.expect("/allocation_n40/neyman/" + name, neyman[h]);
  }
  ledger.expect("/allocation_n40/se_proportional", allocation_se(acres, sds, proportional));
  ledger.expect("/allocation_n40/se_neyman", allocation_se(acres, sds, neyman));
}

TEST_F(OraclePoints, MeetEveryExpectedNumber) {
  constants();
  by_stand();
  stratified();
  cells();
  species_by_stand();
  pooled();
  post_stratified();
  volumes();
  double_sample();
  planning();
  ledger.fail_on_numbers_not_asked_for();
}

TEST_F(OraclePoints, AreNeverPooledOverStands) {
  EXPECT_GT(std::abs(all().live.ba.mean.value - ledger.at("/pooled_srs/ba/mean").get<double>()),
            1.0);
  EXPECT_GT(std::abs(all().live.ba.se->value - ledger.at("/pooled_srs/ba/se").get<double>()), 0.1);
}

TEST(OracleFixed, MeetsEveryExpectedNumber) {
  const auto oracle = test::read_oracle_fixed(OAKLIGHT_SOURCE_DIR);
  const auto e = cruise_estimate(oracle.data, test::test_species(), EstimateOptions{}).value();
  const std::vector samples{stand_sample(oracle.data, oracle.data.stands[0].id).value()};
  const Pick large = [](const TreeFacts& t) { return t.dbh.inches() >= Inches{4.5}; };
  const Pick small = [](const TreeFacts& t) { return t.dbh.inches() < Inches{4.5}; };
  Ledger ledger("expected_fixed.json");
  expect_mean(ledger, "/ba", e.all->live.ba);
  expect_mean(ledger, "/tpa", e.all->live.trees);
  const auto ba_large = figure_of(samples, large, ba_of);
  const auto tpa_large = figure_of(samples, large, trees_of);
  expect_mean(ledger, "/ba_large", ba_large);
  expect_mean(ledger, "/tpa_large", tpa_large);
  expect_mean(ledger, "/tpa_small", figure_of(samples, small, trees_of));
  ledger.expect("/qmd_large_in", quadratic_mean_diameter(SquareFeetPerAcre{ba_large.mean},
                                                         TreesPerAcre{tpa_large.mean})
                                     .value);
  EstimateOptions corrected;
  corrected.finite_population = true;
  const double population = *plots_to_tile(samples[0], false);
  ledger.expect("/ba_large_with_fpc/N_plots", population);
  ledger.expect("/ba_large_with_fpc/n", static_cast<double>(ba_large.plots));
  ledger.expect("/ba_large_with_fpc/factor", finite_correction(ba_large.plots, population));
  ledger.expect("/ba_large_with_fpc/se", figure_of(samples, large, ba_of, corrected).se);
  for (const char* key :
       {"n", "mean", "sd", "cv_pct", "se", "se_pct", "df", "t", "lo", "hi", "half_pct"}) {
    ledger.leave_out(std::string("/zero_plot_dropped_wrong/") + key,
                     "an empty plot left out: a trap, tested below");
  }
  ledger.fail_on_numbers_not_asked_for();
}

TEST(OracleFixed, NeverLeavesOutAnEmptyPlot) {
  const auto oracle = test::read_oracle_fixed(OAKLIGHT_SOURCE_DIR);
  const double wrong =
      read_json("expected_fixed.json").at("zero_plot_dropped_wrong").at("mean").get<double>();
  ASSERT_NEAR(wrong, 82.738, 5e-4);
  const auto samples = std::vector{stand_sample(oracle.data, oracle.data.stands[0].id).value()};
  EXPECT_EQ(samples[0].plots.size(), 10U);
  const auto large = figure_of(
      samples, [](const TreeFacts& t) { return t.dbh.inches() >= Inches{4.5}; }, ba_of);
  EXPECT_EQ(large.plots, 10);
  EXPECT_EQ(large.found, 9);
  EXPECT_NEAR(large.mean * 10.0 / 9.0, wrong, 1e-9) << "the same trees over nine plots";
  EXPECT_GT(std::abs(large.mean - wrong), 8.0);
}

}  // namespace
}  // namespace oaklight
