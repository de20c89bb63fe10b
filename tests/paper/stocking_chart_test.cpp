#include "core/paper/stocking_chart.hpp"

#include "core/measure/basal_area.hpp"
#include "tests/paper/paper_fixture.hpp"
#include "tests/paper/picture_check.hpp"

namespace oaklight {
namespace {

// All expected values here are derived: they follow from the promises in the header.

using StockingPicture = test::PaperTest;

StockingPoint point(double trees, double ba) {
  const auto sums = chart_sums(SquareFeetPerAcre{ba}, TreesPerAcre{trees});
  return {.trees = TreesPerAcre{trees},
          .ba = SquareFeetPerAcre{ba},
          .stocking = upland_oak_stocking(sums)};
}

StockingChart oak_stand() {
  StockingChart chart;
  chart.now = point(210.0, 112.0);
  chart.now->trees_half = TreesPerAcre{34.0};
  chart.now->ba_half = SquareFeetPerAcre{13.0};
  chart.now->stocking_half = Percent{11.0};
  chart.after = point(128.0, 78.0);
  return chart;
}

bool says(const Drawing& drawing, const char* words) {
  return test::words_of(drawing).find(words) != std::string::npos;
}

TEST_F(StockingPicture, StaysInItsFrameAndIsReadAtEachSize) {
  for (const auto& [name, sized] : test::sized_frames()) {
    for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
      PictureFrame frame = sized;
      frame.units = units;
      const Drawing drawing = draw_stocking_chart(oak_stand(), frame);
      EXPECT_EQ(test::faults_of(drawing, frame), std::vector<std::string>{}) << name;
      test::save_pictures(
          std::string("stocking_") + name + (units == UnitSystem::us ? "" : "_metric"), drawing,
          frame);
    }
  }
}

TEST_F(StockingPicture, NamesItsLinesAxesAndPoints) {
  for (const auto& [name, frame] : test::sized_frames()) {
    const auto texts = test::texts_of(draw_stocking_chart(oak_stand(), frame));
    for (const char* word :
         {"A", "B", "now", "after", "7 in", "trees per acre", "basal area, ft\u00B2 per acre"}) {
      EXPECT_EQ(std::count(texts.begin(), texts.end(), word), 1) << word << " on " << name;
    }
  }
}

TEST_F(StockingPicture, ShowsTheStockingBeforeAndAfter) {
  const StockingChart chart = oak_stand();
  const std::string now = std::to_string(std::lround(chart.now->stocking.value));
  const std::string after = std::to_string(std::lround(chart.after->stocking.value));
  const Drawing drawing = draw_stocking_chart(chart, test::sized_frames()[0].frame);
  EXPECT_TRUE(says(drawing, (now + " \u00B1 11 % \u2192 " + after + " %").c_str()))
      << test::words_of(drawing);
}

TEST_F(StockingPicture, SaysThatAStandIsOutsideTheGuide) {
  StockingChart chart;
  chart.now = point(2400.0, 40.0);  // mean diameter 1.7 in
  for (const auto& [name, frame] : test::sized_frames()) {
    const Drawing drawing = draw_stocking_chart(chart, frame);
    EXPECT_TRUE(says(drawing, "Outside the guide: the mean diameter is 1.7 in"))
        << test::words_of(drawing);
    EXPECT_EQ(test::faults_of(drawing, frame), std::vector<std::string>{}) << name;
  }
  EXPECT_FALSE(says(draw_stocking_chart(oak_stand(), test::sized_frames()[1].frame), "Outside"));
}

TEST_F(StockingPicture, SaysThatAStandOfOtherTreesIsOutsideTheGuide) {
  StockingChart chart = oak_stand();
  chart.fit = GuideFit{true, true, false, Percent{31.0}};
  EXPECT_TRUE(says(draw_stocking_chart(chart, test::sized_frames()[1].frame), "hold 31 %"));
}

TEST_F(StockingPicture, WithoutAStandShowsTheGuideAndSaysWhatIsMissing) {
  for (const auto& [name, frame] : test::sized_frames()) {
    const Drawing drawing = draw_stocking_chart({}, frame);
    EXPECT_TRUE(says(drawing, "No stand to show yet"));
    EXPECT_EQ(test::faults_of(drawing, frame), std::vector<std::string>{}) << name;
  }
}

TEST_F(StockingPicture, HasNoBoxOfErrorWhereOtherTreesWereCounted) {
  StandStocking stocking;
  stocking.trees = TreesPerAcre{200.0};
  stocking.ba = SquareFeetPerAcre{100.0};
  GroupFigures live;
  live.trees.mean = TreesPerAcre{260.0};
  live.trees.half_width = TreesPerAcre{30.0};
  live.ba.half_width = SquareFeetPerAcre{10.0};
  AreaEstimate area{.live = live, .need = Error{}};
  EXPECT_FALSE(stocking_point(stocking, &area).trees_half);
  area.live.trees.mean = TreesPerAcre{200.0};
  EXPECT_TRUE(stocking_point(stocking, &area).trees_half);
}

TEST_F(StockingPicture, MeanDiameterIsThatOfBasalArea) {
  const StockingPoint p = point(100.0, 100.0 * kBasalAreaFactor * 144.0);
  ASSERT_TRUE(p.qmd());
  EXPECT_NEAR(p.qmd()->value, 12.0, 1e-9);
  EXPECT_FALSE(point(0.0, 0.0).qmd());
}

}  // namespace
}  // namespace oaklight
