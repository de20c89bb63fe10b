#include <algorithm>
#include <cmath>

#include "core/sample/group_tally.hpp"

namespace oaklight {
namespace {

using Groups = std::span<const StandGroup>;

double ba_of(const PlotSums& p) { return p.ba; }

/// The figure of each plot on which the group was found; of the measured ones only, where asked.
std::vector<double> values_of(const GroupTally* tally, PlotFigure figure, bool measured_only) {
  std::vector<double> values;
  if (tally == nullptr) return values;
  for (const PlotSums& p : tally->plots()) {
    if (p.measured || !measured_only) values.push_back(figure(p));
  }
  return values;
}

int plots_of(const StandSample& sample, bool measured_only) {
  return measured_only ? sample.measure_plots() : static_cast<int>(sample.plots.size());
}

/// The mean over all plots, or over those that were measured.
Result<Estimate<double>> plain_mean(Groups stands, const EstimateOptions& options,
                                    PlotFigure figure, bool measured_only) {
  std::vector<Stratum> strata;
  for (const StandGroup& s : stands) {
    const auto moments =
        moments_of(values_of(s.tally, figure, measured_only), plots_of(*s.sample, measured_only));
    if (!moments) return moments.error();
    const bool small = s.tally != nullptr && s.tally->on_small_plot();
    strata.push_back({s.sample->stand->acres.value, *moments,
                      options.finite_population ? plots_to_tile(*s.sample, small) : std::nullopt});
  }
  return options.placed_over_tract ? post_stratified_estimate(strata, options.confidence)
                                   : stratified_mean(strata, options.confidence, options.df);
}

/// Figure over basal area on the measured plots: y of one group over x of another, or the same.
struct MeasuredRatio {
  Ratio ratio;
  int found = 0;  ///< measured plots on which y was found
  int stands = 0;
};

Result<MeasuredRatio> measured_ratio(Groups stands, PlotFigure figure,
                                     const GroupTally* StandGroup::*over,
                                     const GroupTally* StandGroup::*base) {
  std::vector<std::vector<double>> xs, ys;
  std::vector<PairedStratum> strata;
  MeasuredRatio r{.ratio = {}, .found = 0, .stands = static_cast<int>(stands.size())};
  for (const StandGroup& s : stands) {
    std::vector<double> x(s.sample->plots.size(), 0.0), y = x;
    const auto fill = [&](const GroupTally* tally, PlotFigure value, std::vector<double>& into) {
      if (tally == nullptr) return;
      for (const PlotSums& p : tally->plots()) {
        if (p.measured) into[static_cast<std::size_t>(p.plot)] = value(p);
      }
    };
    fill(s.*base, ba_of, x);
    fill(s.*over, figure, y);
    r.found += static_cast<int>(std::ranges::count_if(y, [](double v) { return v != 0.0; }));
    // A count point is not a measured plot with nothing on it.
    std::erase_if(x, [&, i = std::size_t{0}](double) mutable { return !s.sample->measured[i++]; });
    std::erase_if(y, [&, i = std::size_t{0}](double) mutable { return !s.sample->measured[i++]; });
    xs.push_back(std::move(x));
    ys.push_back(std::move(y));
  }
  for (std::size_t h = 0; h < stands.size(); ++h) {
    strata.push_back({.size = stands[h].sample->stand->acres.value,
                      .plots = plots_of(*stands[h].sample, true),
                      .x = xs[h],
                      .y = ys[h]});
  }
  const auto ratio = ratio_of_sums(strata);
  if (!ratio) return ratio.error();
  r.ratio = *ratio;
  return r;
}

/// Basal area on all plots times the ratio: the errors add in quadrature, and the degrees of
/// freedom follow from how much of the variance each brings.
Estimate<double> product(const Estimate<double>& ba, const MeasuredRatio& r) {
  Estimate<double> e{.mean = ba.mean * r.ratio.ratio,
                     .plots = ba.plots,
                     .found = std::min(ba.found, r.found),
                     .confidence = ba.confidence,
                     .trust = ba.trust};
  if (!(e.mean > 0.0)) {
    e.trust = Trust::not_found;
    return e;
  }
  const int ratio_df = r.ratio.plots - r.stands;
  if (!ba.se_pct || !ba.df || !r.ratio.se || ratio_df < 1) {
    e.trust = Trust::one_plot;
    return e;
  }
  if (e.trust == Trust::fair && r.found < kFairPlots) e.trust = Trust::few_found;
  if (r.ratio.plots == 2) e.trust = Trust::two_plots;
  const double a = std::pow(fraction(*ba.se_pct), 2);
  const double b = std::pow(*r.ratio.se / r.ratio.ratio, 2);
  const double spread = a * a / *ba.df + b * b / ratio_df;
  const double df = spread > 0.0 ? (a + b) * (a + b) / spread : *ba.df;
  set_interval(e, e.mean * std::sqrt(a + b), df);
  return e;
}

/// Enough of the group's own trees were measured, on more than one plot.
bool own_ratio(Groups stands) {
  int stems = 0;
  int plots = 0;
  for (const StandGroup& s : stands) {
    if (s.tally == nullptr) continue;
    stems += s.tally->measured_stems();
    plots += static_cast<int>(std::ranges::count_if(s.tally->plots(), &PlotSums::measured));
  }
  return stems >= kRatioTrees && plots > 1;
}

Error none_measured() {
  return {ErrorCode::no_data, "Trees were counted, and none was measured.", "plots",
          "Measure the trees of at least two points of each stand."};
}

/// Basal area on all plots of the group (or of all live trees, for a group told by size) times the
/// ratio that the measured plots give.
Result<Estimate<double>> by_ratio(std::vector<StandGroup> stands, const EstimateOptions& options,
                                  PlotFigure figure, AtCountPoints at, FigureBasis* basis) {
  bool live = at == AtCountPoints::counted;
  for (StandGroup& s : stands) {
    live = live && (s.live == nullptr || s.live == s.tally);
    if (s.live == nullptr) s.live = s.tally;
  }
  const bool counted = at == AtCountPoints::counted;
  const bool pooled = counted && !live && !own_ratio(stands);
  if (basis != nullptr) *basis = {.by_ratio = true, .pooled = pooled};
  std::vector<StandGroup> whole = stands;
  if (!counted) {
    for (StandGroup& s : whole) s.tally = s.live;
  }
  const auto ba = plain_mean(whole, options, ba_of, false);
  if (!ba) return ba.error();
  if (ba->trust == Trust::not_found) return *ba;
  const auto unmeasured = [](const StandGroup& g) { return g.sample->measure_plots() == 0; };
  if (std::ranges::any_of(stands, unmeasured)) return none_measured();
  const auto ratio = measured_ratio(stands, figure, pooled ? &StandGroup::live : &StandGroup::tally,
                                    counted && !pooled ? &StandGroup::tally : &StandGroup::live);
  if (!ratio && ratio.error().code == ErrorCode::no_data) return none_measured();
  if (!ratio) return ratio.error();
  return product(*ba, *ratio);
}

}  // namespace

Result<Estimate<double>> estimate_over(Groups stands, const EstimateOptions& options,
                                       PlotFigure figure, AtCountPoints at, bool sizes, bool logs,
                                       FigureBasis* basis) {
  if (basis != nullptr) *basis = {};
  const bool all_sized =
      std::ranges::all_of(stands, [](const StandGroup& s) { return s.sample->all_sized(); });
  const bool sampled =
      std::ranges::any_of(stands, [](const StandGroup& s) { return s.sample->double_sampled(); });
  const bool told = (all_sized || (at == AtCountPoints::counted && !sizes)) && !(logs && sampled);
  if (told) return plain_mean(stands, options, figure, false);
  if (at == AtCountPoints::not_counted) return plain_mean(stands, options, figure, true);
  return by_ratio({stands.begin(), stands.end()}, options, figure, at, basis);
}

}  // namespace oaklight
