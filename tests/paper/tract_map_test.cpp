#include "core/paper/tract_map.hpp"

#include <cmath>

#include "core/paper/map.hpp"
#include "core/place/geodesy.hpp"
#include "tests/paper/paper_fixture.hpp"
#include "tests/paper/picture_check.hpp"
#include "tests/support/test_cruise.hpp"
#include "tests/support/test_ids.hpp"

namespace oaklight {
namespace {

// All expected values here are derived: they follow from the promises in the header.

using TractMap = test::PaperTest;

const Position kMiddle{Degrees{38.214}, Degrees{-82.731}};  // invented; no survey behind it

Position at(double east, double north) {
  return position_from_local(kMiddle, {Feet{east}, Feet{north}});
}

Polygon outline(std::initializer_list<std::pair<double, double>> corners) {
  Polygon polygon;
  for (const auto& [east, north] : corners) polygon.outer.push_back(at(east, north));
  polygon.outer.push_back(polygon.outer.front());
  return polygon;
}

/// Two stands with 24 plots on a grid, an empty and a skipped one among them, and a few walked
/// trees.
struct InventedTract {
  test::TestCruise cruise;
  std::vector<PlotId> plots;
  TractMapFocus focus;

  explicit InventedTract(bool positions) {
    const StandId ridge = cruise.stand("Ridge oaks", 31.0);
    const StandId cove = cruise.stand("Cove", 18.5);
    for (int i = 0; i < 24; ++i) {
      const PlotStatus status = i == 4   ? PlotStatus::empty
                                : i == 7 ? PlotStatus::skipped
                                : i < 13 ? PlotStatus::measured
                                         : PlotStatus::planned;
      plots.push_back(cruise.plot(i < 15 ? ridge : cove, status));
      Plot& plot = cruise.data.plots.back();
      plot.label = (i < 15 ? "R" : "C") + std::to_string(i + 1);
      if (positions) plot.position = at(-700.0 + 330.0 * (i % 5), 600.0 - 300.0 * (i / 5));
    }
    focus.next = plots[13];
    cruise.data.tract.name = "Invented tract";
    if (!positions) return;
    cruise.data.stands[0].boundary = outline({{-900, 800}, {850, 760}, {820, -160}, {-880, -140}});
    cruise.data.stands[1].boundary =
        outline({{-880, -140}, {820, -160}, {640, -780}, {-760, -800}});
    cruise.data.tract.landing = at(760.0, -90.0);
    cruise.data.lines.push_back({test::nth_id<MapLineId>(1),
                                 LineKind::stream,
                                 "Fern Branch",
                                 false,
                                 {at(-900, -300), at(-200, -420), at(500, -340), at(760, -400)}});
    for (int i = 0; i < 6; ++i) add_tree(ridge, i);
    focus.here = at(420.0, 20.0);
  }

