// Figures of whole maps by the product's own functions, for the rows of maps.tsv.
#include "tests/population/map_evaluators.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "core/measure/basal_area.hpp"
#include "core/measure/plot_geometry.hpp"
#include "core/sample/ratio.hpp"
#include "core/sample/share.hpp"
#include "core/sample/stratified.hpp"
#include "tests/population/plot_maker.hpp"

namespace oaklight::test {
namespace {

const std::string& text(const Inputs& in, const std::string& name) {
  const auto found = in.find(name);
  if (found == in.end()) throw std::runtime_error("the row has no input \"" + name + "\"");
  return found->second;
}

const StemMap& map_of(const Inputs& in) { return stem_map(text(in, "map")); }

Design design_of(const Inputs& in) {
  if (in.contains("baf")) return PointDesign{number(in, "baf"), UnitSystem::us};
  return FixedDesign{.area = 1.0 / number(in, "plots_per_acre")};
}

PickStem pick_of(const Inputs& in) {
  if (in.contains("kind")) return of_kind(text(in, "kind"));
  if (in.contains("at_least_in")) return at_least(Inches{number(in, "at_least_in")});
  return any_stem();
}

bool is_ba(const Inputs& in) { return text(in, "figure") == "ba"; }

PlotMaker plots_of(const Inputs& in) {
  return {map_of(in), design_of(in), Edge::torus, pick_of(in)};
}

/// Circle of ground from which a tree is tallied, and what it then adds to the acre.
struct Circle {
  double east, north, radius, weight;
};

std::vector<Circle> circles(const Inputs& in) {
  std::vector<Circle> all;
  const Design design = design_of(in);
  for (const Stem& stem : map_of(in).stems) {
    if (!pick_of(in)(stem)) continue;
    const Dbh dbh = stem.tree.facts.dbh;
    const double trees = trees_stood_for(design, stem.tree).value;
    all.push_back({stem.at.east.value, stem.at.north.value,
                   limiting_distance(design, dbh, TapedTo::centre).value,
                   is_ba(in) ? trees * basal_area(dbh.inches()).value : trees});
  }
  return all;
}

/// Ground that two circles share. Geometry: two segments of a circle.
double overlap(double a, double b, double apart) {
  if (apart >= a + b) return 0.0;
  if (apart <= std::fabs(a - b)) {
    const double r = std::min(a, b);
    return std::numbers::pi * r * r;
  }
  const auto angle = [apart](double r, double other) {
    return std::acos(
        std::clamp((apart * apart + r * r - other * other) / (2.0 * apart * r), -1.0, 1.0));
  };
  const double kite = (-apart + a + b) * (apart + a - b) * (apart - a + b) * (apart + a + b);
  return a * a * angle(a, b) + b * b * angle(b, a) - 0.5 * std::sqrt(std::max(0.0, kite));
}

/// Spread of one plot's value anywhere on a torus, without any chance: the expected square is the
/// sum over pairs of trees of the ground from which both are tallied.
double one_plot_sd(const Inputs& in) {
  const StemMap& map = map_of(in);
  const auto all = circles(in);
  const double ground = map.width.value * map.height.value;
  double mean = 0.0;
  double square = 0.0;
  for (const Circle& a : all) {
    mean += a.weight * std::numbers::pi * a.radius * a.radius / ground;
    for (const Circle& b : all) {
      double dx = std::fabs(a.east - b.east);
      double dy = std::fabs(a.north - b.north);
      dx = std::min(dx, map.width.value - dx);
      dy = std::min(dy, map.height.value - dy);
      const double apart2 = dx * dx + dy * dy;
      const double reach = a.radius + b.radius;
      if (apart2 >= reach * reach) continue;
      square += a.weight * b.weight * overlap(a.radius, b.radius, std::sqrt(apart2)) / ground;
    }
  }
  return std::sqrt(square - mean * mean);
}

double edge_bias_of(const Inputs& in) {
  return edge_bias_pct(map_of(in), design_of(in), Edge::ignored, pick_of(in),
                       is_ba(in) ? Figure::ba : Figure::trees);
}

/// Spread of the means of a square grid over all its starts, or the error that it reports.
double grid_se(const Inputs& in, bool reported) {
  constexpr int kStarts = 100;
  const int side = static_cast<int>(number(in, "side"));
  const PlotMaker plots = plots_of(in);
  const double spacing = map_of(in).width.value / side;
  const double truth = census_of(map_of(in), any_stem()).ba.value;
  int start = 0;
  const Outcome got = repeat(kStarts * kStarts, truth, [&] {
    const double east = (start % kStarts + 0.5) * spacing / kStarts;
    const double north = (start / kStarts + 0.5) * spacing / kStarts;
    ++start;
    std::vector<double> values;
    for (int i = 0; i < side * side; ++i) {
      values.push_back(plots.at(east + spacing * (i % side), north + spacing * (i / side)).ba);
    }
    return mean_of(values, Confidence{}).value();
  });
  return reported ? got.reported_se : got.true_se;
}

double halves_se(const Inputs& in) {
  const StemMap& map = map_of(in);
  const PlotMaker plots = plots_of(in);
  const int n = static_cast<int>(number(in, "plots"));
  SeededDraw draw(31);
  const auto half = [&](double from) {
    std::vector<double> values;
    for (int i = 0; i < n; ++i) {
      const double east = from + map.width.value / 2.0 * draw.uniform();
      values.push_back(plots.at(east, map.height.value * draw.uniform()).ba);
    }
    return Stratum{map.acres().value / 2.0, moments_of(values, n).value(), std::nullopt};
  };
  return repeat(5'000, census_of(map, any_stem()).ba.value,
                [&] {
                  const std::vector<Stratum> strata{half(0.0), half(map.width.value / 2.0)};
                  return stratified_mean(strata, Confidence{}).value();
                })
      .true_se;
}

double mean_of_qmds(const Inputs& in) {
  const PlotMaker plots = plots_of(in);
  const auto n = static_cast<std::size_t>(number(in, "plots"));
  constexpr int kCruises = 5'000;
  SeededDraw draw(32);
  double sum = 0.0;
  for (int i = 0; i < kCruises; ++i) {
    std::vector<double> trees;
    std::vector<double> ba;
    while (trees.size() < n) {
      const PlotValue plot = plots.anywhere(draw);
      trees.push_back(plot.trees);
      ba.push_back(plot.ba);
    }
    const PairedStratum pairs{.plots = static_cast<int>(n), .x = trees, .y = ba};
    sum += mean_diameter({&pairs, 1}).value().qmd.value;
  }
  return sum / kCruises;
}

double share_of_plots(const Inputs& in) {
  const PlotMaker plots = plots_of(in);
  constexpr int kPlots = 40'000;
  SeededDraw draw(33);
  int found = 0;
  for (int i = 0; i < kPlots; ++i) found += plots.anywhere(draw).tallied > 0 ? 1 : 0;
  return fraction(share_estimate(found, kPlots, Confidence{}).value().share);
}

double coverage(const Inputs& in) {
  const PlotMaker plots = plots_of(in);
  const auto n = static_cast<std::size_t>(number(in, "plots"));
  SeededDraw draw(34);
  return repeat(10'000, census_of(map_of(in), any_stem()).ba.value,
                [&] {
                  std::vector<double> values;
                  while (values.size() < n) values.push_back(plots.anywhere(draw).ba);
                  return mean_of(values, Confidence{}).value();
                })
      .covered;
}

Census census(const Inputs& in) { return census_of(map_of(in), pick_of(in)); }

/// The felled cherries: basal areas, volumes, and volume over basal area of each.
struct Cherries {
  std::vector<double> ba, volume, vbar;
  double ba_sum = 0.0;
  double volume_sum = 0.0;
};
Cherries cherries() {
  Cherries all;
  for (const FelledTree& tree : black_cherries()) {
    all.ba.push_back(basal_area(tree.dbh).value);
    all.volume.push_back(tree.cubic_feet);
    all.vbar.push_back(all.volume.back() / all.ba.back());
    all.ba_sum += all.ba.back();
    all.volume_sum += all.volume.back();
  }
  return all;
}

Estimate<double> cherry_vbar() { return mean_of(cherries().vbar, Confidence{}).value(); }

void add_cherries(Evaluators& all) {
  all["cherry_sum_ba_ft2"] = [](const Inputs&) { return cherries().ba_sum; };
  all["cherry_sum_volume_cuft"] = [](const Inputs&) { return cherries().volume_sum; };
  all["cherry_vbar_ratio_of_sums"] = [](const Inputs&) {
    const Cherries c = cherries();
    const PairedStratum pairs{.plots = static_cast<int>(c.ba.size()), .x = c.ba, .y = c.volume};
    return ratio_of_sums({&pairs, 1}).value().ratio;
  };
  all["cherry_vbar_mean_of_ratios"] = [](const Inputs&) { return cherry_vbar().mean; };
  all["cherry_vbar_cv_pct"] = [](const Inputs&) { return cherry_vbar().cv.value().value; };
  all["cherry_qmd_in"] = [](const Inputs&) {
    return quadratic_mean_diameter(SquareFeetPerAcre{cherries().ba_sum},
                                   TreesPerAcre{static_cast<double>(cherries().ba.size())})
        .value;
  };
}

}  // namespace

Evaluators map_evaluators() {
  Evaluators all;
  all["census_acres"] = [](const Inputs& in) { return map_of(in).acres().value; };
  all["census_trees"] = [](const Inputs& in) { return census(in).trees.value; };
  all["census_ba"] = [](const Inputs& in) { return census(in).ba.value; };
  all["census_qmd"] = [](const Inputs& in) {
    return quadratic_mean_diameter(census(in).ba, census(in).trees).value;
  };
  add_cherries(all);
  all["one_plot_sd"] = one_plot_sd;
  all["edge_bias_pct"] = edge_bias_of;
  all["grid_true_se"] = [](const Inputs& in) { return grid_se(in, false); };
  all["grid_reported_se"] = [](const Inputs& in) { return grid_se(in, true); };
  all["halves_se"] = halves_se;
  all["mean_of_qmds"] = mean_of_qmds;
  all["share_of_plots"] = share_of_plots;
  all["coverage"] = coverage;
  return all;
}

}  // namespace oaklight::test
