// What is said beside a figure that lies outside its source.
#include "core/stand/figure_range.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>

namespace oaklight {
namespace {

std::vector<std::string> keys_of(const std::vector<OutOfRange>& list) {
  std::vector<std::string> keys;
  for (const OutOfRange& one : list) keys.emplace_back(one.key);
  return keys;
}

AreaEstimate fair_area() {
  AreaEstimate area{.need = Error{}};
  area.live.ba.trust = Trust::fair;
  return area;
}

using Keys = std::vector<std::string>;

/// One kind of wood: its figure, and the stems that are not in it.
struct Wood {
  std::string key;
  std::function<void(GroupFigures&)> figure;
  std::function<int&(GroupFigures&)> without;
};

const std::vector<Wood>& kinds_of_wood() {
  static const std::vector<Wood> kinds{
      {"board_feet", [](GroupFigures& f) { f.board_feet.emplace(); },
       [](GroupFigures& f) -> int& { return f.without_board_feet; }},
      {"cords", [](GroupFigures& f) { f.cords.emplace(); },
       [](GroupFigures& f) -> int& { return f.without_cords; }},
      {"stem_wood", [](GroupFigures& f) { f.stem_wood.emplace(); },
       [](GroupFigures& f) -> int& { return f.without_stem; }}};
  return kinds;
}

TEST(FigureRange, SaysHowManyStemsAFigureOfWoodLeavesOut) {
  for (const Wood& wood : kinds_of_wood()) {
    AreaEstimate area = fair_area();
    wood.figure(area.live);
    wood.without(area.live) = 3;
    const auto said = out_of_range(area, nullptr);
    ASSERT_EQ(keys_of(said), Keys{wood.key});
    EXPECT_TRUE(said[0].words.starts_with("3 stems ")) << said[0].words;
    EXPECT_TRUE(said[0].words.ends_with("the figure is too low")) << said[0].words;
    wood.without(area.live) = 1;
    EXPECT_TRUE(out_of_range(area, nullptr)[0].words.starts_with("1 stem "));
  }
}

TEST(FigureRange, SaysNothingWhereAFigureHasEveryStemOrThereIsNoFigure) {
  for (const Wood& wood : kinds_of_wood()) {
    AreaEstimate whole = fair_area();
    wood.figure(whole.live);
    EXPECT_EQ(keys_of(out_of_range(whole, nullptr)), Keys{}) << wood.key;
    AreaEstimate none = fair_area();
    wood.without(none.live) = 3;
    EXPECT_EQ(keys_of(out_of_range(none, nullptr)), Keys{}) << wood.key;
  }
}

TEST(FigureRange, SaysWhereAnIntervalStandsOnFewPlots) {
  for (const auto& [trust, words] :
       {std::pair(Trust::one_plot, "one plot only"), std::pair(Trust::two_plots, "two plots"),
        std::pair(Trust::few_found, "fewer than 5 plots")}) {
    AreaEstimate area = fair_area();
    area.live.ba.trust = trust;
    const auto said = out_of_range(area, nullptr);
    ASSERT_EQ(keys_of(said), Keys{"interval"});
    EXPECT_NE(said[0].words.find(words), std::string::npos) << said[0].words;
  }
}

StandStocking stocked(std::optional<double> qmd, bool diameters, bool printed, bool oaks) {
  StandStocking s;
  if (qmd) s.qmd = Inches{*qmd};
  s.fit.diameters = diameters;
  s.fit.printed = printed;
  s.fit.oak_hickory = oaks;
  s.fit.oak_hickory_share = Percent{oaks ? 70.0 : 30.0};
  return s;
}

TEST(FigureRange, SaysWhereAStandLiesBeyondTheStockingGuide) {
  EXPECT_EQ(beyond_guide(stocked(9.0, true, true, true)), "");
  EXPECT_EQ(beyond_guide(stocked(std::nullopt, false, false, false)), "") << "no tree, no figure";
  EXPECT_EQ(beyond_guide(stocked(25.0, false, false, true)),
            "the mean diameter of 25.0 in lies outside the 3 to 22 in over which the guide is run");
  EXPECT_EQ(beyond_guide(stocked(16.0, true, false, true)),
            "the mean diameter of 16.0 in lies beyond the printed guide, which ends at 15 in");
  EXPECT_EQ(beyond_guide(stocked(9.0, true, true, false)),
            "oaks and hickories hold 30 % of the basal area, and the guide is for stands of half "
            "or more: a rough guess");
  EXPECT_EQ(beyond_guide(stocked(16.0, true, false, false)),
            "the mean diameter of 16.0 in lies beyond the printed guide, which ends at 15 in, and "
            "oaks and hickories hold 30 % of the basal area, and the guide is for stands of half "
            "or more: a rough guess");
  const StandStocking odd = stocked(9.0, true, true, false);
  EXPECT_EQ(keys_of(out_of_range(fair_area(), &odd)), Keys{"stocking"});
}

}  // namespace
}  // namespace oaklight
