// Cruises repeated on whole populations, of which the truth is known: what their means come to, and
// how often their intervals hold that truth. Expected shares come from simulations in NumPy that
// share nothing with this program (apart/).
#include <gtest/gtest.h>

#include <cmath>
#include <optional>

#include "core/base/number_text.hpp"
#include "tests/population/report_row.hpp"

namespace oaklight::test {
namespace {

/// What is known of a case from elsewhere: how often intervals hold the truth, over how many
/// repeats that was found.
struct Elsewhere {
  double covered;
  int repeats;
};

struct Case {
  const char* map;
  const char* kind;  ///< of stems; "5in": 5 in and more
  double size;       ///< of a plot: a factor from 1 upward, acres below
  Edge edge;
  Figure figure;
  int plots;
  std::optional<Elsewhere> elsewhere{};
};

std::string figure_words(Figure figure) { return figure == Figure::ba ? "basal area" : "trees"; }

PickStem pick_of(const std::string& kind) {
  return kind == "5in" ? at_least(Inches{5.0}) : of_kind(kind);
}

double truth_of(const Case& c) {
  const Census census = census_of(stem_map(c.map), pick_of(c.kind));
  return c.figure == Figure::ba ? census.ba.value : census.trees.value;
}

class Simulation : public testing::TestWithParam<Case> {
 protected:
  void SetUp() override {
    if (!maps_are_installed()) GTEST_SKIP() << "needs R with package spatstat.data";
  }
};

TEST_P(Simulation, IsUnbiasedAndCoversAsOftenAsItDoesElsewhere) {
  const Case& c = GetParam();
  const PlotMaker plots(stem_map(c.map), design_of(c.size), c.edge, pick_of(c.kind));
  const double truth = truth_of(c);
  SeededDraw draw(20260504 + static_cast<std::uint64_t>(c.plots));
  const Outcome got = repeat(repeats_asked(), truth, [&] {
    std::vector<double> values;
    while (values.size() < static_cast<std::size_t>(c.plots)) {
      const PlotValue plot = plots.anywhere(draw);
      values.push_back(c.figure == Figure::ba ? plot.ba : plot.trees);
    }
    return mean_of(values, Confidence{}).value();
  });
  const double bias_pct =
      edge_bias_pct(stem_map(c.map), design_of(c.size), c.edge, pick_of(c.kind), c.figure);
  EXPECT_NEAR(got.mean, truth * (1.0 + bias_pct / 100.0), 4.5 * got.mean_se) << bias_pct;
  std::string low;
  std::string high;
  if (c.elsewhere) {
    const double band = share_band(c.elsewhere->covered, got.repeats, c.elsewhere->repeats);
    EXPECT_NEAR(got.covered, c.elsewhere->covered, band);
    low = number_text(100.0 * (c.elsewhere->covered - band), 1);
    high = number_text(100.0 * (c.elsewhere->covered + band), 1);
  }
  if (c.edge == Edge::ignored) {
    EXPECT_LT(got.mean, truth - 4.5 * got.mean_se) << "the loss at the edge must show";
  }
  if (c.edge == Edge::walkthrough) {
    EXPECT_LT(std::fabs(bias_pct), 1.5) << "what the walkthrough leaves in corners is small";
  }
  record({.map = c.map,
          .what = figure_words(c.figure) + " " + c.kind,
          .method = design_words(c.size),
          .edge = edge_words(c.edge),
          .plots = c.plots,
          .truth = truth,
          .got = got,
          .low = low,
          .high = high,
          .bias_pct = bias_pct});
}

std::string case_name(const testing::TestParamInfo<Case>& info) {
  const Case& c = info.param;
  std::string name = std::string(c.map) + "_" + c.kind + "_" + figure_words(c.figure) + "_" +
                     design_words(c.size) + "_" + edge_words(c.edge) + "_" +
                     std::to_string(c.plots);
  for (char& letter : name) {
    if (std::isalnum(static_cast<unsigned char>(letter)) == 0) letter = '_';
  }
  return name;
}

// Shares: apart/longleaf_design.py, 150,000 points cut into cruises.
INSTANTIATE_TEST_SUITE_P(
    Longleaf, Simulation,
    testing::Values(Case{"longleaf", "all", 10, Edge::torus, Figure::ba, 5, {{0.9423, 10'000}}},
                    Case{"longleaf", "all", 10, Edge::torus, Figure::ba, 10, {{0.9441, 10'000}}},
                    Case{"longleaf", "all", 10, Edge::torus, Figure::ba, 15, {{0.9486, 10'000}}},
                    Case{"longleaf", "all", 10, Edge::torus, Figure::ba, 30, {{0.9478, 5'000}}},
                    Case{"longleaf", "all", 0.1, Edge::torus, Figure::ba, 10, {{0.9451, 10'000}}},
                    Case{"longleaf", "all", 0.2, Edge::torus, Figure::ba, 10, {{0.9498, 10'000}}},
                    Case{
                        "longleaf", "all", 0.1, Edge::torus, Figure::trees, 10, {{0.8994, 10'000}}},
                    Case{"longleaf", "all", 10, Edge::torus, Figure::trees, 10, {{0.6671, 10'000}}},
                    Case{"longleaf", "5in", 10, Edge::torus, Figure::trees, 10, {{0.9173, 10'000}}},
                    Case{"longleaf", "5in", 10, Edge::torus, Figure::trees, 30, {{0.929, 5'000}}},
                    Case{"longleaf", "all", 5, Edge::torus, Figure::ba, 10},
                    Case{"longleaf", "all", 20, Edge::torus, Figure::ba, 10},
                    Case{"longleaf", "all", 0.05, Edge::torus, Figure::ba, 10},
                    Case{"longleaf", "all", 10, Edge::mirage, Figure::ba, 15},
                    Case{"longleaf", "all", 10, Edge::walkthrough, Figure::ba, 15},
                    Case{"longleaf", "all", 0.2, Edge::mirage, Figure::ba, 15},
                    Case{"longleaf", "all", 0.2, Edge::walkthrough, Figure::ba, 15},
                    Case{"longleaf", "all", 10, Edge::ignored, Figure::ba, 15},
                    Case{"longleaf", "all", 0.2, Edge::ignored, Figure::ba, 15}),
    case_name);

// Shares: apart/lansing_design.py, 30,000 plots cut into cruises. A rare kind is met on few plots,
// and its intervals are too short: the program marks what was found on fewer than five.
INSTANTIATE_TEST_SUITE_P(
    Lansing, Simulation,
    testing::Values(
        Case{"lansing", "all", 0.1, Edge::torus, Figure::trees, 20, {{0.9527, 1'500}}},
        Case{"lansing", "oaks", 0.1, Edge::torus, Figure::trees, 20, {{0.9353, 1'500}}},
        Case{"lansing", "whiteoak", 0.1, Edge::torus, Figure::trees, 20, {{0.9267, 1'500}}},
        Case{"lansing", "redoak", 0.1, Edge::torus, Figure::trees, 20, {{0.9333, 1'500}}},
        Case{"lansing", "blackoak", 0.1, Edge::torus, Figure::trees, 20, {{0.8887, 1'500}}},
        Case{"lansing", "hickory", 0.1, Edge::torus, Figure::trees, 20, {{0.9293, 1'500}}},
        Case{"lansing", "maple", 0.1, Edge::torus, Figure::trees, 20, {{0.9307, 1'500}}},
        Case{"lansing", "misc", 0.1, Edge::torus, Figure::trees, 20, {{0.8880, 1'500}}},
        Case{"lansing", "misc", 0.1, Edge::torus, Figure::trees, 10, {{0.8190, 3'000}}},
        Case{"lansing", "misc", 0.01, Edge::torus, Figure::trees, 20, {{0.616, 1'500}}},
        Case{"lansing", "oaks", 0.01, Edge::torus, Figure::trees, 20, {{0.936, 1'500}}},
        Case{"lansing", "oaks", 0.1, Edge::mirage, Figure::trees, 20},
        Case{"lansing", "oaks", 0.1, Edge::walkthrough, Figure::trees, 20}),
    case_name);

INSTANTIATE_TEST_SUITE_P(
    Others, Simulation,
    testing::Values(Case{"waka", "all", 20, Edge::torus, Figure::ba, 10},
                    Case{"waka", "all", 0.1, Edge::torus, Figure::ba, 10},
                    Case{"waka", "all", 0.1, Edge::torus, Figure::trees, 10},
                    Case{"waka", "all", 20, Edge::walkthrough, Figure::ba, 10},
                    Case{"spruces", "all", 20, Edge::torus, Figure::ba, 10},
                    Case{"spruces", "all", 0.02, Edge::torus, Figure::trees, 10},
                    Case{"spruces", "all", 20, Edge::mirage, Figure::ba, 10},
                    Case{"spruces", "all", 20, Edge::walkthrough, Figure::ba, 10}),
    case_name);

}  // namespace
}  // namespace oaklight::test
