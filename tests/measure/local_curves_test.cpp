// Curves fitted to trees of the place: against R's lm and nls on the invented trees of
// tests/golden/curves, and against closed forms.
#include "core/measure/local_curves.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <map>
#include <sstream>

#include "tests/support/places.hpp"
#include "tests/support/readings.hpp"

namespace oaklight {
namespace {

/// Rows of trees.csv that have the column: 1 is the crown width, 2 the height.
std::vector<SizedTree> golden_trees(std::size_t column) {
  std::ifstream in(test::source_path("tests/golden/curves/trees.csv"));
  EXPECT_TRUE(in.is_open());
  std::vector<SizedTree> trees;
  std::string line;
  std::getline(in, line);
  while (std::getline(in, line)) {
    std::stringstream cells(line + ",");
    std::vector<std::string> row;
    for (std::string cell; std::getline(cells, cell, ',');) row.push_back(cell);
    if (row.size() <= column || row[column].empty()) continue;
    trees.push_back({Inches{std::stod(row[0])}, Feet{std::stod(row[column])}});
  }
  return trees;
}

std::map<std::string, double> golden_values() {
  std::ifstream in(test::source_path("tests/golden/curves/curves.tsv"));
  EXPECT_TRUE(in.is_open());
  std::map<std::string, double> values;
  std::string name;
  double value = 0.0;
  while (in >> name >> value) values[name] = value;
  return values;
}

void expect_fit(CurveKind kind, std::size_t column, const std::string& name) {
  const auto want = golden_values();
  const LocalCurve curve = fit_curve(kind, golden_trees(column)).value();
  EXPECT_EQ(curve.trees, static_cast<int>(want.at(name + "_n")));
  const auto near = [&](const char* what, double got) {
    const double expected = want.at(name + what);
    EXPECT_NEAR(got, expected, 1e-6 * std::abs(expected)) << name << what;
  };
  near("_a", curve.a);
  near("_b", curve.b);
  near("_sd", curve.residual_sd.value);
  near("_at_15", length_on(curve, Inches{15.0}).value);
}

TEST(LocalCurves, CrownWidthsAreFittedAsRsLmFitsThem) {
  expect_fit(CurveKind::crown_width, 1, "width");
}

TEST(LocalCurves, HeightsAreFittedAsRsNlsFitsThem) { expect_fit(CurveKind::height, 2, "height"); }

/// Trees that lie on a curve exactly.
std::vector<SizedTree> on_curve(int count, double from, double to, double (*length)(double)) {
  std::vector<SizedTree> trees;
  for (int i = 0; i < count; ++i) {
    const double dbh = from + (to - from) * i / (count - 1);
    trees.push_back({Inches{dbh}, Feet{length(dbh)}});
  }
  return trees;
}
double line(double d) { return 3.0 + 1.5 * d; }
double wykoff(double d) { return 4.5 + std::exp(4.8 - 8.0 / (d + 1.0)); }

TEST(LocalCurves, TreesOnACurveGiveThatCurveWithoutResidual) {
  // Derived: the coefficients that made them.
  const auto width = fit_curve(CurveKind::crown_width, on_curve(20, 6.0, 20.0, line)).value();
  EXPECT_NEAR(width.a, 3.0, 1e-9);
  EXPECT_NEAR(width.b, 1.5, 1e-10);
  EXPECT_NEAR(width.residual_sd.value, 0.0, 1e-9);
  const auto height = fit_curve(CurveKind::height, on_curve(20, 6.0, 20.0, wykoff)).value();
  EXPECT_NEAR(height.a, 4.8, 1e-8);
  EXPECT_NEAR(height.b, -8.0, 1e-7);
  EXPECT_NEAR(height.residual_sd.value, 0.0, 1e-7);
}

TEST(LocalCurves, TheOrderOfTheTreesDoesNotMatter) {
  auto trees = golden_trees(2);
  const auto curve = fit_curve(CurveKind::height, trees).value();
  std::reverse(trees.begin(), trees.end());
  const auto turned = fit_curve(CurveKind::height, trees).value();
  EXPECT_EQ(curve.a, turned.a);
  EXPECT_EQ(curve.b, turned.b);
}

TEST(LocalCurves, AreRefusedFromTooFewTreesOrTooMuchAlike) {
  const auto code = [](const std::vector<SizedTree>& trees) {
    return fit_curve(CurveKind::crown_width, trees).error().code;
  };
  EXPECT_EQ(code({}), ErrorCode::too_few_plots);
  EXPECT_EQ(code(on_curve(kCurveTrees - 1, 6.0, 20.0, line)), ErrorCode::too_few_plots);
  EXPECT_EQ(code(on_curve(40, 10.0, 10.0 + kCurveSpan.value - 0.1, line)),
            ErrorCode::too_few_plots);
  EXPECT_EQ(code(on_curve(20, 6.0, 20.0, [](double d) { return 40.0 - d; })),
            ErrorCode::out_of_range);  // thicker trees with narrower crowns
  auto odd = on_curve(20, 6.0, 20.0, line);
  odd[3].length = Feet{0.0};
  EXPECT_EQ(code(odd), ErrorCode::out_of_range);
  odd[3].length = Feet{std::nan("")};
  EXPECT_EQ(code(odd), ErrorCode::not_a_number);
}

TEST(LocalCurves, TakeTreesThatSpanSixInchesAndNoLess) {
  // Six inches are our own judgement; 10.0 to 16.0 is exact in binary.
  const auto span_of = [](double inches) {
    return fit_curve(CurveKind::crown_width, on_curve(kCurveTrees, 10.0, 10.0 + inches, line));
  };
  ASSERT_TRUE(span_of(6.0).has_value());
  EXPECT_EQ(span_of(6.0)->to - span_of(6.0)->from, Inches{6.0});
  EXPECT_EQ(span_of(5.9).error().code, ErrorCode::too_few_plots);
}

TEST(LocalCurves, ASpeciesOwnCurveGoesBeforeThatOfAllAndNeitherBeyondItsTrees) {
  LocalCurve oak{.fia = 802,
                 .a = 1.0,
                 .b = 1.0,
                 .trees = 20,
                 .residual_sd = {},
                 .from = Inches{8.0},
                 .to = Inches{20.0},
                 .measured = {}};
  LocalCurve all = oak;
  all.fia = {};
  all.from = Inches{5.0};
  all.to = Inches{24.0};
  const std::vector<LocalCurve> curves{oak, all};
  const auto found = [&](int fia, double dbh) {
    return curve_for(curves, CurveKind::crown_width, fia, Inches{dbh});
  };
  EXPECT_EQ(found(802, 8.0), &curves[0]);
  EXPECT_EQ(found(802, 20.1), &curves[1]);
  EXPECT_EQ(found(316, 12.0), &curves[1]);
  EXPECT_EQ(found(802, 24.1), nullptr);
  EXPECT_EQ(found(802, 4.9), nullptr);
  EXPECT_EQ(curve_for(curves, CurveKind::height, 802, Inches{12.0}), nullptr);
}

WalkTree taped(StandId stand, double dbh, double each) {
  WalkTree tree{{}, stand, {}, {SpeciesCode{802}, test::dbh_in(dbh)}, false, {}, {}, {}};
  const auto radius = [](double ft) {
    return TapedLength::from_hundredths(static_cast<int>(std::lround(ft * 100.0)), UnitSystem::us)
        .value();
  };
  tree.crown = {radius(each), radius(each + 1.0), radius(each), radius(each + 1.0)};
  return tree;
}

TEST(LocalCurves, OfAStandComeFromItsOwnTapedCrowns) {
  const StandId here{Uuid{}};
  std::vector<WalkTree> walk;
  for (int i = 0; i < kCurveTrees; ++i) {
    walk.push_back(taped(here, 6.0 + i, 4.0 + i));
    // By hand: two widths, each 2 (4 + i) and 2 (5 + i): their mean is 9 + 2 i = 2 D - 3.
  }
  const auto curves = crown_curves(walk, here);
  ASSERT_EQ(curves.size(), 2U);  // of white oak, and of all
  EXPECT_EQ(curves[0].fia, 802);
  EXPECT_NEAR(curves[1].a, -3.0, 1e-9);
  EXPECT_NEAR(curves[1].b, 2.0, 1e-9);
  walk.front().facts.status = TreeStatus::dead;
  EXPECT_TRUE(crown_curves(walk, here).empty());
}

TEST(LocalCurves, OfHeightsLeaveOutWhatIsNoWholeLivingTreeAndCountATagOnce) {
  TractData data;
  // Derived: heights 4.5 + exp(4.8 - 8 / (D + 1)), to the tape's hundredth of a foot.
  for (int i = 0; i < kCurveTrees; ++i) {
    WalkTree tree{{}, {}, std::to_string(i), {SpeciesCode{802}, test::dbh_in(6.0 + i)}, false, {},
                  {}, {}};
    tree.facts.height = test::tape_ft(wykoff(6.0 + i));
    data.walk_trees.push_back(tree);
    Tree again{{}, {}, tree.facts};
    again.tag = tree.tag;
    data.trees.push_back(again);
  }
  const auto curves = height_curves(data);
  ASSERT_EQ(curves.size(), 2U);  // of white oak, and of all
  EXPECT_EQ(curves[0].trees, kCurveTrees) << "a tagged tree of walk and plot is one tree";
  EXPECT_NEAR(length_on(curves[0], Inches{15.0}).value, wykoff(15.0), 0.01);
  SpeciesTable species;
  EXPECT_TRUE(fit_words(curves[0], species).starts_with("local fit, species 802, n = 20, "));
  EXPECT_TRUE(fit_words(curves[1], species).ends_with("DBH 6.0 to 25.0 in"));
  data.trees.clear();
  const auto without = [&](auto change) {
    TractData less = data;
    change(less.walk_trees.back().facts);
    return height_curves(less).empty();
  };
  EXPECT_FALSE(without([](TreeFacts&) {}));
  EXPECT_TRUE(without([](TreeFacts& f) { f.height.reset(); }));
  EXPECT_TRUE(without([](TreeFacts& f) { f.height = test::tape_ft(4.5); }));
  EXPECT_TRUE(without([](TreeFacts& f) { f.status = TreeStatus::dead; }));
  EXPECT_TRUE(without([](TreeFacts& f) { f.conditions.add(Condition::broken_top); }));
}

TEST(LocalVolume, RunsStraightBetweenItsLinesAndEndsWithThem) {
  const LocalVolumes table{"doyle",
                           "invented",
                           {{{}, Inches{10.0}, 20.0, 0.1},
                            {{}, Inches{20.0}, 220.0, {}},
                            {802, Inches{12.0}, 60.0, {}},
                            {802, Inches{16.0}, 140.0, {}}}};
  const auto volume = [&](int fia, double dbh) {
    return local_volume(table, fia, Inches{dbh}, LogRule::doyle);
  };
  // By hand: halfway between the lines.
  EXPECT_DOUBLE_EQ(volume(316, 15.0).board_feet->value, 120.0);
  EXPECT_DOUBLE_EQ(volume(802, 14.0).board_feet->value, 100.0);
  EXPECT_DOUBLE_EQ(volume(802, 16.0).board_feet->value, 140.0);
  EXPECT_FALSE(volume(802, 11.9).board_feet);  // its own lines go before those of any
  EXPECT_FALSE(volume(316, 20.1).board_feet);
  EXPECT_DOUBLE_EQ(volume(316, 10.0).cords->value, 0.1);
  EXPECT_FALSE(volume(316, 10.1).cords);  // no second line with cords
  EXPECT_FALSE(local_volume(table, 316, Inches{15.0}, LogRule::scribner).board_feet);
}

}  // namespace
}  // namespace oaklight