  void add_tree(StandId stand, int i) {
    WalkTree tree{
        .id = test::nth_id<WalkTreeId>(static_cast<std::uint32_t>(i + 1)),
        .stand = stand,
        .tag = std::to_string(101 + i),
        .facts = {.species = SpeciesCode{802}, .dbh = *Dbh::from_tenths(150, UnitSystem::us)},
        .crop = i % 3 == 0,
        .looked = {},
        .position = at(-560.0 + 60.0 * i, 440.0 + (i % 2) * 34.0)};
    cruise.data.walk_trees.push_back(tree);
    if (i == 3) return;
    Mark mark;
    mark.tree = tree.id;
    mark.verdict = tree.crop ? Verdict::keep : (i == 5 ? Verdict::look_again : Verdict::take);
    cruise.data.marks.push_back(mark);
  }
};

TEST_F(TractMap, StaysInItsFrameAndIsReadAtEachSize) {
  const InventedTract tract(true);
  for (const auto& [name, frame] : test::sized_frames()) {
    const TractPicture picture = draw_tract(tract.cruise.data, tract.focus, frame);
    EXPECT_EQ(test::faults_of(picture.drawing, frame), std::vector<std::string>{}) << name;
    EXPECT_EQ(picture.plots.size(), 24u);
    test::save_pictures(std::string("tract_map_") + name, picture.drawing, frame);
  }
}

TEST_F(TractMap, CountsPlotsAndTreesByWhatTheyAre) {
  const InventedTract tract(true);
  const std::string words = test::words_of(
      draw_tract(tract.cruise.data, tract.focus, test::sized_frames()[1].frame).drawing);
  for (const char* part :
       {"12 of 24 plots visited", "Next plot: R14", "to do (11)", "done (11)", "empty (1)",
        "skipped (1)", "crop tree (2)", "take (3)", "look again (1)", "Fern Branch", "You",
        "Landing", "Ridge oaks, 31.0 acres"}) {
    EXPECT_NE(words.find(part), std::string::npos) << part << " in " << words;
  }
}

TEST_F(TractMap, ATapFindsThePlotThatIsDrawnThere) {
  const InventedTract tract(true);
  for (const auto& [name, frame] : test::sized_frames()) {
    const TractPicture picture = draw_tract(tract.cruise.data, tract.focus, frame);
    for (const PlotSpot& spot : picture.plots) {
      EXPECT_TRUE(QRectF(QPointF(0.0, 0.0), frame.size).contains(spot.at));
      EXPECT_EQ(picture.plot_at(spot.at + QPointF(1.0, -1.0), 24.0), spot.plot) << name;
    }
    EXPECT_EQ(picture.plot_at(QPointF(-500.0, -500.0), 24.0), std::nullopt);
  }
}

TEST_F(TractMap, PlotsLieAsOnTheGround) {
  const InventedTract tract(true);
  const auto picture = draw_tract(tract.cruise.data, tract.focus, test::sized_frames()[1].frame);
  const auto spot = [&](std::size_t i) {
    return std::find_if(picture.plots.begin(), picture.plots.end(),
                        [&](const PlotSpot& s) { return s.plot == tract.plots[i]; })
        ->at;
  };
  const QPointF east = spot(1) - spot(0);
  const QPointF south = spot(5) - spot(0);
  EXPECT_GT(east.x(), 0.0);
  EXPECT_GT(south.y(), 0.0);
  EXPECT_NEAR(east.x() / south.y(), 330.0 / 300.0, 1e-3) << "one scale both ways, north up";
}

TEST_F(TractMap, WithoutPositionsShowsThePlotsByStand) {
  const InventedTract tract(false);
  for (const auto& [name, frame] : test::sized_frames()) {
    const TractPicture picture = draw_tract(tract.cruise.data, tract.focus, frame);
    EXPECT_EQ(test::faults_of(picture.drawing, frame), std::vector<std::string>{}) << name;
    const std::string words = test::words_of(picture.drawing);
    EXPECT_NE(words.find("Ridge oaks"), std::string::npos);
    // What has no room is counted.
    const auto more = words.find("and ");
    const std::size_t left = more == std::string::npos ? 0 : std::stoul(words.substr(more + 4));
    EXPECT_EQ(picture.plots.size() + left, 24u) << words;
    EXPECT_GE(picture.plots.size(), 12u) << name;
    EXPECT_EQ(picture.plot_at(picture.plots.front().at, 24.0), picture.plots.front().plot);
    test::save_pictures(std::string("tract_map_rows_") + name, picture.drawing, frame);
  }
}

TEST_F(TractMap, PlotsWithoutAPositionStandBelowTheMap) {
  InventedTract tract(true);
  for (const std::size_t i : {3u, 13u, 20u}) tract.cruise.data.plots[i].position.reset();
  tract.cruise.data.plots[21].position = Position{Degrees{std::nan("")}, Degrees{0.0}};
  for (const auto& [name, frame] : test::sized_frames()) {
    const TractPicture picture = draw_tract(tract.cruise.data, tract.focus, frame);
    EXPECT_EQ(picture.plots.size(), 24u) << name;
    EXPECT_EQ(test::faults_of(picture.drawing, frame), std::vector<std::string>{}) << name;
    EXPECT_NE(test::words_of(picture.drawing).find("Without a position"), std::string::npos);
    test::save_pictures(std::string("tract_map_mixed_") + name, picture.drawing, frame);
  }
}

TEST_F(TractMap, ShowsOneStandWhenAsked) {
  InventedTract tract(true);
  tract.focus.stand = tract.cruise.data.stands[1].id;
  const auto picture = draw_tract(tract.cruise.data, tract.focus, test::sized_frames()[0].frame);
  EXPECT_EQ(picture.plots.size(), 9u);
  EXPECT_EQ(test::words_of(picture.drawing).find("Ridge oaks"), std::string::npos);
  const auto whole = draw_tract(tract.cruise.data, {}, test::sized_frames()[0].frame);
  const auto apart = [](const TractPicture& p, std::size_t i) {
    return p.plots[i + 1].at.x() - p.plots[i].at.x();
  };
  EXPECT_GT(apart(picture, 0), apart(whole, 15)) << "it fills the frame";
}

TEST_F(TractMap, PlotsOfOneLabelAreToldApartByTheirStands) {
  InventedTract tract(false);
  tract.cruise.data.plots[0].label = "1";
  tract.cruise.data.plots[20].label = "1";
  const auto picture = draw_tract(tract.cruise.data, {}, test::sized_frames()[1].frame);
  const auto texts = test::texts_of(picture.drawing);
  EXPECT_EQ(std::count(texts.begin(), texts.end(), "Ridge oaks 1"), 1);
  EXPECT_EQ(std::count(texts.begin(), texts.end(), "Cove 1"), 1);
}

TEST_F(TractMap, APersonFarAwayIsToldInWords) {
  InventedTract tract(true);
  tract.focus.here = at(5280.0 * 12.0, 0.0);
  const PictureFrame& frame = test::sized_frames()[0].frame;
  const TractPicture picture = draw_tract(tract.cruise.data, tract.focus, frame);
  EXPECT_NE(test::words_of(picture.drawing).find("You are 12.0 miles E of here."),
            std::string::npos)
      << test::words_of(picture.drawing);
  EXPECT_EQ(test::faults_of(picture.drawing, frame), std::vector<std::string>{});
}

TEST_F(TractMap, EmptyTractSaysWhatIsMissing) {
  for (const auto& [name, frame] : test::sized_frames()) {
    const TractPicture nothing = draw_tract({}, {}, frame);
    EXPECT_NE(test::words_of(nothing.drawing).find("Nothing to show yet"), std::string::npos);
    EXPECT_EQ(test::faults_of(nothing.drawing, frame), std::vector<std::string>{}) << name;
    InventedTract tract(true);
    tract.cruise.data.plots.clear();
    const TractPicture bare = draw_tract(tract.cruise.data, {}, frame);
    EXPECT_NE(test::words_of(bare.drawing).find("No plots are laid out yet"), std::string::npos);
    EXPECT_EQ(test::faults_of(bare.drawing, frame), std::vector<std::string>{}) << name;
  }
}

TEST_F(TractMap, ManyPlotsAreDrawnSmallAndStayApart) {
  InventedTract tract(true);
  tract.cruise.data.plots.clear();
  for (int i = 0; i < 400; ++i) {
    tract.cruise.plot(tract.cruise.data.stands[0].id, PlotStatus::planned);
    tract.cruise.data.plots.back().position = at(-800.0 + 80.0 * (i % 20), 700.0 - 70.0 * (i / 20));
  }
  const PictureFrame& frame = test::sized_frames()[1].frame;
  const TractPicture picture = draw_tract(tract.cruise.data, {}, frame);
  EXPECT_EQ(picture.plots.size(), 400u);
  EXPECT_EQ(test::faults_of(picture.drawing, frame), std::vector<std::string>{});
  for (std::size_t i = 1; i < 20; ++i) {
    EXPECT_GE(picture.plots[i].at.x() - picture.plots[i - 1].at.x(), 2.0 * picture.plots[i].radius);
  }
  test::save_pictures("tract_map_many", picture.drawing, frame);
}

TEST_F(TractMap, ATapIsThePlaceThatIsDrawnThere) {
  const InventedTract tract(true);
  for (const auto& sized : test::sized_frames()) {
    SCOPED_TRACE(sized.name);
    const TractPicture picture = draw_tract(tract.cruise.data, tract.focus, sized.frame);
    ASSERT_TRUE(picture.ground);
    for (std::size_t i = 0; i < picture.plots.size(); ++i) {
      const auto place = picture.place_at(picture.plots[i].at);
      ASSERT_TRUE(place);
      const Position& plot = *tract.cruise.data.plots[i].position;
      EXPECT_LT(leg_between(*place, plot).distance.value, 0.1);
    }
  }
  EXPECT_FALSE(draw_tract(InventedTract(false).cruise.data, {}, test::sized_frames()[0].frame)
                   .place_at({10.0, 10.0}))
      << "no ground is drawn";
}

TEST_F(TractMap, AnOutlineInTheMakingAndAWalkAreDrawnWithinTheFrame) {
  InventedTract tract(true);
  tract.focus.sketch = {at(-1200, 900), at(-950, 900), at(-950, -700)};
  tract.focus.walk = {at(760, -90)};
  for (const Plot& plot : tract.cruise.data.plots) tract.focus.walk.push_back(*plot.position);
  for (const auto& sized : test::sized_frames()) {
    SCOPED_TRACE(sized.name);
    const TractPicture picture = draw_tract(tract.cruise.data, tract.focus, sized.frame);
    EXPECT_EQ(test::faults_of(picture.drawing, sized.frame), std::vector<std::string>{});
    test::save_pictures(std::string("tract_map_walk_") + sized.name, picture.drawing, sized.frame);
  }
}

}  // namespace
}  // namespace oaklight
