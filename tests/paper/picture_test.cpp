#include "core/paper/picture.hpp"

#include "core/paper/axis.hpp"
#include "core/paper/composition_chart.hpp"
#include "core/paper/packet_pages.hpp"
#include "tests/paper/invented_packet.hpp"
#include "tests/paper/paper_fixture.hpp"
#include "tests/paper/picture_check.hpp"

namespace oaklight {
namespace {

// All expected values here are derived: they follow from the promises in the headers.

using Picture = test::PaperTest;

TEST_F(Picture, AnAxisHoldsItsValuesInFewRoundSteps) {
  for (const double most : {0.03, 0.7, 1.0, 9.0, 41.0, 150.0, 162.0, 999.0, 24000.0}) {
    for (const int count : {3, 5, 8}) {
      const Axis axis = Axis::holding(most, count);
      EXPECT_GE(axis.to, most * (1.0 - 1e-9));
      EXPECT_LE(axis.to - axis.step, most) << "no step is wasted";
      EXPECT_LE(static_cast<int>(axis.ticks().size()), count + 1) << most << " in " << count;
      EXPECT_NEAR(axis.ticks().back(), axis.to, 1e-9 * axis.to);
    }
  }
  EXPECT_EQ(Axis::holding(0.0, 5).to, 1.0);
  EXPECT_EQ(Axis::holding(std::nan(""), 5).to, 1.0);
}

TEST_F(Picture, AnAxisShowsTheDecimalsThatItsTicksNeed) {
  EXPECT_EQ((Axis{0.0, 10.0, 2.5}.decimals()), 1);
  EXPECT_EQ((Axis{0.0, 100.0, 25.0}.decimals()), 0);
  EXPECT_EQ((Axis{0.0, 1.0, 0.2}.decimals()), 1);
  EXPECT_EQ((Axis{0.0, 1.0, 0.25}.decimals()), 2);
}

TEST_F(Picture, AScaledDrawingIsTheSameOneLarger) {
  Drawing drawing;
  drawing.text({10.0, 20.0}, "Oak", kBodyText);
  drawing.line({0.0, 0.0}, {30.0, 10.0}, {2.0, Ink::black, {4.0, 1.0}});
  QPainterPath path;
  path.addRect(0.0, 0.0, 50.0, 50.0);
  drawing.fill(path, Ink::tint, QRectF(5.0, 5.0, 10.0, 10.0));
  const Drawing larger = scaled(drawing, 3.0);
  ASSERT_EQ(larger.items().size(), drawing.items().size());
  for (std::size_t i = 0; i < larger.items().size(); ++i) {
    const QRectF was = box_of(drawing.items()[i]);
    const QRectF is = box_of(larger.items()[i]);
    EXPECT_NEAR(is.left(), 3.0 * was.left(), 1e-9) << i;
    EXPECT_NEAR(is.top(), 3.0 * was.top(), 1e-9) << i;
    EXPECT_NEAR(is.width(), 3.0 * was.width(), 1e-6) << i;
    EXPECT_NEAR(is.height(), 3.0 * was.height(), 1e-9) << i;
  }
  EXPECT_EQ(std::get<PathItem>(larger.items()[1]).stroke->dashes, (std::vector<double>{12.0, 3.0}));
}

TEST_F(Picture, LettersAreAsLargeAsAskedWhereTheFrameHasRoom) {
  PictureFrame frame{QSizeF(600.0, 500.0), 17.0};
  PictureSheet sheet(frame);
  sheet.foot("Words", kBodyText);
  EXPECT_NEAR(std::get<TextItem>(sheet.finish().items().front()).style.points, 17.0, 1e-9);
  frame.size = QSizeF(200.0, 500.0);  // 20 letters wide at 10 pt
  PictureSheet narrow(frame);
  narrow.foot("Words", kBodyText);
  EXPECT_NEAR(std::get<TextItem>(narrow.finish().items().front()).style.points, 10.0, 1e-9);
}

TEST_F(Picture, WithoutItsHeadTheRestIsLarger) {
  CompositionChart chart;
  chart.oak = BasalAreaShare{Percent{60.0}, {}};
  for (int i = 0; i < 30; ++i) {
    chart.species.push_back(
        {"species " + std::to_string(i), FoodGroup::oak, {Percent{100.0 / 30.0}, {}}});
  }
  PictureFrame frame = test::sized_frames()[0].frame;
  const Drawing with = draw_composition(chart, frame);
  frame.head = false;
  const Drawing without = draw_composition(chart, frame);
  EXPECT_NE(test::words_of(with).find("60 % oak"), std::string::npos);
  EXPECT_EQ(test::words_of(without).find("60 % oak"), std::string::npos);
  EXPECT_GT(test::filled(without, Ink::leave).size(), test::filled(with, Ink::leave).size());
  EXPECT_EQ(test::faults_of(without, frame), std::vector<std::string>{});
}

TEST_F(Picture, PagesOfAPacketAreReadInEachPalette) {
  for (const Drawing& page : packet_pages(test::invented_packet(30), PaperSize::letter)) {
    const PictureFrame frame{page_size(PaperSize::letter), kBodyText.points};
    for (const std::string& fault : test::faults_of(page, frame)) {
      EXPECT_EQ(fault.find("too weak"), std::string::npos) << fault;
      EXPECT_EQ(fault.find("bright ground"), std::string::npos) << fault;
    }
  }
}

}  // namespace
}  // namespace oaklight
