#include "tests/population/plot_maker.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numbers>

#include "core/base/number_text.hpp"
#include "core/measure/basal_area.hpp"
#include "core/measure/plot_geometry.hpp"

namespace oaklight::test {

double test_cubic_feet(Inches dbh) { return std::exp(-2.35332) * std::pow(dbh.value, 2.19997); }

PlotMaker::PlotMaker(const StemMap& map, const Design& design, Edge edge, const PickStem& pick)
    : width_(map.width.value), height_(map.height.value), edge_(edge) {
  for (const Stem& stem : map.stems) {
    if (!pick(stem)) continue;
    const Dbh dbh = stem.tree.facts.dbh;
    const double limit = limiting_distance(design, dbh, TapedTo::centre).value;
    Reach reach{stem.at.east.value,
                stem.at.north.value,
                limit * limit,
                {},
                basal_area(dbh.inches()).value,
                test_cubic_feet(dbh.inches()),
                stem.tree};
    for (int count = 1; count <= 4; ++count) {
      Tree tree = stem.tree;
      tree.edge_count = count;
      reach.trees.at(static_cast<std::size_t>(count)) = trees_stood_for(design, tree).value;
    }
    stems_.push_back(reach);
  }
}

int PlotMaker::count(const Reach& tree, double east, double north) const {
  double dx = std::fabs(tree.east - east);
  double dy = std::fabs(tree.north - north);
  if (edge_ == Edge::torus) {
    dx = std::min(dx, width_ - dx);
    dy = std::min(dy, height_ - dy);
  }
  const bool in = dx * dx + dy * dy <= tree.limit2;
  if (edge_ == Edge::mirage) {
    // From the plot and from its reflections over two sides and the corner between them: further
    // ones are beyond the reach of any plot here.
    const double mx = (east < width_ / 2.0 ? 0.0 : 2.0 * width_) - east - tree.east;
    const double my = (north < height_ / 2.0 ? 0.0 : 2.0 * height_) - north - tree.north;
    const double x2 = mx * mx;
    const double y2 = my * my;
    return (in ? 1 : 0) + (x2 + dy * dy <= tree.limit2 ? 1 : 0) +
           (dx * dx + y2 <= tree.limit2 ? 1 : 0) + (x2 + y2 <= tree.limit2 ? 1 : 0);
  }
  if (!in) return 0;
  if (edge_ != Edge::walkthrough) return 1;
  // As far beyond the tree as the plot is before it.
  const double end_east = 2.0 * tree.east - east;
  const double end_north = 2.0 * tree.north - north;
  const bool inside =
      end_east >= 0.0 && end_east <= width_ && end_north >= 0.0 && end_north <= height_;
  return inside ? 1 : 2;
}

PlotValue PlotMaker::at(double east, double north) const {
  PlotValue sum;
  for (const Reach& tree : stems_) {
    const int n = count(tree, east, north);
    if (n == 0) continue;
    const double trees = tree.trees.at(static_cast<std::size_t>(n));
    sum.trees += trees;
    sum.ba += trees * tree.ba;
    sum.volume += trees * tree.volume;
    sum.tallied += n;
    const double vbar = tree.volume / tree.ba;
    sum.vbar += n * vbar;
    sum.vbar2 += n * vbar * vbar;
  }
  return sum;
}

std::vector<Tree> PlotMaker::trees_at(double east, double north) const {
  std::vector<Tree> tallied;
  for (const Reach& reach : stems_) {
    const int n = count(reach, east, north);
    if (n == 0) continue;
    tallied.push_back(reach.tree);
    tallied.back().edge_count = n;
  }
  return tallied;
}

PlotValue PlotMaker::anywhere(SeededDraw& draw) const {
  const double east = width_ * draw.uniform();
  const double north = height_ * draw.uniform();
  return at(east, north);
}

double edge_bias_pct(const StemMap& map, const Design& design, Edge edge, const PickStem& pick,
                     Figure figure) {
  if (edge == Edge::torus || edge == Edge::mirage) return 0.0;
  constexpr int kSlices = 2048;  // of half a circle; the other half lies opposite
  double whole = 0.0;
  double tallied = 0.0;
  for (const Stem& stem : map.stems) {
    if (!pick(stem)) continue;
    const Dbh dbh = stem.tree.facts.dbh;
    const double radius = limiting_distance(design, dbh, TapedTo::centre).value;
    const double trees = trees_stood_for(design, stem.tree).value;
    const double weight = figure == Figure::ba ? trees * basal_area(dbh.inches()).value : trees;
    const double east = stem.at.east.value;
    const double north = stem.at.north.value;
    for (int i = 0; i < kSlices; ++i) {
      const double angle = (i + 0.5) * std::numbers::pi / kSlices;
      const double x = std::fabs(std::cos(angle));
      const double y = std::sin(angle);
      const bool to_east = angle < std::numbers::pi / 2.0;
      const double ahead = to_east ? map.width.value - east : east;
      const double behind = map.width.value - ahead;
      // Ground inside, along this slice and along the one opposite.
      const double a = std::min({radius, ahead / x, (map.height.value - north) / y});
      const double b = std::min({radius, behind / x, north / y});
      const double further = std::max(a, b);
      tallied += weight * (edge == Edge::walkthrough ? 2.0 * further * further : a * a + b * b);
      whole += weight * 2.0 * radius * radius;
    }
  }
  return 100.0 * (tallied / whole - 1.0);
}

Outcome repeat(int repeats, double truth, const std::function<Estimate<double>()>& cruise) {
  double sum = 0.0;
  double squares = 0.0;
  double reported = 0.0;
  int held = 0;
  for (int i = 0; i < repeats; ++i) {
    const Estimate<double> e = cruise();
    sum += e.mean;
    squares += (e.mean - truth) * (e.mean - truth);
    reported += e.se ? *e.se * *e.se : 0.0;
    // A cruise that found nothing gives no error: it claims nothing, and holds nothing.
    held += e.se && *e.lo <= truth && truth <= *e.hi ? 1 : 0;
  }
  Outcome out;
  out.repeats = repeats;
  out.mean = sum / repeats;
  const double off = out.mean - truth;
  out.true_se = std::sqrt((squares / repeats - off * off) * repeats / (repeats - 1.0));
  out.mean_se = out.true_se / std::sqrt(static_cast<double>(repeats));
  out.reported_se = std::sqrt(reported / repeats);
  out.covered = static_cast<double>(held) / repeats;
  return out;
}

int repeats_asked() {
  const char* asked = std::getenv("OAKLIGHT_REPEATS");
  if (asked == nullptr) return kUsualRepeats;
  return static_cast<int>(whole_from_text(asked).value());
}

double share_band(double share, int repeats, int elsewhere) {
  const double other = elsewhere > 0 ? 1.0 / elsewhere : 0.0;
  return 4.5 * std::sqrt(share * (1.0 - share) * (1.0 / repeats + other));
}

}  // namespace oaklight::test
