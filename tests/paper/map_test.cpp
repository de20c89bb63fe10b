#include "core/paper/map.hpp"

#include <QImage>
#include <QPainter>
#include <algorithm>
#include <numeric>
#include <set>

#include "core/paper/map_panels.hpp"
#include "core/place/geodesy.hpp"
#include "tests/paper/invented_packet.hpp"
#include "tests/paper/paper_fixture.hpp"

namespace oaklight {
namespace {

// All expected values here are derived: they follow from the promises in the headers.

using test::invented_packet;
using Map = test::PaperTest;

const QRectF kFrame(40.0, 80.0, 520.0, 480.0);

std::vector<std::size_t> all_of(const MapScene& scene) {
  std::vector<std::size_t> all(scene.trees.size());
  std::iota(all.begin(), all.end(), std::size_t{0});
  return all;
}

TEST_F(Map, NorthIsUpAndEastIsRight) {
  const MapView view = fitting_view(kFrame, QRectF(-100.0, -100.0, 200.0, 200.0));
  EXPECT_EQ(view.at({0.0, 0.0}), kFrame.center());
  EXPECT_LT(view.at({0.0, 50.0}).y(), kFrame.center().y());
  EXPECT_GT(view.at({50.0, 0.0}).x(), kFrame.center().x());
}

TEST_F(Map, AnInchOnPaperIsWhatTheScaleSays) {
  const MapView view = fitting_view(kFrame, QRectF(0.0, 0.0, 500.0, 300.0));
  const QPointF a = view.at({0.0, 0.0});
  const QPointF b = view.at({view.feet_per_inch, 0.0});
  EXPECT_NEAR(b.x() - a.x(), 72.0, 1e-9);  // 72 points are an inch
}

TEST_F(Map, TakesTheLargestUsualScaleThatHoldsTheGround) {
  // 520 pt less two borders of 30 pt are 6.39 in: 380 ft need 60 ft in an inch, 390 ft need 80.
  EXPECT_EQ(fitting_view(kFrame, QRectF(0.0, 0.0, 380.0, 10.0)).feet_per_inch, 60.0);
  EXPECT_EQ(fitting_view(kFrame, QRectF(0.0, 0.0, 390.0, 10.0)).feet_per_inch, 80.0);
}

TEST_F(Map, HoldsGroundOfAnySize) {
  for (const double feet : {0.0, 1.0, 1e3, 1e5, 1e8}) {
    const QRectF ground(-feet, 0.0, feet, feet);
    const MapView view = fitting_view(kFrame, ground);
    EXPECT_TRUE(kFrame.contains(view.at(ground.topLeft()))) << feet;
    EXPECT_TRUE(kFrame.contains(view.at(ground.bottomRight()))) << feet;
  }
}

TEST_F(Map, SceneKeepsTrueDistances) {
  Packet packet = invented_packet(3);
  const MapScene scene = make_scene(packet);
  ASSERT_GE(scene.trees.size(), 2u);
  const auto& a = packet.cut[0].position;
  const auto& b = packet.cut[1].position;
  ASSERT_TRUE(a && b);
  const QPointF off = scene.trees[1].place - scene.trees[0].place;
  EXPECT_NEAR(std::hypot(off.x(), off.y()), leg_between(*a, *b).distance.value, 0.01);
}

TEST_F(Map, TreesWithoutAUsablePositionAreKeptApart) {
  Packet packet = invented_packet(10);
  packet.cut[0].position.reset();
  packet.cut[1].position = Position{Degrees{std::nan("")}, Degrees{0.0}};
  packet.cut[2].position = Position{Degrees{91.0}, Degrees{0.0}};
  const MapScene scene = make_scene(packet);
  std::set<std::string> nowhere;
  for (const MapTree& tree : scene.nowhere) nowhere.insert(tree.tag.toStdString());
  for (int i = 0; i < 3; ++i)
    EXPECT_EQ(nowhere.count(packet.cut[static_cast<std::size_t>(i)].tag), 1u);
  EXPECT_EQ(scene.trees.size() + scene.nowhere.size(),
            packet.cut.size() + packet.trained.size() + packet.keep.size() + packet.others.size());
}

class MapSeeds : public test::PaperTest, public testing::WithParamInterface<std::uint32_t> {};

TEST_P(MapSeeds, LabelsOfAMapDoNotOverlapAndStayInItsFrame) {
  const MapScene scene = make_scene(invented_packet(40, GetParam()));
  Drawing drawing;
  const MapView view = fitting_view(kFrame, *ground_of(scene));
  const MapOutcome outcome = draw_map(drawing, scene, view, {all_of(scene)});
  ASSERT_GT(outcome.label_boxes.size(), 30u);
  for (std::size_t i = 0; i < outcome.label_boxes.size(); ++i) {
    EXPECT_TRUE(kFrame.contains(outcome.label_boxes[i]));
    for (std::size_t j = 0; j < i; ++j) {
      EXPECT_FALSE(outcome.label_boxes[i].intersects(outcome.label_boxes[j])) << i << ", " << j;
    }
  }
  for (const DrawingItem& item : drawing.items()) {
    EXPECT_TRUE(kFrame.adjusted(-1.0, -1.0, 1.0, 1.0).contains(box_of(item)));
  }
}

TEST_P(MapSeeds, EveryTreeIsInOneBlockThatHoldsIt) {
  const MapScene scene = make_scene(invented_packet(120, GetParam()));
  const QSizeF largest(200.0, 250.0);
  std::vector<int> met(scene.trees.size(), 0);
  for (const MapBlock& block : make_blocks(scene, 10, largest)) {
    EXPECT_LE(block.trees.size(), 10u);
    EXPECT_LE(block.ground.width(), largest.width());
    EXPECT_LE(block.ground.height(), largest.height());
    for (const std::size_t i : block.trees) {
      ++met[i];
      EXPECT_TRUE(block.ground.adjusted(-1e-6, -1e-6, 1e-6, 1e-6).contains(scene.trees[i].place));
    }
  }
  EXPECT_EQ(std::count(met.begin(), met.end(), 1), static_cast<long>(met.size()));
}

INSTANTIATE_TEST_SUITE_P(Seeds, MapSeeds, testing::Range(1u, 11u));

TEST_F(Map, BlocksAreLetteredLikeColumnsOfASheet) {
  EXPECT_EQ(block_letter(0), QString("A"));
  EXPECT_EQ(block_letter(25), QString("Z"));
  EXPECT_EQ(block_letter(26), QString("AA"));
  EXPECT_EQ(block_letter(26 + 26 * 26), QString("AAA"));
}

TEST_F(Map, TreesAroundOneCropTreeStayTogetherWhereTheyCan) {
  MapScene scene;
  for (int cluster = 0; cluster < 3; ++cluster) {
    for (int i = 0; i < 7; ++i) {
      scene.trees.push_back({QString::number(10 * cluster + i), TreeMark::cut,
                             QPointF(400.0 * cluster + 9.0 * i, 5.0 * (i % 3))});
    }
  }
  const auto blocks = make_blocks(scene, 10, QSizeF(150.0, 150.0));
  ASSERT_EQ(blocks.size(), 3u);
  EXPECT_EQ(blocks[0].trees, (std::vector<std::size_t>{0, 1, 2, 3, 4, 5, 6})) << "west first";
  EXPECT_EQ(blocks[2].trees.front(), 14u);
}

TEST_F(Map, LettersStandOffTheBoxesAndMarksWhereTheMapSaysSo) {
  const MapScene scene = make_scene(invented_packet(30));
  const auto blocks = make_blocks(scene, 10, QSizeF(200.0, 200.0));
  const MapView view = fitting_view(kFrame, *ground_of(scene));
  Drawing drawing;
  const MapOutcome outcome = draw_map(drawing, scene, view, {{}, blocks});
  ASSERT_TRUE(outcome.letters_clear);
  int letters = 0;
  for (const QRectF& label : outcome.label_boxes) {
    if (label.height() < 14.0) continue;  // names of lines are smaller
    ++letters;
    for (const MapTree& tree : scene.trees) EXPECT_FALSE(label.contains(view.at(tree.place)));
  }
  EXPECT_EQ(letters, static_cast<int>(blocks.size()));
}

TEST_F(Map, TreesAtOnePlaceArePartedByNumberOnly) {
  MapScene scene;
  for (int i = 0; i < 25; ++i)
    scene.trees.push_back({QString::number(i), TreeMark::cut, {5.0, 5.0}});
  std::size_t trees = 0;
  for (const MapBlock& block : make_blocks(scene, 10, QSizeF(100.0, 100.0))) {
    EXPECT_LE(block.trees.size(), 10u);
    trees += block.trees.size();
  }
  EXPECT_EQ(trees, 25u);
}

TEST_F(Map, PanelsOfAPageStayOnItAndDoNotOverlap) {
  const QRectF page(40.0, 60.0, 520.0, 600.0);
  for (std::size_t count = 1; count <= 9; ++count) {
    std::size_t next = 0;
    for (const auto& panels : lay_out_panels(count, kMostPanelsAPage, page)) {
      for (std::size_t i = 0; i < panels.size(); ++i) {
        EXPECT_EQ(panels[i].block, next++);
        EXPECT_TRUE(page.contains(panels[i].box));
        for (std::size_t j = 0; j < i; ++j) EXPECT_FALSE(panels[i].box.intersects(panels[j].box));
      }
    }
    EXPECT_EQ(next, count);
  }
}

TEST_F(Map, SaysThatALineIsNotConfirmed) {
  const MapScene scene = make_scene(invented_packet(3));
  Drawing drawing;
  draw_map(drawing, scene, fitting_view(kFrame, *ground_of(scene)), {all_of(scene)});
  const auto texts = test::texts_of(drawing);
  EXPECT_EQ(std::count(texts.begin(), texts.end(), "NOT CONFIRMED: East line"), 1);
}

TEST_F(Map, PaintsOnAScreenWithTheSameCode) {
  const MapScene scene = make_scene(invented_packet(20));
  Drawing drawing;
  draw_map(drawing, scene, fitting_view(QRectF(0.0, 0.0, 400.0, 300.0), *ground_of(scene)),
           {all_of(scene)});
  QImage screen(800, 600, QImage::Format_RGB32);
  screen.fill(Qt::white);
  QPainter painter(&screen);
  painter.scale(2.0, 2.0);
  paint(drawing, painter);
  painter.end();
  int dark = 0;
  for (int y = 0; y < screen.height(); ++y) {
    for (int x = 0; x < screen.width(); ++x) dark += qGray(screen.pixel(x, y)) < 64 ? 1 : 0;
  }
  EXPECT_GT(dark, 2000) << "marks, numbers and the frame";
  EXPECT_LT(dark, 100000) << "on a white ground";
}

}  // namespace
}  // namespace oaklight
